package draw

// Ruler is one line of time with what happened along it, each event with its
// words in rows below.
type Ruler struct {
	Width       float64 // mm
	Title, Desc string
	From, To    float64
	Labels      []Label
	Spans       []Span
	Marks       []Mark
	Ink, Quiet  Color
	Paper       Color
}

// Scene draws the ruler; its height follows from the number of rows needed.
func (r Ruler) Scene() *Scene {
	if !(r.To > r.From) {
		panic("draw: a ruler needs an end after its start")
	}
	// words of the last marks stand in the room at the right
	const left, right, line, row = 4.0, 40.0, 8.0, 3.3
	c := Chart{Marks: r.Marks, X: Axis{Min: r.From, Max: r.To}}
	rows, rowOf := c.markRows(left, r.Width-right)
	s := New(r.Width, line+5+row*float64(max(rows, 1)), r.Title, r.Desc)
	at := func(x float64) float64 { return left + (x-r.From)/(r.To-r.From)*(r.Width-left-right) }
	g := s.Group("ruler", "", Paper)
	g.Add(Line{Points: []Point{{left, line}, {r.Width - right, line}}, Pen: Pen{Color: r.Ink, Width: 0.2}})
	for _, l := range r.Labels {
		long := 1.6
		if l.Minor {
			long = 0.8
		}
		x := at(l.At)
		g.Add(Line{Points: []Point{{x, line}, {x, line - long}}, Pen: Pen{Color: r.Ink, Width: 0.15}})
		if l.Words != "" {
			g.Add(Text{At: Point{x, line - 2.6}, Words: l.Words, Height: chartLetters, Anchor: Middle, Color: r.Ink, Halo: r.Paper})
		}
	}
	for _, span := range r.Spans {
		from, to := max(span.From, r.From), min(span.To, r.To)
		if to <= from {
			continue
		}
		g.Add(Area{Ring: []Point{{at(from), line - 1.6}, {at(to), line - 1.6}, {at(to), line + 1.6}, {at(from), line + 1.6}}, Fill: span.Fill, Pen: Pen{Color: r.Ink, Width: 0.2}})
		if at(to)-at(from) < WidthOf(span.Words, chartLetters) {
			continue // the caption says what is shaded
		}
		g.Add(Text{At: Point{(at(from) + at(to)) / 2, line + 0.85}, Words: span.Words, Height: chartLetters, Anchor: Middle, Color: r.Ink})
	}
	for _, i := range c.markOrder() {
		m := r.Marks[i]
		if m.At < r.From || m.At > r.To {
			continue
		}
		x, y := at(m.At), line+4.6+row*float64(rowOf[i])
		g.Add(Line{Points: []Point{{x, line}, {x, y + 0.3}}, Pen: m.Pen})
		g.Add(Disc{At: Point{x, line}, Radius: 0.6, Fill: m.Pen.Color})
	}
	for _, i := range c.markOrder() {
		m := r.Marks[i]
		if m.At < r.From || m.At > r.To {
			continue
		}
		x, y := at(m.At), line+4.6+row*float64(rowOf[i])
		text := Text{At: Point{x + 0.7, y}, Words: m.Words, Height: chartLetters, Color: r.Ink, Halo: r.Paper}
		if x+WidthOf(m.Words, chartLetters) > r.Width {
			text.At.X, text.Anchor = x-0.7, Right
		}
		g.Add(text)
	}
	return s
}
