package fem

// fillThick fills in deflection and curvature of rotations that follow the shape
// functions, leaving the shear.
func (g *geometry) fillThick(f *plateField) {
	for i, n := range g.n {
		k := 3 * i
		f.w[k], f.w[k+1], f.w[k+2] = n, 0, 0
		f.curvature[0][k], f.curvature[0][k+1], f.curvature[0][k+2] = 0, g.dx[i], 0
		f.curvature[1][k], f.curvature[1][k+1], f.curvature[1][k+2] = 0, 0, g.dy[i]
		f.curvature[2][k], f.curvature[2][k+1], f.curvature[2][k+2] = 0, g.dy[i], g.dx[i]
	}
}

// sideShear adds to row, times a factor, the shear along a local axis at a local
// place: axis 0 for xi, 1 for eta.
func (g *geometry) sideShear(s *Shape, axis int, xi, eta, times float64, row *[plateUnknowns]float64) {
	var n, dXi, dEta [maxNodes]float64
	s.values(xi, eta, n[:s.Nodes], dXi[:s.Nodes], dEta[:s.Nodes])
	slope := dXi
	if axis == 1 {
		slope = dEta
	}
	var x, y float64
	for i := range s.Nodes {
		x += slope[i] * g.x[i]
		y += slope[i] * g.y[i]
	}
	for i := range s.Nodes {
		row[3*i] += times * slope[i]
		row[3*i+1] -= times * n[i] * x
		row[3*i+2] -= times * n[i] * y
	}
}

// turnShear turns shear along the local axes into shear along x and y.
func (g *geometry) turnShear(det float64, local *[2][plateUnknowns]float64, f *plateField) {
	j := g.jacobian
	for k := range 3 * len(g.n) {
		p, q := local[0][k], local[1][k]
		f.shear[0][k] = (j[3]*p - j[1]*q) / det
		f.shear[1][k] = (j[0]*q - j[2]*p) / det
	}
}

// fillMITC4 takes the shear along each local axis from the middles of the two sides
// that run along it.
func fillMITC4(g *geometry, xi, eta float64, f *plateField) {
	det := g.atLocal(Q4, xi, eta)
	g.fillThick(f)
	var local [2][plateUnknowns]float64
	g.sideShear(Q4, 0, 0, -1, (1-eta)/2, &local[0])
	g.sideShear(Q4, 0, 0, 1, (1+eta)/2, &local[0])
	g.sideShear(Q4, 1, -1, 0, (1-xi)/2, &local[1])
	g.sideShear(Q4, 1, 1, 0, (1+xi)/2, &local[1])
	g.turnShear(det, &local, f)
}

// fillMITC3 takes the shear along each side from its middle.
func fillMITC3(g *geometry, xi, eta float64, f *plateField) {
	det := g.atLocal(T3, xi, eta)
	g.fillThick(f)
	var local [2][plateUnknowns]float64
	const half = 0.5
	// c = eta-shear at (0,½) − xi-shear at (½,0) − eta-shear + xi-shear at (½,½).
	for axis, part := range [2]float64{eta, -xi} {
		row := &local[axis]
		g.sideShear(T3, 1, 0, half, part, row)
		g.sideShear(T3, 0, half, 0, -part, row)
		g.sideShear(T3, 1, half, half, -part, row)
		g.sideShear(T3, 0, half, half, part, row)
	}
	g.sideShear(T3, 0, half, 0, 1, &local[0])
	g.sideShear(T3, 1, 0, half, 1, &local[1])
	g.turnShear(det, &local, f)
}

// fillQuartic takes the shear as it is; at the fourth degree it does not stiffen up.
func fillQuartic(g *geometry, xi, eta float64, f *plateField) {
	g.atLocal(Q25, xi, eta)
	g.fillThick(f)
	for i, n := range g.n {
		k := 3 * i
		f.shear[0][k], f.shear[0][k+1], f.shear[0][k+2] = g.dx[i], -n, 0
		f.shear[1][k], f.shear[1][k+1], f.shear[1][k+2] = g.dy[i], 0, -n
	}
}
