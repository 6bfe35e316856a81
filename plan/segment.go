package plan

import "math"

// Segment is a straight piece from A to B.
type Segment struct{ A, B Point }

// Length returns the length of the segment.
func (s Segment) Length() float64 { return s.A.To(s.B) }

// At returns the point at share t of the way from A to B.
func (s Segment) At(t float64) Point { return between(s.A, s.B, t) }

// Nearest returns the share t (0 to 1) of the segment's point nearest to p, and its
// distance.
func (s Segment) Nearest(p Point) (t, distance float64) {
	d := s.B.Minus(s.A)
	if n := d.Dot(d); n > 0 {
		t = math.Max(0, math.Min(1, p.Minus(s.A).Dot(d)/n))
	}
	return t, p.To(s.At(t))
}

// Distance returns the shortest distance between two segments, 0 where they meet.
func (s Segment) Distance(o Segment) float64 {
	if _, _, ok := s.Cross(o); ok {
		return 0
	}
	_, a := s.Nearest(o.A)
	_, b := s.Nearest(o.B)
	_, c := o.Nearest(s.A)
	_, d := o.Nearest(s.B)
	return math.Min(math.Min(a, b), math.Min(c, d))
}

// Cross returns where two segments cross or touch, as shares t of s and u of o.
// Whether they do is decided exactly; where they lie along one line, ok is false
// (their ends are found by Nearest).
func (s Segment) Cross(o Segment) (t, u float64, ok bool) {
	a, b := Turn(s.A, s.B, o.A), Turn(s.A, s.B, o.B)
	c, d := Turn(o.A, o.B, s.A), Turn(o.A, o.B, s.B)
	if a*b > 0 || c*d > 0 || (a == 0 && b == 0) || (c == 0 && d == 0) {
		return 0, 0, false
	}
	v, w := s.B.Minus(s.A), o.B.Minus(o.A)
	den := v.Cross(w)
	if den == 0 {
		return 0, 0, false
	}
	r := o.A.Minus(s.A)
	t = math.Max(0, math.Min(1, r.Cross(w)/den))
	u = math.Max(0, math.Min(1, r.Cross(v)/den))
	return t, u, true
}

// Overlap returns the length over which two segments lie within tol of one
// another, both ends of the stretch judged on s.
func (s Segment) Overlap(o Segment, tol float64) float64 {
	d, ok := s.B.Minus(s.A).Unit()
	if !ok {
		return 0
	}
	offset := func(p Point) (along, off float64) {
		r := p.Minus(s.A)
		return r.Dot(d), math.Abs(d.Cross(r))
	}
	p, po := offset(o.A)
	q, qo := offset(o.B)
	if po > tol || qo > tol {
		return 0
	}
	lo, hi := math.Max(0, math.Min(p, q)), math.Min(s.Length(), math.Max(p, q))
	return math.Max(0, hi-lo)
}
