package mesh

import (
	"math"
	"slices"
)

// refill replaces removed triangles by those of polygons that cover the same
// place. Each polygon lists its corners from one end of its base to the other and
// lies left of the way from the first to the last. It changes nothing and reports
// false when rounding leaves no proper filling.
func (t *triangulation) refill(removed []int32, polygons ...[]int32) bool {
	var plan [][3]int32
	for _, polygon := range polygons {
		before := len(plan)
		var ok bool
		if plan, ok = t.plan(polygon, plan); !ok || !t.covers(polygon, plan[before:]) {
			return false
		}
	}
	f := filler{t: t, rim: map[[2]int32]rimSide{}, waiting: map[[2]int32]int32{}}
	f.takeOut(removed)
	t.made = t.made[:0]
	for _, v := range plan {
		f.add(v)
	}
	return true
}

func reversed(chain []int32) []int32 {
	slices.Reverse(chain)
	return chain
}

// plan appends the Delaunay triangles of a polygon to out.
func (t *triangulation) plan(chain []int32, out [][3]int32) ([][3]int32, bool) {
	last := len(chain) - 1
	if last < 2 {
		return out, true
	}
	a, b := t.points[chain[0]], t.points[chain[last]]
	best := 0
	for i := 1; i < last; i++ {
		c := chain[i]
		if c == chain[0] || c == chain[last] || Orient(a, b, t.points[c]) <= 0 {
			continue
		}
		if best == 0 || InCircle(a, b, t.points[chain[best]], t.points[c]) > 0 {
			best = i
		}
	}
	if best == 0 {
		return out, false
	}
	out = append(out, [3]int32{chain[0], chain[last], chain[best]})
	out, ok := t.plan(chain[:best+1], out)
	if !ok {
		return out, false
	}
	return t.plan(chain[best:], out)
}

// coverError is how far, in parts of the sum, the areas of a polygon and of its
// triangles may differ by rounding: a few roundings for each of many triangles.
const coverError = 1e-9

// covers tells whether triangles cover a polygon once. All turn left, so equal
// areas leave no room for overlap.
func (t *triangulation) covers(polygon []int32, triangles [][3]int32) bool {
	origin := t.points[polygon[0]]
	want, size := 0.0, 0.0
	for i := len(polygon) - 1; i >= 2; i-- {
		part := Orient(origin, t.points[polygon[i]], t.points[polygon[i-1]])
		want += part
		size += math.Abs(part)
	}
	got := 0.0
	for _, v := range triangles {
		got += Orient(t.points[v[0]], t.points[v[1]], t.points[v[2]])
	}
	return math.Abs(got-want) <= coverError*size
}

// A filler fills a hole in the triangulation, joining sides as they appear.
type filler struct {
	t       *triangulation
	rim     map[[2]int32]rimSide // by the ends of the side, seen from the hole
	waiting map[[2]int32]int32   // new sides whose twin is still to come
}

// takeOut releases triangles and remembers what lies around them, and segments
// among them.
func (f *filler) takeOut(removed []int32) {
	t := f.t
	t.stamp++
	for _, tri := range removed {
		t.corner[tri].twin[3] = t.stamp
	}
	for _, tri := range removed {
		k := &t.corner[tri]
		for i := range int32(3) {
			r := rimSide{k.v[i], k.v[(i+1)%3], k.twin[i], k.seg[i], 0}
			if r.outer >= 0 && t.corner[r.outer>>2].twin[3] == t.stamp {
				r.outer = -1
			}
			if r.outer >= 0 || r.seg >= 0 {
				f.rim[[2]int32{r.a, r.b}] = r
			}
		}
	}
	for _, tri := range removed {
		t.release(tri)
	}
}

// add makes a triangle and joins its sides to what is already there.
func (f *filler) add(v [3]int32) {
	tri := f.t.newTriangle(v[0], v[1], v[2])
	f.t.made = append(f.t.made, tri)
	for i := range int32(3) {
		from, to, side := v[i], v[(i+1)%3], 4*tri+i
		if r, ok := f.rim[[2]int32{from, to}]; ok {
			f.t.corner[tri].seg[i] = r.seg
			if r.outer >= 0 {
				f.t.join(side, r.outer)
				continue
			}
		}
		if twin, ok := f.waiting[[2]int32{to, from}]; ok {
			f.t.join(side, twin)
			delete(f.waiting, [2]int32{to, from})
			continue
		}
		f.waiting[[2]int32{from, to}] = side
	}
}
