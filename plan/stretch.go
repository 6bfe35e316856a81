package plan

import (
	"math"
	"sort"
)

// stretch is a piece of a straight line, by distance along it.
type stretch struct{ from, to float64 }

// cut returns the stretches of the straight line through p along d (of length 1)
// that lie inside the ring, in order.
func cut(p, d Point, r Ring) []stretch {
	var at []float64
	for _, s := range r.Sides() {
		a, b := d.Cross(s.A.Minus(p)), d.Cross(s.B.Minus(p))
		if (a > 0) == (b > 0) {
			continue
		}
		q := s.At(a / (a - b))
		at = append(at, q.Minus(p).Dot(d))
	}
	sort.Float64s(at)
	var inside []stretch
	for i := 0; i+1 < len(at); i += 2 {
		inside = append(inside, stretch{at[i], at[i+1]})
	}
	return inside
}

// less returns what is left of a without b; both are in order.
func less(a, b []stretch) []stretch {
	var left []stretch
	for _, s := range a {
		from := s.from
		for _, h := range b {
			if h.to <= from || h.from >= s.to {
				continue
			}
			if h.from > from {
				left = append(left, stretch{from, h.from})
			}
			from = h.to
		}
		if from < s.to {
			left = append(left, stretch{from, s.to})
		}
	}
	return left
}

// both returns what is in a and in b; both are in order.
func both(a, b []stretch) []stretch {
	var in []stretch
	for _, s := range a {
		for _, o := range b {
			if lo, hi := math.Max(s.from, o.from), math.Min(s.to, o.to); hi > lo {
				in = append(in, stretch{lo, hi})
			}
		}
	}
	return in
}

func total(all []stretch) float64 {
	var sum float64
	for _, s := range all {
		sum += s.to - s.from
	}
	return sum
}

// OverlapArea returns the area common to two rings. Between the heights where
// sides start, end or cross, the common width changes along a straight line, so
// its value at mid-height times the height is exact.
func OverlapArea(a, b Ring) float64 {
	var heights []float64
	for _, r := range []Ring{a, b} {
		for _, p := range r {
			heights = append(heights, p.Y)
		}
	}
	for _, s := range a.Sides() {
		for _, o := range b.Sides() {
			if t, _, ok := s.Cross(o); ok {
				heights = append(heights, s.At(t).Y)
			}
		}
	}
	sort.Float64s(heights)
	var area float64
	for i := 1; i < len(heights); i++ {
		rise := heights[i] - heights[i-1]
		if rise <= 0 {
			continue
		}
		p := Point{0, heights[i-1] + rise/2}
		area += rise * total(both(cut(p, Point{1, 0}, a), cut(p, Point{1, 0}, b)))
	}
	return area
}
