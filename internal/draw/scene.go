package draw

// Point is a place in the units of its group.
type Point struct{ X, Y float64 }

// Transform maps a group's units onto paper: millimetres from the top left, y
// downwards. x' = A·x + C·y + E, y' = B·x + D·y + F.
type Transform struct{ A, B, C, D, E, F float64 }

// Paper leaves coordinates as they are: already millimetres on paper.
var Paper = Transform{A: 1, D: 1}

// At returns the point on paper.
func (t Transform) At(p Point) Point {
	return Point{t.A*p.X + t.C*p.Y + t.E, t.B*p.X + t.D*p.Y + t.F}
}

// Fit returns the transform that draws a box of user units, y upwards, at a
// scale (paper mm per user unit) with its middle at the given place on paper.
func Fit(low, high Point, mmPerUnit float64, middle Point) Transform {
	return Transform{
		A: mmPerUnit, D: -mmPerUnit,
		E: middle.X - mmPerUnit*(low.X+high.X)/2,
		F: middle.Y + mmPerUnit*(low.Y+high.Y)/2,
	}
}

// Color is a colour with eight bits a channel. The zero value, with None, is not
// drawn.
type Color struct {
	R, G, B uint8
	Set     bool
}

// RGB returns a colour that is drawn.
func RGB(r, g, b uint8) Color { return Color{r, g, b, true} }

// Pen says how a line is drawn; lengths in millimetres on paper.
type Pen struct {
	Color Color
	Width float64
	Dash  []float64
	Round bool // round caps and joins
}

// Hatch fills an area with parallel lines.
type Hatch struct {
	Angle float64 // degrees from the paper's x axis
	Pitch float64 // mm between lines
	Cross bool    // a second set at right angles
	Pen   Pen
}

// End says what stands at an end of a line.
type End int

// Line ends.
const (
	Plain End = iota
	Tick
	Arrow
	Dot
)

// Shape is one thing drawn: [Line], [Area], [Text], [Disc] or [Group].
type Shape interface{ shape() }

// Line is an open run of points.
type Line struct {
	Points     []Point
	Pen        Pen
	Start, End End
}

// Area is a closed ring with holes.
type Area struct {
	Ring  []Point
	Holes [][]Point
	Pen   Pen
	Fill  Color
	Hatch *Hatch
}

// Anchor says which part of a text stands at its point.
type Anchor int

// Anchors.
const (
	Left Anchor = iota
	Middle
	Right
)

// Text is one line of words. Lift moves it on paper by millimetres after the
// transform, so that a label can keep clear of its line at any scale.
type Text struct {
	At     Point
	Words  string
	Height float64 // letter size, mm (font size, not capital height)
	Anchor Anchor
	Angle  float64 // degrees anticlockwise on paper
	Bold   bool
	Color  Color
	Halo   Color // drawn round the letters so that lines do not cut them
	Lift   Point // mm on paper, y downwards
}

// Disc is a circle with a radius in millimetres on paper.
type Disc struct {
	At     Point
	Radius float64
	Pen    Pen
	Fill   Color
	Lift   Point
}

// Group is shapes with a name, a title a screen reader says, and a transform.
type Group struct {
	ID     string
	Class  string
	Title  string
	Link   string // "#f-3": where a click goes, in SVG
	Map    *Transform
	Shapes []Shape
}

func (Line) shape()   {}
func (Area) shape()   {}
func (Text) shape()   {}
func (Disc) shape()   {}
func (*Group) shape() {}

// Add puts shapes into the group.
func (g *Group) Add(shapes ...Shape) { g.Shapes = append(g.Shapes, shapes...) }

// Scene is a drawing of a given size on paper.
type Scene struct {
	Width, Height float64 // mm
	Title, Desc   string  // said to those who cannot see it
	Root          Group
}

// New returns an empty drawing.
func New(width, height float64, title, desc string) *Scene {
	return &Scene{Width: width, Height: height, Title: title, Desc: desc}
}

// Group adds a named group with its own transform and returns it.
func (s *Scene) Group(class, title string, t Transform) *Group {
	g := &Group{Class: class, Title: title, Map: &t}
	s.Root.Add(g)
	return g
}
