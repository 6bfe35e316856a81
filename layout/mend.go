package layout

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/steel"
)

// leastDowelled is the thickness, m, under which round dowels have no guidance.
const leastDowelled = steel.LeastDowelledThickness / 1000

// mend returns the change that makes a breach go away, nil where none is known or the
// one known cannot be made here.
func (x breach) mend(e *examined, limit float64) *Mend {
	s := e.slab
	switch x.rule {
	case "sliver":
		return x.widen(e, limit)
	case "sharp":
		return x.squareUp(e)
	case "corner":
		return x.meet(e, limit)
	case "tee":
		return goOn(s, x.joint, x.at)
	case "loose":
		fixed := settle(s)
		if after, err := examine(fixed, limit); err != nil || after.musts() > e.musts() {
			return nil // a block-out that is cut open is drawn anew, not run on
		}
		return &Mend{fmt.Sprintf("Run %s on to the next edge or joint.", x.joint), fixed}
	case "spacing", "aspect":
		return x.halve(e, limit)
	case "shape":
		return x.part(e, limit)
	}
	return x.mendBars(s)
}

// musts counts the places where a rule that must be kept is not.
func (e *examined) musts() (n int) {
	for _, x := range e.breaches {
		if ruleByKey[x.rule].Severity == Must {
			n++
		}
	}
	return n
}

// widen takes away a joint beside a sliver where what is left is short enough, or
// moves it away.
func (x breach) widen(e *examined, limit float64) *Mend {
	p := plan.PanelByID(e.panels, x.panel)
	id, away := "", plan.Point{}
	best := 0.0
	for _, side := range p.Sides {
		d, ok := side.To.Minus(side.From).Unit()
		if l := side.Segment().Length(); ok && side.Joint != "" && l > best && math.Abs(d.Cross(plan.Direction(p.LongDirection))) < 0.3 {
			best, id, away = l, side.Joint, d.Left().Times(-1)
		}
	}
	if id == "" {
		return nil
	}
	i, err := jointIndex(e.slab, id)
	if err != nil {
		return nil
	}
	if s := without(e.slab, i); longest(s) <= limit*limitSlack {
		return &Mend{fmt.Sprintf("Leave %s out: the panels beside it are short enough without it.", id), s}
	}
	by := 1.0 - x.value
	if s, err := MoveJoint(e.slab, id, away.Times(by)); err == nil {
		return &Mend{fmt.Sprintf("Move %s by %.2f m, so that the strip beside it is 1 m wide.", id, by), s}
	}
	return nil
}

func longest(s plan.Slab) (length float64) {
	panels, err := s.Panels()
	if err != nil {
		return math.Inf(1)
	}
	for _, p := range panels {
		length = math.Max(length, p.Length)
	}
	return length
}

// squareUp turns the end of a joint at a sharp corner by short legs.
func (x breach) squareUp(e *examined) *Mend {
	g := newGround(e.slab, ringBlocks(e.slab))
	for i, j := range e.slab.Joints {
		if j.ID != x.joint || len(j.Path) < 2 {
			continue
		}
		path := plan.Polyline(j.Path)
		atStart := path[0].To(x.at) <= plan.JointReach
		if atStart {
			path = backwards(path)
		}
		if path[len(path)-1].To(x.at) > plan.JointReach {
			return nil
		}
		turned, ok := g.turned(path)
		if !ok {
			return nil
		}
		if atStart {
			turned = backwards(turned)
		}
		s := withJoints(e.slab)
		s.Joints[i].Path = turned
		return &Mend{fmt.Sprintf("Turn the end of %s towards the square by short legs.", x.joint), s}
	}
	return nil
}

// goOn runs a joint that stops at the side of a panel on, through what it stops at, to
// the edge.
func goOn(s plan.Slab, id string, at plan.Point) *Mend {
	i, err := jointIndex(s, id)
	if err != nil {
		return nil
	}
	path := plan.Polyline(append([]plan.Point{}, s.Joints[i].Path...))
	atStart := path[0].To(at) <= plan.JointReach
	if atStart {
		path = backwards(path)
	}
	n := len(path)
	d, _ := path[n-1].Minus(path[n-2]).Unit()
	g := newGround(s, ringBlocks(s))
	end, hit := g.firstHit(at.Plus(d.Times(fuzz)), d, 1000)
	if !hit {
		return nil
	}
	path = straighten(append(path, end))
	if atStart {
		path = backwards(path)
	}
	out := withJoints(s)
	out.Joints[i].Path = path
	return &Mend{fmt.Sprintf("Run %s on to the edge, %.2f m more.", id, at.To(end)), out}
}
