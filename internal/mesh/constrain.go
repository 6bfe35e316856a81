package mesh

// lay makes segment s, from a to b, show up as sides of the triangulation. Where
// it runs over another point it is laid in two parts. It reports false and the
// place when another segment is in the way.
//
// The triangles the segment cuts are taken out and the two halves of the hole
// filled again, which gives the constrained Delaunay triangulation at once.
//
// Source: Anglada, An improved incremental algorithm for constructing restricted
// Delaunay triangulations, Computers & Graphics 21 (1997), 215-223.
func (t *triangulation) lay(s, a, b int32) (blocked Point, ok bool) {
	for a != b {
		if side := t.sideBetween(a, b); side >= 0 {
			t.constrain(side, s)
			return Point{}, true
		}
		entry, through := t.entry(a, b)
		if through >= 0 {
			t.constrain(t.sideBetween(a, through), s)
			a = through
			continue
		}
		if entry < 0 {
			return t.points[a], false
		}
		end, blocked, ok := t.tunnel(a, b, entry)
		if !ok {
			return blocked, false
		}
		t.constrain(t.sideBetween(a, end), s)
		a = end
	}
	return Point{}, true
}

// entry returns the side opposite a through which a–b leaves the triangles at a,
// or the point it runs over first.
func (t *triangulation) entry(a, b int32) (side, through int32) {
	side, through = -1, -1
	pa, pb := t.points[a], t.points[b]
	t.fan(a, func(s int32) bool {
		x, y := t.points[t.end(s)], t.points[t.apex(s)]
		ox, oy := Orient(pa, pb, x), Orient(pa, pb, y)
		switch {
		case ox == 0 && ahead(pa, pb, x):
			through = t.end(s)
		case oy == 0 && ahead(pa, pb, y):
			through = t.apex(s)
		case ox < 0 && oy > 0:
			side = next(s)
		}
		return side < 0 && through < 0
	})
	return side, through
}

// ahead tells whether x, on the line a–b, lies on the same side of a as b.
func ahead(a, b, x Point) bool {
	return (x[0]-a[0])*(b[0]-a[0])+(x[1]-a[1])*(b[1]-a[1]) > 0
}

// tunnel takes out the triangles cut by the way from a toward b, up to the first
// point on it, and fills both halves. It returns that point.
func (t *triangulation) tunnel(a, b, crossed int32) (end int32, blocked Point, ok bool) {
	pa, pb := t.points[a], t.points[b]
	right, left := []int32{a, t.start(crossed)}, []int32{a, t.end(crossed)}
	removed := []int32{crossed >> 2}
	for {
		if t.segmentOf(crossed) >= 0 || t.twin(crossed) < 0 {
			at, _ := crossingOf(pa, pb, t.points[t.start(crossed)], t.points[t.end(crossed)])
			return 0, at, false
		}
		across := t.twin(crossed)
		removed = append(removed, across>>2)
		z := t.apex(across)
		o := Orient(pa, pb, t.points[z])
		if o == 0 {
			t.refill(append(left, z), append(right, z), removed)
			return z, Point{}, true
		}
		if o > 0 {
			left = append(left, z)
			crossed = next(across) // from the right corner of the old side to z
		} else {
			right = append(right, z)
			crossed = previous(across)
		}
	}
}

// refill replaces removed triangles by those of the two halves beside the way
// from the first to the last point of left and right.
func (t *triangulation) refill(left, right, removed []int32) {
	f := filler{t: t, rim: map[[2]int32]rimSide{}, waiting: map[[2]int32]int32{}}
	f.takeOut(removed)
	f.fill(left)
	for i, j := 0, len(right)-1; i < j; i, j = i+1, j-1 {
		right[i], right[j] = right[j], right[i]
	}
	f.fill(right)
}

// A filler fills a hole in the triangulation, joining sides as they appear.
type filler struct {
	t       *triangulation
	rim     map[[2]int32]rimSide // by the ends of the side, seen from the hole
	waiting map[[2]int32]int32   // new sides whose twin is still to come
	made    []int32
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

// fill triangulates the polygon left of the way from the first to the last point
// of chain, which lists its corners in between from first to last.
func (f *filler) fill(chain []int32) {
	last := len(chain) - 1
	if last < 2 {
		return
	}
	at := f.t.points
	a, b := chain[0], chain[last]
	best := -1
	for i := 1; i < last; i++ {
		c := chain[i]
		if c == a || c == b || Orient(at[a], at[b], at[c]) <= 0 {
			continue
		}
		if best < 0 || InCircle(at[a], at[b], at[chain[best]], at[c]) > 0 {
			best = i
		}
	}
	if best < 0 {
		panic("mesh: a hole with no corner to fill it from")
	}
	f.add(a, b, chain[best])
	f.fill(chain[:best+1])
	f.fill(chain[best:])
}

// add makes a triangle and joins its sides to what is already there.
func (f *filler) add(a, b, c int32) {
	tri := f.t.newTriangle(a, b, c)
	f.made = append(f.made, tri)
	v := f.t.corner[tri].v
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
