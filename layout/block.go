package layout

import (
	"math"

	"slabwright/plan"
)

// block is the block-out round a small fixture: an isolation joint turned 45 degrees,
// so that the joints of the slab meet its points. What is between it and the fixture
// is placed later.
type block struct {
	fixtures []string
	ring     plan.Ring
	centre   plan.Point
	column   bool // round a column
	diamond  bool // else a box, for fixtures too near to one another for two diamonds
}

const (
	blockLargest = 1.3  // a fixture up to this size gets a block-out, m
	blockRoom    = 0.15 // between fixture and block-out, measured along the frame, m
	blockApart   = 0.6  // block-outs nearer than this become one, m
)

// blocksOf returns the block-outs of a slab in a frame.
func blocksOf(s plan.Slab, f frame) []block {
	var out []block
	for _, x := range s.Fixtures {
		if b, ok := diamondOf(x, f, s.Outline); ok && plan.Ring(s.Outline).Contains(b.centre) {
			out = append(out, b)
		}
	}
	for merged := true; merged; {
		merged = false
		for i := range out {
			for k := i + 1; k < len(out) && !merged; k++ {
				if plan.Polyline(closed(out[i].ring)).Distance(closed(out[k].ring)) < blockApart || out[i].ring.Contains(out[k].centre) {
					out[i] = boxOf(s, append(append([]string{}, out[i].fixtures...), out[k].fixtures...), f)
					out = append(out[:k], out[k+1:]...)
					merged = true
				}
			}
		}
	}
	return clearOfHoles(s, out)
}

// diamondOf returns the diamond round a small pit, column or drain.
func diamondOf(x plan.Fixture, f frame, outline plan.Ring) (block, bool) {
	if x.Kind != plan.Column && x.Kind != plan.Pit && x.Kind != plan.Drain || len(x.Shape) < 3 {
		return block{}, false
	}
	f = f.at(plan.Ring(x.Shape).Centroid())
	low, high := f.box(x.Shape)
	if high[0]-low[0] > blockLargest || high[1]-low[1] > blockLargest {
		return block{}, false
	}
	ring, centre := diamondAbout(x.Shape, f.from((low[0]+high[0])/2, (low[1]+high[1])/2), f)
	for range 2 { // beside an edge it is centred on the edge, in a corner on the corner
		at, off := nearestOn(outline, ring, centre)
		if off > blockApart {
			break
		}
		ring, centre = diamondAbout(x.Shape, at, f)
	}
	return block{fixtures: []string{x.ID}, ring: ring, centre: centre, column: x.Kind == plan.Column, diamond: true}, true
}

// diamondAbout returns the diamond with this centre that clears a shape.
func diamondAbout(shape []plan.Point, centre plan.Point, f frame) (plan.Ring, plan.Point) {
	a, b := f.to(centre)
	reach := 0.0
	for _, p := range shape {
		pa, pb := f.to(p)
		reach = math.Max(reach, math.Abs(pa-a)+math.Abs(pb-b))
	}
	reach = math.Ceil((reach+blockRoom)*20-1e-9) / 20
	return plan.Ring{f.from(a, b-reach), f.from(a+reach, b), f.from(a, b+reach), f.from(a-reach, b)}, centre
}

// nearestOn returns the place on an outline that a block-out should be centred on and
// how much concrete is left between the two; the outline's sides that its centre lies
// on already are left out.
func nearestOn(outline, ring plan.Ring, centre plan.Point) (plan.Point, float64) {
	at, least := plan.Point{}, math.Inf(1)
	for _, s := range outline.Sides() {
		t, d := s.Nearest(centre)
		if d < plan.SnapTolerance {
			continue
		}
		for _, p := range ring {
			if _, off := s.Nearest(p); !outline.Contains(p) {
				continue
			} else if off < least {
				at, least = s.At(t), off
			}
		}
		for _, o := range ring.Sides() {
			if _, _, ok := o.Cross(s); ok {
				at, least = s.At(t), 0
			}
		}
	}
	return at, least
}

// at returns the straight frame that fits the frame at a place: the rays and arcs of
// a fan have their own directions everywhere.
func (f frame) at(p plan.Point) frame {
	if !f.fan {
		return f
	}
	out, ok := p.Minus(f.origin).Unit()
	if !ok {
		out = f.axis
	}
	return frame{origin: p, axis: out.Left()}
}

// boxOf returns the box round several fixtures.
func boxOf(s plan.Slab, ids []string, f frame) block {
	var points []plan.Point
	for _, x := range s.Fixtures {
		for _, id := range ids {
			if x.ID == id {
				points = append(points, x.Shape...)
			}
		}
	}
	f = f.at(points[0])
	low, high := f.box(points)
	const room = 0.3
	ring := plan.Ring{f.from(low[0]-room, low[1]-room), f.from(high[0]+room, low[1]-room), f.from(high[0]+room, high[1]+room), f.from(low[0]-room, high[1]+room)}
	return block{fixtures: ids, ring: ring, centre: ring.Centroid()}
}

// clearOfHoles leaves out block-outs that would run into an opening that is not their
// own: those fixtures are isolated along their own sides instead.
func clearOfHoles(s plan.Slab, blocks []block) []block {
	var out []block
	for _, b := range blocks {
		clear := true
		for _, x := range s.Fixtures {
			if !isHole(x) || b.has(x.ID) {
				continue
			}
			if plan.Polyline(closed(b.ring)).Distance(closed(x.Shape)) < blockApart/2 || b.ring.Contains(x.Shape[0]) {
				clear = false
			}
		}
		if clear {
			out = append(out, b)
		}
	}
	return out
}

func (b block) has(id string) bool {
	for _, f := range b.fixtures {
		if f == id {
			return true
		}
	}
	return false
}

// closed returns a ring as a line that comes back to its start.
func closed(r []plan.Point) plan.Polyline {
	return append(append(plan.Polyline{}, r...), r[0])
}
