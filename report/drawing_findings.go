package report

import (
	"math"

	"slabwright/internal/draw"
	"slabwright/walk"
)

// findings draws what was seen, each with its number in a disc.
func (p *planSheet) findings() {
	for i := range p.c.Findings {
		f := &p.c.Findings[i]
		g := p.s.Group("finding", f.Finding.ID+": "+f.Title, draw.Paper)
		g.Link = "#f-" + f.Finding.ID
		pale := p.only != "" && p.only != f.Finding.ID
		p.findingLines(g, &f.Finding, pale)
	}
	for i := range p.c.Findings {
		f := &p.c.Findings[i]
		if p.only == "" || p.only == f.Finding.ID {
			p.findingNumber(f)
		}
	}
}

func (p *planSheet) findingLines(g *draw.Group, f *walk.Finding, pale bool) {
	pen, patch := penCrack, penPatch
	if p.small {
		pen.Width = 0.35
	}
	if pale {
		pen.Color, patch.Color = faint, faint
	}
	for _, line := range f.Lines {
		path := make([]draw.Point, len(line))
		for i, q := range line {
			path[i] = p.to.At(draw.Point(q))
		}
		g.Add(draw.Line{Points: irregular(path), Pen: pen})
		if p.only == "" || !pale {
			for i := 0; i+1 < len(path); i++ {
				p.labels.take(path[i], path[i+1], 0.4)
			}
		}
	}
	if len(f.Area) > 2 {
		ring := make([]draw.Point, len(f.Area))
		for i, q := range f.Area {
			ring[i] = p.to.At(draw.Point(q))
		}
		hatch := &draw.Hatch{Angle: 20, Pitch: 1.5, Pen: patch}
		hatch.Cross = f.Kind == walk.MapCracking
		g.Add(draw.Area{Ring: ring, Hatch: hatch, Pen: draw.Pen{Color: pen.Color, Width: 0.25}})
	}
}

// irregular gives a line the small unevenness by which a crack is told from a
// joint in black and white: kinks every 1.6 mm of a third of a millimetre, the
// same for the same line.
func irregular(path []draw.Point) []draw.Point {
	if len(path) < 2 {
		return path
	}
	out := []draw.Point{path[0]}
	k := 0
	for _, s := range along(path, 1.6) {
		k++
		out = append(out, s.left(0.33*math.Sin(float64(k)*2.4)+0.12*math.Sin(float64(k)*5.1)))
	}
	return append(out, path[len(path)-1])
}

// findingNumber puts the number beside the finding, with a hair line back to it
// when it had to step aside.
func (p *planSheet) findingNumber(f *FindingSheet) {
	radius, letters := 2.3, 2.7
	if p.small {
		radius, letters = 1.7, 2.1
	}
	id := f.Finding.ID
	if n := len([]rune(id)); n > 2 {
		letters *= 2.2 / float64(n)
	}
	at := p.to.At(draw.Point(f.At))
	off, _ := p.labels.free(at, 2*radius+0.4, 2*radius+0.4, draw.Point{X: 0, Y: -radius - 1.4}, 14)
	g := p.s.Group("number", f.Finding.ID+": "+f.Title, draw.Paper)
	g.Link = "#f-" + f.Finding.ID
	if d := math.Hypot(off.X, off.Y); d > radius {
		s := (d - radius) / d
		g.Add(draw.Line{Points: []draw.Point{at, {X: at.X + s*off.X, Y: at.Y + s*off.Y}}, Pen: draw.Pen{Color: vermilion, Width: 0.15}, Start: draw.Dot})
	}
	g.Add(draw.Disc{At: at, Lift: off, Radius: radius, Fill: paper, Pen: draw.Pen{Color: vermilion, Width: 0.3}},
		draw.Text{At: at, Lift: draw.Point{X: off.X, Y: off.Y + letters*0.34}, Words: id, Height: letters, Anchor: draw.Middle, Bold: true, Color: ink})
}

// findingWidths writes the width in millimetres beside each crack it was measured
// of.
func (p *planSheet) findingWidths() {
	const letters = 2.5
	g := p.s.Group("widths", "Crack widths in mm", draw.Paper)
	for _, f := range p.c.Findings {
		if f.Finding.Width == nil || len(f.Finding.Lines) == 0 {
			continue
		}
		path := make([]draw.Point, len(f.Finding.Lines[0]))
		for i, q := range f.Finding.Lines[0] {
			path[i] = p.to.At(draw.Point(q))
		}
		s := stationAt(path, 0.7)
		side := s.left(2)
		words := millimetres(f.Finding.Width.Value)
		off, _ := p.labels.free(s.at, draw.WidthOf(words, letters)+0.5, letters, draw.Point{X: side.X - s.at.X, Y: side.Y - s.at.Y}, 9)
		g.Add(draw.Text{At: s.at, Lift: draw.Point{X: off.X, Y: off.Y + letters*0.34}, Words: words, Height: letters, Anchor: draw.Middle, Color: vermilion, Halo: paper})
	}
}
