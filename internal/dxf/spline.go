package dxf

import "math"

// spline is a rational B-spline as the file gives it.
type spline struct {
	degree  int
	knots   []float64 // control points + degree + 1, rising
	control []vector
	weights []float64 // one a control point; empty: all alike
}

// why returns what keeps the spline from being drawn, empty for a sound one.
func (s spline) why() string {
	switch {
	case s.degree < 1 || s.degree > 15:
		return "a degree from 1 to 15"
	case len(s.control) <= s.degree:
		return "more control points than the degree"
	case len(s.knots) != len(s.control)+s.degree+1:
		return "as many knots as control points, degree and one together"
	case len(s.weights) > 0 && len(s.weights) != len(s.control):
		return "a weight for each control point"
	}
	for i := 1; i < len(s.knots); i++ {
		if s.knots[i] < s.knots[i-1] {
			return "knots that never fall"
		}
	}
	for _, w := range s.weights {
		if !(w > 0) {
			return "weights above zero"
		}
	}
	if !(s.knots[len(s.control)] > s.knots[s.degree]) {
		return "knots that rise"
	}
	return ""
}

// at evaluates the curve in knot span k (knots[k] ≤ u ≤ knots[k+1]) by de Boor's
// steps on weighted points. Source: C. de Boor, A Practical Guide to Splines, ch. X
// (from memory).
func (s spline) at(k int, u float64) vector {
	p := s.degree
	points, weights := make([]vector, p+1), make([]float64, p+1)
	for i := range points {
		w := 1.0
		if len(s.weights) > 0 {
			w = s.weights[k-p+i]
		}
		points[i], weights[i] = s.control[k-p+i].times(w), w
	}
	for r := 1; r <= p; r++ {
		for i := p; i >= r; i-- {
			low, high := s.knots[k-p+i], s.knots[k+1+i-r]
			t := 0.0
			if high > low {
				t = (u - low) / (high - low)
			}
			points[i] = between(points[i-1], points[i], t)
			weights[i] += (t - 1) * (weights[i] - weights[i-1])
		}
	}
	return points[p].times(1 / weights[p])
}

// points returns the ends of chords no further from the curve than tol, judged at
// three places within each.
func (s spline) points(tol float64) []vector {
	const piecesPerSpan, deepest = 4, 10
	var out []vector
	for k := s.degree; k < len(s.control); k++ {
		from, to := s.knots[k], s.knots[k+1]
		if !(to > from) {
			continue
		}
		if len(out) == 0 {
			out = append(out, s.at(k, from))
		}
		for i := range piecesPerSpan {
			a := from + (to-from)*float64(i)/piecesPerSpan
			b := from + (to-from)*float64(i+1)/piecesPerSpan
			out = s.split(out, k, a, b, s.at(k, b), tol, deepest)
		}
	}
	return out
}

// split adds the curve from the last point to end, cut in two while a chord would
// run too far from it.
func (s spline) split(out []vector, k int, a, b float64, end vector, tol float64, deep int) []vector {
	start := out[len(out)-1]
	if deep == 0 || len(out) > mostChords || s.near(k, a, b, start, end, tol) {
		return append(out, end)
	}
	mid := (a + b) / 2
	out = s.split(out, k, a, mid, s.at(k, mid), tol, deep-1)
	return s.split(out, k, mid, b, end, tol, deep-1)
}

func (s spline) near(k int, a, b float64, start, end vector, tol float64) bool {
	for _, t := range []float64{0.25, 0.5, 0.75} {
		if off(s.at(k, a+t*(b-a)), start, end) > tol {
			return false
		}
	}
	return true
}

// off returns the distance from p to the straight piece from a to b.
func off(p, a, b vector) float64 {
	d, r := b.minus(a), p.minus(a)
	n := d.x*d.x + d.y*d.y + d.z*d.z
	if n == 0 {
		return r.norm()
	}
	t := math.Max(0, math.Min(1, (r.x*d.x+r.y*d.y+r.z*d.z)/n))
	return p.to(between(a, b, t))
}
