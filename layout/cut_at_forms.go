package layout

import (
	"fmt"
	"sort"

	"slabwright/plan"
)

// CutAtForms returns the slab with every sawn joint parted where it crosses a formed
// one: what lies in one pour is sawn on the day of that pour. The pieces of J2 are J2a,
// J2b and so on along it.
func CutAtForms(s plan.Slab) plan.Slab {
	out := withJoints(s)
	out.Joints = nil
	for _, j := range s.Joints {
		pieces := atForms(s, j)
		for i, p := range pieces {
			one := j
			one.Path = p
			if len(pieces) > 1 {
				one.ID = pieceID(s, j.ID, i)
			}
			out.Joints = append(out.Joints, one)
		}
	}
	return out
}

// atForms returns the pieces of a sawn joint between the formed ones it crosses; other
// joints whole.
func atForms(s plan.Slab, j plan.Joint) []plan.Polyline {
	path := plan.Polyline(j.Path)
	if j.Kind != plan.Sawn || isRing(j) {
		return []plan.Polyline{path}
	}
	var cuts []float64
	for _, o := range s.Joints {
		if o.Kind == plan.Formed && o.ID != j.ID {
			cuts = append(cuts, meets(path, o.Path)...)
		}
	}
	sort.Float64s(cuts)
	var out []plan.Polyline
	from, length := 0.0, path.Length()
	for _, at := range append(cuts, length) {
		if at-from >= shortest && (at == length || length-at >= shortest) {
			out = append(out, part(path, from, at))
			from = at
		}
	}
	if len(out) == 0 {
		return []plan.Polyline{path}
	}
	return out
}

// pieceID is the id of the n-th piece of a joint, free of the ids there are.
func pieceID(s plan.Slab, id string, n int) string {
	letter := fmt.Sprint(n + 1)
	if n < 26 {
		letter = string(rune('a' + n))
	}
	return freeID(s, id+letter)
}
