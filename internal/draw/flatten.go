package draw

import (
	"math"
	"sort"
)

// surface is what a back end must be able to do. Everything arrives in
// millimetres on paper, with hatches and line ends already made into lines.
type surface interface {
	open(g *Group)
	close(g *Group)
	path(rings [][]Point, closed bool, pen Pen, fill Color)
	disc(at Point, radius float64, pen Pen, fill Color)
	text(at Point, t Text)
}

func (s *Scene) paint(on surface) { paintGroup(on, &s.Root, Paper) }

func paintGroup(on surface, g *Group, t Transform) {
	if g.Map != nil {
		t = *g.Map
	}
	for _, shape := range g.Shapes {
		switch v := shape.(type) {
		case *Group:
			on.open(v)
			paintGroup(on, v, t)
			on.close(v)
		case Line:
			paintLine(on, v, t)
		case Area:
			paintArea(on, v, t)
		case Text:
			at := t.At(v.At)
			on.text(Point{at.X + v.Lift.X, at.Y + v.Lift.Y}, v)
		case Disc:
			at := t.At(v.At)
			on.disc(Point{at.X + v.Lift.X, at.Y + v.Lift.Y}, v.Radius, v.Pen, v.Fill)
		default:
			panic("draw: unknown shape in a group")
		}
	}
}

func onPaper(points []Point, t Transform) []Point {
	out := make([]Point, len(points))
	for i, p := range points {
		out[i] = t.At(p)
	}
	return out
}

func paintLine(on surface, l Line, t Transform) {
	if len(l.Points) < 2 {
		return
	}
	pts := onPaper(l.Points, t)
	on.path([][]Point{pts}, false, l.Pen, Color{})
	n := len(pts)
	paintEnd(on, l.Start, pts[0], pts[1], l.Pen)
	paintEnd(on, l.End, pts[n-1], pts[n-2], l.Pen)
}

// paintEnd draws what stands at a line's end; from is the next point inwards.
func paintEnd(on surface, end End, at, from Point, pen Pen) {
	length := math.Hypot(at.X-from.X, at.Y-from.Y)
	if end == Plain || length == 0 {
		return
	}
	ux, uy := (at.X-from.X)/length, (at.Y-from.Y)/length
	solid := pen
	solid.Dash = nil
	switch end {
	case Tick:
		on.path([][]Point{{{at.X - 1.2*uy, at.Y + 1.2*ux}, {at.X + 1.2*uy, at.Y - 1.2*ux}}}, false, solid, Color{})
	case Arrow:
		const long, half = 2.2, 0.8
		bx, by := at.X-long*ux, at.Y-long*uy
		on.path([][]Point{{at, {bx - half*uy, by + half*ux}, {bx + half*uy, by - half*ux}}}, true, Pen{}, pen.Color)
	case Dot:
		on.disc(at, 0.7, Pen{}, pen.Color)
	}
}

func paintArea(on surface, a Area, t Transform) {
	if len(a.Ring) < 3 {
		return
	}
	rings := [][]Point{onPaper(a.Ring, t)}
	for _, hole := range a.Holes {
		if len(hole) > 2 {
			rings = append(rings, onPaper(hole, t))
		}
	}
	if a.Fill.Set {
		on.path(rings, true, Pen{}, a.Fill)
	}
	if a.Hatch != nil {
		for _, line := range hatchLines(rings, a.Hatch.Angle, a.Hatch.Pitch) {
			on.path([][]Point{line}, false, a.Hatch.Pen, Color{})
		}
		if a.Hatch.Cross {
			for _, line := range hatchLines(rings, a.Hatch.Angle+90, a.Hatch.Pitch) {
				on.path([][]Point{line}, false, a.Hatch.Pen, Color{})
			}
		}
	}
	if a.Pen.Color.Set {
		on.path(rings, true, a.Pen, Color{})
	}
}

// hatchLines returns the parallel lines inside rings taken together by the
// even-odd rule, so that holes stay empty. The lines lie on a grid fixed to the
// paper: neighbouring areas hatch alike.
func hatchLines(rings [][]Point, angle, pitch float64) [][]Point {
	if !(pitch > 0) {
		panic("draw: hatch pitch must be above zero")
	}
	sin, cos := math.Sincos(angle * math.Pi / 180)
	// along the lines: u; across them: v
	across := func(p Point) float64 { return -p.X*sin + p.Y*cos }
	along := func(p Point) float64 { return p.X*cos + p.Y*sin }
	low, high := math.Inf(1), math.Inf(-1)
	for _, ring := range rings {
		for _, p := range ring {
			low, high = math.Min(low, across(p)), math.Max(high, across(p))
		}
	}
	var lines [][]Point
	for k := math.Ceil(low / pitch); k*pitch <= high; k++ {
		v := k * pitch
		var cuts []float64
		for _, ring := range rings {
			for i, p := range ring {
				q := ring[(i+1)%len(ring)]
				vp, vq := across(p), across(q)
				if (vp <= v) == (vq <= v) {
					continue
				}
				share := (v - vp) / (vq - vp)
				cuts = append(cuts, along(p)+share*(along(q)-along(p)))
			}
		}
		sort.Float64s(cuts)
		for i := 0; i+1 < len(cuts); i += 2 {
			u0, u1 := cuts[i], cuts[i+1]
			if u1-u0 < 1e-6 {
				continue
			}
			lines = append(lines, []Point{{u0*cos - v*sin, u0*sin + v*cos}, {u1*cos - v*sin, u1*sin + v*cos}})
		}
	}
	return lines
}
