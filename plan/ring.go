package plan

import "math"

// Ring is a closed line of points, either way round, the last joined to the first.
type Ring []Point

// Sides returns the sides of the ring in order, the i-th from point i.
func (r Ring) Sides() []Segment {
	sides := make([]Segment, 0, len(r))
	for i, p := range r {
		sides = append(sides, Segment{p, r[(i+1)%len(r)]})
	}
	return sides
}

// SignedArea returns the area, positive where the ring runs anticlockwise. The
// products are taken about the first point, so that a slab far from the origin
// keeps its digits.
func (r Ring) SignedArea() float64 {
	var twice float64
	for i := 1; i+1 < len(r); i++ {
		twice += r[i].Minus(r[0]).Cross(r[i+1].Minus(r[0]))
	}
	return twice / 2
}

// Area returns the area without its sign.
func (r Ring) Area() float64 { return math.Abs(r.SignedArea()) }

// Perimeter returns the length all round.
func (r Ring) Perimeter() float64 {
	var sum float64
	for _, s := range r.Sides() {
		sum += s.Length()
	}
	return sum
}

// Centroid returns the centre of area; of a ring without area, the mean of its
// points.
func (r Ring) Centroid() Point {
	if len(r) == 0 {
		return Point{}
	}
	var sum Point
	var twice float64
	for i := 1; i+1 < len(r); i++ {
		a, b := r[i].Minus(r[0]), r[i+1].Minus(r[0])
		w := a.Cross(b)
		twice += w
		sum = sum.Plus(a.Plus(b).Times(w / 3))
	}
	if math.Abs(twice) < 1e-15 {
		return mean(r)
	}
	return r[0].Plus(sum.Times(1 / twice))
}

func mean(points []Point) Point {
	var sum Point
	for _, p := range points {
		sum = sum.Plus(p)
	}
	return sum.Times(1 / float64(len(points)))
}

// Anticlockwise returns the ring running anticlockwise; it may be the ring itself.
func (r Ring) Anticlockwise() Ring {
	if r.SignedArea() >= 0 {
		return r
	}
	turned := make(Ring, len(r))
	for i, p := range r {
		turned[len(r)-1-i] = p
	}
	return turned
}

// Contains reports whether p lies inside the ring or on it. The count of
// crossings uses exact turns, so a point is never inside two panels that share a
// side unless it is on that side.
func (r Ring) Contains(p Point) bool {
	inside := false
	for i, a := range r {
		s := Segment{a, r[(i+1)%len(r)]}
		// only a side that spans the height of p can count, and of those only the ones
		// with p in their box need the exact turn
		if p.Y < math.Min(s.A.Y, s.B.Y) || p.Y > math.Max(s.A.Y, s.B.Y) || p.X > math.Max(s.A.X, s.B.X) {
			continue
		}
		crosses := (s.A.Y > p.Y) != (s.B.Y > p.Y)
		if p.X < math.Min(s.A.X, s.B.X) {
			if crosses {
				inside = !inside
			}
			continue
		}
		turn := Turn(s.A, s.B, p)
		if turn == 0 && onBox(s, p) {
			return true
		}
		if crosses && (turn > 0) == (s.B.Y > s.A.Y) {
			inside = !inside
		}
	}
	return inside
}

func onBox(s Segment, p Point) bool {
	return p.X >= math.Min(s.A.X, s.B.X) && p.X <= math.Max(s.A.X, s.B.X) &&
		p.Y >= math.Min(s.A.Y, s.B.Y) && p.Y <= math.Max(s.A.Y, s.B.Y)
}

// Distance returns the distance from p to the line of the ring.
func (r Ring) Distance(p Point) float64 {
	best := math.Inf(1)
	for _, s := range r.Sides() {
		_, d := s.Nearest(p)
		best = math.Min(best, d)
	}
	return best
}

// Box returns the lower left and upper right of the ring along the axes.
func (r Ring) Box() (low, high Point) {
	low, high = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, p := range r {
		low = Point{math.Min(low.X, p.X), math.Min(low.Y, p.Y)}
		high = Point{math.Max(high.X, p.X), math.Max(high.Y, p.Y)}
	}
	return low, high
}

// AngleAt returns the angle inside the ring at its i-th point, 0 to 360 degrees,
// for a ring running anticlockwise.
func (r Ring) AngleAt(i int) float64 {
	n := len(r)
	back, on := r[(i+n-1)%n].Minus(r[i]), r[(i+1)%n].Minus(r[i])
	a := math.Atan2(on.Cross(back), on.Dot(back)) * 180 / math.Pi
	if a < 0 {
		a += 360
	}
	return a
}
