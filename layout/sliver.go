package layout

import (
	"math"

	"slabwright/plan"
)

// sliverOf returns the least width of a panel and where, when that is under the rule
// and a joint makes it: where the concrete itself is narrow no joint can help.
func sliverOf(p plan.Panel) (float64, plan.Point, bool) {
	worst, at := narrowest-1e-3, plan.Point{}
	found := false
	for i, a := range p.Sides {
		for _, b := range p.Sides[i+1:] {
			if a.Joint == "" && b.Joint == "" {
				continue
			}
			if w, middle, ok := facing(a.Segment(), b.Segment()); ok && w < worst {
				worst, at, found = w, middle, true
			}
		}
	}
	if p.Width < worst && jointed(p) {
		return p.Width, p.Centroid, true
	}
	return worst, at, found
}

// jointed reports whether a joint lies along one of the panel's long sides.
func jointed(p plan.Panel) bool {
	way := plan.Direction(p.LongDirection)
	for _, s := range p.Sides {
		d, ok := s.To.Minus(s.From).Unit()
		if ok && s.Joint != "" && math.Abs(d.Cross(way)) < 0.3 && s.Segment().Length() > p.Length/4 {
			return true
		}
	}
	return false
}

// facing returns how far apart two sides of a panel are that run opposite ways beside
// one another for 0.2 m or more, and the place between them.
func facing(a, b plan.Segment) (float64, plan.Point, bool) {
	d, ok := a.B.Minus(a.A).Unit()
	e, ok2 := b.B.Minus(b.A).Unit()
	if !ok || !ok2 || d.Dot(e) > -0.95 {
		return 0, plan.Point{}, false
	}
	t0, t1 := b.B.Minus(a.A).Dot(d), b.A.Minus(a.A).Dot(d)
	from, to := math.Max(0, t0), math.Min(a.Length(), t1)
	if to-from < 0.2 {
		return 0, plan.Point{}, false
	}
	middle := a.A.Plus(d.Times((from + to) / 2))
	t, w := b.Nearest(middle)
	if middle.Minus(b.At(t)).Dot(d.Left()) > 0 {
		return 0, plan.Point{}, false // back to back: what lies between is not this panel
	}
	return w, plan.Segment{A: middle, B: b.At(t)}.At(0.5), true
}
