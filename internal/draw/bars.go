package draw

// Bar is one row of a bar chart: words at the left, bars from zero, words at the
// right.
type Bar struct {
	Words  string
	Values []float64 // one for each of the series
	Behind string
}

// Bars is level bars from a common zero, a series under the other in each row.
type Bars struct {
	Width       float64 // mm
	Title, Desc string
	WordSpace   float64 // mm kept at the left
	BehindSpace float64 // mm kept at the right
	Axis        Axis
	Fills       []Color // of each series
	Rows        []Bar
	Ink, Quiet  Color
	Paper       Color
}

// Scene draws the bars; its height follows from the number of rows.
func (b Bars) Scene() *Scene {
	if !(b.Axis.Max > b.Axis.Min) {
		panic("draw: bars need an axis with max above min")
	}
	const top, foot, thick, between = 5.0, 8.5, 1.9, 2.0
	row := thick*float64(len(b.Fills)) + between
	s := New(b.Width, top+foot+row*float64(len(b.Rows)), b.Title, b.Desc)
	left, right := b.WordSpace, b.Width-b.BehindSpace
	at := func(v float64) float64 { return left + (v-b.Axis.Min)/(b.Axis.Max-b.Axis.Min)*(right-left) }
	bottom := top + row*float64(len(b.Rows))
	g := s.Group("axes", "", Paper)
	for _, l := range b.Axis.Labels {
		g.Add(Line{Points: []Point{{at(l.At), top}, {at(l.At), bottom}}, Pen: Pen{Color: b.Quiet, Width: 0.08, Dash: []float64{0.3, 0.9}}})
		g.Add(Text{At: Point{at(l.At), bottom + 3.2}, Words: l.Words, Height: chartLetters, Anchor: Middle, Color: b.Ink})
	}
	g.Add(Text{At: Point{right, bottom + 7}, Words: b.Axis.Title, Height: chartLetters, Anchor: Right, Color: b.Quiet})
	bars := s.Group("bars", "", Paper)
	for i, r := range b.Rows {
		y := top + row*float64(i) + between/2
		for k, v := range r.Values {
			y0, y1 := y+thick*float64(k), y+thick*float64(k+1)
			x0, x1 := at(min(v, 0)), at(max(v, 0))
			bars.Add(Area{Ring: []Point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}, Fill: b.Fills[k], Pen: Pen{Color: b.Ink, Width: 0.12}})
		}
		middle := y + thick*float64(len(b.Fills))/2 + 0.85
		bars.Add(Text{At: Point{0.5, middle}, Words: r.Words, Height: chartLetters, Color: b.Ink})
		bars.Add(Text{At: Point{right + 2, middle}, Words: r.Behind, Height: chartLetters, Color: b.Ink})
	}
	s.Group("zero", "", Paper).Add(Line{Points: []Point{{at(0), top - 1}, {at(0), bottom}}, Pen: Pen{Color: b.Ink, Width: 0.25}})
	return s
}
