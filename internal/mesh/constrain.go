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
			if !t.refill(removed, append(left, z), reversed(append(right, z))) {
				return 0, t.points[z], false
			}
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
