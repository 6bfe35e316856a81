package fem

import (
	"fmt"
	"math"

	"slabwright/internal/sparse"
)

// Mesh is an outline filled with elements of one shape.
type Mesh struct {
	Shape *Shape
	X, Y  []float64 // places of the nodes
	Node  []int32   // Shape.Nodes for each element
}

// Nodes returns how many nodes there are.
func (m *Mesh) Nodes() int { return len(m.X) }

// Elements returns how many elements there are.
func (m *Mesh) Elements() int { return len(m.Node) / m.Shape.Nodes }

// Of returns the nodes of element e.
func (m *Mesh) Of(e int) []int32 { return m.Node[e*m.Shape.Nodes : (e+1)*m.Shape.Nodes] }

// Connectivity returns the elements for a matrix.
func (m *Mesh) Connectivity() sparse.Connectivity { return sparse.Uniform(m.Shape.Nodes, m.Node) }

// Check refuses elements that are turned inside out or flat.
func (m *Mesh) Check() error {
	var g geometry
	for e := range m.Elements() {
		g.gather(m, e)
		for p := range m.Shape.rule {
			if area := g.at(m.Shape, p); !(area > 0) || math.IsInf(area, 0) {
				x, y := g.centre(m.Shape)
				return fmt.Errorf("element %d near x %.6g, y %.6g is flat or turned inside out", e, x, y)
			}
		}
	}
	return nil
}

// geometry holds one element's corners, and shape functions at one of its points.
type geometry struct {
	x, y     [maxNodes]float64
	n        []float64
	dx, dy   [maxNodes]float64
	ownN     [maxNodes]float64
	ownXi    [maxNodes]float64
	ownEta   [maxNodes]float64
	jacobian [4]float64
}

func (g *geometry) gather(m *Mesh, e int) {
	for i, n := range m.Of(e) {
		g.x[i], g.y[i] = m.X[n], m.Y[n]
	}
}

// centre returns the mean place of the corners.
func (g *geometry) centre(s *Shape) (x, y float64) {
	for i := range s.Corners {
		x += g.x[i] / float64(s.Corners)
		y += g.y[i] / float64(s.Corners)
	}
	return x, y
}

// at fills in shape functions and their slopes at integration point p and returns
// the area that the point stands for.
func (g *geometry) at(s *Shape, p int) float64 {
	g.n = s.n[p]
	return g.slopes(s.Nodes, s.dXi[p], s.dEta[p]) * s.rule[p].weight
}

// atLocal does the same at any local place and returns the area per local area.
func (g *geometry) atLocal(s *Shape, xi, eta float64) float64 {
	n, dXi, dEta := g.ownN[:s.Nodes], g.ownXi[:s.Nodes], g.ownEta[:s.Nodes]
	s.values(xi, eta, n, dXi, dEta)
	g.n = n
	return g.slopes(s.Nodes, dXi, dEta)
}

func (g *geometry) slopes(nodes int, dXi, dEta []float64) float64 {
	var a, b, c, d float64
	dXi, dEta = dXi[:nodes], dEta[:nodes]
	xs, ys := g.x[:nodes], g.y[:nodes]
	for i, p := range dXi {
		q, x, y := dEta[i], xs[i], ys[i]
		a += p * x
		b += p * y
		c += q * x
		d += q * y
	}
	g.jacobian = [4]float64{a, b, c, d}
	det := a*d - b*c
	inverse := 1 / det
	a, b, c, d = a*inverse, b*inverse, c*inverse, d*inverse
	dx, dy := g.dx[:nodes], g.dy[:nodes]
	for i, p := range dXi {
		q := dEta[i]
		dx[i] = d*p - b*q
		dy[i] = a*q - c*p
	}
	return det
}

// place returns where the point of the last at or atLocal is.
func (g *geometry) place() (x, y float64) {
	for i, n := range g.n {
		x += n * g.x[i]
		y += n * g.y[i]
	}
	return x, y
}
