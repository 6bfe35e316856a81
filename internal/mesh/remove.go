package mesh

import "math"

// remove takes point v away, free or on a segment that runs straight through it,
// and fills its place. It changes nothing and reports false when that cannot be
// done: v is on the rim's end, where segments meet, or rounding is in the way.
func (t *triangulation) remove(v int32) bool {
	if !t.tryRemove(v) {
		return false
	}
	t.around[v] = -1
	return true
}

func (t *triangulation) tryRemove(v int32) bool {
	link, removed, closed := t.link(v)
	segments, seg := 0, int32(-1)
	t.fan(v, func(side int32) bool {
		if s := t.segmentOf(side); s >= 0 {
			segments, seg = segments+1, s
		}
		return true
	})
	if !closed {
		// The link runs from one neighbour on the rim to the other.
		if segments != 1 || t.segmentOf(t.sideBetween(link[len(link)-1], v)) != seg {
			return false
		}
		a, b := link[0], link[len(link)-1]
		return t.removeStraight(removed, a, b, seg, reversed(link))
	}
	switch segments {
	case 0:
		return t.refill(removed, reversed(link))
	case 2:
		return t.removeOnSegment(v, link, removed)
	}
	return false
}

// link lists the points around v turning left and the triangles between.
func (t *triangulation) link(v int32) (link, triangles []int32, closed bool) {
	closed = true
	t.fan(v, func(side int32) bool {
		link = append(link, t.end(side))
		triangles = append(triangles, side>>2)
		if back := previous(side); t.twin(back) < 0 {
			link = append(link, t.start(back))
			closed = false
		}
		return true
	})
	return link, triangles, closed
}

// removeOnSegment takes v off a segment with triangles on both sides.
func (t *triangulation) removeOnSegment(v int32, link, removed []int32) bool {
	var at []int
	var seg []int32
	for i, to := range link {
		if s := t.segmentOf(t.sideBetween(v, to)); s >= 0 {
			at, seg = append(at, i), append(seg, s)
		}
	}
	if seg[0] != seg[1] {
		return false
	}
	right := append([]int32{}, link[at[0]:at[1]+1]...)
	left := append(append([]int32{}, link[at[1]:]...), link[:at[0]+1]...)
	return t.removeStraight(removed, link[at[0]], link[at[1]], seg[0], reversed(right), reversed(left))
}

// removeStraight fills the polygons left when a point between a and b is gone, and
// lays the segment from a to b.
func (t *triangulation) removeStraight(removed []int32, a, b, seg int32, polygons ...[]int32) bool {
	kept := polygons[:0]
	for _, p := range polygons {
		if len(p) > 2 {
			kept = append(kept, p)
		}
	}
	if len(kept) == 0 || len(kept) < len(polygons) || !t.refill(removed, kept...) {
		return false
	}
	t.constrain(t.sideBetween(a, b), seg)
	return true
}

// meanSide is the mean length of the sides at v.
func (t *triangulation) meanSide(v int32) float64 {
	sum, n := 0.0, 0
	t.fan(v, func(side int32) bool {
		sum += distance(t.points[v], t.points[t.end(side)])
		n++
		return true
	})
	return sum / math.Max(float64(n), 1)
}
