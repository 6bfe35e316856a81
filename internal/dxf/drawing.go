package dxf

import "math"

// Drawing is what a file holds of lines in plan.
type Drawing struct {
	Version string // "AC1009"; empty where the file does not say
	Letters string // how words are coded
	Binary  bool
	Unit    Unit    // by the file, None where it does not say
	Chord   float64 // furthest a chord lies from its curve, drawing units; see [Options]
	Layers  []Layer // those of the file's list first, then others in use
	Lines   []Line  // in the order of the file
	Texts   []Text
	Skipped []Skipped // what was left out
	Notes   []string  // what was odd about the file, and what was made of it
}

// Layer is a name things are drawn under.
type Layer struct {
	Name   string
	Hidden bool // off or frozen
	Lines  int  // read from it
	Closed int  // of these, closed
	Texts  int
}

// Line is a run of straight pieces. A curve is a run of chords.
type Line struct {
	Layer  string
	Kind   string // "LINE", "LWPOLYLINE", "CIRCLE" ...
	Points []Point
	Closed bool // the last point is joined to the first, which is not repeated
	At     int  // line of the file it begins at
}

// Length returns the length along the line, all round where it is closed.
func (l Line) Length() float64 {
	sum := 0.0
	for i := 1; i < len(l.Points); i++ {
		sum += l.Points[i-1].To(l.Points[i])
	}
	if l.Closed && len(l.Points) > 1 {
		sum += l.Points[len(l.Points)-1].To(l.Points[0])
	}
	return sum
}

// Area returns the area inside a closed line, above zero where it runs
// anticlockwise; of an open line, as if it were closed.
func (l Line) Area() float64 {
	twice := 0.0
	for i := 1; i+1 < len(l.Points); i++ {
		a, b, o := l.Points[i], l.Points[i+1], l.Points[0]
		twice += (a.X-o.X)*(b.Y-o.Y) - (b.X-o.X)*(a.Y-o.Y)
	}
	return twice / 2
}

// Text is words on the drawing.
type Text struct {
	Layer  string
	At     Point
	Height float64
	Words  string
}

// Skipped is a kind of thing that was left out.
type Skipped struct {
	Kind  string // "HATCH"
	Why   string
	Count int
	First int // line of the file of the first
}

// Box returns the lower left and upper right of all lines; ok is false for none.
func (d *Drawing) Box() (low, high Point, ok bool) {
	low, high = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, l := range d.Lines {
		for _, p := range l.Points {
			low = Point{math.Min(low.X, p.X), math.Min(low.Y, p.Y)}
			high = Point{math.Max(high.X, p.X), math.Max(high.Y, p.Y)}
			ok = true
		}
	}
	return low, high, ok
}

// On returns the lines of a layer.
func (d *Drawing) On(layer string) []Line {
	var on []Line
	for _, l := range d.Lines {
		if sameName(l.Layer, layer) {
			on = append(on, l)
		}
	}
	return on
}
