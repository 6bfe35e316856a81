package mesh

// A triangulation holds triangles and who touches whom. Side i of a triangle
// runs from corner i to corner i+1. A side is named by one number, four times
// the triangle plus i; such a number below is called a side.
type triangulation struct {
	points []Point
	corner []corners
	around []int32 // per point, one side that starts there, or -1
	free   []int32 // triangles that may be written over
	last   int32   // a live triangle near the latest work, where walks start
	cavity
}

// corners is one triangle. The fourth entries hold what belongs to the whole.
type corners struct {
	v    [4]int32 // points; v[3] counts how often this place was written
	twin [4]int32 // the same side seen from the other triangle, or -1; twin[3] is the cavity stamp
	seg  [4]int32 // the segment the side lies on, or -1; seg[3] is dead when free
}

const dead = -2

func next(side int32) int32 {
	if side&3 == 2 {
		return side - 2
	}
	return side + 1
}

func previous(side int32) int32 {
	if side&3 == 0 {
		return side + 2
	}
	return side - 1
}

func (t *triangulation) start(side int32) int32 { return t.corner[side>>2].v[side&3] }

func (t *triangulation) end(side int32) int32 {
	side = next(side)
	return t.corner[side>>2].v[side&3]
}

func (t *triangulation) apex(side int32) int32 {
	side = previous(side)
	return t.corner[side>>2].v[side&3]
}

func (t *triangulation) twin(side int32) int32 { return t.corner[side>>2].twin[side&3] }

func (t *triangulation) segmentOf(side int32) int32 { return t.corner[side>>2].seg[side&3] }

func (t *triangulation) alive(tri int32) bool { return t.corner[tri].seg[3] != dead }

// slot is the place for a new triangle, a freed one if there is any.
func (t *triangulation) slot() int32 {
	if k := len(t.free); k > 0 {
		tri := t.free[k-1]
		t.free = t.free[:k-1]
		return tri
	}
	t.corner = append(t.corner, corners{})
	return int32(len(t.corner) - 1)
}

// newTriangle writes a triangle without neighbours and returns its number.
func (t *triangulation) newTriangle(a, b, c int32) int32 {
	tri := t.slot()
	k := &t.corner[tri]
	k.v = [4]int32{a, b, c, k.v[3] + 1}
	k.twin = [4]int32{-1, -1, -1, 0}
	k.seg = [4]int32{-1, -1, -1, -1}
	t.around[a], t.around[b], t.around[c] = 4*tri, 4*tri+1, 4*tri+2
	t.last = tri
	return tri
}

// release lets the place of a triangle be written over.
func (t *triangulation) release(tri int32) {
	t.corner[tri].seg[3] = dead
	t.corner[tri].v[3]++
	t.free = append(t.free, tri)
}

// join makes two sides twins; b may be -1.
func (t *triangulation) join(a, b int32) {
	t.corner[a>>2].twin[a&3] = b
	if b >= 0 {
		t.corner[b>>2].twin[b&3] = a
	}
}

// constrain lays segment s on a side and its twin.
func (t *triangulation) constrain(side, s int32) {
	t.corner[side>>2].seg[side&3] = s
	if twin := t.twin(side); twin >= 0 {
		t.corner[twin>>2].seg[twin&3] = s
	}
}

// sideBetween returns the side from a to b, or the one from b to a if only that
// exists, or -1.
func (t *triangulation) sideBetween(a, b int32) int32 {
	found := int32(-1)
	for _, ends := range [2][2]int32{{a, b}, {b, a}} {
		t.fan(ends[0], func(side int32) bool {
			if t.end(side) == ends[1] {
				found = side
			}
			return found < 0
		})
		if found >= 0 {
			break
		}
	}
	return found
}

// fan calls visit for every side that starts at point v, turning left, until
// visit returns false. On the rim it begins at the side that has no twin.
func (t *triangulation) fan(v int32, visit func(side int32) bool) {
	first := t.around[v]
	if first < 0 {
		return
	}
	for side := first; ; {
		back := t.twin(side)
		if back < 0 {
			first = side
			break
		}
		if side = next(back); side == first {
			break
		}
	}
	for side := first; ; {
		if !visit(side) {
			return
		}
		if side = t.twin(previous(side)); side < 0 || side == first {
			return
		}
	}
}

func (t *triangulation) place(tri int32) (a, b, c Point) {
	k := &t.corner[tri]
	return t.points[k.v[0]], t.points[k.v[1]], t.points[k.v[2]]
}

// area is that of all triangles in use.
func (t *triangulation) area() float64 {
	sum := 0.0
	for tri := range t.corner {
		if t.alive(int32(tri)) {
			a, b, c := t.place(int32(tri))
			sum += Orient(a, b, c) / 2
		}
	}
	return sum
}
