package plan

import "math"

// lookAcross is how far from the end of a finding a joint or crack beyond the
// shared line may end and still be named, metres; the caller judges the distance.
const lookAcross = 1.0

// inLine fills the joint or crack that ends on the other side of the joint or edge
// at which the finding stops.
func (t *traced) inLine() {
	best := lookAcross
	for _, e := range t.rel.Ends {
		if e.Reaches != "joint" {
			continue
		}
		shared := t.slab.joint(e.ID)
		inner, _ := t.inward(e.At)
		consider := func(id string, line Polyline) {
			if len(line) < 2 || line.Length() == 0 {
				return
			}
			for k := range 2 {
				at, head := heading(line, k == 1)
				_, onShared, off := Polyline(shared.Path).Nearest(at)
				_, mine, _ := Polyline(shared.Path).Nearest(e.At)
				if off > JointReach || !across(shared.Path, inner, at.Minus(head.Times(0.15))) {
					continue
				}
				if d := onShared.To(mine); d < best {
					best = d
					_, my := t.inward(e.At)
					t.rel.InLine = &InLine{ID: id, Shared: shared.ID, Distance: d,
						Angle: axesApart(axisDegrees(head), axisDegrees(my))}
				}
			}
		}
		for _, j := range t.slab.Joints {
			if j.ID != shared.ID {
				consider(j.ID, j.Path)
			}
		}
		for _, l := range t.others {
			consider("crack", l)
		}
	}
}

// inward returns a point of the longest line 150 mm in from one of its ends, and
// the direction there.
func (t *traced) inward(end Point) (Point, Point) {
	l := t.lines[t.longest]
	at, head := heading(l, end == l[len(l)-1] && end != l[0])
	return at.Minus(head.Times(0.15)), head
}

// across reports whether two points lie on opposite sides of a line.
func across(line Polyline, a, b Point) bool {
	side := func(p Point) int {
		best, at := math.Inf(1), Segment{}
		for _, s := range line.Pieces() {
			if _, d := s.Nearest(p); d < best {
				best, at = d, s
			}
		}
		return Turn(at.A, at.B, p)
	}
	return side(a)*side(b) < 0
}

func (s Slab) joint(id string) Joint {
	for _, j := range s.Joints {
		if j.ID == id {
			return j
		}
	}
	return Joint{}
}

// crossing fills the nearest crossing of two joints.
func (t *traced) crossing() {
	best := math.Inf(1)
	for _, c := range t.slab.Crossings() {
		d := t.least(func(p Point) float64 { return p.To(c.At) })
		if d >= best {
			continue
		}
		best = d
		a, b := t.slab.joint(c.Joints[0]).dowelled(), t.slab.joint(c.Joints[1]).dowelled()
		n := &NearCross{At: c.At, Joints: c.Joints, Tee: c.Tee, Distance: d}
		switch {
		case a != nil && b != nil:
			both := *a && *b
			n.Dowelled = &both
		case a != nil && !*a || b != nil && !*b:
			no := false
			n.Dowelled = &no
		}
		t.rel.Crossing = n
	}
}

// least returns the least of a measure over the finding's points and its lines'
// own points.
func (t *traced) least(measure func(Point) float64) float64 {
	best := math.Inf(1)
	for _, p := range t.points {
		best = math.Min(best, measure(p.at))
	}
	for _, l := range t.lines {
		for _, p := range l {
			best = math.Min(best, measure(p))
		}
	}
	return best
}

// follows fills the embedded line it lies over most and the wheel path it lies in
// most.
func (t *traced) follows() {
	consider := func(best **Share, id string, line Polyline, within float64) {
		if line.Length() == 0 {
			return
		}
		off := func(p Point) float64 { _, _, d := line.Nearest(p); return d }
		s := Share{ID: id, Distance: t.least(off), Share: t.share(func(p sample) bool { return off(p.at) <= within })}
		if *best == nil || s.Share > (*best).Share || s.Share == (*best).Share && s.Distance < (*best).Distance {
			*best = &s
		}
	}
	for _, f := range t.slab.Fixtures {
		if f.Kind == Duct {
			consider(&t.rel.Ducts, f.ID, f.line(), OverReach)
		}
	}
	for _, w := range t.slab.Wheels {
		consider(&t.rel.Wheels, w.ID, w.Path, w.Width/2)
	}
}

// fixture fills the nearest thing that may hold the slab.
func (t *traced) fixture() {
	best := math.Inf(1)
	for _, f := range t.slab.Fixtures {
		if f.Kind == Duct {
			continue
		}
		line := f.line()
		d := t.least(func(p Point) float64 {
			if f.isRing() && Ring(f.Shape).Contains(p) {
				return 0
			}
			_, _, off := line.Nearest(p)
			return off
		})
		if d < best {
			best = d
			t.rel.Fixture = &NearFixture{ID: f.ID, Kind: f.Kind, Distance: d, Isolated: f.Isolated.Or("")}
		}
	}
}

// cornerCut fills the corner of the panel that the longest line cuts off.
func (t *traced) cornerCut() {
	if t.panel == nil || t.longest < 0 {
		return
	}
	ring := t.panel.Ring
	e := ends(t.lines[t.longest])
	a, b := t.panel.sideNear(e[0]), t.panel.sideNear(e[1])
	n := len(ring)
	if a < 0 || b < 0 || a == b {
		return
	}
	var corner int
	switch {
	case (a+1)%n == b:
		corner = b
	case (b+1)%n == a:
		corner = a
	default:
		return
	}
	if ring.AngleAt(corner) > 150 {
		return // two lengths of one straight side
	}
	at := ring[corner]
	legs := [2]float64{e[0].To(at), e[1].To(at)}
	t.rel.Cut = &CornerCut{At: at, Legs: legs, Sides: [2]string{t.panel.Sides[a].On, t.panel.Sides[b].On},
		Area: Ring(append(append(Ring{}, t.lines[t.longest]...), at)).Area()}
}

// sideNear returns the side of the panel's ring nearest to p within EndReach, or
// -1.
func (p Panel) sideNear(q Point) int {
	best, at := EndReach, -1
	for i, s := range p.Sides {
		if _, d := s.Segment().Nearest(q); d < best {
			best, at = d, i
		}
	}
	return at
}
