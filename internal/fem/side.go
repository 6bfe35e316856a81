package fem

import "math"

// SideForce returns the forces on the two displacements of every node from a load on
// the outline of a sheet. load gives the force per area, N/m², at a place where the
// outward direction is (nx, ny); thickness is that of the sheet, m.
func (m *Mesh) SideForce(thickness float64, load func(x, y, nx, ny float64) (tx, ty float64)) []float64 {
	force := make([]float64, 2*m.Nodes())
	var g geometry
	for _, side := range m.Outline() {
		g.gather(m, side.Element)
		for _, p := range gauss5 {
			xi, eta, dXi, dEta := sideLocal(m.Shape, side.Side, p.at)
			g.atLocal(m.Shape, xi, eta)
			j := g.jacobian
			dx, dy := j[0]*dXi+j[2]*dEta, j[1]*dXi+j[3]*dEta
			length := math.Hypot(dx, dy)
			x, y := g.place()
			tx, ty := load(x, y, dy/length, -dx/length)
			area := length * p.weight * thickness
			for i, n := range m.Of(side.Element) {
				force[2*n] += area * g.n[i] * tx
				force[2*n+1] += area * g.n[i] * ty
			}
		}
	}
	return force
}

// Side is one side of an element: side k runs from corner k to the next.
type Side struct{ Element, Side int }

// Outline returns the sides that belong to one element only, in the order of the
// elements.
func (m *Mesh) Outline() []Side {
	count := map[[2]int32]int{}
	m.sides(func(_ Side, key [2]int32) { count[key]++ })
	var outline []Side
	m.sides(func(s Side, key [2]int32) {
		if count[key] == 1 {
			outline = append(outline, s)
		}
	})
	return outline
}

func (m *Mesh) sides(see func(s Side, key [2]int32)) {
	for e := range m.Elements() {
		corners := m.Of(e)[:m.Shape.Corners]
		for k, a := range corners {
			b := corners[(k+1)%len(corners)]
			see(Side{e, k}, [2]int32{min(a, b), max(a, b)})
		}
	}
}

// sideLocal returns the local place at −1…1 along a side and how fast it moves.
func sideLocal(s *Shape, side int, at float64) (xi, eta, dXi, dEta float64) {
	a, b := localCorner(s, side), localCorner(s, (side+1)%s.Corners)
	t := (1 + at) / 2
	return a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1]), (b[0] - a[0]) / 2, (b[1] - a[1]) / 2
}

func localCorner(s *Shape, k int) [2]float64 {
	if s.Corners == 4 {
		return squareCorners[k]
	}
	return [3][2]float64{{0, 0}, {1, 0}, {0, 1}}[k]
}
