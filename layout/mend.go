package layout

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/source"
	"slabwright/steel"
)

// leastDowelled is the thickness, m, under which round dowels have no guidance.
const leastDowelled = steel.LeastDowelledThickness / 1000

// mend returns the change that makes a breach go away, nil where none is known or the
// one known cannot be made here.
func (x breach) mend(e *examined, limit float64) *Mend {
	s := e.slab
	switch x.rule {
	case "sliver":
		return x.widen(e, limit)
	case "sharp":
		return x.squareUp(e)
	case "corner":
		return x.meet(e)
	case "tee":
		return goOn(s, x.joint, x.at)
	case "loose":
		fixed := settle(s)
		return &Mend{fmt.Sprintf("Run %s on to the next edge or joint.", x.joint), fixed}
	case "spacing", "aspect":
		return x.halve(e, limit)
	case "shape":
		return nil // it follows from the outline; the corner's own warning has the mend
	}
	return x.mendBars(s)
}

// widen takes away a joint beside a sliver where what is left is short enough, or
// moves it away.
func (x breach) widen(e *examined, limit float64) *Mend {
	p := plan.PanelByID(e.panels, x.panel)
	id, away := "", plan.Point{}
	best := 0.0
	for _, side := range p.Sides {
		d, ok := side.To.Minus(side.From).Unit()
		if l := side.Segment().Length(); ok && side.Joint != "" && l > best && math.Abs(d.Cross(plan.Direction(p.LongDirection))) < 0.3 {
			best, id, away = l, side.Joint, d.Left().Times(-1)
		}
	}
	if id == "" {
		return nil
	}
	i, err := jointIndex(e.slab, id)
	if err != nil {
		return nil
	}
	if s := without(e.slab, i); longest(s) <= limit*1.001 {
		return &Mend{fmt.Sprintf("Leave %s out: the panels beside it are short enough without it.", id), s}
	}
	by := 1.0 - x.value
	if s, err := MoveJoint(e.slab, id, away.Times(by)); err == nil {
		return &Mend{fmt.Sprintf("Move %s by %.2f m, so that the strip beside it is 1 m wide.", id, by), s}
	}
	return nil
}

func longest(s plan.Slab) (length float64) {
	panels, err := s.Panels()
	if err != nil {
		return math.Inf(1)
	}
	for _, p := range panels {
		length = math.Max(length, p.Length)
	}
	return length
}

// squareUp turns the end of a joint at a sharp corner by short legs.
func (x breach) squareUp(e *examined) *Mend {
	g := newGround(e.slab, ringBlocks(e.slab))
	for i, j := range e.slab.Joints {
		if j.ID != x.joint || len(j.Path) < 2 {
			continue
		}
		path := plan.Polyline(j.Path)
		atStart := path[0].To(x.at) <= plan.JointReach
		if atStart {
			path = backwards(path)
		}
		if path[len(path)-1].To(x.at) > plan.JointReach {
			return nil
		}
		turned, ok := g.turned(path)
		if !ok {
			return nil
		}
		if atStart {
			turned = backwards(turned)
		}
		s := withJoints(e.slab)
		s.Joints[i].Path = turned
		return &Mend{fmt.Sprintf("Turn the end of %s towards the square by short legs.", x.joint), s}
	}
	return nil
}

// meet draws a joint from an inside corner in line with one of its sides, from edge to
// edge; of the two the one that makes the shorter joint. For a round opening it draws
// the line through its middle.
func (x breach) meet(e *examined) *Mend {
	corner, ok := e.cornerAt(x.at)
	if !ok {
		return nil
	}
	g := newGround(e.slab, ringBlocks(e.slab))
	var best plan.Polyline
	for _, side := range corner.Sides {
		way := side.Times(-1)
		end, hit := g.firstHit(x.at.Plus(way.Times(fuzz)), way, 1000)
		if path := (plan.Polyline{x.at, end}); hit && path.Length() >= shortest && (best == nil || path.Length() < best.Length()) {
			best = path
		}
	}
	if best == nil {
		return nil
	}
	s := withJoints(e.slab)
	id := nextID(s)
	s.Joints = append(s.Joints, plan.Joint{ID: id, Kind: plan.Sawn, Path: best})
	if bad := s.Check(); len(bad) > len(e.slab.Check()) {
		return nil
	}
	return &Mend{fmt.Sprintf("Draw a joint from the corner to the edge, %.2f m.", best.Length()), s}
}

func (e *examined) cornerAt(at plan.Point) (plan.Corner, bool) {
	for _, p := range e.panels {
		for _, c := range p.InsideCorners {
			if c.At.To(at) <= 2*plan.SnapTolerance {
				return c, true
			}
		}
	}
	return plan.Corner{}, false
}

// goOn runs a joint that stops at the side of a panel on, through what it stops at, to
// the edge.
func goOn(s plan.Slab, id string, at plan.Point) *Mend {
	i, err := jointIndex(s, id)
	if err != nil {
		return nil
	}
	path := plan.Polyline(append([]plan.Point{}, s.Joints[i].Path...))
	atStart := path[0].To(at) <= plan.JointReach
	if atStart {
		path = backwards(path)
	}
	n := len(path)
	d, _ := path[n-1].Minus(path[n-2]).Unit()
	g := newGround(s, ringBlocks(s))
	end, hit := g.firstHit(at.Plus(d.Times(fuzz)), d, 1000)
	if !hit {
		return nil
	}
	path = straighten(append(path, end))
	if atStart {
		path = backwards(path)
	}
	out := withJoints(s)
	out.Joints[i].Path = path
	return &Mend{fmt.Sprintf("Run %s on to the edge, %.2f m more.", id, at.To(end)), out}
}

// halve draws a joint across the middle of a long panel, from edge to edge so that it
// stops at no panel's side.
func (x breach) halve(e *examined, limit float64) *Mend {
	p := plan.PanelByID(e.panels, x.panel)
	if p.Length/2 < narrowest+0.4 {
		return nil
	}
	s, ok := acrossSlab(e.slab, plan.Sawn, p.Centroid, p.LongDirection+90)
	if !ok || nearOwn(s, len(e.slab.Joints)) {
		return nil
	}
	return &Mend{fmt.Sprintf("Draw a joint across the middle of %s, from edge to edge: two panels of about %.2f m.", x.panel, p.Length/2), s}
}

// nearOwn reports whether one of the joints from a number on runs beside another so
// near that it makes a sliver.
func nearOwn(s plan.Slab, from int) bool {
	for _, j := range s.Joints[from:] {
		for _, p := range plan.Polyline(j.Path).Pieces() {
			d, _ := p.B.Minus(p.A).Unit()
			for _, o := range stops(s, -1) {
				e, ok := o.B.Minus(o.A).Unit()
				if !ok || math.Abs(d.Cross(e)) > 0.3 || o == p {
					continue
				}
				t0, t1 := o.A.Minus(p.A).Dot(d), o.B.Minus(p.A).Dot(d)
				if math.Min(math.Max(t0, t1), p.Length())-math.Max(math.Min(t0, t1), 0) < 0.2 {
					continue
				}
				if math.Min(math.Abs(o.A.Minus(p.A).Cross(d)), math.Abs(o.B.Minus(p.A).Cross(d))) < narrowest {
					return true
				}
			}
		}
	}
	return false
}

// mendBars mends what is known of fixtures, bars and mesh rather than drawn.
func (x breach) mendBars(s plan.Slab) *Mend {
	out := withJoints(s)
	at := -1
	for i, j := range s.Joints {
		if j.ID == x.joint {
			at = i
		}
	}
	dowels := func(change func(d *plan.Dowels)) plan.Slab {
		d := *s.Joints[at].Dowels
		change(&d)
		out.Joints[at].Dowels = &d
		return out
	}
	switch x.rule {
	case "isolation":
		out.Fixtures = append([]plan.Fixture{}, s.Fixtures...)
		for i := range out.Fixtures {
			if out.Fixtures[i].ID == x.fixture {
				out.Fixtures[i].Isolated = taken("yes", "mended on the plan")
			}
		}
		return &Mend{fmt.Sprintf("Put a soft strip through the whole depth all round %s.", x.fixture), out}
	case "column":
		return x.blockOut(s)
	case "dowel clear":
		return &Mend{fmt.Sprintf("Leave %.1f m on each side of crossings without dowels in %s.", clearOfCrossing, x.joint),
			dowels(func(d *plan.Dowels) {
				d.Clear = &source.Fact{Value: clearOfCrossing, Known: source.Assumed, By: madeBy, Note: "mended on the plan"}
			})}
	case "dowel sideways":
		return &Mend{fmt.Sprintf("Use dowels with soft sides, or plates, in %s.", x.joint), dowels(func(d *plan.Dowels) { d.FreeSide = taken("yes", "mended on the plan") })}
	case "dowel thin":
		out.Joints[at].Dowels, out.Joints[at].Transfer = nil, taken("none", "too thin for round dowels")
		return &Mend{fmt.Sprintf("Leave the dowels of %s out and thicken the edges, or use plates.", x.joint), out}
	case "transfer":
		d, why := DowelFor(s.Thickness.Or(0))
		if d == nil {
			return &Mend{"No dowel fits: " + why + ".", s}
		}
		out.Joints[at].Dowels, out.Joints[at].Transfer = d, taken("dowelled", "mended on the plan")
		return &Mend{fmt.Sprintf("Put dowels of %.0f mm at %.0f mm in %s.", d.Diameter.Value*1000, d.Spacing.Value*1000, x.joint), out}
	case "steel":
		out.Steel = append([]plan.BarZone{}, s.Steel...)
		for i := range out.Steel {
			if out.Steel[i].ID == x.other {
				out.Steel[i].AtJoints = taken("cut", "mended on the plan")
			}
		}
		return &Mend{fmt.Sprintf("Cut %s at every joint.", x.other), out}
	}
	return nil
}

// blockOut draws the block-out of a column along the joints nearest to it.
func (x breach) blockOut(s plan.Slab) *Mend {
	low, _ := plan.Ring(s.Outline).Box()
	f := straight(low, mainDirections(plan.Ring(s.Outline).Anticlockwise())[0])
	for _, c := range s.Fixtures {
		if c.ID != x.fixture {
			continue
		}
		b, ok := diamondOf(c, f, s.Outline)
		if !ok {
			return nil
		}
		out := withJoints(s)
		for _, p := range outlineClip(s, b.ring) {
			out.Joints = append(out.Joints, plan.Joint{ID: nextID(out), Kind: plan.Isolation, Path: p, Transfer: taken("none", "a soft strip through the whole depth")})
		}
		out, err := checked(s, settle(out))
		if err != nil {
			return nil
		}
		return &Mend{fmt.Sprintf("Draw a block-out turned 45 degrees round %s.", x.fixture), out}
	}
	return nil
}
