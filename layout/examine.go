package layout

import (
	"math"

	"slabwright/plan"
)

// AspectWanted is the greatest ratio of long to short side that a panel should have.
//
// Source: ACI 302.1R, seen in an excerpt.
const AspectWanted = 1.5

// mostBend is the turn of a joint, degrees, up to which it is called a bend; a
// sharper one, such as the point of a block-out, is an inside corner of the panel.
const mostBend = 45

// fillWanted is the least share of its least rectangle that a panel should fill.
// Chosen by the project: a square with a quarter cut away.
const fillWanted = 0.75

// examined is a slab with joints, its panels, and where rules are not met.
type examined struct {
	slab     plan.Slab
	panels   []plan.Panel
	block    []bool // panels between a block-out and what it surrounds
	breaches []breach
}

// examine divides a slab and holds its panels and joints against the rules that can be
// seen in plan.
func examine(s plan.Slab, limit float64) (*examined, error) {
	panels, err := s.Panels()
	if err != nil {
		return nil, err
	}
	e := &examined{slab: s, panels: panels, block: make([]bool, len(panels))}
	kinds := map[string]plan.JointKind{}
	for _, j := range s.Joints {
		kinds[j.ID] = j.Kind
	}
	for i, p := range panels {
		e.block[i] = blockOut(p, s, kinds)
	}
	for i, p := range panels {
		if !e.block[i] {
			e.panel(p, limit)
		}
	}
	e.rounds()
	e.ends(kinds)
	return e, nil
}

// blockOut reports whether a panel is the piece between a fixture and the isolation
// joint round it: small, and on joints that are all isolation.
func blockOut(p plan.Panel, s plan.Slab, kinds map[string]plan.JointKind) bool {
	if p.Area > 9 {
		return false
	}
	isolated := false
	for _, side := range p.Sides {
		switch {
		case side.Joint != "" && kinds[side.Joint] == plan.Isolation:
			isolated = true
		case side.Joint != "":
			return false
		}
	}
	if !isolated {
		return false
	}
	for _, f := range s.Fixtures {
		if f.Kind != plan.Column && f.Kind != plan.Pit && f.Kind != plan.Drain || len(f.Shape) < 3 {
			continue
		}
		for _, at := range f.Shape {
			if p.Ring.Contains(at) || p.Ring.Distance(at) < plan.JointReach {
				return true
			}
		}
	}
	return false
}

func (e *examined) add(b breach) { e.breaches = append(e.breaches, b) }

// panel holds one panel against the rules of its shape.
func (e *examined) panel(p plan.Panel, limit float64) {
	on := func(rule string, at plan.Point, value float64) {
		e.add(breach{rule: rule, panel: p.ID, at: at, value: value})
	}
	if w, at, ok := sliverOf(p); ok {
		on("sliver", at, w)
	}
	for _, c := range p.SharpCorners {
		if joint := jointAt(p, c.At); joint != "" {
			e.add(breach{rule: "sharp", panel: p.ID, joint: joint, at: c.At, value: c.Angle})
		}
	}
	for _, c := range p.InsideCorners {
		switch joint := bendOf(p, c.At); {
		case joint != "" && c.Angle < 180+mostBend:
			e.add(breach{rule: "bend", panel: p.ID, joint: joint, at: c.At, value: c.Angle - 180})
		case c.Joint != "" && c.Off < fuzz && c.Ends: // a joint starts here, though it may part no panel yet
		case !c.Round && plan.Ring(e.slab.Outline).Distance(c.At) > plan.CornerReach || c.Edge:
			e.add(breach{rule: e.cornerRule(c.Fixture), panel: p.ID, fixture: c.Fixture, at: c.At, value: c.Angle})
		}
	}
	if p.Length > limit*1.001 {
		on("spacing", p.Centroid, p.Length)
	}
	if p.Aspect > AspectWanted+1e-6 {
		on("aspect", p.Centroid, p.Aspect)
	}
	if fill := p.Ring.Area() / (p.Length * p.Width); fill < fillWanted {
		on("shape", p.Centroid, fill)
	}
}

// cornerRule returns the rule for an inside corner without a joint: bars across it are
// a second best.
func (e *examined) cornerRule(fixture string) string {
	for _, f := range e.slab.Fixtures {
		if f.ID == fixture && fixture != "" && f.Trimmers.Is("yes") {
			return "bars"
		}
	}
	return "corner"
}

// sliverOf returns the least width of a panel and where, when that is under the rule
// and a joint makes it: where the concrete itself is narrow no joint can help.
func sliverOf(p plan.Panel) (float64, plan.Point, bool) {
	worst, at := narrowest-1e-3, plan.Point{}
	found := false
	for i, a := range p.Sides {
		for _, b := range p.Sides[i+1:] {
			if a.Joint == "" && b.Joint == "" {
				continue
			}
			if w, middle, ok := facing(a.Segment(), b.Segment()); ok && w < worst {
				worst, at, found = w, middle, true
			}
		}
	}
	if p.Width < worst && jointed(p) {
		return p.Width, p.Centroid, true
	}
	return worst, at, found
}

// jointed reports whether a joint lies along one of the panel's long sides.
func jointed(p plan.Panel) bool {
	way := plan.Direction(p.LongDirection)
	for _, s := range p.Sides {
		d, ok := s.To.Minus(s.From).Unit()
		if ok && s.Joint != "" && math.Abs(d.Cross(way)) < 0.3 && s.Segment().Length() > p.Length/4 {
			return true
		}
	}
	return false
}

// facing returns how far apart two sides of a panel are that run opposite ways beside
// one another for 0.2 m or more, and the place between them.
func facing(a, b plan.Segment) (float64, plan.Point, bool) {
	d, ok := a.B.Minus(a.A).Unit()
	e, ok2 := b.B.Minus(b.A).Unit()
	if !ok || !ok2 || d.Dot(e) > -0.95 {
		return 0, plan.Point{}, false
	}
	t0, t1 := b.B.Minus(a.A).Dot(d), b.A.Minus(a.A).Dot(d)
	from, to := math.Max(0, t0), math.Min(a.Length(), t1)
	if to-from < 0.2 {
		return 0, plan.Point{}, false
	}
	middle := a.A.Plus(d.Times((from + to) / 2))
	t, w := b.Nearest(middle)
	if middle.Minus(b.At(t)).Dot(d.Left()) > 0 {
		return 0, plan.Point{}, false // back to back: what lies between is not this panel
	}
	return w, plan.Segment{A: middle, B: b.At(t)}.At(0.5), true
}

// jointAt returns a joint that one of the two sides at a corner of the panel is on.
func jointAt(p plan.Panel, at plan.Point) string {
	for _, s := range p.Sides {
		if s.Joint != "" && (s.From.To(at) <= plan.SnapTolerance || s.To.To(at) <= plan.SnapTolerance) {
			return s.Joint
		}
	}
	return ""
}

// bendOf returns the joint that both sides at a corner are on: its own bend.
func bendOf(p plan.Panel, at plan.Point) string {
	var joints []string
	for _, s := range p.Sides {
		if s.From.To(at) <= plan.SnapTolerance || s.To.To(at) <= plan.SnapTolerance {
			joints = append(joints, s.Joint)
		}
	}
	if len(joints) == 2 && joints[0] != "" && joints[0] == joints[1] {
		return joints[0]
	}
	return ""
}

// rounds looks at large round openings: one whose ring no two joints meet holds the
// slab back all round.
func (e *examined) rounds() {
	for _, f := range e.slab.Fixtures {
		if !isHole(f) || len(f.Shape) <= 8 {
			continue
		}
		ring := closed(f.Shape)
		met, enclosed := 0, false
		for _, j := range e.slab.Joints {
			for _, end := range []plan.Point{j.Path[0], j.Path[len(j.Path)-1]} {
				if _, _, d := ring.Nearest(end); d <= plan.CornerReach {
					met++
				}
			}
		}
		for i, p := range e.panels {
			enclosed = enclosed || e.block[i] && p.Ring.Contains(plan.Ring(f.Shape).Centroid())
		}
		if met < 2 && !enclosed {
			e.add(breach{rule: e.cornerRule(f.ID), fixture: f.ID, at: f.Shape[0], value: 270})
		}
	}
}

// ends looks at where joints stop.
func (e *examined) ends(kinds map[string]plan.JointKind) {
	for _, l := range e.slab.LooseEnds() {
		e.add(breach{rule: "loose", joint: l.Joint, at: l.At, value: l.Short})
	}
	for _, x := range e.slab.Crossings() {
		if !x.Tee {
			continue
		}
		if stops, at := e.tee(x); stops != "" && kinds[at] != plan.Isolation {
			e.add(breach{rule: "tee", joint: stops, other: at, at: x.At})
		}
	}
}

// matchReach is how near the ends of two joints on the two sides of a third have to be
// to count as one joint going on, m: twice the tolerance of setting out.
const matchReach = 0.05

// tee returns the joint that stops at a crossing and the one that goes on, where the
// stop is matched by no joint on the other side; "" else.
func (e *examined) tee(x plan.Crossing) (stops, at string) {
	ends := func(id string) bool {
		for _, j := range e.slab.Joints {
			if j.ID == id && len(j.Path) > 1 && j.Path[0] != j.Path[len(j.Path)-1] { // a ring has no ends
				return j.Path[0].To(x.At) <= plan.JointReach || j.Path[len(j.Path)-1].To(x.At) <= plan.JointReach
			}
		}
		return false
	}
	a, b := ends(x.Joints[0]), ends(x.Joints[1])
	switch {
	case a && b:
		return "", ""
	case a:
		stops, at = x.Joints[0], x.Joints[1]
	case b:
		stops, at = x.Joints[1], x.Joints[0]
	default:
		return "", ""
	}
	for _, j := range e.slab.Joints {
		if j.ID == stops || j.ID == at || len(j.Path) < 2 {
			continue
		}
		if j.Path[0].To(x.At) <= matchReach || j.Path[len(j.Path)-1].To(x.At) <= matchReach {
			return "", ""
		}
	}
	return stops, at
}
