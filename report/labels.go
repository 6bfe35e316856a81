package report

import (
	"slabwright/internal/draw"
	"slabwright/plan"
)

// keepClear tells the labels where lines are, before any word is placed.
func (p *planSheet) keepClear() {
	run := func(pts []plan.Point, closed bool, put func(a, b draw.Point, half float64), half float64) {
		for i := range pts {
			if i+1 < len(pts) || closed {
				put(p.to.At(draw.Point(pts[i])), p.to.At(draw.Point(pts[(i+1)%len(pts)])), half)
			}
		}
	}
	run(p.c.Plan.Slab.Outline, true, p.labels.Take, 0.5)
	if p.small {
		return
	}
	for _, j := range p.c.Plan.Slab.Joints {
		half := p.reachOf(j) + 0.2
		run(j.Path, false, p.labels.Line, half)
	}
	for _, f := range p.c.Plan.Slab.Fixtures {
		run(f.Shape, len(f.Shape) > 2, p.labels.Line, 0.6)
		if f.Opening {
			p.labels.Area(p.onPaper(f.Shape))
		}
	}
	for _, f := range p.c.Findings {
		p.labels.Area(p.onPaper(f.Finding.Area))
	}
}
