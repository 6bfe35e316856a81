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
	var out []line
	for _, l := range jogged(pins, family) {
		n := len(out)
		switch {
		case n == 0 || l.at-out[n-1].at >= merge && !crosses(out[n-1], l):
			out = append(out, l)
		case bendable(append(append([]pin{}, out[n-1].ways...), l.ways...)):
			out[n-1] = joined(out[n-1], l)
		case !crosses(out[n-1], l) && l.low()-out[n-1].high() >= narrowest+0.05:
			out = append(out, l)
		case rankOf(l) > rankOf(out[n-1]):
			out[n-1] = l
		}
	}
	return out
}

// jogged returns the pins of a family as lines of their own, those of one jog as one,
// in order.
func jogged(pins []pin, family int) []line {
	var out []line
	at := map[string]int{}
	for _, p := range pins {
		if p.family != family {
			continue
		}
		if i, ok := at[p.jog]; ok && p.jog != "" {
			out[i] = joined(out[i], line{family, p.at, []pin{p}})
			continue
		}
		at[p.jog] = len(out)
		out = append(out, line{family, p.at, []pin{p}})
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].at < out[k].at })
	return out
}

// low and high are the least and greatest coordinate of a line.
func (l line) low() float64  { return l.span(math.Min) }
func (l line) high() float64 { return l.span(math.Max) }

func (l line) span(pick func(x, y float64) float64) float64 {
	v := l.at
	for i, w := range l.ways {
		if i == 0 {
			v = w.at
		}
		v = pick(v, w.at)
	}
	return v
}

// crosses reports whether two lines, the first before the second, come out of order
// or too near to one another at a place that one of them has to pass.
func crosses(a, b line) bool {
	for _, w := range append(append([]pin{}, a.ways...), b.ways...) {
		if b.where(w.way)-a.where(w.way) < narrowest+0.05 {
			return true
		}
	}
	return false
}

// where returns the coordinate of a line beside a place along it.
func (l line) where(way float64) float64 {
	if len(l.ways) == 0 {
		return l.at
	}
	for i, w := range l.ways {
		if way <= w.way {
			if i == 0 {
				return w.at
			}
			before := l.ways[i-1]
			return before.at + (w.at-before.at)*(way-before.way)/math.Max(1e-9, w.way-before.way)
		}
	}
	return l.ways[len(l.ways)-1].at
}

func rankOf(l line) int {
	best := 0
	for _, w := range l.ways {
		best = max(best, w.rank)
	}
	return best
}

func joined(l, o line) line {
	l.ways = append(append([]pin{}, l.ways...), o.ways...)
	sort.SliceStable(l.ways, func(i, k int) bool { return l.ways[i].way < l.ways[k].way })
	l.at = (l.low() + l.high()) / 2
	return l
}

// bendable reports whether one line can pass through all pins without turning more
// than bendSlope.
func bendable(ways []pin) bool {
	sort.SliceStable(ways, func(i, k int) bool { return ways[i].way < ways[k].way })
	for i := 1; i < len(ways); i++ {
		if ways[i].jog != "" && ways[i].jog == ways[i-1].jog {
			continue // what lies between is an opening
		}
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
		if len(p) > 3 && p[0].To(p[len(p)-1]) <= plan.SnapTolerance {
			p[len(p)-1] = p[0] // a whole ring
		}
		out = append(out, run{l.family, number, p, plan.Sawn})
	}
	return out
}
