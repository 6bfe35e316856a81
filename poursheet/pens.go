package poursheet

import (
	"slabwright/internal/draw"
	"slabwright/plan"
)

// Pens by what a line is; they differ by weight and dash so that a black and white
// print reads the same.
var (
	penOutline = draw.Pen{Color: draw.Ink, Width: 0.7}
	penOpening = draw.Pen{Color: draw.Ink, Width: 0.5}
	penFixture = draw.Pen{Color: draw.Ink, Width: 1.4}
	penSawn    = draw.Pen{Color: draw.Chalk, Width: 0.5, Dash: []float64{5, 1.5}}
	penSolid   = draw.Pen{Color: draw.Chalk, Width: 0.4}
	penDowel   = draw.Pen{Color: draw.Ink, Width: 0.13}
	penBar     = draw.Pen{Color: draw.Ink, Width: 0.35}
	penHair    = draw.Pen{Color: draw.Quiet, Width: 0.12}
	penWitness = draw.Pen{Color: draw.Faint, Width: 0.1}
	penFrame   = draw.Pen{Color: draw.Ink, Width: 0.35}
	penThin    = draw.Pen{Color: draw.Ink, Width: 0.18}
)

// jointLines returns the lines of a joint from its path on paper: sawn long-dashed,
// formed full with ticks, isolation double.
func jointLines(path []draw.Point, kind plan.JointKind) []draw.Shape {
	switch kind {
	case plan.Formed:
		return draw.Ticked(path, penSolid, 6, 0.8)
	case plan.Isolation:
		return draw.Double(path, penSolid, 0.8)
	}
	return []draw.Shape{draw.Line{Points: path, Pen: penSawn}}
}
