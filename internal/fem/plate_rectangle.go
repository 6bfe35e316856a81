package fem

// halfSides returns half the width and height of an upright rectangle.
func (g *geometry) halfSides() (a, b float64) {
	return (g.x[1] - g.x[0]) / 2, (g.y[2] - g.y[1]) / 2
}

// fillACM gives w as the cubic with ξ³η and ξη³ that has the wanted deflections and
// slopes at the corners.
func fillACM(g *geometry, xi, eta float64, f *plateField) {
	a, b := g.halfSides()
	for i, c := range squareCorners {
		s, t := c[0]*xi, c[1]*eta
		k := 3 * i
		f.w[k] = (1 + s) * (1 + t) * (2 + s + t - xi*xi - eta*eta) / 8
		f.w[k+1] = a / 8 * c[0] * (1 + s) * (1 + s) * (s - 1) * (1 + t)
		f.w[k+2] = b / 8 * c[1] * (1 + t) * (1 + t) * (t - 1) * (1 + s)
		f.curvature[0][k] = -6 * s * (1 + t) / 8 / (a * a)
		f.curvature[0][k+1] = c[0] * (2 + 6*s) * (1 + t) / 8 / a
		f.curvature[0][k+2] = 0
		f.curvature[1][k] = -6 * t * (1 + s) / 8 / (b * b)
		f.curvature[1][k+1] = 0
		f.curvature[1][k+2] = c[1] * (2 + 6*t) * (1 + s) / 8 / b
		both := 2 * c[0] * c[1] / 8 / (a * b)
		f.curvature[2][k] = both * (4 - 3*xi*xi - 3*eta*eta)
		f.curvature[2][k+1] = 2 * c[1] / 8 / b * (3*s*s + 2*s - 1)
		f.curvature[2][k+2] = 2 * c[0] / 8 / a * (3*t*t + 2*t - 1)
	}
}

// hermite returns the two cubics on −1…1 that are 1 in value, or half in slope, at
// one end, end = −1 or 1, and 0 otherwise, with first and second derivatives. half is
// half the length; derivatives are by true length.
func hermite(at, end, half float64) (value, slope [3]float64) {
	s := at * end
	value = [3]float64{(2 + 3*s - s*s*s) / 4, end * (3 - 3*s*s) / 4 / half, -6 * s / 4 / (half * half)}
	slope = [3]float64{end * half * (s*s*s + s*s - s - 1) / 4, (3*s*s + 2*s - 1) / 4, end * (6*s + 2) / 4 / half}
	return value, slope
}

// fillBFS gives w as products of cubics.
func fillBFS(g *geometry, xi, eta float64, f *plateField) {
	a, b := g.halfSides()
	for i, c := range squareCorners {
		xValue, xSlope := hermite(xi, c[0], a)
		yValue, ySlope := hermite(eta, c[1], b)
		for u, p := range [4][2]*[3]float64{{&xValue, &yValue}, {&xSlope, &yValue}, {&xValue, &ySlope}, {&xSlope, &ySlope}} {
			k := 4*i + u
			f.w[k] = p[0][0] * p[1][0]
			f.curvature[0][k] = p[0][2] * p[1][0]
			f.curvature[1][k] = p[0][0] * p[1][2]
			f.curvature[2][k] = 2 * p[0][1] * p[1][1]
		}
	}
}
