package plan

import "math"

// Plus returns p + q.
func (p Point) Plus(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Minus returns the vector from q to p.
func (p Point) Minus(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times returns the vector p made f times as long.
func (p Point) Times(f float64) Point { return Point{p.X * f, p.Y * f} }

// Dot returns the inner product of two vectors.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Cross returns the z part of the outer product of two vectors.
func (p Point) Cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }

// Norm returns the length of a vector.
func (p Point) Norm() float64 { return math.Hypot(p.X, p.Y) }

// Left returns the vector turned 90 degrees anticlockwise.
func (p Point) Left() Point { return Point{-p.Y, p.X} }

// Unit returns the vector made 1 long, and whether it has a direction at all.
func (p Point) Unit() (Point, bool) {
	n := p.Norm()
	if n == 0 || math.IsInf(n, 0) || math.IsNaN(n) {
		return Point{}, false
	}
	return p.Times(1 / n), true
}

// Direction returns the vector of length 1 at so many degrees anticlockwise from x.
func Direction(degrees float64) Point {
	s, c := math.Sincos(degrees * math.Pi / 180)
	return Point{c, s}
}

// between returns the point at share t of the way from p to q.
func between(p, q Point, t float64) Point {
	return Point{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y)}
}

// axisDegrees returns the direction of a line (which has no front or back), 0 up
// to but not including 180 degrees anticlockwise from x.
func axisDegrees(v Point) float64 {
	d := math.Atan2(v.Y, v.X) * 180 / math.Pi
	d = math.Mod(d+360, 180)
	if d >= 180-1e-9 {
		d = 0
	}
	return d
}

// axesApart returns the angle between two lines given by their directions in
// degrees, 0 to 90.
func axesApart(a, b float64) float64 {
	d := math.Mod(math.Abs(a-b), 180)
	return math.Min(d, 180-d)
}

// raysApart returns the angle between two vectors, 0 to 180 degrees.
func raysApart(u, v Point) float64 {
	return math.Abs(math.Atan2(u.Cross(v), u.Dot(v))) * 180 / math.Pi
}
