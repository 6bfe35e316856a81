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
	jog    string  // places of one line that is broken by an opening between them
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
	var order []string
	for _, c := range s.InsideCorners() {
		if inBlock(blocks, c.At) || roundHole(s, c.Fixture) && !c.Edge {
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
	}
	for _, id := range order {
		points := byFixture[id]
		options := covers(f, points, 2)
		out = append(out, group{points, append(wheels(f, points, id), options...)})
	}
	for _, x := range s.Fixtures {
		if roundHole(s, x.ID) && !(f.fan && plan.Ring(x.Shape).Contains(f.origin)) && !inBlock(blocks, plan.Ring(x.Shape).Centroid()) {
			out = append(out, roundGroup(f, x))
		}
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
		return group{points, append(wheels(f, points, b.fixtures[0]), covers(f, points, 3)...)}
	}
	var pins []pin
	ca, cb := f.to(b.centre)
	for _, p := range points {
		pa, pb := f.to(p)
		if math.Abs(pa-ca) < math.Abs(pb-cb) {
			pins = append(pins, pin{across, ca, pb, 3, b.fixtures[0]})
		} else {
			pins = append(pins, pin{along, cb, pa, 3, b.fixtures[0]})
		}
	}
	options := oneWay(pins)
	if b.column {
		options = options[:3] // a column stands on a joint line at least
	}
	return group{points, options}
}

// oneWay returns the ways to meet what lines both ways meet: both, one of them, none.
func oneWay(pins []pin) [][]pin {
	out := [][]pin{pins, nil, nil, nil}
	for _, p := range pins {
		out[1+p.family] = append(out[1+p.family], p)
	}
	return out
}

// roundHole reports whether a fixture is a round opening, drawn with many sides.
func roundHole(s plan.Slab, id string) bool {
	for _, x := range s.Fixtures {
		if x.ID == id {
			return isHole(x) && len(x.Shape) > 8
		}
	}
	return false
}

// roundGroup meets a large round hole by the lines through its middle.
func roundGroup(f frame, x plan.Fixture) group {
	ca, cb := f.to(plan.Ring(x.Shape).Centroid())
	low, high := f.box(x.Shape)
	return group{x.Shape, oneWay([]pin{
		{across, ca, low[1], 2, x.ID}, {across, ca, high[1], 2, x.ID}, {along, cb, low[0], 2, x.ID}, {along, cb, high[0], 2, x.ID}})}
}

// wheels returns the ways to meet the four corners of a pit by one line each way,
// each broken by the pit and going on from another corner beyond it, like the arms of
// a wheel: no narrow strip goes on from the pit's own width.
func wheels(f frame, points []plan.Point, id string) (out [][]pin) {
	if len(points) != 4 {
		return nil
	}
	// is one of the two lowest (sign +1) or highest (sign −1) in a coordinate
	outer := func(p plan.Point, family int, sign float64) bool {
		beyond := 0
		for _, o := range points {
			if sign*(coordinate(f, o, family)-coordinate(f, p, family)) < -fuzz {
				beyond++
			}
		}
		return beyond < 2
	}
	arm := func(family int, p plan.Point) pin {
		return pin{family, coordinate(f, p, family), coordinate(f, p, 1-family), 2, id}
	}
	for code := range 256 {
		down, up, west, east := points[code&3], points[code>>2&3], points[code>>4&3], points[code>>6&3]
		if down == up || down == west || down == east || up == west || up == east || west == east ||
			!outer(down, along, 1) || !outer(up, along, -1) || !outer(west, across, 1) || !outer(east, across, -1) {
			continue
		}
		out = append(out, []pin{arm(across, down), arm(across, up), arm(along, west), arm(along, east)})
	}
	return out
}

// covers returns the ways to meet all corners with the fewest lines, and with one
// more where that is another mix. Then come the ways that meet some of them by one
// line, or by one each way, and last the way that meets none.
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
					pins = append(pins, pin{family, at, coordinate(f, p, 1-family), rank, ""})
				}
			}
			lines = append(lines, pins)
		}
	}
	if len(lines) > 12 {
		return [][]pin{nil}
	}
	out := fewest(f, points, lines)
	if len(points) > 1 {
		out = append(out, some(lines)...)
	}
	return append(out, nil)
}

// some returns the choices of one line, and of one each way where there are few.
func some(lines [][]pin) (out [][]pin) {
	out = append(out, lines...)
	if len(lines) > 4 {
		return out
	}
	for i, a := range lines {
		for _, b := range lines[i+1:] {
			if a[0].family != b[0].family {
				out = append(out, append(append([]pin{}, a...), b...))
			}
		}
	}
	return out
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
