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
		pale := p.only != "" && p.only != f.Finding.ID
		if pale && len(p.c.Findings) > 40 {
			continue
		}
		g := p.s.Group("finding", f.Finding.ID+": "+f.Title, draw.Paper)
		g.Link = "#f-" + f.Finding.ID
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
	if pale {
		pen.Width = 0.2
	}
	for _, line := range f.Lines {
		path := p.onPaper(line)
		if cracked(f.Kind) {
			g.Add(draw.Line{Points: irregular(path), Pen: pen})
		} else {
			along := penAlong
			along.Color = pen.Color
			g.Add(draw.Line{Points: draw.Offset(path, 1.2), Pen: along})
		}
		if p.only == "" || !pale {
			for i := 0; i+1 < len(path); i++ {
				p.labels.Take(path[i], path[i+1], 0.4)
			}
		}
	}
	if len(f.Area) > 2 {
		ring := p.onPaper(f.Area)
		hatch := &draw.Hatch{Angle: 20, Pitch: 1.5, Pen: patch}
		hatch.Cross = f.Kind == walk.MapCracking
		if pale {
			hatch = nil
		}
		g.Add(draw.Area{Ring: ring, Hatch: hatch, Pen: draw.Pen{Color: pen.Color, Width: min(pen.Width, 0.25)}})
	}
}

// cracked reports whether the lines of a finding are cracks; the others run along
// a joint or an edge and are dotted beside it.
func cracked(k walk.Kind) bool {
	switch k {
	case walk.Crack, walk.ShortCracks, walk.ParallelSet, walk.MapCracking, walk.CornerBreak, walk.Shattered:
		return true
	}
	return false
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
	for _, s := range draw.Along(path, 1.6) {
		k++
		out = append(out, s.Left(0.33*math.Sin(float64(k)*2.4)+0.12*math.Sin(float64(k)*5.1)))
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
	off, _ := p.labels.Free(at, 2*radius+0.4, 2*radius+0.4, draw.Point{X: 0, Y: -radius - 1.4}, 14)
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
		path := p.onPaper(f.Finding.Lines[0])
		s := draw.StationAt(path, 0.7)
		side := s.Left(2)
		words := millimetres(f.Finding.Width.Value)
		off, _ := p.labels.Free(s.At, draw.WidthOf(words, letters)+0.5, letters, draw.Point{X: side.X - s.At.X, Y: side.Y - s.At.Y}, 9)
		g.Add(draw.Text{At: s.At, Lift: draw.Point{X: off.X, Y: off.Y + letters*0.34}, Words: words, Height: letters, Anchor: draw.Middle, Color: vermilion, Halo: paper})
	}
}
