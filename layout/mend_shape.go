package layout

import (
	"fmt"

	"slabwright/plan"
)

// part draws a joint through an inside corner of a panel that fills little of its
// rectangle, from edge to edge along or across the panel, where the pieces fill theirs
// better and no rule that must be kept is broken for it.
func (x breach) part(e *examined, limit float64) *Mend {
	p := plan.PanelByID(e.panels, x.panel)
	g := newGround(e.slab, ringBlocks(e.slab))
	for _, c := range p.InsideCorners {
		for _, degrees := range []float64{p.LongDirection + 90, p.LongDirection} {
			s, ok := acrossSlab(e.slab, plan.Sawn, c.At, degrees)
			if !ok || !allFit(e.slab, g, s.Joints[len(e.slab.Joints):]) {
				continue
			}
			after, err := examine(s, limit)
			if err == nil && after.musts() <= e.musts() && after.count(x.rule) < e.count(x.rule) {
				return &Mend{fmt.Sprintf("Draw a joint through the inside corner of %s, from edge to edge.", x.panel), s}
			}
		}
	}
	return nil
}

// count is in how many places a rule is not kept.
func (e *examined) count(rule string) (n int) {
	for _, x := range e.breaches {
		if x.rule == rule {
			n++
		}
	}
	return n
}
