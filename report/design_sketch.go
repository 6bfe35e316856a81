package report

import (
	"math"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// designSketch is a joint plan without words, to be set beside another: joints by
// kind, bars across corners, a ring where a rule that must be kept is not.
func designSketch(l Layout, width, height float64) *draw.Scene {
	s := draw.New(width, height, "Joint plan: "+l.Name, "")
	low, high := plan.Ring(l.Slab.Outline).Box()
	const room = 3.0
	scale := math.Min((width-2*room)/math.Max(high.X-low.X, 0.1), (height-2*room)/math.Max(high.Y-low.Y, 0.1))
	to := draw.Fit(draw.Point(low), draw.Point(high), scale, draw.Point{X: width / 2, Y: height / 2})
	on := func(points []plan.Point) []draw.Point {
		out := make([]draw.Point, len(points))
		for i, p := range points {
			out[i] = to.At(draw.Point(p))
		}
		return out
	}
	g := s.Group("joints", "Joints", draw.Paper)
	for _, j := range l.Slab.Joints {
		g.Add(sketchJoint(on(j.Path), j.Kind)...)
	}
	for _, t := range l.Trimmers {
		g.Add(draw.Line{Points: on([]plan.Point{t.From, t.To}), Pen: draw.Pen{Color: ink, Width: 0.6}})
	}
	edge := s.Group("edge", "Edge of the slab", draw.Paper)
	edge.Add(draw.Area{Ring: on(l.Slab.Outline), Pen: penOutline})
	for _, f := range l.Slab.Fixtures {
		if len(f.Shape) > 2 {
			edge.Add(draw.Area{Ring: on(f.Shape), Pen: penFixture, Fill: wash})
		} else if len(f.Shape) == 2 {
			edge.Add(draw.Line{Points: on(f.Shape), Pen: draw.Pen{Color: ink, Width: 1.1}})
		}
	}
	marks := s.Group("rules", "Rules not kept", draw.Paper)
	for _, w := range l.Warnings {
		if w.Level == mustLevel {
			marks.Add(draw.Disc{At: to.At(draw.Point(w.At)), Radius: 1.7, Pen: penCrack})
		}
	}
	return s
}

const mustLevel = "must"

func sketchJoint(path []draw.Point, kind plan.JointKind) []draw.Shape {
	switch kind {
	case plan.Formed:
		return draw.Ticked(path, penFormed, 5, 0.7)
	case plan.Isolation:
		return draw.Double(path, penIsolation, 0.6)
	}
	return []draw.Shape{draw.Line{Points: path, Pen: penSawn}}
}
