package job

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/walk"
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
	for i, p := range j.Pours {
		at := fmt.Sprintf("pours[%d]", i)
		problems = append(problems, j.areaOutside(at+".area_m", "pour "+p.ID, p.Area)...)
		for k, t := range p.Trucks {
			problems = append(problems, j.areaOutside(fmt.Sprintf("%s.trucks[%d].area_m", at, k), "truck "+t.Ticket, t.Area)...)
		}
	}
	for i, w := range j.Walks {
		problems = append(problems, j.walkOutside(fmt.Sprintf("walks[%d]", i), w)...)
	}
	return problems
}

func (j *Job) walkOutside(at string, w walk.Walk) []Problem {
	var problems []Problem
	for k, f := range w.Findings {
		field, name := fmt.Sprintf("%s.findings[%d]", at, k), "finding "+f.ID
		for n, line := range f.Lines {
			problems = append(problems, j.outside(fmt.Sprintf("%s.lines_m[%d]", field, n), name, line)...)
		}
		problems = append(problems, j.areaOutside(field+".area_m", name, f.Area)...)
		if len(f.Lines) == 0 && len(f.Area) == 0 && f.Joint == "" {
			problems = append(problems, Problem{Level: Warning, Code: "no-place", Field: field, Found: name + " has no place on the plan",
				Want: "lines_m, area_m or joint", Mend: "Draw it; most of what tells causes apart is where it lies."})
		}
	}
	for k, u := range w.Unseen {
		problems = append(problems, j.areaOutside(fmt.Sprintf("%s.could_not_see[%d].area_m", at, k), "could-not-see "+u.ID, u.Area)...)
	}
	for k, n := range w.None {
		problems = append(problems, j.areaOutside(fmt.Sprintf("%s.none_seen[%d].area_m", at, k), "none-seen area", n.Area)...)
	}
	return problems
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
