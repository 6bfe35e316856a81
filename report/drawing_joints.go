package report

import (
	"math"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// joints draws each joint as the line of its kind: sawn long-dashed, formed solid
// with ticks, isolation double.
func (p *planSheet) joints() {
	for _, j := range p.c.Plan.Slab.Joints {
		g := p.s.Group("joint "+string(j.Kind), "Joint "+or(j.Name, j.ID)+", "+string(j.Kind), draw.Paper)
		g.Add(jointLines(p.onPaper(j.Path), j.Kind, p.small)...)
	}
}

// jointLines returns the lines of a joint, from a path on paper.
func jointLines(path []draw.Point, kind plan.JointKind, small bool) []draw.Shape {
	switch kind {
	case plan.Formed:
		pen := penFormed
		if small {
			pen.Width = 0.15
		}
		shapes := []draw.Shape{draw.Line{Points: path, Pen: pen}}
		if !small {
			for _, at := range along(path, 6) {
				shapes = append(shapes, draw.Line{Points: []draw.Point{at.left(0.8), at.left(-0.8)}, Pen: penFormed})
			}
		}
		return shapes
	case plan.Isolation:
		half := 0.8
		if small {
			half = 0.5
		}
		return []draw.Shape{
			draw.Line{Points: offset(path, half), Pen: penIsolation},
			draw.Line{Points: offset(path, -half), Pen: penIsolation},
		}
	}
	pen := penSawn
	if small {
		pen.Dash = []float64{2.5, 0.8}
		pen.Width = 0.15
	}
	return []draw.Shape{draw.Line{Points: path, Pen: pen}}
}

// isolationRing is the second line of the double line round a fixture that stands
// free of the slab, 0.9 mm outside it.
func isolationRing(ring []draw.Point) draw.Area {
	closed := append(append([]draw.Point{}, ring...), ring[0])
	out, in := offset(closed, 0.9), offset(closed, -0.9)
	if ringSize(in) > ringSize(out) { // the ring runs the other way round
		out = in
	}
	return draw.Area{Ring: out[:len(ring)], Pen: penIsolation}
}

// ringSize is the area inside a closed path.
func ringSize(path []draw.Point) float64 {
	sum := 0.0
	for i := 0; i+1 < len(path); i++ {
		sum += path[i].X*path[i+1].Y - path[i+1].X*path[i].Y
	}
	return math.Abs(sum) / 2
}

// station is a place on a path with its direction.
type station struct {
	at     draw.Point
	ux, uy float64
}

// left is the point so many mm to the left of the path, on paper.
func (s station) left(mm float64) draw.Point {
	return draw.Point{X: s.at.X + mm*s.uy, Y: s.at.Y - mm*s.ux}
}

// along returns places every pitch mm, half a pitch from the start on.
func along(path []draw.Point, pitch float64) []station {
	var all []station
	next := pitch / 2
	for i := 0; i+1 < len(path); i++ {
		a, b := path[i], path[i+1]
		length := math.Hypot(b.X-a.X, b.Y-a.Y)
		if length == 0 {
			continue
		}
		ux, uy := (b.X-a.X)/length, (b.Y-a.Y)/length
		for ; next <= length; next += pitch {
			all = append(all, station{draw.Point{X: a.X + next*ux, Y: a.Y + next*uy}, ux, uy})
		}
		next -= length
	}
	return all
}

// station returns the place at a share of a path's length.
func stationAt(path []draw.Point, share float64) station {
	total := 0.0
	for i := 0; i+1 < len(path); i++ {
		total += math.Hypot(path[i+1].X-path[i].X, path[i+1].Y-path[i].Y)
	}
	want := share * total
	for i := 0; i+1 < len(path); i++ {
		a, b := path[i], path[i+1]
		length := math.Hypot(b.X-a.X, b.Y-a.Y)
		if length > 0 && (want <= length || i+2 == len(path)) {
			ux, uy := (b.X-a.X)/length, (b.Y-a.Y)/length
			want = math.Min(want, length)
			return station{draw.Point{X: a.X + want*ux, Y: a.Y + want*uy}, ux, uy}
		}
		want -= length
	}
	if len(path) == 0 {
		return station{}
	}
	return station{path[len(path)-1], 1, 0}
}

// offset moves a path sideways by mm on paper, each point along the mean of its
// neighbours' normals.
func offset(path []draw.Point, mm float64) []draw.Point {
	out := make([]draw.Point, len(path))
	closed := len(path) > 2 && path[0] == path[len(path)-1]
	for i, q := range path {
		before, after := max(i-1, 0), min(i+1, len(path)-1)
		if closed && (i == 0 || i == len(path)-1) {
			before, after = len(path)-2, 1
		}
		n1x, n1y := normal(path[before], q)
		n2x, n2y := normal(q, path[after])
		nx, ny := n1x+n2x, n1y+n2y
		length := math.Hypot(nx, ny)
		if length == 0 {
			out[i] = q
			continue
		}
		nx, ny = nx/length, ny/length
		stretch := 1.0
		if cos := nx*n2x + ny*n2y; n1x != 0 || n1y != 0 {
			if c := math.Abs(cos); c > 0.3 {
				stretch = 1 / c
			}
		}
		out[i] = draw.Point{X: q.X + mm*stretch*nx, Y: q.Y + mm*stretch*ny}
	}
	return out
}

func normal(a, b draw.Point) (float64, float64) {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	if length == 0 {
		return 0, 0
	}
	return (b.Y - a.Y) / length, -(b.X - a.X) / length
}

// reachOf is how far the drawing of a joint reaches to either side, mm on paper.
func (p *planSheet) reachOf(j plan.Joint) float64 {
	reach := 0.2
	if j.Kind != plan.Sawn {
		reach = 0.9 // ticks, or the second line
	}
	for _, d := range p.c.Plan.DowelBars {
		if d.Joint == j.ID {
			return max(reach, 0.8, d.From.To(d.To)*1000/p.n/2)
		}
	}
	return reach
}

// dowels draws each dowel as a short stroke, no shorter than 1.6 mm on paper.
func (p *planSheet) dowels() {
	if p.small || len(p.c.Plan.DowelBars) == 0 {
		return
	}
	g := p.s.Group("dowels", "Dowels", draw.Paper)
	for _, d := range p.c.Plan.DowelBars {
		a, b := p.to.At(draw.Point(d.From)), p.to.At(draw.Point(d.To))
		length := math.Hypot(b.X-a.X, b.Y-a.Y)
		if length > 0 && length < 1.6 {
			grow := (1.6/length - 1) / 2
			a, b = draw.Point{X: a.X - grow*(b.X-a.X), Y: a.Y - grow*(b.Y-a.Y)}, draw.Point{X: b.X + grow*(b.X-a.X), Y: b.Y + grow*(b.Y-a.Y)}
		}
		g.Add(draw.Line{Points: []draw.Point{a, b}, Pen: penDowel})
	}
}
