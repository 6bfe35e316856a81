package layout

import (
	"math"

	"slabwright/plan"
)

// narrowStrip is the share of the limit under which a strip beside a joint to an
// inside corner is narrow: bars cross the corner instead.
//
// Source: common practice, no source.
const narrowStrip = 1.0 / 3

// stripAt returns the width of the strip that a joint to an unmet inside corner would
// leave in its panel, m, taken the better of its ways, and whether each way leaves one
// that is narrow or more than 1.5 times as long as wide.
func (e *examined) stripAt(b breach, limit float64) (width float64, narrow bool) {
	p := plan.PanelByID(e.panels, b.panel)
	if p == nil {
		return 0, true
	}
	narrow = true
	for _, way := range e.waysFrom(*p, b.at) {
		w, bad := splitBy(*p, b.at, way, limit)
		if width = math.Max(width, w); !bad {
			narrow = false
		}
	}
	return width, narrow
}

// waysFrom returns the directions in which a joint would leave an inside corner: on in
// line with its sides, or from the point of a block-out straight away from it.
func (e *examined) waysFrom(p plan.Panel, at plan.Point) []plan.Point {
	for _, c := range p.InsideCorners {
		if c.At.To(at) > 2*plan.SnapTolerance {
			continue
		}
		away, ok := c.Sides[0].Plus(c.Sides[1]).Times(-1).Unit()
		if id := bendOf(p, at); id != "" && ok && e.kinds[id] == plan.Isolation && e.diamondAt(id) {
			return []plan.Point{away}
		}
		return []plan.Point{c.Sides[0].Times(-1), c.Sides[1].Times(-1)}
	}
	return nil
}

// diamondAt reports whether a block-out is a diamond: of four sides, all alike.
func (e *examined) diamondAt(id string) bool {
	for _, j := range e.slab.Joints {
		if j.ID != id {
			continue
		}
		pieces := plan.Polyline(j.Path).Pieces()
		for _, p := range pieces {
			if math.Abs(p.Length()-pieces[0].Length()) > 0.02 && isRing(j) {
				return false
			}
		}
		return true
	}
	return false
}

// splitBy returns the width of the narrower part of a panel's box to the two sides of
// a line through a place, and whether one part is narrow or long.
func splitBy(p plan.Panel, at, way plan.Point, limit float64) (width float64, bad bool) {
	low, high := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, q := range p.Ring {
		v := q.Minus(at)
		for i, x := range []float64{v.Dot(way), v.Dot(way.Left())} {
			low[i], high[i] = math.Min(low[i], x), math.Max(high[i], x)
		}
	}
	length := high[0] - low[0]
	width = math.Min(-low[1], high[1])
	for _, w := range []float64{-low[1], high[1]} {
		bad = bad || w < narrowStrip*limit || math.Max(w, length) > AspectWanted*math.Min(w, length)
	}
	return width, bad
}
