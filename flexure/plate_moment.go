package flexure

import (
	"math"

	"slabwright/internal/fem"
)

// moments are bending moments at the nodes, N·m/m, positive for tension underneath:
// of each node the mean of the elements around it on its side of any joint.
type moments [][3]float64

// nodeMoments finds the moments at deflections u of a slab that would have a
// curvature free if nothing held it.
func (f *frame) nodeMoments(u []float64, free float64) moments {
	m := make(moments, f.net.mesh.Nodes())
	count := make([]float64, len(m))
	bend := f.cornerBending(u)
	d := PlateStiffness(f.plate.Modulus, f.plate.Thickness, f.plate.Poisson)
	nu := f.plate.Poisson
	var own [16]float64
	for e := range f.net.mesh.Elements() {
		local := f.bed.ownOf(e, u, &own)
		for k, n := range f.net.mesh.Of(e) {
			c := bend(e, k, local)
			xx, yy := c[0]-free, c[1]-free
			m[n][0] -= d * (xx + nu*yy)
			m[n][1] -= d * (yy + nu*xx)
			m[n][2] -= d * (1 - nu) / 2 * c[2]
			count[n]++
		}
	}
	for i := range m {
		for k := range m[i] {
			m[i][k] /= count[i]
		}
	}
	return m
}

// cornerBending returns what gives the curvatures w,xx, w,yy and 2w,xy at corner k of
// an element from its own unknowns.
func (f *frame) cornerBending(u []float64) func(e, k int, own []float64) [3]float64 {
	switch f.net.kind {
	case fem.BFS:
		return f.hermiteBending
	case fem.MITC4:
		return f.linearBending
	case fem.DKT:
		return f.triangleBending(u)
	}
	return f.flatBending
}

func (f *frame) hermiteBending(e, k int, own []float64) (c [3]float64) {
	a, b := halves(f.net.mesh, e)
	var local [16]float64
	turnSquare(f.net.mesh, e, own, local[:])
	at := squareCorners[k]
	for i, end := range squareCorners {
		vx, sx := hermite(at[0], end[0])
		vy, sy := hermite(at[1], end[1])
		for q, p := range [4][2]*[3]float64{{&vx, &vy}, {&sx, &vy}, {&vx, &sy}, {&sx, &sy}} {
			v := local[4*i+q]
			c[0] += v * p[0][2] * p[1][0] / (a * a)
			c[1] += v * p[0][0] * p[1][2] / (b * b)
			c[2] += 2 * v * p[0][1] * p[1][1] / (a * b)
		}
	}
	return c
}

// linearBending takes the curvature from rotations that run straight between the
// corners of a rectangle.
func (f *frame) linearBending(e, k int, own []float64) (c [3]float64) {
	a, b := halves(f.net.mesh, e)
	at := squareCorners[k]
	for i, end := range squareCorners {
		dx := end[0] * (1 + end[1]*at[1]) / 4 / a
		dy := end[1] * (1 + end[0]*at[0]) / 4 / b
		tx, ty := own[3*i+1], own[3*i+2]
		c[0] += dx * tx
		c[1] += dy * ty
		c[2] += dy*tx + dx*ty
	}
	return c
}

func (f *frame) flatBending(e, _ int, own []float64) (c [3]float64) {
	of := f.net.mesh.Of(e)
	m := f.net.mesh
	twice := 2 * elementArea(m, e)
	for i := range of {
		j, k := of[(i+1)%3], of[(i+2)%3]
		dx, dy := (m.Y[j]-m.Y[k])/twice, (m.X[k]-m.X[j])/twice
		tx, ty := own[3*i+1], own[3*i+2]
		c[0] += dx * tx
		c[1] += dy * ty
		c[2] += dy*tx + dx*ty
	}
	return c
}

// triangleBending asks the element itself, at a place just inside the corner. With
// stiffness 1 the moments of the element are its curvatures.
func (f *frame) triangleBending(u []float64) func(e, k int, own []float64) [3]float64 {
	layer := fem.PlateLayer{Bending: [6]float64{1, 0, 1, 0, 0, 1}}
	single := &fem.Mesh{Shape: fem.T3, X: make([]float64, 3), Y: make([]float64, 3), Node: []int32{0, 1, 2}}
	plate := &fem.Plate{Mesh: single, Kind: f.net.kind, Law: func(fem.Place) fem.PlateLayer { return layer }}
	last, find := -1, (*fem.Locator)(nil)
	return func(e, k int, own []float64) [3]float64 {
		of := f.net.mesh.Of(e)
		if e != last {
			for i, n := range of {
				single.X[i], single.Y[i] = f.net.mesh.X[n], f.net.mesh.Y[n]
			}
			last, find = e, fem.NewLocator(single)
		}
		const inside = 1e-6
		x, y := single.X[k], single.Y[k]
		x += inside * ((single.X[0]+single.X[1]+single.X[2])/3 - x)
		y += inside * ((single.Y[0]+single.Y[1]+single.Y[2])/3 - y)
		_, m, _ := plate.At(find, x, y, own)
		return [3]float64{-m.XX, -m.YY, -m.XY}
	}
}

// principal returns the greatest and least of the principal values of a moment and
// the direction of the greatest, degrees anticlockwise from x.
func principal(m [3]float64) (most, least, degrees float64) {
	mid, half := (m[0]+m[1])/2, (m[0]-m[1])/2
	r := math.Hypot(half, m[2])
	return mid + r, mid - r, math.Atan2(m[2], half) / 2 * 180 / math.Pi
}

// allStress is bendingStress with what the warp leaves at the faces.
func (p Plate) allStress(m [3]float64) (bottom, top, bottomWay, topWay float64) {
	bottom, top, bottomWay, topWay = p.bendingStress(m)
	held := p.Modulus / (1 - p.Poisson)
	return bottom + held*p.Warp.Bottom, top + held*p.Warp.Top, bottomWay, topWay
}

// bendingStress returns the greatest tension underneath and on top, Pa, of a moment, and
// the directions in which they pull.
func (p Plate) bendingStress(m [3]float64) (bottom, top, bottomWay, topWay float64) {
	c := 6 / (p.Thickness * p.Thickness)
	most, least, way := principal(m)
	across := way + 90
	if across > 90 {
		across -= 180
	}
	return c * most, -c * least, way, across
}
