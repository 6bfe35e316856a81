package poursheet

import (
	"fmt"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// cutPlan draws where the joints of a cut sheet are, each with its number in the
// order of cutting, to fit a box; nil where there is no slab or no room.
func (c CutSheet) cutPlan(width, height float64) *draw.Scene {
	const edge, least = 5.0, 35.0
	low, high := plan.Ring(c.Slab.Outline).Box()
	if len(c.Slab.Outline) < 3 || !(high.X > low.X) || !(high.Y > low.Y) || height < least {
		return nil
	}
	perMetre := min((width-2*edge)/(high.X-low.X), (height-2*edge)/(high.Y-low.Y))
	height = perMetre*(high.Y-low.Y) + 2*edge
	s := draw.New(width, height, "Where the joints are", "Joints numbered in the order of cutting.")
	to := draw.Fit(draw.Point(low), draw.Point(high), perMetre, draw.Point{X: width / 2, Y: height / 2})
	on := func(points []plan.Point) []draw.Point {
		out := make([]draw.Point, len(points))
		for i, p := range points {
			out[i] = to.At(draw.Point(p))
		}
		return out
	}
	g := s.Group("plan", "", draw.Paper)
	if len(c.Area) > 2 {
		g.Add(draw.Area{Ring: on(c.Area), Fill: draw.Wash})
	}
	g.Add(draw.Area{Ring: on(c.Slab.Outline), Pen: penOutline})
	for _, f := range c.Slab.Fixtures {
		if f.Opening && len(f.Shape) > 2 {
			g.Add(draw.Area{Ring: on(f.Shape), Fill: draw.White, Pen: penOpening})
		}
	}
	turn := map[string]int{}
	for i, l := range c.Lines {
		for _, id := range l.Joints {
			turn[id] = i + 1
		}
	}
	for _, j := range c.Slab.Joints {
		if turn[j.ID] == 0 {
			g.Add(draw.Line{Points: on(j.Path), Pen: penHair})
		}
	}
	for _, j := range c.Slab.Joints {
		if n := turn[j.ID]; n > 0 {
			g.Add(cutMark(on(j.Path), n)...)
		}
	}
	return s
}

// cutMark is a joint to be cut with its number in a disc.
func cutMark(path []draw.Point, n int) []draw.Shape {
	const radius, letters = 3.6, 5.0
	at := draw.StationAt(path, 0.5).At
	return []draw.Shape{draw.Line{Points: path, Pen: draw.Pen{Color: draw.Ink, Width: 0.9, Dash: []float64{5, 1.6}}},
		draw.Disc{At: at, Radius: radius, Fill: draw.White, Pen: draw.Pen{Color: draw.Ink, Width: 0.6}},
		draw.Text{At: at, Lift: draw.Point{Y: letters * 0.34}, Words: fmt.Sprint(n), Height: letters, Anchor: draw.Middle, Bold: true, Color: draw.Ink}}
}
