package mesh

// putOnSegment puts an end of segments at p, which lies on one of the given
// segments. A point there within snap is taken instead. It returns the point, or
// -1 if rounding is in the way, and the segment cut off, or -1.
func (w *work) putOnSegment(p Point, segments []int32) (v, cutOff int32) {
	t := w.t
	side := w.sideNearest(p, segments)
	if side < 0 {
		return -1, -1
	}
	for _, v := range [2]int32{t.start(side), t.end(side)} {
		if distance(t.points[v], p) <= w.snap {
			return v, w.cutSegment(v)
		}
	}
	s := t.segmentOf(side)
	if v = t.splitSide(side, p); v < 0 {
		return -1, -1
	}
	w.on = append(w.on, s)
	return v, w.cutSegment(v)
}

// sideNearest finds the side on one of the segments that is nearest to p.
func (w *work) sideNearest(p Point, segments []int32) int32 {
	t := w.t
	best, nearest := int32(-1), 0.0
	for _, s := range segments {
		for _, side := range w.sides(s) {
			_, away := nearestOn(t.points[t.start(side)], t.points[t.end(side)], p)
			if best < 0 || away < nearest {
				best, nearest = side, away
			}
		}
	}
	return best
}

// putFree puts an end of segments at p inside the mesh and returns the point, or
// -1. Base is the mesh as it was, which knows where things are.
func (w *work) putFree(p Point, base *Mesh) int32 {
	t := w.t
	tri := w.triangleAt(p, base)
	if tri < 0 {
		return -1
	}
	for _, v := range t.corner[tri].v[:3] {
		if distance(t.points[v], p) <= w.snap {
			w.cutSegment(v)
			w.on[v] = given
			return v
		}
	}
	t.digSeen(p, tri)
	if t.hidden(p) >= 0 {
		return -1
	}
	v := t.addPoint(p)
	w.on = append(w.on, given)
	t.fill(v, -1)
	return v
}

// triangleAt finds the triangle that holds p, beginning near where base has it.
func (w *work) triangleAt(p Point, base *Mesh) int32 {
	t := w.t
	if in := base.Locate(p); in >= 0 {
		for _, v := range base.Triangles[in] {
			if t.around[v] >= 0 {
				if tri := t.walk(p, t.around[v]>>2); tri >= 0 {
					return tri
				}
			}
		}
	}
	return t.search(p)
}

// share adds a mark to the one of the segments that runs between a and b.
func (w *work) share(a, b int32, segments []int32, mark Mark) bool {
	for _, s := range segments {
		if g := &w.segments[s]; ends(g.a, g.b) == ends(a, b) {
			g.set = w.table.of(append([]Mark{mark}, w.table.sets[g.set]...))
			return true
		}
	}
	return false
}
