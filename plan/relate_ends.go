package plan

import "math"

// endings fills what the ends of the longest line reach, and the share of all ends
// that reach something.
func (t *traced) endings() {
	if t.longest < 0 {
		return
	}
	all := t.slab.boundaries()
	corners := t.slab.InsideCorners()
	reached, count := 0, 0
	for i, l := range t.lines {
		for k := range 2 {
			e := endOf(l, k == 1, all)
			if len(corners) > 0 {
				_, d := nearestCorner(corners, e.At)
				e.Corner = value(d)
			}
			count++
			if e.Reaches != "" {
				reached++
			}
			if i == t.longest {
				t.rel.Ends = append(t.rel.Ends, e)
			}
		}
	}
	n := 0
	for _, e := range t.rel.Ends {
		if e.Reaches != "" {
			n++
		}
	}
	t.rel.Reaching = &n
	t.rel.AllReach = value(float64(reached) / float64(count))
}

// endOf returns one end of a line and the nearest thing it points at (or touches)
// within EndReach.
func endOf(l Polyline, last bool, all []boundary) End {
	at, heading := heading(l, last)
	e := End{At: at}
	best := math.Inf(1)
	for _, b := range all {
		if d, ok := reach(at, heading, b.line); ok && d < best-1e-9 {
			best = d
			e.Reaches, e.ID = b.reach, b.id
			e.Distance = value(d)
		}
	}
	return e
}

// heading returns an end of a line and the direction in which the line would go on
// beyond it, over its last 150 mm.
func heading(l Polyline, last bool) (Point, Point) {
	whole := l.Length()
	back := math.Min(0.15, whole)
	if last {
		before, _ := l.At(whole - back)
		at := l[len(l)-1]
		d, ok := at.Minus(before).Unit()
		if !ok {
			_, d = l.At(whole)
		}
		return at, d
	}
	after, _ := l.At(back)
	d, ok := l[0].Minus(after).Unit()
	if !ok {
		_, d = l.At(0)
		d = d.Times(-1)
	}
	return l[0], d
}

// reach returns how far a line is from an end that touches it, points at it, or
// has just crossed it; the distance is the shortest one, not that along the
// heading.
func reach(at, heading Point, line Polyline) (float64, bool) {
	_, _, d := line.Nearest(at)
	if d <= touchDistance {
		return d, true
	}
	if d > EndReach {
		return 0, false
	}
	const sideways = 2 // an end pointing 60 degrees off square still reaches
	ray := Segment{at, at.Plus(heading.Times(sideways * EndReach))}
	for _, s := range line.Pieces() {
		if _, _, ok := ray.Cross(s); ok {
			return d, true
		}
	}
	return 0, false
}

// corners fills the inside corner nearest to any end.
func (t *traced) corners() {
	all := t.slab.InsideCorners()
	if len(all) == 0 || t.longest < 0 {
		return
	}
	best := CornerStart{Distance: math.Inf(1)}
	for _, l := range t.lines {
		for k := range 2 {
			at, head := heading(l, k == 1)
			c, d := nearestCorner(all, at)
			if d >= best.Distance {
				continue
			}
			away := head.Times(-1) // into the line
			if d > touchDistance {
				mid, _ := l.At(l.Length() / 2)
				away = mid.Minus(c.At)
			}
			best = CornerStart{At: c.At, Fixture: c.Fixture, Distance: d, Starts: d <= CornerReach, Joint: c.Joint}
			if away.Norm() > 0 {
				best.Angles = &[2]float64{raysApart(away, c.Sides[0]), raysApart(away, c.Sides[1])}
			}
		}
	}
	t.rel.Corner = &best
}
