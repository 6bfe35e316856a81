package report

import (
	"fmt"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// Pens of what is expected: apart from what was seen by dash, not by colour alone.
var (
	penExpected = draw.Pen{Color: ink, Width: 0.5, Dash: []float64{1.6, 0.6}, Round: true}
	penOpened   = draw.Pen{Color: chalk, Width: 0.7}
)

// ReplayDrawing is the slab twice: what is expected at the left, with the chance of a
// crack square metre by square metre, and what was seen at the right.
func ReplayDrawing(c *Content, width float64) *draw.Scene {
	const gap, head, foot = 6.0, 6.0, 10.0
	each := (width - gap) / 2
	left := newPlanSheet(c, each, 1e4, edges{2, 2, 2, 2})
	left.small = true
	left.s.Height = left.fieldHeight
	left.expected(c.Replay)
	right := PlanSmall(c, each, 1e4, "")
	s := draw.New(width, head+left.fieldHeight+foot, "Expected and seen", replayInWords(c))
	words := s.Group("heads", "", draw.Paper)
	words.Add(draw.Text{At: draw.Point{X: 2, Y: 4}, Words: "Expected", Height: 3, Bold: true, Color: ink},
		draw.Text{At: draw.Point{X: each + gap + 2, Y: 4}, Words: "Seen", Height: 3, Bold: true, Color: ink})
	s.Put(0, head, left.s)
	s.Put(each+gap, head, right)
	replayKey(s, head+left.fieldHeight+4)
	return s
}

// expected draws the plan with what a replay expects in place of what was seen.
func (p *planSheet) expected(r *Replay) {
	p.chanceCells(r)
	p.keepClear()
	p.fixtures()
	p.joints()
	p.outline()
	g := p.s.Group("expected", "Expected to open", draw.Paper)
	named := map[string]bool{}
	for _, e := range r.Events {
		path := p.onPaper(e.Path)
		if e.Crack {
			g.Add(draw.Line{Points: irregular(path), Pen: penExpected})
		} else {
			g.Add(draw.Line{Points: path, Pen: penOpened})
		}
		if e.Crack && !named[e.Line] {
			named[e.Line] = true
			p.expectedName(g, e.Line, path)
		}
	}
}

func (p *planSheet) expectedName(g *draw.Group, id string, path []draw.Point) {
	const letters = 2.3
	at := path[len(path)-1]
	off, _ := p.labels.Free(at, draw.WidthOf(id, letters)+0.6, letters+0.4, draw.Point{X: 2.6, Y: -2}, 9)
	g.Add(draw.Text{At: at, Lift: draw.Point{X: off.X, Y: off.Y + letters*0.34}, Words: id, Height: letters, Anchor: draw.Middle, Bold: true, Color: ink, Halo: paper})
}

// leastShown is the chance below which a square is left white.
const leastShown = 5

// chanceCells washes each square metre by the chance of a crack through it and writes
// the chance in tenths.
func (p *planSheet) chanceCells(r *Replay) {
	c := r.Chances
	if c == nil || c.Across == 0 {
		return
	}
	g := p.s.Group("chances", "Chance of a crack by the square metre", draw.Paper)
	for i, percent := range c.Cells {
		if percent < leastShown {
			continue
		}
		at := plan.Point{X: c.Low.X + float64(i%c.Across)*c.Cell, Y: c.Low.Y + float64(i/c.Across)*c.Cell}
		ring := p.onPaper([]plan.Point{at, {X: at.X + c.Cell, Y: at.Y}, {X: at.X + c.Cell, Y: at.Y + c.Cell}, {X: at.X, Y: at.Y + c.Cell}})
		g.Add(draw.Area{Ring: ring, Fill: warmth(float64(percent) / 100)})
		if size := ring[1].X - ring[0].X; size > 2.4 && percent >= 15 {
			middle := draw.Point{X: (ring[0].X + ring[2].X) / 2, Y: (ring[0].Y+ring[2].Y)/2 + 0.6}
			g.Add(draw.Text{At: middle, Words: fmt.Sprintf("%.0f", float64(percent)/10), Height: 1.7, Anchor: draw.Middle, Color: quiet})
		}
	}
}

// warmth is a wash that darkens with a chance.
func warmth(share float64) draw.Color {
	mix := func(from, to float64) uint8 { return uint8(from + share*(to-from) + 0.5) }
	return draw.RGB(mix(0xfd, 0xee), mix(0xf6, 0xb9), mix(0xf0, 0x94))
}

func replayKey(s *draw.Scene, y float64) {
	g := s.Group("key", "Key", draw.Paper)
	x := 2.0
	for _, k := range []struct {
		words string
		width float64
		draw  func(a, b draw.Point) draw.Shape
	}{
		{"crack expected", 34, func(a, b draw.Point) draw.Shape {
			return draw.Line{Points: irregular([]draw.Point{a, b}), Pen: penExpected}
		}},
		{"joint expected to open", 44, func(a, b draw.Point) draw.Shape { return draw.Line{Points: []draw.Point{a, b}, Pen: penOpened} }},
		{"crack through this square metre, in tenths of the samples", 72, func(a, b draw.Point) draw.Shape {
			return draw.Area{Ring: []draw.Point{{X: a.X, Y: a.Y - 1.3}, {X: b.X, Y: b.Y - 1.3}, {X: b.X, Y: b.Y + 1.3}, {X: a.X, Y: a.Y + 1.3}}, Fill: warmth(0.8)}
		}},
		{"crack seen", 26, func(a, b draw.Point) draw.Shape {
			return draw.Line{Points: irregular([]draw.Point{a, b}), Pen: penCrack}
		}},
	} {
		g.Add(k.draw(draw.Point{X: x, Y: y}, draw.Point{X: x + 8, Y: y}), draw.Text{At: draw.Point{X: x + 9.5, Y: y + 0.8}, Words: k.words, Height: 2.2, Color: quiet})
		x += k.width + 1
	}
}

// replayInWords says what the drawing shows to those who cannot see it.
func replayInWords(c *Content) string {
	s := "At the left what is expected: "
	for i, e := range c.Replay.Events {
		if i > 0 {
			s += "; "
		}
		s += e.What + " " + e.Where
	}
	if len(c.Replay.Events) == 0 {
		s += "nothing opens"
	}
	return s + ". At the right what was seen. " + planInWords(c)
}
