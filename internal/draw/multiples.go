package draw

// Put sets another drawing into this one with its top left at x, y.
func (s *Scene) Put(x, y float64, part *Scene) {
	into := &Group{Class: "part", Title: part.Title, Map: &Transform{A: 1, D: 1, E: x, F: y}}
	for _, shape := range part.Root.Shapes {
		into.Add(moved(shape, x, y))
	}
	s.Root.Add(into)
}

// moved returns a shape whose groups stand so much further right and down; what is
// not in a group moves with the group it is put into.
func moved(shape Shape, x, y float64) Shape {
	g, ok := shape.(*Group)
	if !ok {
		return shape
	}
	further := *g
	if g.Map != nil {
		m := *g.Map
		m.E, m.F = m.E+x, m.F+y
		further.Map = &m
	}
	further.Shapes = make([]Shape, len(g.Shapes))
	for i, in := range g.Shapes {
		further.Shapes[i] = moved(in, x, y)
	}
	return &further
}

// KeyEntry is one line of a key: how it is drawn and what it is.
type KeyEntry struct {
	Words string
	Pen   Pen
	Fill  Color // a patch in place of a line
}

// Multiples is small charts of the same kind side by side under one key.
type Multiples struct {
	Width       float64 // mm
	Columns     int
	Title, Desc string
	Key         []KeyEntry
	Cells       []Chart // their widths are set to fill the columns
	Ink         Color
}

// Scene draws the charts row by row; a row is as high as its highest chart.
func (m Multiples) Scene() *Scene {
	if m.Columns < 1 || len(m.Cells) == 0 {
		panic("draw: small charts side by side need columns and cells")
	}
	const gap, keyHeight = 3.0, 4.5
	width := (m.Width - gap*float64(m.Columns-1)) / float64(m.Columns)
	top := 0.0
	if len(m.Key) > 0 {
		top = keyHeight
	}
	height := top
	for i := 0; i < len(m.Cells); i += m.Columns {
		height += m.rowHeight(i) + 1
	}
	s := New(m.Width, height, m.Title, m.Desc)
	m.drawKey(s)
	rows := 0 // so that the frames stand level
	for _, c := range m.Cells {
		c.Width = width
		n, _ := c.markRows(chartLeft, width-c.nameSpace())
		rows = max(rows, n)
	}
	y := top
	for i, c := range m.Cells {
		if i > 0 && i%m.Columns == 0 {
			y += m.rowHeight(i-m.Columns) + 1
		}
		c.Width, c.leastRows = width, rows
		s.Put(float64(i%m.Columns)*(width+gap), y, c.Scene())
	}
	return s
}

func (m Multiples) rowHeight(from int) float64 {
	h := 0.0
	for _, c := range m.Cells[from:min(from+m.Columns, len(m.Cells))] {
		h = max(h, c.Height)
	}
	return h
}

func (m Multiples) drawKey(s *Scene) {
	g := s.Group("key", "", Paper)
	x := 0.5
	for _, k := range m.Key {
		if k.Fill.Set {
			g.Add(Area{Ring: []Point{{x, 1}, {x + 6, 1}, {x + 6, 3.2}, {x, 3.2}}, Fill: k.Fill, Pen: k.Pen})
		} else {
			g.Add(Line{Points: []Point{{x, 2.2}, {x + 6, 2.2}}, Pen: k.Pen})
		}
		g.Add(Text{At: Point{x + 7, 3.05}, Words: k.Words, Height: chartLetters, Color: m.Ink})
		x += 10 + WidthOf(k.Words, chartLetters)
	}
}
