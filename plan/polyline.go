package plan

import "math"

// Polyline is an open line of points.
type Polyline []Point

// Pieces returns the straight pieces of the line, those without length left out.
func (l Polyline) Pieces() []Segment {
	var pieces []Segment
	for i := 1; i < len(l); i++ {
		if l[i] != l[i-1] {
			pieces = append(pieces, Segment{l[i-1], l[i]})
		}
	}
	return pieces
}

// Length returns the length along the line.
func (l Polyline) Length() float64 {
	var sum float64
	for _, s := range l.Pieces() {
		sum += s.Length()
	}
	return sum
}

// At returns the point so far along the line and the direction there; before the
// start and after the end it stays at the end points.
func (l Polyline) At(along float64) (Point, Point) {
	pieces := l.Pieces()
	if len(pieces) == 0 {
		if len(l) == 0 {
			return Point{}, Point{}
		}
		return l[0], Point{}
	}
	for i, s := range pieces {
		n := s.Length()
		if along <= n || i == len(pieces)-1 {
			d, _ := s.B.Minus(s.A).Unit()
			return s.At(math.Max(0, math.Min(1, along/n))), d
		}
		along -= n
	}
	panic("plan: Polyline.At ran past its last piece")
}

// Nearest returns how far along the line its point nearest to p is, that point, and
// its distance (infinite for a line without length).
func (l Polyline) Nearest(p Point) (along float64, at Point, distance float64) {
	distance = math.Inf(1)
	var run float64
	for _, s := range l.Pieces() {
		if t, d := s.Nearest(p); d < distance {
			along, at, distance = run+t*s.Length(), s.At(t), d
		}
		run += s.Length()
	}
	return along, at, distance
}

// Distance returns the shortest distance between two lines.
func (l Polyline) Distance(o Polyline) float64 {
	best := math.Inf(1)
	for _, a := range l.Pieces() {
		for _, b := range o.Pieces() {
			best = math.Min(best, a.Distance(b))
		}
	}
	return best
}

// closed returns the ring as a line that comes back to its start.
func (r Ring) closed() Polyline {
	if len(r) == 0 {
		return nil
	}
	return append(append(Polyline{}, r...), r[0])
}

// sample is a point of a line, standing for so much length, with the direction
// there.
type sample struct {
	at     Point
	dir    Point
	length float64
}

// samples returns points at the middle of equal steps no longer than step, each
// straight piece stepped on its own so that corners are kept.
func (l Polyline) samples(step float64) []sample {
	var all []sample
	for _, s := range l.Pieces() {
		n := int(math.Ceil(s.Length()/step - 1e-9))
		n = max(n, 1)
		d, _ := s.B.Minus(s.A).Unit()
		for i := range n {
			all = append(all, sample{s.At((float64(i) + 0.5) / float64(n)), d, s.Length() / float64(n)})
		}
	}
	return all
}
