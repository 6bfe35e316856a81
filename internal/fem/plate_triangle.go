package fem

// fillDKT takes curvature from rotations that are quadratic in the triangle, equal
// to the slopes of w at the corners and, along each side, to those of a cubic w; the
// rotation about a side's normal is linear along it.
func fillDKT(g *geometry, xi, eta float64, f *plateField) {
	det := g.atLocal(T3, xi, eta)
	var n, dXi, dEta [maxNodes]float64
	T6.values(xi, eta, n[:6], dXi[:6], dEta[:6])
	j := g.jacobian
	clear(f.w[:])
	f.curvature = [3][plateUnknowns]float64{}
	for i := range 6 {
		dx, dy := (j[3]*dXi[i]-j[1]*dEta[i])/det, (j[0]*dEta[i]-j[2]*dXi[i])/det
		if i < 3 {
			f.curvature[0][3*i+1] += dx
			f.curvature[1][3*i+2] += dy
			f.curvature[2][3*i+1] += dy
			f.curvature[2][3*i+2] += dx
			continue
		}
		g.addMidside(i-3, dx, dy, f)
	}
	g.fillCubic(xi, eta, f)
}

// addMidside adds the rotation in the middle of the side from corner a to the next,
// in terms of the unknowns at its ends. Along the side w is a cubic, whose slope in
// the middle is 3/2 of the chord's less a quarter of the slopes at the ends.
func (g *geometry) addMidside(a int, dx, dy float64, f *plateField) {
	b := (a + 1) % 3
	x, y := g.x[b]-g.x[a], g.y[b]-g.y[a]
	square := x*x + y*y
	add := func(unknown int, alongX, alongY float64) {
		f.curvature[0][unknown] += dx * alongX
		f.curvature[1][unknown] += dy * alongY
		f.curvature[2][unknown] += dy*alongX + dx*alongY
	}
	add(3*a, -1.5*x/square, -1.5*y/square)
	add(3*b, 1.5*x/square, 1.5*y/square)
	for _, k := range [2]int{a, b} {
		// Slope along the side −¼ of each end's, across it ½ of each end's:
		// ½·I − ¾·(direction)(direction)ᵀ.
		add(3*k+1, 0.5-0.75*x*x/square, -0.75*x*y/square)
		add(3*k+2, -0.75*x*y/square, 0.5-0.75*y*y/square)
	}
}

// fillCubic gives w inside a triangle as the incomplete cubic that takes the values
// and slopes of the corners and holds any constant curvature.
//
// Source: Bazeley, Cheung, Irons and Zienkiewicz 1965, as given by Zienkiewicz, The
// finite element method, ch. 10.
func (g *geometry) fillCubic(xi, eta float64, f *plateField) {
	l := [3]float64{1 - xi - eta, xi, eta}
	for i := range 3 {
		j, k := (i+1)%3, (i+2)%3
		li, lj, lk := l[i], l[j], l[k]
		f.w[3*i] = li + li*li*lj + li*li*lk - li*lj*lj - li*lk*lk
		toJ, toK := li*li*lj+li*lj*lk/2, li*li*lk+li*lj*lk/2
		f.w[3*i+1] = (g.x[j]-g.x[i])*toJ + (g.x[k]-g.x[i])*toK
		f.w[3*i+2] = (g.y[j]-g.y[i])*toJ + (g.y[k]-g.y[i])*toK
	}
}
