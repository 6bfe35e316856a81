package layout

import (
	"math"
	"sort"

	"slabwright/plan"
)

// line is one joint line of a family, from end to end of the slab: straight in its
// frame but for the places it is bent to pass through.
type line struct {
	family int
	at     float64
	ways   []pin // in the order along the line; none for a free line
}

// bendSlope is how far a line may turn from its frame to meet two corners that are
// not in one line, m/m: 16 degrees, so that what it crosses keeps angles over 60.
const bendSlope = 0.29

// pinned returns the lines that meet the pins of one family, in order, joined where
// they lie nearer than merge and can be bent into one. Of two that can neither be
// joined nor be had side by side the one of lower rank is left out.
func pinned(pins []pin, family int, merge float64) []line {
	var own []pin
	for _, p := range pins {
		if p.family == family {
			own = append(own, p)
		}
	}
	sort.SliceStable(own, func(i, k int) bool {
		if own[i].at != own[k].at {
			return own[i].at < own[k].at
		}
		return own[i].way < own[k].way
	})
	var out []line
	for _, p := range own {
		n := len(out)
		switch {
		case n == 0 || p.at-out[n-1].at >= merge:
			out = append(out, line{family, p.at, []pin{p}})
		case bendable(append(append([]pin{}, out[n-1].ways...), p)):
			out[n-1] = joined(out[n-1], p)
		case p.at-out[n-1].at >= narrowest+0.05:
			out = append(out, line{family, p.at, []pin{p}})
		case p.rank > rankOf(out[n-1]):
			out[n-1] = line{family, p.at, []pin{p}}
		}
	}
	return out
}

func rankOf(l line) int {
	best := 0
	for _, w := range l.ways {
		best = max(best, w.rank)
	}
	return best
}

func joined(l line, p pin) line {
	l.ways = append(append([]pin{}, l.ways...), p)
	sort.SliceStable(l.ways, func(i, k int) bool { return l.ways[i].way < l.ways[k].way })
	low, high := math.Inf(1), math.Inf(-1)
	for _, w := range l.ways {
		low, high = math.Min(low, w.at), math.Max(high, w.at)
	}
	l.at = (low + high) / 2
	return l
}

// bendable reports whether one line can pass through all pins without turning more
// than bendSlope.
func bendable(ways []pin) bool {
	sort.SliceStable(ways, func(i, k int) bool { return ways[i].way < ways[k].way })
	for i := 1; i < len(ways); i++ {
		if math.Abs(ways[i].at-ways[i-1].at) > bendSlope*(ways[i].way-ways[i-1].way)+1e-9 {
			return false
		}
	}
	return true
}

// path returns the line over the slab in coordinates.
func (l line) path(low, high [2]float64) [][2]float64 {
	other := 1 - l.family
	point := func(at, way float64) (c [2]float64) {
		c[l.family], c[other] = at, way
		return c
	}
	from, to := low[other]-1, high[other]+1
	first, last := l.at, l.at
	if len(l.ways) > 0 {
		first, last = l.ways[0].at, l.ways[len(l.ways)-1].at
	}
	out := [][2]float64{point(first, from)}
	for _, w := range l.ways {
		if n := len(out); w.way > out[n-1][other]+fuzz && w.way < to-fuzz {
			out = append(out, point(w.at, w.way))
		}
	}
	return append(out, point(last, to))
}

// run is one stretch of a line in concrete: a joint, before it has a number.
type run struct {
	family, line int
	path         plan.Polyline
	kind         plan.JointKind
}

// runs returns the stretches of a line in concrete.
func (g *ground) runs(f frame, l line, low, high [2]float64, number int) []run {
	path := l.path(low, high)
	if f.fan { // lines of a fan end at its rim, and do not pass through its centre
		other := 1 - l.family
		for i := range path {
			switch {
			case other == along:
				path[i][other] = math.Max(path[i][other], 0.01)
			case f.closed:
				path[i][other] = math.Max(-math.Pi*f.ref, math.Min(math.Pi*f.ref, path[i][other]))
			}
		}
	}
	var out []run
	for _, p := range g.clip(straighten(f.trace(path))) {
		out = append(out, run{l.family, number, p, plan.Sawn})
	}
	return out
}
