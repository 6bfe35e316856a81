package poursheet

import (
	"errors"
	"fmt"
	"math"

	"slabwright/internal/draw"
	"slabwright/internal/page"
	"slabwright/plan"
)

// Units is how lengths are written on a drawing.
type Units int

// Units of the written lengths. The drawing itself is always at scale.
const (
	Millimetres Units = iota
	Metres
)

// String returns the unit's sign.
func (u Units) String() string {
	if u == Metres {
		return "m"
	}
	return "mm"
}

// length writes a length given in metres.
func (u Units) length(metres float64) string {
	if u == Metres {
		return fixed(metres, 3)
	}
	return fixed(metres*1000, 0)
}

// Drawing is the joint drawing of one slab: what is set out, and from where.
type Drawing struct {
	Title    Title
	Slab     plan.Slab
	Panels   []plan.Panel // of the slab, by [plan.Slab.Panels]
	Origin   *plan.Point  // setting-out point, local axes; nil: the outline's corner at the lower left
	SawDepth *float64     // of sawn joints as planned, m; nil: nobody said
	Units    Units
	Paper    page.Paper // zero: A3
	Lying    bool       // the paper stays as given: pages of one document lie one way
	Notes    []string   // what a person must know beside the drawing
}

// Check returns what keeps the drawing from being made.
func (d Drawing) Check() error {
	if len(d.Slab.Outline) < 3 {
		return errors.New("a joint drawing needs the outline of the slab, three corners or more")
	}
	low, high := plan.Ring(d.Slab.Outline).Box()
	if !(high.X > low.X) || !(high.Y > low.Y) || math.IsInf(high.X-low.X+high.Y-low.Y, 0) {
		return errors.New("the outline of the slab has no size; look at its corners")
	}
	if len(d.Panels) == 0 {
		return errors.New("a joint drawing needs the panels of the slab")
	}
	return nil
}

// paper returns the sheet, lying for a slab that is wider than high.
func (d Drawing) paper() page.Paper {
	p := d.Paper
	if p.Width == 0 {
		p = page.A3
	}
	if d.Lying {
		return p
	}
	low, high := plan.Ring(d.Slab.Outline).Box()
	if lying := high.X-low.X >= 0.8*(high.Y-low.Y); lying == (p.Width < p.Height) {
		p = p.Turned()
	}
	return p
}

// origin returns the setting-out point: as given, else the corner of the outline
// nearest to the lower left of the box round it.
func (d Drawing) origin() plan.Point {
	if d.Origin != nil {
		return *d.Origin
	}
	low, _ := plan.Ring(d.Slab.Outline).Box()
	best := d.Slab.Outline[0]
	for _, p := range d.Slab.Outline {
		if p.To(low) < best.To(low) {
			best = p
		}
	}
	return best
}

// Room left round the plan for running dimensions, and below it for one row of key
// and title block; mm on paper.
const (
	stripRoom = 17.0
	footRow   = 34.0
)

// narrow is the width below which the title block stands under the key.
const narrow = 250.0

// footRoom is the room below the plan on a sheet of so wide a drawing.
func footRoom(width float64) float64 {
	if width < narrow {
		return 2 * footRow
	}
	return footRow
}

// sheet is a drawing being drawn.
type sheet struct {
	d      Drawing
	s      *draw.Scene
	to     draw.Transform
	n      float64 // scale 1:n
	field  draw.Box
	labels *draw.Labels
	origin plan.Point
}

// Scene draws the sheet: the plan at the largest scale of a scale rule that fits,
// running dimensions from the setting-out point on four sides, key, scale bar, north
// arrow and title block. It fills the paper between the margins of a page.
func (d Drawing) Scene() (*draw.Scene, error) {
	if err := d.Check(); err != nil {
		return nil, err
	}
	paper := d.paper()
	width, height := paper.Width-page.Sides, paper.Height-page.Ends
	s := &sheet{d: d, origin: d.origin(), s: draw.New(width, height, "Joint drawing of "+or(d.Slab.Name, d.Slab.ID), d.words())}
	field := height - footRoom(width)
	s.fit(width, field)
	s.labels = draw.NewLabels(width, field)
	s.keepClear()
	s.plan()
	s.strips()
	s.names()
	s.foot(field, paper.Name)
	return s.s, nil
}

// fit chooses the scale and where the plan stands.
func (s *sheet) fit(width, height float64) {
	low, high := plan.Ring(s.d.Slab.Outline).Box()
	w, h := high.X-low.X, high.Y-low.Y
	for _, n := range draw.Scales {
		s.n = n
		if w*1000/n <= width-2*stripRoom && h*1000/n <= height-2*stripRoom {
			break
		}
	}
	s.n = math.Max(s.n, math.Ceil(math.Max(w*1000/(width-2*stripRoom), h*1000/(height-2*stripRoom)))) // beyond the rule
	s.to = draw.Fit(draw.Point(low), draw.Point(high), 1000/s.n, draw.Point{X: width / 2, Y: height / 2})
	a, b := s.to.At(draw.Point(low)), s.to.At(draw.Point(high))
	s.field = draw.Box{X0: a.X, Y0: b.Y, X1: b.X, Y1: a.Y}
}

// words says what the drawing shows to those who cannot see it.
func (d Drawing) words() string {
	low, high := plan.Ring(d.Slab.Outline).Box()
	o := d.origin()
	return fmt.Sprintf("Slab of %s by %s m, %s, %s, set out from the corner at (%s, %s) m.",
		fixed(high.X-low.X, 2), fixed(high.Y-low.Y, 2), count(len(d.Panels), "panel"), count(len(d.Slab.Joints), "joint"), fixed(o.X, 3), fixed(o.Y, 3))
}

func (s *sheet) onPaper(points []plan.Point) []draw.Point {
	out := make([]draw.Point, len(points))
	for i, p := range points {
		out[i] = s.to.At(draw.Point(p))
	}
	return out
}

// dowels returns the dowels of a joint that lie in concrete: a joint that runs through
// a column or a pit has none there.
func (d Drawing) dowels(j plan.Joint) []plan.Bar {
	var bars []plan.Bar
	for _, b := range d.Slab.DowelBars(j) {
		if d.Slab.Inside(b.Segment().At(0.5), 0) {
			bars = append(bars, b)
		}
	}
	return bars
}
