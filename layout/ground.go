package layout

import (
	"math"
	"sort"

	"slabwright/plan"
)

// ground is the slab that joints are drawn in: its outline, its openings and the
// block-outs round small fixtures, all as straight sides.
type ground struct {
	slab   plan.Slab
	ring   plan.Ring
	holes  []plan.Ring
	blocks []block
	sides  []plan.Segment // of all of them
}

// fuzz is how near to a side a line counts as lying on it, m: the groove and the side
// would be one line on site.
const fuzz = 0.02

func newGround(s plan.Slab, blocks []block) *ground {
	g := &ground{slab: s, ring: plan.Ring(s.Outline).Anticlockwise(), blocks: blocks}
	g.sides = g.ring.Sides()
	for _, f := range s.Fixtures {
		if isHole(f) {
			g.holes = append(g.holes, f.Shape)
			g.sides = append(g.sides, plan.Ring(f.Shape).Sides()...)
		}
	}
	for _, b := range blocks {
		g.sides = append(g.sides, b.ring.Sides()...)
	}
	return g
}

func isHole(f plan.Fixture) bool {
	return f.Opening && len(f.Shape) >= 3 && plan.Ring(f.Shape).Area() > 0
}

// inside reports whether a place is in concrete where joints are drawn: in the
// outline, in no opening and in no block-out.
func (g *ground) inside(p plan.Point) bool {
	if !g.ring.Contains(p) {
		return false
	}
	for _, h := range g.holes {
		if h.Contains(p) {
			return false
		}
	}
	for _, b := range g.blocks {
		if b.ring.Contains(p) {
			return false
		}
	}
	return true
}

// nearSide reports whether a place lies on a side.
func (g *ground) nearSide(p plan.Point) bool {
	for _, s := range g.sides {
		if p.X < math.Min(s.A.X, s.B.X)-fuzz || p.X > math.Max(s.A.X, s.B.X)+fuzz ||
			p.Y < math.Min(s.A.Y, s.B.Y)-fuzz || p.Y > math.Max(s.A.Y, s.B.Y)+fuzz {
			continue
		}
		if _, d := s.Nearest(p); d < fuzz {
			return true
		}
	}
	return false
}

// clip returns the stretches of a line that lie in concrete, in order. A stretch that
// only touches a corner goes on; one that runs along a side is left out.
func (g *ground) clip(path plan.Polyline) []plan.Polyline {
	at := g.cuts(path)
	var out []plan.Polyline
	open := false
	for i := 1; i < len(at); i++ {
		middle, _ := path.At((at[i-1] + at[i]) / 2)
		if !g.inside(middle) || g.nearSide(middle) {
			open = false
			continue
		}
		piece := part(path, at[i-1], at[i])
		if open {
			last := out[len(out)-1]
			out[len(out)-1] = straighten(append(last, piece[1:]...))
		} else {
			out = append(out, piece)
		}
		open = true
	}
	return out
}

// cuts returns how far along a line its ends are and where it meets sides.
func (g *ground) cuts(path plan.Polyline) []float64 {
	at := []float64{0, path.Length()}
	along := 0.0
	for _, piece := range path.Pieces() {
		length := piece.Length()
		for _, s := range g.sides {
			if apart(piece, s) {
				continue
			}
			if t, _, ok := piece.Cross(s); ok {
				at = append(at, along+t*length)
			}
			for _, end := range []plan.Point{s.A, s.B} {
				if t, d := piece.Nearest(end); d <= plan.SnapTolerance {
					at = append(at, along+t*length)
				}
			}
		}
		along += length
	}
	sort.Float64s(at)
	kept := at[:1]
	for _, v := range at[1:] {
		if v-kept[len(kept)-1] > plan.SnapTolerance {
			kept = append(kept, v)
		}
	}
	return kept
}

// apart reports whether the boxes round two pieces do not touch.
func apart(a, b plan.Segment) bool {
	before := func(p, q, u, v float64) bool {
		return p+plan.SnapTolerance < u && p+plan.SnapTolerance < v && q+plan.SnapTolerance < u && q+plan.SnapTolerance < v
	}
	return before(a.A.X, a.B.X, b.A.X, b.B.X) || before(b.A.X, b.B.X, a.A.X, a.B.X) ||
		before(a.A.Y, a.B.Y, b.A.Y, b.B.Y) || before(b.A.Y, b.B.Y, a.A.Y, a.B.Y)
}

// part returns a line from one distance along it to another.
func part(path plan.Polyline, from, to float64) plan.Polyline {
	start, _ := path.At(from)
	end, _ := path.At(to)
	out := plan.Polyline{start}
	along := 0.0
	for i := 1; i < len(path); i++ {
		along += path[i].To(path[i-1])
		if along > from+plan.SnapTolerance && along < to-plan.SnapTolerance {
			out = append(out, path[i])
		}
	}
	return append(out, end)
}

// straighten leaves out points of a line that lie on the straight between their
// neighbours.
func straighten(path plan.Polyline) plan.Polyline {
	out := plan.Polyline{path[0]}
	for i := 1; i+1 < len(path); i++ {
		if (plan.Segment{A: out[len(out)-1], B: path[i+1]}).Length() == 0 {
			continue
		}
		if _, d := (plan.Segment{A: out[len(out)-1], B: path[i+1]}).Nearest(path[i]); d > plan.SnapTolerance/10 {
			out = append(out, path[i])
		}
	}
	return append(out, path[len(path)-1])
}

// sharpest returns the least angle between the end of a line and the sides it ends
// on, degrees; 90 where it ends on none or at a corner that turns away from it.
// Before is the point of the line before its end.
func (g *ground) sharpest(before, end plan.Point) float64 {
	d, ok := end.Minus(before).Unit()
	if !ok {
		return 90
	}
	least, touched := 90.0, 0
	for _, s := range g.sides {
		if _, off := s.Nearest(end); off > plan.SnapTolerance {
			continue
		}
		touched++
		for _, corner := range []plan.Point{s.A, s.B} {
			along, ok := corner.Minus(end).Unit()
			if !ok || corner.To(end) <= plan.SnapTolerance {
				continue
			}
			// the angle of concrete between the line, seen from its end, and the side
			angle := math.Acos(math.Max(-1, math.Min(1, d.Times(-1).Dot(along)))) * 180 / math.Pi
			least = math.Min(least, angle)
		}
	}
	if touched == 0 {
		return 90
	}
	return least
}
