package layout

import (
	"fmt"
	"math"

	"slabwright/plan"
)

// halve draws a joint across a long panel, from edge to edge so that it stops at no
// panel's side: at the share of its length that makes the parts short enough, or at
// one near it where that meets something.
func (x breach) halve(e *examined, limit float64) *Mend {
	p := plan.PanelByID(e.panels, x.panel)
	if p.Length/2 < narrowest+0.4 || p.Width < narrowest {
		return nil
	}
	parts := math.Max(2, math.Ceil(p.Length/limit-1e-3))
	share := math.Floor(parts/2) / parts
	g := newGround(e.slab, ringBlocks(e.slab))
	low, way := panelStart(p)
	for _, off := range []float64{0, 0.07, -0.07, 0.14, -0.14} {
		at := low.Plus(way.Times((share + off) * p.Length))
		s, ok := acrossSlab(e.slab, plan.Sawn, at, p.LongDirection+90)
		if !ok || !allFit(e.slab, g, s.Joints[len(e.slab.Joints):]) {
			continue
		}
		return &Mend{fmt.Sprintf("Draw a joint across %s from edge to edge, %.2f m from its end.", x.panel, (share+off)*p.Length), s}
	}
	return nil
}

// panelStart returns the middle of one end of the least rectangle round a panel and
// the direction along it.
func panelStart(p *plan.Panel) (plan.Point, plan.Point) {
	way := plan.Direction(p.LongDirection)
	least, across := math.Inf(1), 0.0
	for _, c := range p.Rectangle {
		least = math.Min(least, c.Dot(way))
		across += c.Dot(way.Left()) / float64(len(p.Rectangle))
	}
	return way.Times(least).Plus(way.Left().Times(across)), way
}

func allFit(s plan.Slab, g *ground, joints []plan.Joint) bool {
	for _, j := range joints {
		if !fits(s, g, j.Path) {
			return false
		}
	}
	return true
}
