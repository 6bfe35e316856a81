package flexure

import (
	"math"

	"slabwright/internal/fem"
	"slabwright/plan"
)

// loadForce returns the forces on all unknowns of a load.
func (f *frame) loadForce(l Load) []float64 {
	plate := &fem.Plate{Mesh: f.near(l), Kind: f.net.kind}
	if len(l.Line) > 0 {
		return f.lineForce(plate, l)
	}
	ring := l.ring()
	corners := make([][2]float64, len(ring))
	for i, q := range ring {
		corners[i] = [2]float64{q.X, q.Y}
	}
	force, covered := plate.PatchForce(corners, 1)
	whole := ring.Area()
	if covered > (1-hangOver)*whole {
		whole = covered // the whole force, though a circle's polygon reaches over the edge a little
	}
	for i := range force {
		force[i] *= l.Force / whole
	}
	return force
}

// near returns the elements whose box a load's box meets.
func (f *frame) near(l Load) *fem.Mesh {
	m := f.net.mesh
	part := &fem.Mesh{Shape: m.Shape, X: m.X, Y: m.Y}
	low, high := l.box()
	const slack = 0.01
	for e := range m.Elements() {
		of := m.Of(e)
		x0, x1, y0, y1 := m.X[of[0]], m.X[of[0]], m.Y[of[0]], m.Y[of[0]]
		for _, n := range of[1:] {
			x0, x1, y0, y1 = min(x0, m.X[n]), max(x1, m.X[n]), min(y0, m.Y[n]), max(y1, m.Y[n])
		}
		if x1 >= low.X-slack && x0 <= high.X+slack && y1 >= low.Y-slack && y0 <= high.Y+slack {
			part.Node = append(part.Node, of...)
		}
	}
	return part
}

// lineForce spreads a line load over points closer than a quarter of an element.
func (f *frame) lineForce(plate *fem.Plate, l Load) []float64 {
	total := make([]float64, f.pattern.Unknowns())
	find := fem.NewLocator(plate.Mesh)
	line := plan.Polyline(l.Line)
	parts := int(math.Ceil(line.Length()/(f.plate.fineUnder(l)/4))) + 4
	for i := range parts {
		at, _ := line.At(line.Length() * (float64(i) + 0.5) / float64(parts))
		if force := plate.PointForce(find, at.X, at.Y, 1); force != nil {
			for k, v := range force {
				total[k] += v
			}
		}
	}
	for k := range total {
		total[k] *= l.Force / float64(parts)
	}
	return total
}
