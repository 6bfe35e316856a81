package report

import (
	"math"

	"slabwright/internal/draw"
)

// box is a place on paper taken by words, mm.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) over(o box) bool { return b.x0 < o.x1 && o.x0 < b.x1 && b.y0 < o.y1 && o.y0 < b.y1 }

// placer keeps labels from running into each other and off the sheet. First come
// stays; later ones step aside.
type placer struct {
	taken         []box
	width, height float64
}

// free finds the offset nearest to the wanted one at which a label of this size,
// centred on at plus the offset, stands clear; where nothing is clear it returns
// the wanted one and false.
func (p *placer) free(at draw.Point, w, h float64, wanted draw.Point, reach float64) (draw.Point, bool) {
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

// take marks a straight piece as taken, in small boxes along it.
func (p *placer) take(a, b draw.Point, half float64) {
	n := int(math.Hypot(b.X-a.X, b.Y-a.Y)/(2*half)) + 1
	for i := 0; i <= n; i++ {
		s := float64(i) / float64(n)
		x, y := a.X+s*(b.X-a.X), a.Y+s*(b.Y-a.Y)
		p.taken = append(p.taken, box{x - half, y - half, x + half, y + half})
	}
}
