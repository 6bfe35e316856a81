package fem

import "math"

// Stress is a state of stress in the plane; tension is positive.
type Stress struct{ XX, YY, XY float64 }

// Principal returns the largest and smallest stress and the angle of the largest
// from the x axis in radians, −π/2 to π/2.
func (s Stress) Principal() (most, least, angle float64) {
	mean, half := (s.XX+s.YY)/2, (s.XX-s.YY)/2
	r := math.Hypot(half, s.XY)
	return mean + r, mean - r, math.Atan2(s.XY, half) / 2
}

// Energy is the work stored in a sheet and in its bed, J.
type Energy struct{ Sheet, Bed float64 }

// Energy integrates the stored work for displacements u of all nodes.
func (s *Sheet) Energy(u []float64) Energy {
	var sum Energy
	var g geometry
	var own [2 * maxNodes]float64
	for e := range s.Elements() {
		g.gather(s.Mesh, e)
		ue := s.ownOf(e, u, own[:])
		for p := range s.Shape.rule {
			area := g.at(s.Shape, p)
			at := Place{Element: e}
			at.X, at.Y = g.place()
			layer := s.Law(at)
			strain := g.strain(s.Shape.Nodes, ue, layer.FreeStrain)
			stress := times(&layer.Stiffness, strain)
			sum.Sheet += area * layer.Thickness / 2 * (stress[0]*strain[0] + stress[1]*strain[1] + stress[2]*strain[2])
			var x, y float64
			for i, n := range g.n {
				x += n * ue[2*i]
				y += n * ue[2*i+1]
			}
			sum.Bed += area * layer.Bed / 2 * (x*x + y*y)
		}
	}
	return sum
}

func (s *Sheet) ownOf(e int, u, own []float64) []float64 {
	for i, n := range s.Of(e) {
		own[2*i], own[2*i+1] = u[2*n], u[2*n+1]
	}
	return own[:2*s.Shape.Nodes]
}

// StressIn returns the stress at a local place of element e.
func (s *Sheet) StressIn(e int, xi, eta float64, u []float64) Stress {
	var g geometry
	g.gather(s.Mesh, e)
	return s.stressIn(&g, e, xi, eta, u)
}

func (s *Sheet) stressIn(g *geometry, e int, xi, eta float64, u []float64) Stress {
	var own [2 * maxNodes]float64
	g.atLocal(s.Shape, xi, eta)
	at := Place{Element: e}
	at.X, at.Y = g.place()
	layer := s.Law(at)
	v := times(&layer.Stiffness, g.strain(s.Shape.Nodes, s.ownOf(e, u, own[:]), layer.FreeStrain))
	return Stress{v[0], v[1], v[2]}
}

// CentreStress returns the stress in the middle of every element.
func (s *Sheet) CentreStress(u []float64) []Stress {
	out := make([]Stress, s.Elements())
	xi, eta := 0.0, 0.0
	if s.Shape.Corners == 3 {
		xi, eta = 1./3, 1./3
	}
	var g geometry
	for e := range out {
		g.gather(s.Mesh, e)
		out[e] = s.stressIn(&g, e, xi, eta, u)
	}
	return out
}

// StressAt returns the stress at a place of the plan, the mean of the elements that
// touch it, and how many they are: 0 outside the mesh.
func (s *Sheet) StressAt(l *Locator, x, y float64, u []float64) (mean Stress, touching int) {
	for _, hit := range l.Find(x, y) {
		v := s.StressIn(hit.Element, hit.Xi, hit.Eta, u)
		mean.XX += v.XX
		mean.YY += v.YY
		mean.XY += v.XY
		touching++
	}
	if touching > 0 {
		n := float64(touching)
		mean = Stress{mean.XX / n, mean.YY / n, mean.XY / n}
	}
	return mean, touching
}
