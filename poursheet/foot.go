package poursheet

import (
	"fmt"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// foot draws what stands below the plan: north, scale, key and title block.
func (s *sheet) foot(top float64, paperName string) {
	g := s.s.Group("foot", "Key and title block", draw.Paper)
	g.Add(draw.Line{Points: []draw.Point{{X: 0, Y: top}, {X: s.s.Width, Y: top}}, Pen: penThin})
	var bearing *float64
	if b := s.d.Slab.Bearing; b != nil {
		bearing = &b.Value
	}
	g.Add(draw.North(draw.Point{X: 9, Y: top + 14}, bearing, draw.Ink, draw.Quiet)...)
	g.Add(draw.ScaleBar(22, top+8, s.n, draw.Ink)...)
	lines := []string{fmt.Sprintf("Scale 1:%.0f on %s printed at full size", s.n, paperName), "Measure from the bar, not from a copy",
		"Lengths in " + s.d.Units.String() + " from the setting-out point:", "joints below and left, edges above and right"}
	for i, words := range lines {
		t := draw.Text{At: draw.Point{X: 22, Y: top + 15.5 + 3.9*float64(i)}, Words: words, Height: 2.5, Color: draw.Ink, Bold: i == 0}
		g.Add(t)
	}
	const keyAt = 84.0
	s.key(g, keyAt, top+4.5)
	switch {
	case s.s.Width < narrow:
		s.title(g, 0, top+footRow, s.s.Width, paperName)
	case s.s.Width < 300:
		s.title(g, s.s.Width-96, top, 96, paperName)
	default:
		s.title(g, s.s.Width-130, top, 130, paperName)
	}
}

// key shows each kind of line with its name.
func (s *sheet) key(g *draw.Group, x, y float64) {
	run := func(x, y float64) []draw.Point { return []draw.Point{{X: x, Y: y}, {X: x + 12, Y: y}} }
	patch := func(x, y float64) []draw.Point {
		return []draw.Point{{X: x, Y: y - 1.5}, {X: x + 12, Y: y - 1.5}, {X: x + 12, Y: y + 1.5}, {X: x, Y: y + 1.5}}
	}
	entries := []struct {
		words string
		draw  func(x, y float64) []draw.Shape
	}{
		{"sawn joint", func(x, y float64) []draw.Shape { return jointLines(run(x, y), plan.Sawn) }},
		{"formed joint", func(x, y float64) []draw.Shape { return jointLines(run(x, y), plan.Formed) }},
		{"isolation joint", func(x, y float64) []draw.Shape { return jointLines(run(x, y), plan.Isolation) }},
		{"dowels", func(x, y float64) []draw.Shape {
			shapes := jointLines(run(x, y), plan.Sawn)
			for i := range 4 {
				dx := 1.5 + 3*float64(i)
				shapes = append(shapes, draw.Line{Points: []draw.Point{{X: x + dx, Y: y - 1.3}, {X: x + dx, Y: y + 1.3}}, Pen: penDowel})
			}
			return shapes
		}},
		{"edge of slab", func(x, y float64) []draw.Shape { return []draw.Shape{draw.Line{Points: run(x, y), Pen: penOutline}} }},
		{"opening", func(x, y float64) []draw.Shape {
			r := patch(x, y)
			return []draw.Shape{draw.Area{Ring: r, Pen: penOpening}, draw.Line{Points: []draw.Point{r[0], r[2]}, Pen: penHair}, draw.Line{Points: []draw.Point{r[1], r[3]}, Pen: penHair}}
		}},
		{"wall or building", func(x, y float64) []draw.Shape { return []draw.Shape{draw.Line{Points: run(x, y), Pen: penFixture}} }},
		{"setting-out point", func(x, y float64) []draw.Shape { return mark(draw.Point{X: x + 6, Y: y}) }},
	}
	if len(s.d.Slab.CornerBars) > 0 { // in the place of walls, or after all
		bars := struct {
			words string
			draw  func(x, y float64) []draw.Shape
		}{"bars across corner", func(x, y float64) []draw.Shape {
			var shapes []draw.Shape
			for _, dy := range []float64{-1.2, 0, 1.2} {
				shapes = append(shapes, draw.Line{Points: run(x, y+dy), Pen: penBar})
			}
			return shapes
		}}
		entries = append(entries, bars)
	}
	rows := (len(entries) + 1) / 2
	for i, e := range entries {
		ex, ey := x+42*float64(i/rows), y+28/float64(rows)*float64(i%rows)
		g.Add(e.draw(ex, ey)...)
		g.Add(draw.Text{At: draw.Point{X: ex + 14, Y: ey + 0.9}, Words: e.words, Height: 2.6, Color: draw.Ink})
	}
}

// title draws the title block. Practice: the fields of ISO 7200 (from memory).
func (s *sheet) title(g *draw.Group, x, y, width float64, paperName string) {
	t := s.d.Title
	c := t.clock()
	date := ""
	if !t.Made.IsZero() {
		date = t.Made.In(c.zone).Format("2 Jan 2006")
	}
	g.Add(draw.Area{Ring: []draw.Point{{X: x, Y: y}, {X: x + width, Y: y}, {X: x + width, Y: y + footRow}, {X: x, Y: y + footRow}}, Pen: penFrame})
	heads := []string{"Joint drawing: " + or(s.d.Slab.Name, s.d.Slab.ID), t.Job, joined(" · ", t.Client, t.Place)}
	for i, words := range heads {
		h := []float64{4.2, 3.1, 2.7}[i]
		g.Add(draw.Text{At: draw.Point{X: x + 2, Y: y + []float64{5.2, 10, 14}[i]}, Words: fitted(words, h, width-4), Height: h, Bold: i == 0, Color: draw.Ink})
	}
	cells := []struct{ head, words string }{
		{"Number", t.Number}, {"Revision", t.revision()}, {"Date", date}, {"Scale", fmt.Sprintf("1:%.0f, %s", s.n, paperName)},
		{"Drawn", t.Drawn}, {"Checked", t.Checked}, {"Slab", s.thickness()}, {"Panels", fmt.Sprint(len(s.d.Panels))},
	}
	const rowHeight, first = 9.0, 16.0
	column := width / 4
	for i, cell := range cells {
		cx, cy := x+column*float64(i%4), y+first+rowHeight*float64(i/4)
		g.Add(draw.Area{Ring: []draw.Point{{X: cx, Y: cy}, {X: cx + column, Y: cy}, {X: cx + column, Y: cy + rowHeight}, {X: cx, Y: cy + rowHeight}}, Pen: penThin},
			draw.Text{At: draw.Point{X: cx + 1.2, Y: cy + 2.9}, Words: cell.head, Height: 2, Color: draw.Quiet},
			draw.Text{At: draw.Point{X: cx + 1.2, Y: cy + 7.2}, Words: fitted(cell.words, size(cell.words, 2.9, column-2), column-2), Height: size(cell.words, 2.9, column-2), Color: draw.Ink})
	}
}

func (s *sheet) thickness() string {
	if t := s.d.Slab.Thickness; t != nil {
		return with(fixed(t.Value*1000, 0), "mm")
	}
	return "not given"
}

func joined(between string, words ...string) string {
	out := ""
	for _, w := range words {
		if w != "" && out != "" {
			out += between
		}
		out += w
	}
	return out
}

// size returns the letter height at which words fit a width, no less than three
// quarters of the height wanted.
func size(words string, height, width float64) float64 {
	if w := draw.WidthOf(words, height); w > width {
		return max(height*width/w, 0.75*height)
	}
	return height
}

// fitted shortens words to a width on paper.
func fitted(words string, height, width float64) string {
	if draw.WidthOf(words, height) <= width {
		return words
	}
	letters := []rune(words)
	for len(letters) > 0 && draw.WidthOf(string(letters)+"…", height) > width {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}
