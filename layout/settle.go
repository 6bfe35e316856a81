package layout

import (
	"math"

	"slabwright/plan"
)

// settle brings joints in order after a change: those that run through openings or
// block-outs are parted there, and ends that stop inside a panel run on to the next
// edge or joint.
func settle(s plan.Slab) plan.Slab {
	out := withJoints(s)
	g := newGround(s, ringBlocks(s))
	var extra []plan.Joint
	for i, j := range out.Joints {
		if isRing(j) || len(j.Path) < 2 {
			continue
		}
		pieces := g.clip(j.Path)
		if len(pieces) == 0 {
			continue // along an edge: Check says so
		}
		out.Joints[i].Path = pieces[0]
		for _, p := range pieces[1:] {
			k := j
			k.Path = p
			extra = append(extra, k)
		}
	}
	for _, j := range extra {
		j.ID = nextID(out)
		out.Joints = append(out.Joints, j)
	}
	left := map[plan.Point]bool{} // ends that nothing lies ahead of
	for {
		ends := out.LooseEnds()
		k := 0
		for k < len(ends) && left[ends[k].At] {
			k++
		}
		if k == len(ends) {
			return out
		}
		left[ends[k].At] = true
		runOn(out, ends[k])
	}
}

// runOn runs one loose end on to the next edge, opening, joint or end of a joint.
func runOn(s plan.Slab, l plan.LooseEnd) {
	for i, j := range s.Joints {
		if j.ID != l.Joint {
			continue
		}
		path := append(plan.Polyline{}, j.Path...)
		atStart := path[0] == l.At
		if atStart {
			path = backwards(path)
		}
		if end, ok := ahead(s, i, path); ok {
			path[len(path)-1] = end
		}
		if atStart {
			path = backwards(path)
		}
		s.Joints[i].Path = path
	}
}

// ahead returns the first place ahead of the end of the i-th joint where it may stop.
func ahead(s plan.Slab, i int, path plan.Polyline) (plan.Point, bool) {
	n := len(path)
	d, _ := path[n-1].Minus(path[n-2]).Unit()
	ray := plan.Segment{A: path[n-1], B: path[n-1].Plus(d.Times(1000))}
	best := math.Inf(1)
	for _, seg := range stops(s, i) {
		if apart(ray, seg) {
			continue
		}
		if t, _, ok := ray.Cross(seg); ok && t > 1e-9 {
			best = math.Min(best, t)
		}
		for _, end := range []plan.Point{seg.A, seg.B} {
			if t, off := ray.Nearest(end); off < plan.SnapTolerance && t > 1e-9 {
				best = math.Min(best, t)
			}
		}
	}
	return ray.At(math.Min(best, 1)), !math.IsInf(best, 1)
}
