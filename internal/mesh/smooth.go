package mesh

// smooth moves free points to the middle of their neighbours wherever that makes
// the worst triangle around them better and none too large, then turns sides
// until the triangulation is Delaunay again.
//
// Source: Freitag and Ollivier-Gooch, International Journal for Numerical Methods
// in Engineering 40 (1997), 3979-4002: smoothing only where it helps, and turning
// sides in between.
func (r *refiner) smooth(rounds int) {
	for range rounds {
		var loose []int32
		for v := range r.on {
			if r.on[v] == free && r.t.around[v] >= 0 && r.relax(int32(v)) {
				r.t.fan(int32(v), func(side int32) bool {
					r.t.corner[side>>2].v[3]++
					loose = append(loose, side, next(side))
					return true
				})
			}
		}
		if len(loose) == 0 {
			return
		}
		r.t.legalise(loose)
	}
}

// relax moves point v if that helps.
func (r *refiner) relax(v int32) bool {
	t := r.t
	goal, n := Point{}, 0.0
	t.fan(v, func(side int32) bool {
		p := t.points[t.end(side)]
		goal, n = Point{goal[0] + p[0], goal[1] + p[1]}, n+1
		return true
	})
	goal = Point{goal[0] / n, goal[1] / n}
	if r.worstAround(v, goal) <= r.worstAround(v, t.points[v])*(1+1e-6) {
		return false
	}
	t.points[v] = goal
	return true
}

// worstAround is the worst shape of the triangles at v if v lay at p: 1 for even
// sides, 0 or less for a triangle turned over or too large.
func (r *refiner) worstAround(v int32, p Point) float64 {
	t := r.t
	worst := 1.0
	t.fan(v, func(side int32) bool {
		a, b := t.points[t.end(side)], t.points[t.apex(side)]
		pa, ab, bp := squaredDistance(p, a), squaredDistance(a, b), squaredDistance(b, p)
		shape := 2 * sqrt3 * Orient(p, a, b) / (pa + ab + bp)
		if r.size != nil && shape > 0 {
			if h := r.sizeAt(middle(p, a, b)); max(pa, ab, bp) > h*h {
				shape = 0
			}
		}
		worst = min(worst, shape)
		return worst > 0
	})
	return worst
}

const sqrt3 = 1.7320508075688772
