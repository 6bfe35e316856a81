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
