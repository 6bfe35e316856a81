package mesh

// A cavity is the work space of an insertion: the triangles whose circumcircle
// holds the new point and which it can see, and the rim around them.
//
// Source: Bowyer and Watson, both in The Computer Journal 24 (1981), 162-172.
type cavity struct {
	stack []int32
	dug   []int32
	rim   []rimSide
	made  []int32 // the triangles of the latest fill
	stamp int32
}

// A rimSide is a side of the cavity as seen from inside it.
type rimSide struct {
	a, b  int32
	outer int32 // the side across, or -1
	seg   int32
	inner int32 // the side itself, before the cavity is filled
}

// dig collects the cavity of p from triangle tri on. Segments stop it. When open
// is a side, digging begins on both sides of it, and it belongs to no rim.
func (t *triangulation) dig(p Point, tri, open int32) {
	t.begin(tri)
	across := int32(-1)
	if open >= 0 {
		if across = t.twin(open); across >= 0 {
			t.reach(across >> 2)
		}
	}
	for len(t.stack) > 0 {
		tri := t.stack[len(t.stack)-1]
		t.stack = t.stack[:len(t.stack)-1]
		t.dug = append(t.dug, tri)
		k := &t.corner[tri]
		for i := range int32(3) {
			side := 4*tri + i
			if side == open || side == across {
				continue
			}
			twin, seg := k.twin[i], k.seg[i]
			if seg < 0 && twin >= 0 {
				beyond := &t.corner[twin>>2]
				if beyond.twin[3] == t.stamp {
					continue
				}
				if InCircle(t.points[beyond.v[0]], t.points[beyond.v[1]], t.points[beyond.v[2]], p) > 0 {
					t.reach(twin >> 2)
					continue
				}
			}
			t.rim = append(t.rim, rimSide{k.v[i], k.v[(i+1)%3], twin, seg, side})
		}
	}
}

func (t *triangulation) begin(tri int32) {
	t.stamp++
	t.stack, t.dug, t.rim = t.stack[:0], t.dug[:0], t.rim[:0]
	t.reach(tri)
}

func (t *triangulation) reach(tri int32) {
	t.corner[tri].twin[3] = t.stamp
	t.stack = append(t.stack, tri)
}

// digLittle takes only the triangles that touch the open side.
func (t *triangulation) digLittle(open int32) {
	t.begin(open >> 2)
	across := t.twin(open)
	if across >= 0 {
		t.reach(across >> 2)
	}
	for _, tri := range t.stack {
		t.dug = append(t.dug, tri)
		k := &t.corner[tri]
		for i := range int32(3) {
			if side := 4*tri + i; side != open && side != across {
				t.rim = append(t.rim, rimSide{k.v[i], k.v[(i+1)%3], k.twin[i], k.seg[i], side})
			}
		}
	}
}

// hidden returns the number of the first rim side that p does not see from
// within, or -1 when p sees the whole rim. A side on a segment comes first.
func (t *triangulation) hidden(p Point) int {
	found := -1
	for i := range t.rim {
		r := &t.rim[i]
		if Orient(t.points[r.a], t.points[r.b], p) <= 0 {
			if r.seg >= 0 {
				return i
			}
			found = i
		}
	}
	return found
}

// fill replaces the cavity by triangles from its rim to point v. openEnd is the
// point where a rim that is not closed ends, or -1.
func (t *triangulation) fill(v, openEnd int32) {
	t.free = append(t.free, t.dug...)
	t.made = t.made[:0]
	for i := range t.rim {
		r := &t.rim[i]
		tri := t.slot()
		k := &t.corner[tri]
		k.v = [4]int32{r.a, r.b, v, k.v[3] + 1}
		k.twin = [4]int32{r.outer, -1, -1, 0}
		k.seg = [4]int32{r.seg, -1, -1, -1}
		if r.outer >= 0 {
			t.corner[r.outer>>2].twin[r.outer&3] = 4 * tri
		}
		t.around[r.a] = 4 * tri
		t.made = append(t.made, tri)
	}
	for _, tri := range t.made {
		end := t.corner[tri].v[1]
		if end == openEnd {
			t.around[end] = 4*tri + 1
			continue
		}
		beside := t.around[end] >> 2
		t.corner[tri].twin[1] = 4*beside + 2
		t.corner[beside].twin[2] = 4*tri + 1
	}
	t.last = t.made[0]
	t.around[v] = 4*t.last + 2
	t.markFreed()
}

// markFreed marks the triangles dug but not written over.
func (t *triangulation) markFreed() {
	for k := len(t.free) - 1; k >= 0 && k >= len(t.free)-len(t.dug); k-- {
		if c := &t.corner[t.free[k]]; c.seg[3] != dead {
			c.seg[3] = dead
			c.v[3]++
		}
	}
}
