package report

import (
	"math"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// joints draws each joint as the line of its kind: sawn long-dashed, formed solid
// with ticks, isolation double.
func (p *planSheet) joints() {
	for _, j := range p.c.Plan.Slab.Joints {
		g := p.s.Group("joint "+string(j.Kind), "Joint "+or(j.Name, j.ID)+", "+string(j.Kind), draw.Paper)
		g.Add(jointLines(p.onPaper(j.Path), j.Kind, p.small)...)
	}
}

// isolationHalf is how far the second line of the double line round a fixture that
// stands free of the slab lies outside it, mm on paper.
const isolationHalf = 0.9

// jointLines returns the lines of a joint, from a path on paper.
func jointLines(path []draw.Point, kind plan.JointKind, small bool) []draw.Shape {
	switch kind {
	case plan.Formed:
		if small {
			return []draw.Shape{draw.Line{Points: path, Pen: draw.Pen{Color: penFormed.Color, Width: 0.15}}}
		}
		return draw.Ticked(path, penFormed, 6, 0.8)
	case plan.Isolation:
		half := 0.8
		if small {
			half = 0.5
		}
		return draw.Double(path, penIsolation, half)
	}
	pen := penSawn
	if small {
		pen.Dash = []float64{2.5, 0.8}
		pen.Width = 0.15
	}
	return []draw.Shape{draw.Line{Points: path, Pen: pen}}
}

// reachOf is how far the drawing of a joint reaches to either side, mm on paper.
func (p *planSheet) reachOf(j plan.Joint) float64 {
	reach := 0.2
	if j.Kind != plan.Sawn {
		reach = 0.9 // ticks, or the second line
	}
	for _, d := range p.c.Plan.DowelBars {
		if d.Joint == j.ID {
			return max(reach, 0.8, d.From.To(d.To)*1000/p.n/2)
		}
	}
	return reach
}

// dowels draws each dowel as a short stroke, no shorter than 1.6 mm on paper.
func (p *planSheet) dowels() {
	if p.small || len(p.c.Plan.DowelBars) == 0 {
		return
	}
	g := p.s.Group("dowels", "Dowels", draw.Paper)
	for _, d := range p.c.Plan.DowelBars {
		a, b := p.to.At(draw.Point(d.From)), p.to.At(draw.Point(d.To))
		length := math.Hypot(b.X-a.X, b.Y-a.Y)
		if length > 0 && length < 1.6 {
			grow := (1.6/length - 1) / 2
			a, b = draw.Point{X: a.X - grow*(b.X-a.X), Y: a.Y - grow*(b.Y-a.Y)}, draw.Point{X: b.X + grow*(b.X-a.X), Y: b.Y + grow*(b.Y-a.Y)}
		}
		g.Add(draw.Line{Points: []draw.Point{a, b}, Pen: penDowel})
	}
}
