package layout

import (
	"slabwright/plan"
)

// matchReach is how near the ends of two joints on the two sides of a third have to be
// to count as one joint going on, m: twice the tolerance of setting out.
const matchReach = 0.05

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
			e.add(breach{rule: e.cornerRule(f.ID, f.Shape[0]), fixture: f.ID, at: f.Shape[0], value: 270})
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
