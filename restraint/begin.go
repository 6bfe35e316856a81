package restraint

import (
	"math"

	"slabwright/plan"
)

// startedNear says whether a crack started at a place already. What breaks up there
// further is finer than the length over which stress is averaged.
func (s *slabState) startedNear(p plan.Point) bool {
	for _, q := range s.starts {
		if q.To(p) < 2*s.set.Reach {
			return true
		}
	}
	return false
}

// tip is the end of an open line inside the slab.
type tip struct {
	sides int // open ones that end here
	line  int
	away  plan.Point // direction in which the line was running
}

// begin picks the point of the net at which a crack starts: the end of another crack,
// an inside corner or the edge if one is within reach, else a corner of the triangle.
func (t *tracer) begin(tri int32) (int32, tip) {
	middle := t.frame.middle(int(tri))
	best, rank, near := t.frame.tri[tri][0], -1, math.Inf(1)
	var bestTip tip
	for _, o := range t.nearTo(tri) {
		for _, p := range t.frame.tri[o] {
			r, found := t.rank(p)
			if d := t.frame.at[p].To(middle); r > rank || r == rank && d < near {
				if r == 0 && o != tri {
					continue
				}
				best, rank, near, bestTip = p, r, d, found
			}
		}
	}
	return best, bestTip
}

// rank says how likely a crack starts at a point: 3 a tip, 2 an inside corner, 1 an
// edge or open line, 0 elsewhere.
func (t *tracer) rank(p int32) (int, tip) {
	var found tip
	edges, angle := 0, 0.0
	seen := map[side]bool{}
	for _, tri := range t.frame.around(p) {
		v := t.frame.tri[tri]
		i := t.frame.corner(tri, p) % 3
		a := t.frame.at[v[(i+1)%3]].Minus(t.frame.at[p])
		b := t.frame.at[v[(i+2)%3]].Minus(t.frame.at[p])
		angle += math.Atan2(a.Cross(b), a.Dot(b))
		for _, q := range []int32{v[(i+1)%3], v[(i+2)%3]} {
			key := sideOf(p, q)
			if seen[key] {
				continue
			}
			seen[key] = true
			if t.frame.beside[key][1] < 0 {
				edges++
			} else if line, open := t.cut[key]; open {
				found.sides++
				found.line = line
				found.away, _ = t.frame.at[p].Minus(t.frame.at[q]).Unit()
			}
		}
	}
	switch {
	case edges == 0 && found.sides == 1:
		return 3, found
	case edges > 0 && angle > 1.05*math.Pi && found.sides == 0:
		return 2, tip{}
	case edges > 0 || found.sides > 0:
		return 1, tip{}
	}
	return 0, tip{}
}
