package layout

import "slabwright/plan"

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
	kinds    map[string]plan.JointKind
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
	kinds := map[string]plan.JointKind{}
	e := &examined{slab: s, panels: panels, kinds: kinds, block: make([]bool, len(panels))}
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
			e.add(breach{rule: e.cornerRule(c.Fixture, c.At), panel: p.ID, fixture: c.Fixture, at: c.At, value: c.Angle})
		}
	}
	if p.Length > limit*limitSlack {
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
func (e *examined) cornerRule(fixture string, at plan.Point) string {
	if e.slab.BarsAt(at) {
		return "bars"
	}
	for _, f := range e.slab.Fixtures {
		if f.ID == fixture && fixture != "" && f.Trimmers.Is("yes") {
			return "bars"
		}
	}
	return "corner"
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
