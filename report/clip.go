package report

import (
	"slabwright/internal/draw"
	"slabwright/plan"
)

// onPaper returns points of the plan where they lie on the sheet.
func (p *planSheet) onPaper(pts []plan.Point) []draw.Point {
	out := make([]draw.Point, len(pts))
	for i, q := range pts {
		out[i] = p.to.At(draw.Point(q))
	}
	return out
}

// side is one edge of the field: how far inside a point lies.
type side func(draw.Point) float64

// field is the four sides of the sheet's field, half a millimetre in.
func (p *planSheet) field() []side {
	const in = 0.5
	return []side{
		func(q draw.Point) float64 { return q.X - in },
		func(q draw.Point) float64 { return p.s.Width - in - q.X },
		func(q draw.Point) float64 { return q.Y - in },
		func(q draw.Point) float64 { return p.fieldHeight - in - q.Y },
	}
}

// between is where a straight piece passes a side.
func between(a, b draw.Point, da, db float64) draw.Point {
	s := da / (da - db)
	return draw.Point{X: a.X + s*(b.X-a.X), Y: a.Y + s*(b.Y-a.Y)}
}

// clipRing cuts a ring at the field (Sutherland and Hodgman's method).
func (p *planSheet) clipRing(ring []plan.Point) []draw.Point {
	pts := p.onPaper(ring)
	for _, inside := range p.field() {
		var kept []draw.Point
		for i, b := range pts {
			a := pts[(i+len(pts)-1)%len(pts)]
			da, db := inside(a), inside(b)
			if (da >= 0) != (db >= 0) {
				kept = append(kept, between(a, b, da, db))
			}
			if db >= 0 {
				kept = append(kept, b)
			}
		}
		pts = kept
	}
	return pts
}

// clipLine cuts a line at the field into the runs that lie inside.
func (p *planSheet) clipLine(line []plan.Point) [][]draw.Point {
	runs := [][]draw.Point{p.onPaper(line)}
	for _, inside := range p.field() {
		var kept [][]draw.Point
		for _, run := range runs {
			var now []draw.Point
			for i, b := range run {
				db := inside(b)
				if i > 0 {
					a := run[i-1]
					if da := inside(a); (da >= 0) != (db >= 0) {
						now = append(now, between(a, b, da, db))
						if db < 0 {
							kept, now = append(kept, now), nil
						}
					}
				}
				if db >= 0 {
					now = append(now, b)
				}
			}
			if len(now) > 1 {
				kept = append(kept, now)
			}
		}
		runs = kept
	}
	return runs
}
