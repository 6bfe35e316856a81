package job

import (
	"fmt"
	"math"
	"reflect"
	"strings"

	"slabwright/plan"
)

// placeTolerance is how far outside the outline a place may lie before it is a
// slip: the reach of a tape pulled by hand along an edge, 50 mm.
const placeTolerance = 0.05

// checkPlaces reports pours, loads, findings and areas that lie outside every
// slab, with the name of the edge they are beyond.
func (j *Job) checkPlaces() []Problem {
	if len(j.Slabs) == 0 {
		return nil
	}
	for _, s := range j.Slabs {
		if len(s.Outline) < 3 {
			return nil // said already
		}
	}
	var problems []Problem
	visit(reflect.ValueOf(j).Elem(), "", "", func(field, pattern string, v reflect.Value) bool {
		points, ok := v.Interface().([]plan.Point)
		if strings.HasPrefix(pattern, "slabs") || strings.HasPrefix(pattern, "place.obstacles") { // beside the slab by their nature
			return false // the plan checks its own shapes
		}
		if !ok {
			return true
		}
		if what := j.nameOf(field); strings.HasSuffix(pattern, ".area_m") {
			problems = append(problems, j.areaOutside(field, what, points)...)
		} else {
			problems = append(problems, j.outside(field, what, points)...)
		}
		return false
	})
	for i, w := range j.Walks {
		for k, f := range w.Findings {
			if len(f.Lines) == 0 && len(f.Area) == 0 && f.Joint == "" {
				problems = append(problems, Problem{Level: Warning, Code: "no-place", Field: fmt.Sprintf("walks[%d].findings[%d]", i, k), Found: "finding " + f.ID + " has no place on the plan",
					Want: "lines_m, area_m or joint", Mend: "Draw it; most of what tells causes apart is where it lies."})
			}
		}
	}
	return problems
}

// nameOf says what a shape belongs to: "truck T6".
func (j *Job) nameOf(field string) string {
	parent := parentOf(field)
	list := parent[strings.LastIndexByte(parent, '.')+1:]
	what := map[string]string{"pours": "pour", "trucks": "truck", "findings": "finding", "departures": "departure",
		"could_not_see": "place not seen", "none_seen": "area of none seen"}[list[:strings.IndexByte(list, '[')]]
	return strings.TrimSpace(what + " " + idOf(valueAt(reflect.ValueOf(j).Elem(), parent)))
}

// areaOutside is outside for an area, which needs three corners; none is absent.
func (j *Job) areaOutside(field, what string, points []plan.Point) []Problem {
	if n := len(points); n == 1 || n == 2 {
		return []Problem{{Level: Error, Code: "shape", Field: field, At: &points[0], Place: placeName(&points[0]),
			Found: fmt.Sprintf("%s is an area of %d points", what, n), Want: "three or more corners", Mend: "Walk round it and mark each corner."}}
	}
	return j.outside(field, what, points)
}

// outside reports the point of a line or area that lies farthest out of every slab.
func (j *Job) outside(field, what string, points []plan.Point) []Problem {
	at, far := -1, placeTolerance
	for i, p := range points {
		if d := j.beyond(p); d > far {
			at, far = i, d
		}
	}
	if at < 0 {
		return nil
	}
	p := points[at]
	slab, side := j.nearestSide(p)
	a, b := slab.Outline[side], slab.Outline[(side+1)%len(slab.Outline)]
	prob := Problem{Level: Error, Code: "outside", Field: fmt.Sprintf("%s[%d]", field, at), At: &p,
		Place: fmt.Sprintf("%s, %.2f m beyond the edge from (%.2f, %.2f) to (%.2f, %.2f) of slab %s", placeName(&p), far, a.X, a.Y, b.X, b.Y, slab.ID),
		Found: what + " lies outside the slab", Want: fmt.Sprintf("within the outline, give or take %g m", placeTolerance), Mend: "Move the point, or mend the outline."}
	const milli = 1000
	if q := (plan.Point{X: p.X / milli, Y: p.Y / milli}); far > 50 && j.beyond(q) <= placeTolerance {
		prob.Mend = fmt.Sprintf("Lengths are in metres: did you mean [%g, %g]?", q.X, q.Y)
	} else if q := (plan.Point{X: p.Y, Y: p.X}); j.beyond(q) <= placeTolerance {
		prob.Mend = fmt.Sprintf("Did you mean [%g, %g]? x and y may be swapped.", q.X, q.Y)
	}
	return []Problem{prob}
}

// beyond is how far a point lies outside the nearest slab; openings count as slab
// here, since a line may end in a pit.
func (j *Job) beyond(p plan.Point) float64 {
	least := math.Inf(1)
	for _, s := range j.Slabs {
		ring := plan.Ring(s.Outline)
		if ring.Contains(p) {
			return 0
		}
		least = math.Min(least, ring.Distance(p))
	}
	return least
}

func (j *Job) nearestSide(p plan.Point) (slab plan.Slab, side int) {
	least := math.Inf(1)
	for _, s := range j.Slabs {
		for i, g := range plan.Ring(s.Outline).Sides() {
			if _, d := g.Nearest(p); d < least {
				least, slab, side = d, s, i
			}
		}
	}
	return slab, side
}
