package flexure

import (
	"math"

	"slabwright/internal/fem"
)

// gauss4 is the rule on −1…1 that is exact for degree 7.
// Source: Abramowitz and Stegun, table 25.4, in closed form.
var gauss4 = func() [4][2]float64 {
	inner, outer := math.Sqrt((3-2*math.Sqrt(1.2))/7), math.Sqrt((3+2*math.Sqrt(1.2))/7)
	wi, wo := (18+math.Sqrt(30))/36, (18-math.Sqrt(30))/36
	return [4][2]float64{{-outer, wo}, {-inner, wi}, {inner, wi}, {outer, wo}}
}()

var squareCorners = [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}

// squareBed makes the rule of a rectangle.
func squareBed(line [4][2]float64, fill func(k int, xi, eta float64, n *[16]float64)) (rules []bedRule) {
	for _, b := range line {
		for _, a := range line {
			r := bedRule{share: a[1] * b[1] / 4}
			for k, c := range squareCorners {
				r.corner[k] = (1 + c[0]*a[0]) * (1 + c[1]*b[0]) / 4
				fill(k, a[0], b[0], &r.n)
			}
			rules = append(rules, r)
		}
	}
	return rules
}

func linearCorner(k int, xi, eta float64, n *[16]float64) {
	c := squareCorners[k]
	n[3*k] = (1 + c[0]*xi) * (1 + c[1]*eta) / 4
}

// hermiteCorner is the product of cubics that are 1 in value or in slope at one end.
func hermiteCorner(k int, xi, eta float64, n *[16]float64) {
	c := squareCorners[k]
	vx, sx := hermite(xi, c[0])
	vy, sy := hermite(eta, c[1])
	n[4*k], n[4*k+1], n[4*k+2], n[4*k+3] = vx[0]*vy[0], sx[0]*vy[0], vx[0]*sy[0], sx[0]*sy[0]
}

// hermite returns on −1…1 the cubics that are 1 in value, or in slope, at one end and
// 0 otherwise, with their first and second derivatives.
func hermite(at, end float64) (value, slope [3]float64) {
	s := at * end
	return [3]float64{(2 + 3*s - s*s*s) / 4, end * (3 - 3*s*s) / 4, -6 * s / 4},
		[3]float64{end * (s*s*s + s*s - s - 1) / 4, (3*s*s + 2*s - 1) / 4, end * (6*s + 2) / 4}
}

// halves returns half the width and height of an upright rectangle.
func halves(m *fem.Mesh, e int) (a, b float64) {
	of := m.Of(e)
	return (m.X[of[1]] - m.X[of[0]]) / 2, (m.Y[of[2]] - m.Y[of[1]]) / 2
}

// turnSquare makes slopes of a rectangle those by local coordinates.
func turnSquare(m *fem.Mesh, e int, u, local []float64) {
	a, b := halves(m, e)
	for k := 0; k < 16; k += 4 {
		local[k], local[k+1], local[k+2], local[k+3] = u[k], a*u[k+1], b*u[k+2], a*b*u[k+3]
	}
}

func backSquare(m *fem.Mesh, e int, local, f []float64) { turnSquare(m, e, local, f) }

func keep(_ *fem.Mesh, _ int, u, local []float64)     { copy(local, u) }
func keepBack(_ *fem.Mesh, _ int, local, f []float64) { copy(f, local) }

// triangleSix is exact for degree 4.
// Source: Strang and Fix, An analysis of the finite element method (1973), table 4.1.
var triangleSix = func() (rule [][4]float64) {
	root := math.Sqrt(38 - 44*math.Sqrt(0.4))
	near, far := (8-math.Sqrt(10)+root)/18, (8-math.Sqrt(10)-root)/18
	spread := math.Sqrt(213125 - 53320*math.Sqrt(10))
	for _, p := range [2][2]float64{{near, (620 + spread) / 3720}, {far, (620 - spread) / 3720}} {
		a, w := p[0], p[1]
		rule = append(rule, [4]float64{1 - 2*a, a, a, w}, [4]float64{a, 1 - 2*a, a, w}, [4]float64{a, a, 1 - 2*a, w})
	}
	return rule
}()

// triangleBed makes the rule of a triangle.
func triangleBed(fill func(l [3]float64, n *[16]float64)) (rules []bedRule) {
	for _, t := range triangleSix {
		r := bedRule{corner: [4]float64{t[0], t[1], t[2]}, share: t[3]}
		fill([3]float64(t[:3]), &r.n)
		rules = append(rules, r)
	}
	return rules
}

func flatCorner(l [3]float64, n *[16]float64) { n[0], n[3], n[6] = l[0], l[1], l[2] }

// cubicCorner is the incomplete cubic of a triangle that holds any constant curvature;
// local slopes are those along the two sides at a corner times their length.
//
// Source: Bazeley, Cheung, Irons and Zienkiewicz 1965, as given by Zienkiewicz, The
// finite element method, ch. 10.
func cubicCorner(l [3]float64, n *[16]float64) {
	for i := range 3 {
		j, k := (i+1)%3, (i+2)%3
		li, lj, lk := l[i], l[j], l[k]
		n[3*i] = li + li*li*lj + li*li*lk - li*lj*lj - li*lk*lk
		n[3*i+1] = li*li*lj + li*lj*lk/2
		n[3*i+2] = li*li*lk + li*lj*lk/2
	}
}

// turnTriangle makes slopes at each corner those along its two sides.
func turnTriangle(m *fem.Mesh, e int, u, local []float64) {
	of := m.Of(e)
	for i, n := range of {
		j, k := of[(i+1)%3], of[(i+2)%3]
		local[3*i] = u[3*i]
		local[3*i+1] = (m.X[j]-m.X[n])*u[3*i+1] + (m.Y[j]-m.Y[n])*u[3*i+2]
		local[3*i+2] = (m.X[k]-m.X[n])*u[3*i+1] + (m.Y[k]-m.Y[n])*u[3*i+2]
	}
}

func backTriangle(m *fem.Mesh, e int, local, f []float64) {
	of := m.Of(e)
	for i, n := range of {
		j, k := of[(i+1)%3], of[(i+2)%3]
		f[3*i] = local[3*i]
		f[3*i+1] = (m.X[j]-m.X[n])*local[3*i+1] + (m.X[k]-m.X[n])*local[3*i+2]
		f[3*i+2] = (m.Y[j]-m.Y[n])*local[3*i+1] + (m.Y[k]-m.Y[n])*local[3*i+2]
	}
}
