package layout

import (
	"math"

	"slabwright/plan"
)

// fans returns the fan frames of an outline.
func fans(s plan.Slab, ring plan.Ring) []frame {
	var out []frame
	add := func(f frame, ok bool) {
		if ok && usableFan(f.origin, s) {
			out = append(out, f)
		}
	}
	add(curveFan(ring))
	add(wedgeFan(ring))
	return out
}

// curveFan returns the fan about the centre of the longest curved run of sides: three
// sides or more that turn the same way, each by less than 31 degrees.
func curveFan(ring plan.Ring) (frame, bool) {
	sides := ring.Sides()
	n := len(sides)
	turn := func(i int) float64 {
		a, b := sides[i%n], sides[(i+1)%n]
		return math.Atan2(a.B.Minus(a.A).Cross(b.B.Minus(b.A)), a.B.Minus(a.A).Dot(b.B.Minus(b.A))) * 180 / math.Pi
	}
	bestFrom, bestCount, bestTurn := 0, 0, 0.0
	for i := range n {
		sign, count, total := 0.0, 0, 0.0
		for k := 0; k < n; k++ {
			t := turn(i + k)
			if math.Abs(t) < 1 || math.Abs(t) > 31 || sign*t < 0 {
				break
			}
			sign, count, total = t, count+1, total+math.Abs(t)
		}
		if total > bestTurn+1e-9 {
			bestFrom, bestCount, bestTurn = i, count, total
		}
	}
	if bestCount < 2 || bestTurn < 25 {
		return frame{}, false
	}
	points := make([]plan.Point, 0, bestCount)
	for k := 0; k < bestCount; k++ {
		points = append(points, sides[(bestFrom+k)%n].B)
	}
	if bestCount < n {
		points = append([]plan.Point{sides[bestFrom].A}, append(points, sides[(bestFrom+bestCount)%n].B)...)
	}
	centre, ok := circleCentre(points)
	return fanAbout(centre, ring), ok
}

// circleCentre returns the centre of the circle through the first, middle and last of
// some points on an arc.
func circleCentre(points []plan.Point) (plan.Point, bool) {
	p, q, r := points[0], points[len(points)/3], points[2*len(points)/3]
	a, b := q.Minus(p), r.Minus(p)
	d := 2 * a.Cross(b)
	if math.Abs(d) < 1e-6 {
		return plan.Point{}, false
	}
	aa, bb := a.Dot(a), b.Dot(b)
	return p.Plus(plan.Point{X: (b.Y*aa - a.Y*bb) / d, Y: (a.X*bb - b.X*aa) / d}), true
}

// wedgeFan returns the fan about the meeting point of the two longest sides when
// they are 8 to 60 degrees out of parallel.
func wedgeFan(ring plan.Ring) (frame, bool) {
	sides := ring.Sides()
	first, second := -1, -1
	for i, s := range sides {
		switch {
		case first < 0 || s.Length() > sides[first].Length():
			first, second = i, first
		case second < 0 || s.Length() > sides[second].Length():
			second = i
		}
	}
	a, b := sides[first], sides[second]
	da, _ := a.B.Minus(a.A).Unit()
	db, _ := b.B.Minus(b.A).Unit()
	sine := da.Cross(db)
	if angle := math.Asin(math.Min(1, math.Abs(sine))) * 180 / math.Pi; angle < 8 || angle > 60 {
		return frame{}, false
	}
	t := b.A.Minus(a.A).Cross(db) / sine
	centre := a.A.Plus(da.Times(t))
	return fanAbout(centre, ring), true
}

// usableFan reports whether the slab keeps clear of the centre: rays that meet in
// concrete leave slivers.
func usableFan(centre plan.Point, s plan.Slab) bool {
	g := newGround(s, nil)
	nearest := math.Inf(1)
	for _, side := range g.sides {
		_, d := side.Nearest(centre)
		nearest = math.Min(nearest, d)
	}
	return !g.inside(centre) && nearest > 2 && nearest < 200
}

// fanAbout returns the fan about a centre, its first ray through the middle of the
// outline and true lengths at the outer edge.
func fanAbout(centre plan.Point, ring plan.Ring) frame {
	f := frame{fan: true, origin: centre}
	axis, ok := ring.Centroid().Minus(centre).Unit()
	if !ok {
		axis = plan.Point{X: 1}
	}
	f.axis = axis
	for _, p := range ring {
		f.ref = math.Max(f.ref, p.To(centre))
	}
	return f
}
