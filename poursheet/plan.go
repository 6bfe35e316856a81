package poursheet

import (
	"fmt"
	"math"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// plan draws the slab itself, what lies under first.
func (s *sheet) plan() {
	s.beside()
	s.joints()
	s.dowels()
	s.cornerBars()
	g := s.s.Group("outline", "Edge of the slab", draw.Paper)
	g.Add(draw.Area{Ring: s.onPaper(s.d.Slab.Outline), Pen: penOutline})
	for _, f := range s.d.Slab.Fixtures {
		if f.Opening && len(f.Shape) > 2 {
			s.opening(f)
		}
	}
	s.settingOutPoint()
}

// beside draws walls and buildings along the edge, and fixtures within the depth.
func (s *sheet) beside() {
	for _, f := range s.d.Slab.Fixtures {
		if f.Opening || len(f.Shape) < 2 {
			continue
		}
		g := s.s.Group("fixture", or(f.Name, f.ID)+", "+string(f.Kind), draw.Paper)
		if len(f.Shape) > 2 && f.Kind != plan.Wall && f.Kind != plan.Building {
			g.Add(draw.Area{Ring: s.onPaper(f.Shape), Pen: penThin, Hatch: &draw.Hatch{Angle: 45, Pitch: 1.5, Pen: penHair}})
			continue
		}
		g.Add(draw.Line{Points: s.onPaper(f.Shape), Pen: penFixture})
	}
}

// opening draws a hole: its edge, a cross in it, and the second line of an isolation
// joint round it.
func (s *sheet) opening(f plan.Fixture) {
	g := s.s.Group("opening", or(f.Name, f.ID)+", "+string(f.Kind), draw.Paper)
	on := s.onPaper(f.Shape)
	g.Add(draw.Area{Ring: on, Fill: draw.White, Pen: penOpening})
	if len(on) == 4 {
		g.Add(draw.Line{Points: []draw.Point{on[0], on[2]}, Pen: penHair}, draw.Line{Points: []draw.Point{on[1], on[3]}, Pen: penHair})
	}
	if f.Isolated.Is("yes") {
		g.Add(draw.DoubleRing(on, penSolid, 0.9))
	}
}

func (s *sheet) joints() {
	for _, j := range s.d.Slab.Joints {
		g := s.s.Group("joint "+string(j.Kind), "Joint "+or(j.Name, j.ID)+", "+string(j.Kind), draw.Paper)
		g.Add(jointLines(s.onPaper(j.Path), j.Kind)...)
	}
}

// dowels draws each dowel as a stroke across its joint, no shorter than 1.6 mm.
func (s *sheet) dowels() {
	g := s.s.Group("dowels", "Dowels", draw.Paper)
	for _, j := range s.d.Slab.Joints {
		for _, bar := range s.d.dowels(j) {
			a, b := s.to.At(draw.Point(bar.From)), s.to.At(draw.Point(bar.To))
			if length := math.Hypot(b.X-a.X, b.Y-a.Y); length > 0 && length < 1.6 {
				grow := (1.6/length - 1) / 2
				a, b = draw.Point{X: a.X - grow*(b.X-a.X), Y: a.Y - grow*(b.Y-a.Y)}, draw.Point{X: b.X + grow*(b.X-a.X), Y: b.Y + grow*(b.Y-a.Y)}
			}
			g.Add(draw.Line{Points: []draw.Point{a, b}, Pen: penDowel})
		}
	}
}

// cornerBars draws the bars across inside corners that no joint meets, where they lie.
func (s *sheet) cornerBars() {
	for _, c := range s.d.Slab.CornerBars {
		g := s.s.Group("corner-bars", fmt.Sprintf("Bars across a corner, %s: %d", c.ID, c.Bars), draw.Paper)
		for _, l := range c.Lines() {
			g.Add(draw.Line{Points: []draw.Point{s.to.At(draw.Point(l.A)), s.to.At(draw.Point(l.B))}, Pen: penBar})
		}
	}
}

// settingOutPoint marks where every running dimension starts.
func (s *sheet) settingOutPoint() {
	g := s.s.Group("setting-out", "Setting-out point", draw.Paper)
	g.Add(mark(s.to.At(draw.Point(s.origin)))...)
}

// mark is a ring with a cross: the setting-out point.
func mark(at draw.Point) []draw.Shape {
	const r, long = 1.7, 3.2
	pen := draw.Pen{Color: draw.Ink, Width: 0.3}
	return []draw.Shape{draw.Disc{At: at, Radius: r, Pen: pen, Fill: draw.White},
		draw.Line{Points: []draw.Point{{X: at.X - long, Y: at.Y}, {X: at.X + long, Y: at.Y}}, Pen: pen},
		draw.Line{Points: []draw.Point{{X: at.X, Y: at.Y - long}, {X: at.X, Y: at.Y + long}}, Pen: pen}}
}

// keepClear tells the labels where lines are, before any word is placed.
func (s *sheet) keepClear() {
	run := func(points []plan.Point, closed bool, put func(a, b draw.Point, half float64), half float64) {
		on := s.onPaper(points)
		for i := range on {
			if i+1 < len(on) || closed {
				put(on[i], on[(i+1)%len(on)], half)
			}
		}
	}
	run(s.d.Slab.Outline, true, s.labels.Take, 0.5)
	for _, j := range s.d.Slab.Joints {
		run(j.Path, false, s.labels.Line, s.reach(j)+0.2)
	}
	for _, c := range s.d.Slab.CornerBars {
		for _, l := range c.Lines() {
			run([]plan.Point{l.A, l.B}, false, s.labels.Line, 0.4)
		}
	}
	for _, f := range s.d.Slab.Fixtures {
		run(f.Shape, len(f.Shape) > 2, s.labels.Line, 0.6)
		if f.Opening {
			s.labels.Area(s.onPaper(f.Shape))
		}
	}
	at := s.to.At(draw.Point(s.origin))
	s.labels.TakeBox(draw.Box{X0: at.X - 3.3, Y0: at.Y - 3.3, X1: at.X + 3.3, Y1: at.Y + 3.3})
}

// reach is how far the drawing of a joint reaches to either side, mm on paper.
func (s *sheet) reach(j plan.Joint) float64 {
	reach := 0.2
	if j.Kind != plan.Sawn {
		reach = 0.9 // ticks, or the second line
	}
	if bars := s.d.dowels(j); len(bars) > 0 {
		reach = max(reach, 0.8, bars[0].Segment().Length()*1000/s.n/2)
	}
	return reach
}

// names writes panel numbers with their sizes, joints along their lines, fixtures in
// or beside their shapes.
func (s *sheet) names() {
	s.panelNames()
	s.jointNames()
	s.fixtureNames()
}

// panelNames writes each panel's number and size within the panel; the size is left to
// the list of panels where there is no room for it.
func (s *sheet) panelNames() {
	const large, middle, small = 3.6, 2.8, 2.5
	g := s.s.Group("panels", "", draw.Paper)
	for _, p := range s.d.Panels {
		at := s.to.At(draw.Point(p.Centroid))
		size := s.d.Units.length(p.Length) + " × " + s.d.Units.length(p.Width)
		s.labels.Only = s.within(p)
		w := math.Max(draw.WidthOf(p.ID, large), draw.WidthOf(size, small))
		height := large
		off, ok := s.labels.Search(at, w, large+small+0.6, draw.Point{}, 12, true)
		for _, smaller := range []float64{large, middle} {
			if ok {
				break
			}
			size, height = "", smaller
			off, ok = s.labels.Search(at, draw.WidthOf(p.ID, smaller), smaller, draw.Point{}, 12, true)
		}
		if !ok {
			off, _ = s.labels.Search(at, draw.WidthOf(p.ID, middle), middle, draw.Point{}, 12, false)
		}
		s.labels.Only = nil
		down := height * 0.34 // from the middle of the letters to their foot
		if size != "" {
			down = 0
		}
		g.Add(draw.Text{At: at, Lift: draw.Point{X: off.X, Y: off.Y + down}, Words: p.ID, Height: height, Anchor: draw.Middle, Bold: true, Color: draw.Ink, Halo: draw.White})
		if size != "" {
			g.Add(draw.Text{At: at, Lift: draw.Point{X: off.X, Y: off.Y + small + 0.8}, Words: size, Height: small, Anchor: draw.Middle, Color: draw.Quiet, Halo: draw.White})
		}
	}
}

// within reports whether a box on paper lies in a panel with its corners.
func (s *sheet) within(p plan.Panel) func(draw.Box) bool {
	back := func(x, y float64) plan.Point { return plan.Point{X: (x - s.to.E) / s.to.A, Y: (y - s.to.F) / s.to.D} }
	return func(b draw.Box) bool {
		for _, q := range []plan.Point{back(b.X0, b.Y0), back(b.X1, b.Y0), back(b.X1, b.Y1), back(b.X0, b.Y1)} {
			if !p.Ring.Contains(q) {
				return false
			}
		}
		return true
	}
}

// jointNames writes each joint's name and kind along it; the kind is left to the list
// where the joint is too short.
func (s *sheet) jointNames() {
	const letters = 2.8
	g := s.s.Group("joint-names", "", draw.Paper)
	for _, j := range s.d.Slab.Joints {
		path := s.onPaper(j.Path)
		if len(path) < 2 {
			continue
		}
		words := j.ID + " " + string(j.Kind)
		if draw.WidthOf(words, letters) > plan.Polyline(j.Path).Length()*1000/s.n {
			words = j.ID
		}
		g.Add(s.labels.Beside(path, draw.Text{Words: words, Height: letters, Bold: true, Color: draw.Chalk, Halo: draw.White}, s.reach(j)+1.5))
	}
}

func (s *sheet) fixtureNames() {
	const letters = 2.6
	g := s.s.Group("fixture-names", "", draw.Paper)
	for _, f := range s.d.Slab.Fixtures {
		if len(f.Shape) == 0 {
			continue
		}
		in := draw.Around(s.onPaper(f.Shape))
		mid := draw.Point{X: (in.X0 + in.X1) / 2, Y: (in.Y0 + in.Y1) / 2}
		words := or(f.Name, f.ID)
		wanted := draw.Point{}
		if in.Y1-in.Y0 < letters {
			wanted.Y = letters
		}
		off, _ := s.labels.Free(mid, draw.WidthOf(words, letters), letters, wanted, 12)
		g.Add(draw.Text{At: mid, Lift: draw.Point{X: off.X, Y: off.Y + letters*0.34}, Words: words, Height: letters, Anchor: draw.Middle, Color: draw.Ink, Halo: draw.White})
	}
}
