package report

import (
	"fmt"
	"sort"
	"strings"

	"slabwright/checks"
	"slabwright/internal/draw"
	"slabwright/internal/page"
	"slabwright/working"
)

// calcSketch sets the section through the slab and the panel with the places its
// loads are checked at.
func calcSketch(d *page.Document, c *checks.Calc) {
	d.WideHeading(3, "Sketch", "calc-sketch")
	s := calcScene(c.Sketch, d.Right()-d.Left())
	d.Figure(s, page.Quiet("Section, not to scale, and the panel with the places at which each load is checked; letters are the loads' names in the list of assumptions."))
}

func calcScene(k checks.Sketch, width float64) *draw.Scene {
	const height = 44.0
	s := draw.New(width, height, "Sketch of the slab", "Section through slab, base and ground, and plan of the panel with the places of its loads")
	g := s.Group("sketch", "", draw.Paper)
	sectionSketch(g, k, 0, 0.44*width, height)
	panelSketch(g, k, 0.52*width, width, height)
	return s
}

// sectionSketch draws slab, base and the springs that stand for the ground.
func sectionSketch(g *draw.Group, k checks.Sketch, x0, x1, height float64) {
	const top, slab, base = 14.0, 9.0, 6.0
	x1 -= 14
	box := func(y0, y1 float64, fill draw.Color, hatch *draw.Hatch) {
		g.Add(draw.Area{Ring: []draw.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}, Pen: draw.Pen{Color: ink, Width: 0.3}, Fill: fill, Hatch: hatch})
	}
	box(top, top+slab, wash, nil)
	box(top+slab, top+slab+base, none, &draw.Hatch{Angle: 45, Pitch: 2, Pen: draw.Pen{Color: faint, Width: 0.12}})
	for x := x0 + 4; x < x1-1; x += 8 { // springs
		g.Add(draw.Line{Points: springOf(x, top+slab+base, 7), Pen: draw.Pen{Color: quiet, Width: 0.15}})
	}
	g.Add(draw.Line{Points: []draw.Point{{X: x0, Y: top + slab + base + 7}, {X: x1, Y: top + slab + base + 7}}, Pen: draw.Pen{Color: quiet, Width: 0.15}})
	middle := (x0 + x1) / 2
	g.Add(draw.Line{Points: []draw.Point{{X: middle, Y: 4}, {X: middle, Y: top - 0.6}}, Pen: draw.Pen{Color: ink, Width: 0.35}},
		draw.Area{Ring: []draw.Point{{X: middle, Y: top}, {X: middle - 1, Y: top - 2.4}, {X: middle + 1, Y: top - 2.4}}, Fill: ink},
		draw.Text{At: draw.Point{X: middle + 2, Y: 7}, Words: "P", Height: 2.8, Color: ink},
		draw.Line{Points: []draw.Point{{X: x1 + 3, Y: top}, {X: x1 + 3, Y: top + slab}}, Pen: draw.Pen{Color: ink, Width: 0.15}, Start: draw.Tick, End: draw.Tick},
		draw.Text{At: draw.Point{X: x1 + 4.5, Y: top + slab/2 + 1}, Words: fmt.Sprintf("h %s mm", working.Figure(1000*k.Thickness, 3)), Height: 2.6, Color: ink},
		draw.Text{At: draw.Point{X: x0 + 1.5, Y: top + slab/2 + 1}, Words: "concrete: E, ν, strength", Height: 2.4, Color: ink},
		draw.Text{At: draw.Point{X: x1 + 4.5, Y: top + slab + base/2 + 1}, Words: k.Base + " base", Height: 2.4, Color: quiet},
		draw.Text{At: draw.Point{X: x1 + 4.5, Y: top + slab + base + 5}, Words: "ground: k", Height: 2.4, Color: quiet},
		draw.Text{At: draw.Point{X: x0, Y: height - 2}, Words: "Section", Height: 2.4, Color: quiet})
}

func springOf(x, y, long float64) []draw.Point {
	points := []draw.Point{{X: x, Y: y}}
	const turns = 6
	for i := range turns {
		side := 1.0
		if i%2 == 1 {
			side = -1
		}
		points = append(points, draw.Point{X: x + side, Y: y + long*(float64(i)+0.5)/turns})
	}
	return append(points, draw.Point{X: x, Y: y + long})
}

// panelSketch draws the panel and marks where each load is checked.
func panelSketch(g *draw.Group, k checks.Sketch, x0, x1, height float64) {
	const room = 9.0
	scale := min((x1-x0-room-24)/k.Length, (height-2*room)/k.Width)
	w, h := k.Length*scale, k.Width*scale
	left, top := x0+room, room
	pen := draw.Pen{Color: chalk, Width: 0.3, Dash: []float64{4, 1.2}}
	if k.Transfer == checks.NoTransfer {
		pen = draw.Pen{Color: ink, Width: 0.5}
	}
	g.Add(draw.Area{Ring: []draw.Point{{X: left, Y: top}, {X: left + w, Y: top}, {X: left + w, Y: top + h}, {X: left, Y: top + h}}, Pen: pen, Fill: none})
	spots := map[checks.Place]draw.Point{checks.Interior: {X: left + w*0.42, Y: top + h*0.55}, checks.AtJoint: {X: left + w*0.62, Y: top + h - 1.4},
		checks.FreeEdge: {X: left + w*0.62, Y: top + 1.4}, checks.Corner: {X: left + w - 1.4, Y: top + h - 1.4}}
	names := map[checks.Place][]string{}
	for _, m := range k.Loads {
		if m.Kind != checks.Spread {
			names[m.Place] = append(names[m.Place], m.ID)
		}
	}
	places := make([]checks.Place, 0, len(names))
	for p := range names {
		places = append(places, p)
	}
	sort.Slice(places, func(a, b int) bool { return places[a] < places[b] })
	for _, p := range places {
		at := spots[p]
		g.Add(draw.Disc{At: at, Radius: 1.2, Fill: vermilion})
		words := string(p) + ": " + strings.Join(names[p], ", ")
		text := draw.Text{At: draw.Point{X: at.X - 1, Y: at.Y - 2.2}, Words: words, Height: 2.4, Color: ink, Anchor: draw.Middle}
		switch p {
		case checks.Corner:
			text.At, text.Anchor = draw.Point{X: at.X + 2.6, Y: at.Y + 0.6}, draw.Left
		case checks.FreeEdge:
			text.At = draw.Point{X: at.X, Y: at.Y + 4.4}
		}
		g.Add(text)
	}
	g.Add(draw.Text{At: draw.Point{X: left + w/2, Y: top + h + 4}, Words: fmt.Sprintf("L %s m", working.Figure(k.Length, 3)), Height: 2.6, Color: ink, Anchor: draw.Middle},
		draw.Text{At: draw.Point{X: left - 2, Y: top + h/2}, Words: fmt.Sprintf("B %s m", working.Figure(k.Width, 3)), Height: 2.6, Color: ink, Anchor: draw.Right},
		draw.Text{At: draw.Point{X: left + w/2, Y: top - 2.5}, Words: jointWords(k.Transfer), Height: 2.4, Color: quiet, Anchor: draw.Middle})
}

func jointWords(t checks.Transfer) string {
	if t == checks.NoTransfer {
		return "edges and joints pass nothing on"
	}
	return "joints: " + string(t)
}
