package draw

import "math"

// Curve is one line of a chart, with a band about it when Low and High are
// given. Its name stands at its right-hand end; there is no separate legend.
type Curve struct {
	Name      string
	X, Y      []float64
	Low, High []float64 // same length as X, or nil
	Pen       Pen
	Band      Color // fill between Low and High
}

// Limit is a level line across the chart.
type Limit struct {
	At   float64
	Name string
}

// Mark is something that happened at one place along the x axis.
type Mark struct {
	At    float64
	Words string
	Pen   Pen
}

// Span is a stretch of the x axis with a name, such as the hours a cut is right.
type Span struct {
	From, To  float64
	Words     string
	Fill      Color
	OpenRight bool // goes on past the chart
	NoEdges   bool
}

// Chart is curves over one x axis.
type Chart struct {
	Width, Height float64 // mm
	Title, Desc   string
	X, Y          Axis
	Curves        []Curve
	Limits        []Limit
	Marks         []Mark
	Spans         []Span
	NameSpace     float64 // mm kept at the right for names; 0: 30
	NoNames       bool    // curves are told by a key elsewhere
	CloseNames    bool    // names stand close to the frame, for small charts
	Ink, Quiet    Color
	Paper         Color
	leastRows     int // rows of marks there is to be room for
}

const (
	chartLetters = 2.5 // mm
	chartLeft    = 13.0
	chartFoot    = 9.5
	markRow      = 3.1
)

// frame is where the plotted field lies on paper.
type frame struct {
	left, top, right, bottom float64
	x, y                     Axis
}

func (f frame) at(x, y float64) Point {
	return Point{
		f.left + (x-f.x.Min)/(f.x.Max-f.x.Min)*(f.right-f.left),
		f.bottom - (y-f.y.Min)/(f.y.Max-f.y.Min)*(f.bottom-f.top),
	}
}

// WithField returns the chart as high as it takes for its field to be so many
// millimetres high under the words of its marks.
func (c Chart) WithField(mm float64) Chart {
	rows, _ := c.markRows(chartLeft, c.Width-c.nameSpace())
	c.Height = 5.5 + markRow*float64(max(rows, c.leastRows)) + mm + chartFoot
	return c
}

// Scene draws the chart. Curves are cut at the frame; event marks stand in rows
// above it so that their words do not run into each other.
func (c Chart) Scene() *Scene {
	if !(c.X.Max > c.X.Min) || !(c.Y.Max > c.Y.Min) {
		panic("draw: a chart needs axes with max above min")
	}
	names := c.nameSpace()
	rows, rowOf := c.markRows(chartLeft, c.Width-names)
	rows = max(rows, c.leastRows)
	f := frame{chartLeft, 5.5 + markRow*float64(rows), c.Width - names, c.Height - chartFoot, c.X, c.Y}
	s := New(c.Width, c.Height, c.Title, c.Desc)
	c.drawSpans(s, f)
	c.drawAxes(s, f)
	c.drawCurves(s, f)
	c.drawLimits(s, f)
	c.drawMarks(s, f, rowOf)
	if !c.NoNames {
		c.drawNames(s, f)
	}
	return s
}

// nameSpace is the room at the right.
func (c Chart) nameSpace() float64 {
	switch {
	case c.NoNames:
		return 2.5
	case c.NameSpace == 0:
		return 30
	}
	return c.NameSpace
}

func (c Chart) drawSpans(s *Scene, f frame) {
	g := s.Group("spans", "", Paper)
	for _, span := range c.Spans {
		from, to := math.Max(span.From, c.X.Min), math.Min(span.To, c.X.Max)
		if !(to > from) {
			continue
		}
		a, b := f.at(from, c.Y.Max), f.at(to, c.Y.Min)
		g.Add(Area{Ring: []Point{a, {b.X, a.Y}, b, {a.X, b.Y}}, Fill: span.Fill})
		if span.NoEdges {
			continue
		}
		edge := Pen{Color: c.Ink, Width: 0.25, Dash: []float64{1.2, 0.6}}
		g.Add(Line{Points: []Point{a, {a.X, b.Y}}, Pen: edge})
		if !span.OpenRight && span.To <= c.X.Max {
			g.Add(Line{Points: []Point{{b.X, a.Y}, b}, Pen: edge})
		}
		if b.X-a.X < WidthOf(span.Words, chartLetters) {
			continue // too narrow to name; the caption says what is shaded
		}
		g.Add(Text{At: Point{(a.X + b.X) / 2, a.Y + 3}, Words: span.Words, Height: chartLetters, Anchor: Middle, Color: c.Ink, Halo: c.Paper})
	}
}

func (c Chart) drawAxes(s *Scene, f frame) {
	g := s.Group("axes", "", Paper)
	hair := Pen{Color: c.Quiet, Width: 0.12}
	for _, l := range c.Y.Labels {
		p := f.at(c.X.Min, l.At)
		g.Add(Line{Points: []Point{{f.left, p.Y}, {f.right, p.Y}}, Pen: Pen{Color: c.Quiet, Width: 0.08, Dash: []float64{0.3, 0.9}}})
		g.Add(Text{At: Point{f.left - 1.2, p.Y + 0.85}, Words: l.Words, Height: chartLetters, Anchor: Right, Color: c.Ink})
	}
	for _, l := range c.X.Labels {
		p := f.at(l.At, c.Y.Min)
		long := 1.4
		if l.Minor {
			long = 0.7
		}
		g.Add(Line{Points: []Point{p, {p.X, p.Y + long}}, Pen: hair})
		if l.Words != "" {
			g.Add(Text{At: Point{p.X, p.Y + 4}, Words: l.Words, Height: chartLetters, Anchor: Middle, Color: c.Ink})
		}
	}
	frameRing := []Point{{f.left, f.top}, {f.left, f.bottom}, {f.right, f.bottom}}
	g.Add(Line{Points: frameRing, Pen: Pen{Color: c.Ink, Width: 0.2}})
	g.Add(Text{At: Point{0.5, 3}, Words: c.Y.Title, Height: chartLetters, Color: c.Ink, Bold: true})
	g.Add(Text{At: Point{f.right, f.bottom + 7.8}, Words: c.X.Title, Height: chartLetters, Anchor: Right, Color: c.Quiet})
}

func (c Chart) drawCurves(s *Scene, f frame) {
	for _, curve := range c.Curves {
		g := s.Group("curve", curve.Name, Paper)
		if curve.Low != nil {
			for _, ring := range bandRings(curve, f) {
				g.Add(Area{Ring: ring, Fill: curve.Band})
			}
		}
		for _, run := range clippedRuns(curve.X, curve.Y, f) {
			g.Add(Line{Points: run, Pen: curve.Pen})
		}
	}
}

// bandRings returns the band of a curve, held inside the frame.
func bandRings(curve Curve, f frame) [][]Point {
	hold := func(v float64) float64 { return math.Max(f.y.Min, math.Min(f.y.Max, v)) }
	var rings [][]Point
	var top, foot []Point
	flush := func() {
		if len(top) > 1 {
			ring := append([]Point{}, top...)
			for i := len(foot) - 1; i >= 0; i-- {
				ring = append(ring, foot[i])
			}
			rings = append(rings, ring)
		}
		top, foot = nil, nil
	}
	for i, x := range curve.X {
		lo, hi := curve.Low[i], curve.High[i]
		if x < f.x.Min || x > f.x.Max || math.IsNaN(lo) || math.IsNaN(hi) {
			flush()
			continue
		}
		top, foot = append(top, f.at(x, hold(hi))), append(foot, f.at(x, hold(lo)))
	}
	flush()
	return rings
}

// clippedRuns returns a curve as runs of points on paper, cut where it leaves the
// frame and broken where a value is not known.
func clippedRuns(xs, ys []float64, f frame) [][]Point {
	var runs [][]Point
	var run []Point
	flush := func() {
		if len(run) > 1 {
			runs = append(runs, run)
		}
		run = nil
	}
	for i := 0; i+1 < len(xs); i++ {
		a, b, ok := clipSegment(Point{xs[i], ys[i]}, Point{xs[i+1], ys[i+1]}, f.x.Min, f.x.Max, f.y.Min, f.y.Max)
		if !ok {
			flush()
			continue
		}
		pa, pb := f.at(a.X, a.Y), f.at(b.X, b.Y)
		if len(run) == 0 || run[len(run)-1] != pa {
			flush()
			run = []Point{pa}
		}
		run = append(run, pb)
	}
	flush()
	return runs
}

// clipSegment cuts a segment at a box (Liang and Barsky's method).
func clipSegment(a, b Point, x0, x1, y0, y1 float64) (Point, Point, bool) {
	if math.IsNaN(a.Y) || math.IsNaN(b.Y) {
		return a, b, false
	}
	t0, t1 := 0.0, 1.0
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, side := range [4][2]float64{{-dx, a.X - x0}, {dx, x1 - a.X}, {-dy, a.Y - y0}, {dy, y1 - a.Y}} {
		p, q := side[0], side[1]
		switch {
		case p == 0 && q < 0:
			return a, b, false
		case p < 0:
			t0 = math.Max(t0, q/p)
		case p > 0:
			t1 = math.Min(t1, q/p)
		}
	}
	if t0 > t1 {
		return a, b, false
	}
	p, q := a, b
	if t0 > 0 {
		p = Point{a.X + t0*dx, a.Y + t0*dy}
	}
	if t1 < 1 {
		q = Point{a.X + t1*dx, a.Y + t1*dy}
	}
	return p, q, true
}
