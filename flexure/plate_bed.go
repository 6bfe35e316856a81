package flexure

import (
	"slabwright/internal/fem"
)

// bed is the ground below a plate at integration points, and how the deflection there
// follows from the unknowns of the elements.
//
// Each element's unknowns are first turned into local ones, in which the deflection
// at each point is the same sum for all elements of a kind.
type bed struct {
	mesh     *fem.Mesh
	unknowns int       // per node
	width    int       // unknowns of an element
	points   int       // per element
	rule     []bedRule // per point
	turn     func(m *fem.Mesh, e int, u, local []float64)
	back     func(m *fem.Mesh, e int, local, f []float64)
	stiff    []float64 // k times area of each point of the plan, N/m
	area     []float64 // m²
	support  []float64 // k
}

// bedRule is one integration point: place as shares of the corners, share of the
// area, and the deflection there by local unknown.
type bedRule struct {
	corner [4]float64
	share  float64
	n      [16]float64
}

// newBed lays the ground below a net.
func newBed(p Plate, n *net) *bed {
	b := &bed{mesh: n.mesh, unknowns: n.kind.Unknowns}
	b.width = b.unknowns * n.mesh.Shape.Nodes
	switch n.kind {
	case fem.BFS:
		b.rule, b.turn, b.back = squareBed(gauss4, hermiteCorner), turnSquare, backSquare
	case fem.MITC4:
		b.rule, b.turn, b.back = squareBed(gauss4, linearCorner), keep, keepBack
	case fem.DKT:
		b.rule, b.turn, b.back = triangleBed(cubicCorner), turnTriangle, backTriangle
	default:
		b.rule, b.turn, b.back = triangleBed(flatCorner), keep, keepBack
	}
	b.points = len(b.rule)
	for e := range n.mesh.Elements() {
		whole := elementArea(n.mesh, e)
		for i := range b.rule {
			x, y := b.place(e, i)
			area := whole * b.rule[i].share
			b.area = append(b.area, area)
			k := p.supportAt(x, y)
			b.support, b.stiff = append(b.support, k), append(b.stiff, area*k)
		}
	}
	return b
}

// place returns where point i of element e is.
func (b *bed) place(e, i int) (x, y float64) {
	for k, n := range b.mesh.Of(e) {
		x += b.rule[i].corner[k] * b.mesh.X[n]
		y += b.rule[i].corner[k] * b.mesh.Y[n]
	}
	return x, y
}

// deflections fills in w at every point.
func (b *bed) deflections(u, w []float64) {
	var own, local [16]float64
	for e := range b.mesh.Elements() {
		b.turn(b.mesh, e, b.ownOf(e, u, &own), local[:])
		for i := range b.rule {
			n, sum := &b.rule[i].n, 0.0
			for k, v := range local[:b.width] {
				sum += n[k] * v
			}
			w[e*b.points+i] = sum
		}
	}
}

// ownOf returns the unknowns of an element.
func (b *bed) ownOf(e int, u []float64, own *[16]float64) []float64 {
	for i, n := range b.mesh.Of(e) {
		copy(own[i*b.unknowns:(i+1)*b.unknowns], u[int(n)*b.unknowns:])
	}
	return own[:b.width]
}

// push adds to f the forces on all unknowns of a force q at each point, N.
func (b *bed) push(f []float64, q func(point int) float64) {
	var local, own [16]float64
	for e := range b.mesh.Elements() {
		any := false
		clear(local[:])
		for i := range b.rule {
			v := q(e*b.points + i)
			if v == 0 {
				continue
			}
			any = true
			for k, n := range b.rule[i].n[:b.width] {
				local[k] += v * n
			}
		}
		if !any {
			continue
		}
		b.back(b.mesh, e, local[:], own[:])
		for i, n := range b.mesh.Of(e) {
			for u := range b.unknowns {
				f[int(n)*b.unknowns+u] += own[i*b.unknowns+u]
			}
		}
	}
}

// stiffness adds to ke, width by width, springs of a stiffness s at each point of an
// element.
func (b *bed) stiffness(e int, s func(point int) float64, ke []float64) {
	var local, own [16]float64
	for i := range b.rule {
		v := s(e*b.points + i)
		if v == 0 {
			continue
		}
		copy(local[:], b.rule[i].n[:])
		b.back(b.mesh, e, local[:], own[:])
		for r := range b.width {
			row, a := ke[r*b.width:r*b.width+r+1], v*own[r]
			for c := range row {
				row[c] += a * own[c]
			}
		}
	}
}

// evenSupport returns k below an element, −1 where it differs from point to point.
func (b *bed) evenSupport(e int) float64 {
	k := b.support[e*b.points]
	for _, other := range b.support[e*b.points : (e+1)*b.points] {
		if other != k {
			return -1
		}
	}
	return k
}

func elementArea(m *fem.Mesh, e int) float64 {
	of := m.Of(e)
	twice := 0.0
	for k := 2; k < len(of); k++ {
		a, b, c := of[0], of[k-1], of[k]
		twice += (m.X[b]-m.X[a])*(m.Y[c]-m.Y[a]) - (m.X[c]-m.X[a])*(m.Y[b]-m.Y[a])
	}
	return twice / 2
}
