package report

import (
	"fmt"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// footer draws the scale, the scale bar, the north arrow and the key.
func (p *planSheet) footer(top float64, paperName string) {
	g := p.s.Group("key", "Key", draw.Paper)
	g.Add(draw.Line{Points: []draw.Point{{X: 0, Y: top}, {X: p.s.Width, Y: top}}, Pen: draw.Pen{Color: ink, Width: 0.12}})
	var bearing *float64
	if b := p.c.Plan.Slab.Bearing; b != nil {
		bearing = &b.Value
	}
	g.Add(draw.North(draw.Point{X: 9, Y: top + 13}, bearing, ink, quiet)...)
	g.Add(draw.ScaleBar(24, top+9, p.n, ink)...)
	g.Add(draw.Text{At: draw.Point{X: 24, Y: top + 19}, Words: fmt.Sprintf("Scale 1:%.0f on %s printed at full size", p.n, paperName), Height: 2.8, Bold: true, Color: ink},
		draw.Text{At: draw.Point{X: 24, Y: top + 23.5}, Words: "Measure from the bar, not from a copy", Height: 2.4, Color: quiet},
		draw.Text{At: draw.Point{X: 24, Y: top + 27.5}, Words: "Crack widths in mm at the crack", Height: 2.4, Color: quiet})
	p.key(g, 88, top+4)
}

// key shows each kind of line with its name, in two columns.
func (p *planSheet) key(g *draw.Group, x, y float64) {
	run := func(x, y float64) []draw.Point { return []draw.Point{{X: x, Y: y}, {X: x + 12, Y: y}} }
	patch := func(x, y float64) []draw.Point {
		return []draw.Point{{X: x, Y: y - 1.5}, {X: x + 12, Y: y - 1.5}, {X: x + 12, Y: y + 1.3}, {X: x, Y: y + 1.3}}
	}
	entries := []struct {
		words string
		draw  func(x, y float64) []draw.Shape
	}{
		{"edge of slab", func(x, y float64) []draw.Shape { return []draw.Shape{draw.Line{Points: run(x, y), Pen: penOutline}} }},
		{"sawn joint", func(x, y float64) []draw.Shape { return jointLines(run(x, y), plan.Sawn, false) }},
		{"formed joint", func(x, y float64) []draw.Shape { return jointLines(run(x, y), plan.Formed, false) }},
		{"isolation joint", func(x, y float64) []draw.Shape { return jointLines(run(x, y), plan.Isolation, false) }},
		{"dowels", func(x, y float64) []draw.Shape {
			shapes := jointLines(run(x, y), plan.Sawn, false)
			for i := range 4 {
				dx := 1.5 + 3*float64(i)
				shapes = append(shapes, draw.Line{Points: []draw.Point{{X: x + dx, Y: y - 1.3}, {X: x + dx, Y: y + 1.3}}, Pen: penDowel})
			}
			return shapes
		}},
		{"wall or building", func(x, y float64) []draw.Shape {
			return []draw.Shape{draw.Line{Points: run(x, y), Pen: draw.Pen{Color: ink, Width: 1.1}}}
		}},
		{"crack, width in mm", func(x, y float64) []draw.Shape {
			return []draw.Shape{draw.Line{Points: irregular(run(x, y)), Pen: penCrack},
				draw.Text{At: draw.Point{X: x + 9, Y: y - 0.8}, Words: "0.6", Height: 2.2, Anchor: draw.Middle, Color: vermilion, Halo: paper}}
		}},
		{"found along a joint or edge", func(x, y float64) []draw.Shape {
			return append(jointLines(run(x, y), plan.Sawn, false), draw.Line{Points: draw.Offset(run(x, y), 1.2), Pen: penAlong})
		}},
		{"found on the surface", func(x, y float64) []draw.Shape {
			return []draw.Shape{draw.Area{Ring: patch(x, y), Hatch: &draw.Hatch{Angle: 20, Pitch: 1.5, Pen: penPatch}, Pen: draw.Pen{Color: vermilion, Width: 0.25}}}
		}},
		{"could not be seen", func(x, y float64) []draw.Shape {
			return []draw.Shape{draw.Area{Ring: patch(x, y), Hatch: unseenHatch, Pen: penUnseen}}
		}},
		{"finding, by number", func(x, y float64) []draw.Shape {
			return []draw.Shape{draw.Disc{At: draw.Point{X: x + 6, Y: y}, Radius: 1.9, Fill: paper, Pen: draw.Pen{Color: vermilion, Width: 0.3}},
				draw.Text{At: draw.Point{X: x + 6, Y: y + 0.8}, Words: "3", Height: 2.3, Anchor: draw.Middle, Bold: true, Color: ink}}
		}},
		{"opening in the slab", func(x, y float64) []draw.Shape {
			ring := patch(x, y)
			hair := draw.Pen{Color: quiet, Width: 0.12}
			return []draw.Shape{draw.Area{Ring: ring, Pen: penOpening}, draw.Line{Points: []draw.Point{ring[0], ring[2]}, Pen: hair}, draw.Line{Points: []draw.Point{ring[1], ring[3]}, Pen: hair}}
		}},
		{"limit of a pour", func(x, y float64) []draw.Shape { return []draw.Shape{draw.Line{Points: run(x, y), Pen: penPour}} }},
	}
	for i, e := range entries {
		ex, ey := x+40*float64(i/7), y+4.6*float64(i%7)
		g.Add(e.draw(ex, ey)...)
		g.Add(draw.Text{At: draw.Point{X: ex + 14, Y: ey + 0.85}, Words: e.words, Height: 2.5, Color: ink})
	}
}
