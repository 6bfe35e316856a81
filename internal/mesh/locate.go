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
