package layout

import (
	"slabwright/plan"
)

// snapped returns the nearest place on an edge, an opening or a joint within
// SnapReach, corners first; the place itself where there is none.
func snapped(s plan.Slab, p plan.Point) plan.Point {
	best, at := SnapReach, p
	for _, seg := range stops(s, -1) {
		for _, corner := range []plan.Point{seg.A, seg.B} {
			if d := corner.To(p) * 2; d < best { // a corner draws half as far as a side
				best, at = d, corner
			}
		}
	}
	if at != p {
		return at
	}
	for _, seg := range stops(s, -1) {
		if t, d := seg.Nearest(p); d < best {
			best, at = d, seg.At(t)
		}
	}
	return at
}

// stops returns every straight piece that a joint may stop at: edges, openings and
// the joints but the one left out.
func stops(s plan.Slab, leave int) []plan.Segment {
	g := newGround(s, nil)
	out := g.sides
	for i, j := range s.Joints {
		if i != leave {
			out = append(out, plan.Polyline(j.Path).Pieces()...)
		}
	}
	return out
}

func isRing(j plan.Joint) bool {
	return j.Kind == plan.Isolation && len(j.Path) > 3 && j.Path[0].To(j.Path[len(j.Path)-1]) <= plan.SnapTolerance
}

// ringBlocks returns the block-outs drawn on a slab: isolation joints that are rings.
func ringBlocks(s plan.Slab) []block {
	var out []block
	for _, j := range s.Joints {
		if isRing(j) {
			r := plan.Ring(j.Path[:len(j.Path)-1])
			out = append(out, block{ring: r, centre: r.Centroid(), diamond: true})
		}
	}
	return out
}
