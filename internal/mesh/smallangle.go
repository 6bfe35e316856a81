package mesh

// smallAngles knows which ends of segments meet another segment at less than
// 60 degrees inside the mesh.
type smallAngles struct {
	ends map[[2]int32]bool // segment, point
	// reaching lists, per given point, the segments that end there and have a small
	// angle at their other end.
	reaching map[int32][]int32
}

func (s *smallAngles) at(segment, point int32) bool {
	return len(s.ends) > 0 && s.ends[[2]int32{segment, point}]
}

// A ray is a segment as seen from a point it ends at.
type ray struct {
	segment int32
	to      Point
}

func findSmallAngles(t *triangulation, segments []segment, on []int32) smallAngles {
	s := smallAngles{ends: map[[2]int32]bool{}, reaching: map[int32][]int32{}}
	for v := range t.around {
		if on[v] == given {
			s.look(t, int32(v))
		}
	}
	for i := range segments {
		a, b := segments[i].a, segments[i].b
		if s.ends[[2]int32{int32(i), a}] {
			s.reaching[b] = append(s.reaching[b], int32(i))
		}
		if s.ends[[2]int32{int32(i), b}] {
			s.reaching[a] = append(s.reaching[a], int32(i))
		}
	}
	return s
}

// look compares neighbouring rays around point v.
func (s *smallAngles) look(t *triangulation, v int32) {
	var rays []ray
	open := false
	t.fan(v, func(side int32) bool {
		if seg := t.segmentOf(side); seg >= 0 {
			rays = append(rays, ray{seg, t.points[t.end(side)]})
		}
		if back := previous(side); t.twin(back) < 0 {
			open = true
			rays = append(rays, ray{t.segmentOf(back), t.points[t.start(back)]})
		}
		return true
	})
	at := t.points[v]
	for i := range rays {
		if i == len(rays)-1 && open {
			break
		}
		one, two := rays[i], rays[(i+1)%len(rays)]
		if narrow(at, one.to, two.to) {
			s.ends[[2]int32{one.segment, v}] = true
			s.ends[[2]int32{two.segment, v}] = true
		}
	}
}

// narrow tells whether turning left from a to b around v takes less than 60
// degrees.
func narrow(v, a, b Point) bool {
	ux, uy, wx, wy := a[0]-v[0], a[1]-v[1], b[0]-v[0], b[1]-v[1]
	dot := ux*wx + uy*wy
	return ux*wy-uy*wx > 0 && dot > 0 && 4*dot*dot > (ux*ux+uy*uy)*(wx*wx+wy*wy)
}

// excused tells whether the smallest angle of a triangle, across from side short,
// cannot be helped: it is an angle of the input, or its two ends lie on the two
// arms of a small angle at the same distance from the corner.
//
// Source: Miller, Pav and Walkington, International Journal of Computational
// Geometry & Applications 15 (2005), 113-137.
func (r *refiner) excused(tri, short int32) bool {
	if len(r.small.ends) == 0 {
		return false
	}
	k := &r.t.corner[tri]
	if k.seg[(short+1)%3] >= 0 && k.seg[(short+2)%3] >= 0 && r.on[k.v[(short+2)%3]] == given {
		return true
	}
	u, w := k.v[short], k.v[(short+1)%3]
	for _, su := range r.arms(u) {
		for _, sw := range r.arms(w) {
			if su != sw && r.sameShell(su, sw, u, w) {
				return true
			}
		}
	}
	return false
}

// paired tells whether the corner across from a side lies on the other arm of a
// small angle, as far out as one of the ends of the side. It does not crowd the
// side: it is only there by rounding, and splitting would never end.
func (r *refiner) paired(side int32) bool {
	if len(r.small.ends) == 0 {
		return false
	}
	s, v := r.t.segmentOf(side), r.t.apex(side)
	for _, arm := range r.arms(v) {
		if arm != s && (r.sameShell(s, arm, r.t.start(side), v) || r.sameShell(s, arm, r.t.end(side), v)) {
			return true
		}
	}
	return false
}

// arms lists the segments point v lies on, if they lead to a small angle.
func (r *refiner) arms(v int32) []int32 {
	switch s := r.on[v]; s {
	case free:
		return nil
	case given:
		return r.small.reaching[v]
	default:
		return r.on[v : v+1]
	}
}

// sameShell tells whether u on one segment and w on the other lie equally far
// from a small angle where the two segments meet.
func (r *refiner) sameShell(su, sw, u, w int32) bool {
	one, two := &r.segments[su], &r.segments[sw]
	for _, c := range [2]int32{one.a, one.b} {
		if (c == two.a || c == two.b) && r.small.at(su, c) && r.small.at(sw, c) {
			du, dw := squaredDistance(r.t.points[u], r.t.points[c]), squaredDistance(r.t.points[w], r.t.points[c])
			if du < 1.001*dw && dw < 1.001*du {
				return true
			}
		}
	}
	return false
}
