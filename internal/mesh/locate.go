package mesh

// walk returns a triangle that holds p, inside or on its rim, starting from the
// latest one. It returns -1 when p lies outside or the way is blocked.
//
// The walk goes through any side that has p beyond it. Among Delaunay triangles
// that never runs in a circle; with segments it might, so the steps are counted.
func (t *triangulation) walk(p Point, tri int32) int32 {
	from := int32(-1)
	for steps := 0; steps < 2*len(t.corner)+8; steps++ {
		moved := false
		k := &t.corner[tri]
		for j := range int32(3) {
			i := (j + int32(steps)) % 3
			if 4*tri+i == from {
				continue
			}
			if Orient(t.points[k.v[i]], t.points[k.v[(i+1)%3]], p) < 0 {
				if from = k.twin[i]; from < 0 {
					return -1
				}
				tri, moved = from>>2, true
				break
			}
		}
		if !moved {
			return tri
		}
	}
	return -1
}

// search looks through all triangles for the one that holds p, or -1.
func (t *triangulation) search(p Point) int32 {
	for tri := range t.corner {
		if !t.alive(int32(tri)) {
			continue
		}
		a, b, c := t.place(int32(tri))
		if Orient(a, b, p) >= 0 && Orient(b, c, p) >= 0 && Orient(c, a, p) >= 0 {
			return int32(tri)
		}
	}
	return -1
}

// toward walks straight from the middle of a triangle to p. It returns the
// triangle that holds p, or the side on a segment or on the rim that is in the
// way, or -1 for both when it is lost to rounding.
func (t *triangulation) toward(p Point, tri int32) (found, blocked int32) {
	a, b, c := t.place(tri)
	from := middle(a, b, c)
	entered := int32(-1)
	for steps := 0; steps < 10_000; steps++ {
		out := int32(-1)
		for i := range int32(3) {
			side := 4*tri + i
			a, b := t.points[t.start(side)], t.points[t.end(side)]
			if side != entered && Orient(a, b, p) <= 0 && Orient(from, p, a) <= 0 && Orient(from, p, b) >= 0 {
				out = side
				break
			}
		}
		if out < 0 {
			break
		}
		if t.segmentOf(out) >= 0 || t.twin(out) < 0 {
			return -1, out
		}
		entered = t.twin(out)
		tri = entered >> 2
	}
	a, b, c = t.place(tri)
	if Orient(a, b, p) >= 0 && Orient(b, c, p) >= 0 && Orient(c, a, p) >= 0 {
		return tri, -1
	}
	return -1, -1
}

// digSeen collects the cavity of p from the triangle that holds it, going only
// through sides p sees, or lies on.
func (t *triangulation) digSeen(p Point, home int32) {
	t.begin(home)
	for len(t.stack) > 0 {
		tri := t.stack[len(t.stack)-1]
		t.stack = t.stack[:len(t.stack)-1]
		t.dug = append(t.dug, tri)
		k := t.corner[tri]
		for i := range int32(3) {
			a, b := k.v[i], k.v[(i+1)%3]
			if twin := k.twin[i]; k.seg[i] < 0 && twin >= 0 && (tri == home || Orient(t.points[a], t.points[b], p) > 0) {
				if t.corner[twin>>2].twin[3] == t.stamp {
					continue
				}
				if x, y, z := t.place(twin >> 2); InCircle(x, y, z, p) > 0 {
					t.reach(twin >> 2)
					continue
				}
			} else if twin >= 0 && t.corner[twin>>2].twin[3] == t.stamp && k.seg[i] < 0 {
				continue
			}
			t.rim = append(t.rim, rimSide{a, b, k.twin[i], k.seg[i], 4*tri + i})
		}
	}
}
