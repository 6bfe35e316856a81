package report

import (
	"math"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// box is a place on paper taken by words, mm.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) over(o box) bool { return b.x0 < o.x1 && o.x0 < b.x1 && b.y0 < o.y1 && o.y0 < b.y1 }

// crowded is the number of boxes past which looking for free room is given up.
const crowded = 20000

// placer keeps labels from running into each other and off the sheet. First come
// stays; later ones step aside.
type placer struct {
	taken         []box // by words, cracks and edges: never to be covered
	lines         []box // by joints and fixtures: covered only when there is no other place
	width, height float64
}

// free finds the offset nearest to the wanted one at which a label of this size,
// centred on at plus the offset, stands clear; where nothing is clear it returns
// the wanted one and false.
func (p *placer) free(at draw.Point, w, h float64, wanted draw.Point, reach float64) (draw.Point, bool) {
	if len(p.taken)+len(p.lines) > crowded {
		return wanted, false
	}
	if off, ok := p.search(at, w, h, wanted, reach, true); ok {
		return off, true
	}
	return p.search(at, w, h, wanted, reach, false)
}

// search is free with or without keeping off lines.
func (p *placer) search(at draw.Point, w, h float64, wanted draw.Point, reach float64, strict bool) (draw.Point, bool) {
	try := func(off draw.Point) (draw.Point, bool) {
		b := box{at.X + off.X - w/2, at.Y + off.Y - h/2, at.X + off.X + w/2, at.Y + off.Y + h/2}
		if b.x0 < 0 || b.y0 < 0 || b.x1 > p.width || b.y1 > p.height {
			return off, false
		}
		for _, t := range p.taken {
			if b.over(t) {
				return off, false
			}
		}
		if strict {
			for _, t := range p.lines {
				if b.over(t) {
					return off, false
				}
			}
		}
		p.taken = append(p.taken, b)
		return off, true
	}
	if off, ok := try(wanted); ok {
		return off, true
	}
	for r := 1.5; r <= reach; r += 1.5 {
		for k := range 12 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 6)
			if off, ok := try(draw.Point{X: wanted.X + r*cos, Y: wanted.Y + r*sin}); ok {
				return off, true
			}
		}
	}
	return wanted, false
}

// take marks a straight piece as taken.
func (p *placer) take(a, b draw.Point, half float64) { p.taken = appendBoxes(p.taken, a, b, half) }

// line marks a straight piece as better left clear.
func (p *placer) line(a, b draw.Point, half float64) { p.lines = appendBoxes(p.lines, a, b, half) }

// area marks the box round a ring as better left clear.
func (p *placer) area(ring []draw.Point) {
	if len(ring) > 2 {
		p.lines = append(p.lines, around(ring))
	}
}

// around is the box round points.
func around(pts []draw.Point) box {
	b := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, q := range pts {
		b.x0, b.y0 = math.Min(b.x0, q.X), math.Min(b.y0, q.Y)
		b.x1, b.y1 = math.Max(b.x1, q.X), math.Max(b.y1, q.Y)
	}
	return b
}

// appendBoxes adds small boxes along a straight piece.
func appendBoxes(boxes []box, a, b draw.Point, half float64) []box {
	n := int(math.Hypot(b.X-a.X, b.Y-a.Y)/(2*half)) + 1
	for i := 0; i <= n; i++ {
		s := float64(i) / float64(n)
		x, y := a.X+s*(b.X-a.X), a.Y+s*(b.Y-a.Y)
		boxes = append(boxes, box{x - half, y - half, x + half, y + half})
	}
	return boxes
}

// keepClear tells the labels where lines are, before any word is placed.
func (p *planSheet) keepClear() {
	run := func(pts []plan.Point, closed bool, put func(a, b draw.Point, half float64), half float64) {
		for i := range pts {
			if i+1 < len(pts) || closed {
				put(p.to.At(draw.Point(pts[i])), p.to.At(draw.Point(pts[(i+1)%len(pts)])), half)
			}
		}
	}
	run(p.c.Plan.Slab.Outline, true, p.labels.take, 0.5)
	if p.small {
		return
	}
	for _, j := range p.c.Plan.Slab.Joints {
		half := p.reachOf(j) + 0.2
		run(j.Path, false, p.labels.line, half)
	}
	for _, f := range p.c.Plan.Slab.Fixtures {
		run(f.Shape, len(f.Shape) > 2, p.labels.line, 0.6)
		if f.Opening {
			p.labels.area(p.onPaper(f.Shape))
		}
	}
	for _, f := range p.c.Findings {
		p.labels.area(p.onPaper(f.Finding.Area))
	}
}
