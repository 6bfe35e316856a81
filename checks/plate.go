package checks

import (
	"context"
	"errors"
	"fmt"
	"math"

	"slabwright/flexure"
	"slabwright/plan"
	"slabwright/source"
	"slabwright/working"
)

// plates sets the plate on ground that cannot pull beside every check of load and
// curl together: one panel with free edges that lifts where it curls, the load with
// its neighbours on it.
func (w *worker) plates(ctx context.Context) error {
	for i := range w.res.Rows {
		r := &w.res.Rows[i]
		if w.curled[r.ID] == nil {
			continue
		}
		if err := w.plateBeside(ctx, r); err != nil {
			return err
		}
	}
	return nil
}

// plateBeside works out one plate and puts it beside the row and its line.
func (w *worker) plateBeside(ctx context.Context, r *Row) error {
	c := w.curled[r.ID]
	v, err := w.plateStress(ctx, *c, r.Place)
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case err != nil:
		w.leaveOut("the plate beside "+r.Check, err.Error())
		return nil
	}
	const what = "plate in plan on ground that cannot pull, thin, by finite elements"
	const reason = "The closed forms keep slab and ground together; the plate lifts where it curls, so curl alone makes less stress and a load on what has lifted makes more."
	for i := range w.res.Sheets {
		s := &w.res.Sheets[i]
		if s.ID != r.Sheet {
			continue
		}
		for k := range s.Lines {
			if s.Lines[k].Symbol == "Σσ" {
				s.Lines[k] = s.Lines[k].Beside(what, v, source.Cite("timoshenko", "thin plate on springs, solved by finite elements"), reason)
				r.Beside = s.Lines[k].Check
			}
		}
	}
	if v > r.Capacity && r.Pass {
		r.Note = fmt.Sprintf("By the plate it is %s MPa, which is not met: the corner or edge has lifted under the load.", working.Figure(v, 3))
	}
	return nil
}

// plateStress is the tension at the place of a contact by the plate, MPa. A joint's
// share is taken off the load, as in the closed forms.
func (w *worker) plateStress(ctx context.Context, c contact, p Place) (float64, error) {
	length, width := w.val("length"), w.val("width")
	radius := c.radius / 1000
	at, look := placeOn(p, length, width, radius)
	left, _ := w.left(p)
	difference := w.val("hot")
	if p == Corner {
		difference = -w.val("cold")
	}
	plate := flexure.Plate{ID: "panel", Slab: plan.Slab{ID: "S", Name: "panel", Outline: []plan.Point{{X: 0, Y: 0}, {X: length, Y: 0}, {X: length, Y: width}, {X: 0, Y: width}}},
		Thickness: w.h / 1000, Modulus: w.e * 1e6, Poisson: w.nu, Support: w.k * 1e9, UnitWeight: 1000 * w.val("unit_weight"),
		Warp:  flexure.Warp{Difference: difference, Expansion: w.val("expansion")},
		Loads: []flexure.Load{{ID: "P", Name: "load", At: at, Radius: radius, Force: 1000 * c.force * left}}}
	for i, n := range c.neighbours {
		if q, ok := besidePlace(p, at, n, length, width, radius); ok {
			plate.Loads = append(plate.Loads, flexure.Load{ID: fmt.Sprintf("N%d", i+1), Name: n.what, At: q, Radius: radius, Force: 1000 * n.force * left})
		}
	}
	if bad := plate.Check(); len(bad) > 0 {
		return 0, bad[0]
	}
	bent, err := plate.Solve(ctx)
	if err != nil {
		return 0, err
	}
	worst := math.Inf(-1)
	for _, q := range look {
		here, ok := bent.At(q)
		if !ok {
			continue
		}
		v := here.Bottom
		if p == Corner {
			v = here.Top
		}
		worst = math.Max(worst, v)
	}
	if math.IsInf(worst, -1) {
		return 0, errors.New("the place lies off the panel")
	}
	return worst / 1e6, nil
}

// placeOn is where a load stands on a panel and where the stress is looked for: below
// it in the interior and at an edge, along the bisector at a corner.
func placeOn(p Place, length, width, radius float64) (at plan.Point, look []plan.Point) {
	switch p {
	case Interior:
		at = plan.Point{X: length / 2, Y: width / 2}
		return at, []plan.Point{at}
	case Corner:
		at = plan.Point{X: radius, Y: radius}
		for s := 0.05; s < math.Min(length, width)/2; s += 0.05 {
			look = append(look, plan.Point{X: s, Y: s})
		}
		return at, look
	}
	at = plan.Point{X: length / 2, Y: radius}
	return at, []plan.Point{{X: length / 2, Y: 0}}
}

// besidePlace is where a neighbour stands: along the edge, or square to it; ok is
// false when it stands off the panel.
func besidePlace(p Place, at plan.Point, n neighbour, length, width, radius float64) (plan.Point, bool) {
	q := plan.Point{X: at.X + n.distance/1000, Y: at.Y}
	if n.sideways {
		q = plan.Point{X: at.X, Y: at.Y + n.distance/1000}
	}
	return q, q.X+radius < length && q.Y+radius < width && p != Corner
}
