package plan

import "math"

// boundary is one line of the plan at which a crack may stop or beside which it
// may run.
type boundary struct {
	id, reach, kind string // reach: joint, edge or fixture
	line            Polyline
	edge            bool // concrete is free or was formed here
}

// boundaries returns the joints, the fixtures' lines and the edges of the slab.
func (s Slab) boundaries() []boundary {
	var all []boundary
	for _, j := range s.Joints {
		all = append(all, boundary{j.ID, "joint", string(j.Kind), j.Path, j.Kind != Sawn})
	}
	for _, f := range s.Fixtures {
		if f.Kind != Duct {
			all = append(all, boundary{f.ID, "fixture", string(f.Kind), f.line(), f.Opening})
		}
	}
	all = append(all, boundary{FreeEdge, "edge", "edge", Ring(s.Outline).closed(), true})
	return all
}

// nearLines fills the nearest joint and edge, and the nearest of each that the
// finding runs along.
func (t *traced) nearLines() {
	r := t.rel
	for _, b := range t.slab.boundaries() {
		if b.line.Length() == 0 {
			continue
		}
		n := t.near(b)
		beside, runs := t.beside(b)
		if b.reach == "joint" {
			r.Joint = nearer(r.Joint, n)
			if runs {
				r.Beside = nearerMean(r.Beside, beside)
			}
		}
		if b.edge {
			r.Edge = nearer(r.Edge, n)
			if runs {
				r.BesideEdge = nearerMean(r.BesideEdge, beside)
			}
		}
	}
}

func (t *traced) total() float64 {
	var sum float64
	for _, p := range t.points {
		sum += p.length
	}
	return sum
}

func nearer(best *NearLine, n NearLine) *NearLine {
	if best == nil || n.Distance < best.Distance {
		return &n
	}
	return best
}

func nearerMean(best *NearLine, n NearLine) *NearLine {
	if best == nil || n.Mean < best.Mean {
		return &n
	}
	return best
}

// near measures the finding against one line: least and mean distance and angle,
// and the length over which it runs along it.
func (t *traced) near(b boundary) NearLine {
	n := NearLine{ID: b.id, Kind: b.kind, Distance: math.Inf(1)}
	for _, l := range t.lines {
		n.Distance = math.Min(n.Distance, l.Distance(b.line))
	}
	pieces := b.line.Pieces()
	var weight, angle float64
	for _, p := range t.points {
		s, _, d := closest(pieces, p.at)
		n.Distance = math.Min(n.Distance, d)
		n.Mean += d * p.length
		weight += p.length
		if t.rel.Direction != nil {
			angle += t.angleTo(s) * p.length
		}
	}
	n.Mean /= weight
	if t.rel.Direction != nil {
		n.Angle = value(angle / weight)
	}
	along, _ := t.beside(b)
	n.Overlap = along.Overlap
	n.Share = t.ofPanel(n.Mean)
	return n
}

// beside measures the finding against those pieces of a line that run its way,
// where it has one abreast; it runs along the line when that is so for half its
// length or more.
func (t *traced) beside(b boundary) (NearLine, bool) {
	n := NearLine{ID: b.id, Kind: b.kind, Distance: math.Inf(1)}
	pieces := t.parallel(b.line.Pieces())
	var angle float64
	for _, p := range t.points {
		s, share, d := closest(pieces, p.at)
		if share <= 0 || share >= 1 {
			continue
		}
		n.Overlap += p.length
		n.Mean += d * p.length
		n.Distance = math.Min(n.Distance, d)
		angle += t.angleTo(s) * p.length
	}
	if n.Overlap == 0 || n.Overlap < t.total()/2 {
		return n, false
	}
	n.Mean /= n.Overlap
	n.Angle = value(angle / n.Overlap)
	n.Share = t.ofPanel(n.Mean)
	return n, true
}

func (t *traced) ofPanel(length float64) *float64 {
	if t.panel == nil {
		return nil
	}
	return value(length / t.panel.Length)
}

// parallel returns the pieces within BesideAngle of the finding's direction.
func (t *traced) parallel(pieces []Segment) []Segment {
	if t.rel.Direction == nil {
		return nil
	}
	var kept []Segment
	for _, s := range pieces {
		if t.angleTo(s) <= BesideAngle {
			kept = append(kept, s)
		}
	}
	return kept
}

func (t *traced) angleTo(s Segment) float64 {
	return axesApart(*t.rel.Direction, axisDegrees(s.B.Minus(s.A)))
}

// closest returns the piece nearest to p, how far along it, and the distance; an
// infinite distance when there are none.
func closest(pieces []Segment, p Point) (at Segment, share, distance float64) {
	distance = math.Inf(1)
	for _, s := range pieces {
		if u, d := s.Nearest(p); d < distance {
			at, share, distance = s, u, d
		}
	}
	return at, share, distance
}

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
