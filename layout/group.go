package layout

import (
	"math"
	"sort"

	"slabwright/plan"
)

// Families of lines of a frame.
const (
	across = 0 // one a each
	along  = 1 // one b each
)

// pin is a place that a line of one family is to pass through.
type pin struct {
	family int
	at     float64 // the line's coordinate
	way    float64 // the other coordinate of the place
	rank   int     // less gives way to more where two cannot both be had
}

// group is a set of inside corners that are met together, with the ways to do it: the
// corners of a pit by lines along two of its sides, an inside corner of the outline by
// one line either way.
type group struct {
	corners []plan.Point
	options [][]pin
}

// groupsOf returns the corners of a slab to be met, with their options.
func groupsOf(s plan.Slab, f frame, blocks []block) []group {
	var out []group
	byFixture := map[string][]plan.Point{}
	round := map[string]bool{}
	var order []string
	for _, c := range s.InsideCorners() {
		if inBlock(blocks, c.At) {
			continue
		}
		if c.Edge {
			out = append(out, group{[]plan.Point{c.At}, covers(f, []plan.Point{c.At}, 1)})
			continue
		}
		if _, seen := byFixture[c.Fixture]; !seen {
			order = append(order, c.Fixture)
		}
		byFixture[c.Fixture] = append(byFixture[c.Fixture], c.At)
		round[c.Fixture] = round[c.Fixture] || c.Round
	}
	for _, id := range order {
		points := byFixture[id]
		if round[id] {
			out = append(out, roundGroup(f, points))
			continue
		}
		out = append(out, group{points, covers(f, points, 2)})
	}
	for _, b := range blocks {
		out = append(out, blockGroup(s, f, b))
	}
	return out
}

func inBlock(blocks []block, p plan.Point) bool {
	for _, b := range blocks {
		if b.ring.Contains(p) {
			return true
		}
	}
	return false
}

// blockGroup meets the points of a diamond by the lines through its middle, the
// corners of a box as those of a pit.
func blockGroup(s plan.Slab, f frame, b block) group {
	var points []plan.Point
	for _, p := range b.ring {
		if plan.Ring(s.Outline).Contains(p) && plan.Ring(s.Outline).Distance(p) > fuzz {
			points = append(points, p)
		}
	}
	if !b.diamond {
		return group{points, covers(f, points, 3)}
	}
	var pins []pin
	ca, cb := f.to(b.centre)
	for _, p := range points {
		pa, pb := f.to(p)
		if math.Abs(pa-ca) < math.Abs(pb-cb) {
			pins = append(pins, pin{across, ca, pb, 3})
		} else {
			pins = append(pins, pin{along, cb, pa, 3})
		}
	}
	return group{points, [][]pin{pins}}
}

// roundGroup meets a large round hole by the lines through its middle.
func roundGroup(f frame, points []plan.Point) group {
	ca, cb := f.to(plan.Ring(points).Centroid())
	low, high := f.box(points)
	return group{points, [][]pin{{
		{across, ca, low[1], 2}, {across, ca, high[1], 2}, {along, cb, low[0], 2}, {along, cb, high[0], 2}}}}
}

// covers returns the ways to meet all corners with the fewest lines, and with one
// more where that is another mix. Last comes the way that meets none.
func covers(f frame, points []plan.Point, rank int) [][]pin {
	var lines [][]pin // one list of pins a line
	for family := range 2 {
		var values []float64
		for _, p := range points {
			values = append(values, coordinate(f, p, family))
		}
		sort.Float64s(values)
		for i, v := range values {
			if i > 0 && v-values[i-1] < fuzz {
				continue
			}
			var pins []pin
			for _, p := range points {
				if at := coordinate(f, p, family); math.Abs(at-v) < fuzz {
					pins = append(pins, pin{family, at, coordinate(f, p, 1-family), rank})
				}
			}
			lines = append(lines, pins)
		}
	}
	if len(lines) > 12 {
		return [][]pin{nil}
	}
	return append(fewest(f, points, lines), nil)
}

// coordinate returns the coordinate that a line of the family through p has.
func coordinate(f frame, p plan.Point, family int) float64 {
	a, b := f.to(p)
	if family == across {
		return a
	}
	return b
}

// fewest returns the choices of lines that meet every corner, those with the least
// lines and those with one more; none of which still does without one of its lines.
func fewest(f frame, points []plan.Point, lines [][]pin) [][]pin {
	met := func(mask int) int {
		seen := map[plan.Point]bool{}
		for i, l := range lines {
			if mask>>i&1 == 0 {
				continue
			}
			for _, p := range points {
				if math.Abs(coordinate(f, p, l[0].family)-l[0].at) < fuzz {
					seen[p] = true
				}
			}
		}
		return len(seen)
	}
	type choice struct{ mask, count int }
	var good []choice
	for mask := 1; mask < 1<<len(lines); mask++ {
		if met(mask) < len(points) {
			continue
		}
		spare, count := false, 0
		for i := range lines {
			if mask>>i&1 == 1 {
				count++
				spare = spare || met(mask&^(1<<i)) == len(points)
			}
		}
		if !spare {
			good = append(good, choice{mask, count})
		}
	}
	sort.SliceStable(good, func(i, k int) bool { return good[i].count < good[k].count })
	var out [][]pin
	for _, c := range good {
		if c.count > good[0].count+1 || len(out) == 6 {
			break
		}
		var pins []pin
		for i, l := range lines {
			if c.mask>>i&1 == 1 {
				pins = append(pins, l...)
			}
		}
		out = append(out, pins)
	}
	return out
}
