package plan

import (
	"math"
	"sort"
)

// SharpBelow is the angle under which a panel corner is called sharp, degrees.
// Joint layout guides (ACI 302.1R, from memory) ask to avoid corners under 60.
const SharpBelow = 60.0

// sideOnTolerance is how far beside a joint or a fixture's line a side may run and
// still be on it, metres. Twice JointReach would catch a neighbouring groove.
const sideOnTolerance = JointReach

// panel returns the panel of a face.
func (s Slab) panel(net network, f face, corners []Corner) Panel {
	p := Panel{Sides: s.sides(net.ring(f.outer))}
	for _, side := range p.Sides {
		p.Ring = append(p.Ring, side.From)
	}
	p.Area = p.Ring.Area()
	moment := p.Ring.Centroid().Times(p.Area)
	for _, h := range net.rings(f.holes) {
		sides := s.sides(h.Anticlockwise())
		var hole Ring
		for _, side := range sides {
			hole = append(hole, side.From)
			if side.Fixture != "" && !contains(p.Around, side.Fixture) {
				p.Around = append(p.Around, side.Fixture)
			}
		}
		p.Openings = append(p.Openings, hole)
		p.Area -= hole.Area()
		moment = moment.Minus(hole.Centroid().Times(hole.Area()))
	}
	sort.Slice(p.Openings, func(i, j int) bool { return lower(p.Openings[i][0], p.Openings[j][0]) })
	sort.Strings(p.Around)
	p.Centroid = moment.Times(1 / p.Area)
	p.Length, p.Width, p.LongDirection, p.Rectangle = leastRectangle(p.Ring)
	p.Aspect = p.Length / p.Width
	p.InsideCorners = panelCorners(p, corners)
	p.SharpCorners = sharpCorners(p)
	return p
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

// lower orders points by height, then from left to right.
func lower(a, b Point) bool {
	if a.Y != b.Y {
		return a.Y < b.Y
	}
	return a.X < b.X
}

// sides returns the sides of a ring with what each is on, points in the middle of
// one straight side left out, starting at the lowest point.
func (s Slab) sides(r Ring) []Side {
	raw := make([]Side, len(r))
	for i, g := range r.Sides() {
		raw[i] = s.side(g)
	}
	// one point after another, each against what is left beside it: of two close
	// together at a bend, one has to stay
	kept := append([]Side{}, raw...)
	for i := 0; i < len(kept) && len(kept) > 2; {
		before, side := kept[(i+len(kept)-1)%len(kept)], kept[i]
		next := kept[(i+1)%len(kept)].From
		_, off := Segment{before.From, next}.Nearest(side.From)
		straight := off <= SnapTolerance/2 && raysApart(side.From.Minus(before.From), next.Minus(side.From)) < 90
		if straight && before.On == side.On {
			kept = append(kept[:i], kept[i+1:]...)
			continue
		}
		i++
	}
	if len(kept) < 3 {
		kept = raw
	}
	first := 0
	for i := range kept {
		if lower(kept[i].From, kept[first].From) {
			first = i
		}
	}
	kept = append(append([]Side{}, kept[first:]...), kept[:first]...)
	for i := range kept {
		kept[i].To = kept[(i+1)%len(kept)].From
	}
	return kept
}

// side names what a straight piece of a panel's ring is on: the joint that runs
// along it, else the fixture, else the free edge.
func (s Slab) side(g Segment) Side {
	side := Side{From: g.A, To: g.B, On: FreeEdge}
	best := sideOnTolerance
	for i, f := range s.Fixtures {
		if d := runsAlong(g, s.Fixtures[i].line()); d < best && f.Kind != Duct {
			best, side.Fixture = d, f.ID
		}
	}
	best = math.Max(SnapTolerance*2, math.Min(sideOnTolerance, g.Length()/4))
	for _, j := range s.Joints {
		if d := runsAlong(g, Polyline(j.Path)); d < best {
			best, side.Joint = d, j.ID
		}
	}
	switch {
	case side.Joint != "":
		side.On = side.Joint
	case side.Fixture != "":
		side.On = side.Fixture
	}
	return side
}

// line returns the fixture's shape as a line: closed where it is a ring.
func (f Fixture) line() Polyline {
	if f.isRing() {
		return Ring(f.Shape).closed()
	}
	return Polyline(f.Shape)
}

// isRing reports whether the shape is a closed one. A building, wall or duct is a
// line along the edge it touches unless its shape comes back to its start.
func (f Fixture) isRing() bool {
	if len(f.Shape) < 3 {
		return false
	}
	switch f.Kind {
	case Building, Wall, OldSlab, Duct:
		return f.Opening || f.Shape[0].To(f.Shape[len(f.Shape)-1]) <= SnapTolerance
	}
	return true
}

// runsAlong returns the distance from the middle of g to a line that runs within
// 10 degrees of it, or infinity where that is over sideOnTolerance.
func runsAlong(g Segment, line Polyline) float64 {
	mid := g.At(0.5)
	best := math.Inf(1)
	for i := 1; i < len(line); i++ {
		l := Segment{line[i-1], line[i]}
		if l.A == l.B || boxesApart(l, Segment{mid, mid}, sideOnTolerance) {
			continue // further off than any side counts as lying on it
		}
		t, d := l.Nearest(mid)
		if off := d; off < best && (t > 0 && t < 1 || d <= SnapTolerance) &&
			axesApart(axisDegrees(g.B.Minus(g.A)), axisDegrees(l.B.Minus(l.A))) <= 10 {
			best = off
		}
	}
	return best
}

// leastRectangle returns the rectangle of least area round the ring among those
// with a side along one of the ring's own sides: the engineer's "length by width"
// of a panel. Ties go to the first side from the ring's start.
func leastRectangle(r Ring) (length, width, direction float64, rectangle Ring) {
	least := math.Inf(1)
	for _, g := range r.Sides() {
		u, ok := g.B.Minus(g.A).Unit()
		if !ok {
			continue
		}
		v := u.Left()
		var low, high Point
		for i, p := range r {
			q := Point{p.Minus(r[0]).Dot(u), p.Minus(r[0]).Dot(v)}
			if i == 0 {
				low, high = q, q
			}
			low = Point{math.Min(low.X, q.X), math.Min(low.Y, q.Y)}
			high = Point{math.Max(high.X, q.X), math.Max(high.Y, q.Y)}
		}
		a, b := high.X-low.X, high.Y-low.Y
		if a*b >= least*(1-1e-9) {
			continue
		}
		least = a * b
		length, width, direction = a, b, axisDegrees(u)
		if b > a {
			length, width, direction = b, a, axisDegrees(v)
		}
		corner := func(x, y float64) Point { return r[0].Plus(u.Times(x)).Plus(v.Times(y)) }
		rectangle = Ring{corner(low.X, low.Y), corner(high.X, low.Y), corner(high.X, high.Y), corner(low.X, high.Y)}
	}
	return length, width, direction, rectangle
}
