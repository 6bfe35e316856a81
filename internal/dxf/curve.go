package dxf

import "math"

// widestStep is the largest turn of one chord, however small the circle: twelve
// chords all round at least.
const widestStep = math.Pi / 6

// mostChords bounds the chords of one curve, so that a tolerance far below the size
// of a drawing cannot fill the memory.
const mostChords = 20_000

// chords returns into how many equal steps a turn about a circle of so large a
// radius is parted so that no chord is further from the arc than tol: the rise of an
// arc over its chord is r·(1 − cos(step/2)).
func chords(turn, radius, tol float64) int {
	step := widestStep
	if radius > 0 && tol < radius {
		step = min(step, 2*math.Acos(1-tol/radius))
	}
	n := math.Ceil(math.Abs(turn)/step - 1e-9)
	if !(n < mostChords) {
		return mostChords
	}
	return max(int(n), 1)
}

// arcPoints returns the ends of the chords from angle a through a turn, both in
// radians, on the ellipse centre + major·cos + minor·sin.
func arcPoints(centre, major, minor vector, a, turn, tol float64) []vector {
	n := chords(turn, max(major.norm(), minor.norm()), tol)
	points := make([]vector, n+1)
	for i := range points {
		s, c := math.Sincos(a + turn*float64(i)/float64(n))
		points[i] = centre.plus(major.times(c)).plus(minor.times(s))
	}
	return points
}

// bulged returns the chords of the arc from p to q after p itself. The bulge is the
// tangent of a quarter of the arc's turn, above zero anticlockwise.
func bulged(p, q vector, bulge, tol float64) []vector {
	chord := q.minus(p)
	length := math.Hypot(chord.x, chord.y)
	if bulge == 0 || length == 0 || math.IsInf(bulge*bulge, 0) {
		return []vector{q}
	}
	turn := 4 * math.Atan(bulge)
	radius := length * (1 + bulge*bulge) / (4 * math.Abs(bulge))
	// from the middle of the chord to the centre, to the left of p → q
	off := (1 - bulge*bulge) / (4 * bulge)
	centre := between(p, q, 0.5).plus(vector{-chord.y, chord.x, 0}.times(off))
	if math.IsInf(radius, 0) || radius > 1e9*length {
		return []vector{q}
	}
	from := math.Atan2(p.y-centre.y, p.x-centre.x)
	arc := arcPoints(centre, vector{x: radius}, vector{y: radius}, from, turn, tol)
	arc[len(arc)-1] = q
	return arc[1:]
}
