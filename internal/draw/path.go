package draw

import "math"

// Station is a place on a path with its direction, a vector of length 1.
type Station struct {
	At     Point
	UX, UY float64
}

// Left is the point so many mm to the left of the path, on paper.
func (s Station) Left(mm float64) Point { return Point{s.At.X + mm*s.UY, s.At.Y - mm*s.UX} }

// Along returns places every pitch mm of a path on paper, half a pitch from the
// start on.
func Along(path []Point, pitch float64) []Station {
	var all []Station
	next := pitch / 2
	for i := 0; i+1 < len(path); i++ {
		a, b := path[i], path[i+1]
		length := math.Hypot(b.X-a.X, b.Y-a.Y)
		if length == 0 {
			continue
		}
		ux, uy := (b.X-a.X)/length, (b.Y-a.Y)/length
		for ; next <= length; next += pitch {
			all = append(all, Station{Point{a.X + next*ux, a.Y + next*uy}, ux, uy})
		}
		next -= length
	}
	return all
}

// StationAt returns the place at a share of a path's length.
func StationAt(path []Point, share float64) Station {
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
			return Station{Point{a.X + want*ux, a.Y + want*uy}, ux, uy}
		}
		want -= length
	}
	if len(path) == 0 {
		return Station{}
	}
	return Station{path[len(path)-1], 1, 0}
}

// Offset moves a path sideways by mm on paper, each point along the mean of its
// neighbours' normals.
func Offset(path []Point, mm float64) []Point {
	out := make([]Point, len(path))
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
		out[i] = Point{q.X + mm*stretch*nx, q.Y + mm*stretch*ny}
	}
	return out
}

func normal(a, b Point) (float64, float64) {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	if length == 0 {
		return 0, 0
	}
	return (b.Y - a.Y) / length, -(b.X - a.X) / length
}

// Ticked is a full line with short strokes across it every pitch mm, half to either
// side.
func Ticked(path []Point, pen Pen, pitch, half float64) []Shape {
	shapes := []Shape{Line{Points: path, Pen: pen}}
	for _, at := range Along(path, pitch) {
		shapes = append(shapes, Line{Points: []Point{at.Left(half), at.Left(-half)}, Pen: pen})
	}
	return shapes
}

// Double is a pair of lines, each half mm off the path.
func Double(path []Point, pen Pen, half float64) []Shape {
	return []Shape{Line{Points: Offset(path, half), Pen: pen}, Line{Points: Offset(path, -half), Pen: pen}}
}

// DoubleRing is the second line of a double line round a ring, mm outside it.
func DoubleRing(ring []Point, pen Pen, mm float64) Area {
	closed := append(append([]Point{}, ring...), ring[0])
	out, in := Offset(closed, mm), Offset(closed, -mm)
	if ringSize(in) > ringSize(out) { // the ring runs the other way round
		out = in
	}
	return Area{Ring: out[:len(ring)], Pen: pen}
}

// ringSize is twice the area inside a closed path.
func ringSize(path []Point) float64 {
	sum := 0.0
	for i := 0; i+1 < len(path); i++ {
		sum += path[i].X*path[i+1].Y - path[i+1].X*path[i].Y
	}
	return math.Abs(sum)
}
