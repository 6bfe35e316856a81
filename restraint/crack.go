package restraint

import (
	"fmt"
	"math"
	"slices"

	"slabwright/plan"
)

// way is a way that the tension would open.
type way struct {
	at     plan.Point // where it starts
	path   []plan.Point
	length float64
	strong float64 // length over which tension passes the strength on the mean, the shortest crack at least
	sides  []side  // of a sawn line
	// Of a crack:
	start    int32
	tip      bool // it starts from the end of another opening
	line     int
	stations [2][]station
}

// wayFrom finds what the tension would open from a place, no longer than about most.
// Its length is 0 where nothing can open.
func (s *slabState) wayFrom(mean [][3]float64, at site, most float64) way {
	if at.line >= 0 {
		return s.sawnWay(mean, at, most)
	}
	return s.crackWay(mean, at, most)
}

// sawnWay runs along a sawn line from a side both ways, as far as the tension drives
// it. What is left of the groove beyond, if less than the shortest crack, tears too.
func (s *slabState) sawnWay(mean [][3]float64, at site, most float64) way {
	sides := s.sidesOf(at.line)
	first := slices.Index(sides, at.side)
	ends := func(key side) (plan.Point, plan.Point) { return s.frame.at[key[0]], s.frame.at[key[1]] }
	from, to := ends(at.side)
	w := way{at: from.Plus(to).Times(0.5), sides: []side{at.side}}
	for _, step := range []int{1, -1} {
		ran, rest := from.To(to), 0.0
		var left []side // beyond where the tension no longer drives it
		seed, _ := s.sawnShare(mean, at.side, &s.lines[at.line])
		sum := seed * from.To(to) // of tension over strength, along the way
		for k := first + step; k >= 0 && k < len(sides) && s.weakLine(sides[k]) == at.line; k += step {
			a, b := ends(sides[k])
			if len(left) > 0 || ran > most/2 || ran > s.set.least() && !s.sawnRuns(mean, sides[k], at.line, ran) {
				left = append(left, sides[k])
				rest += a.To(b)
				continue
			}
			ran += a.To(b)
			w.sides = append(w.sides, sides[k])
			share, _ := s.sawnShare(mean, sides[k], &s.lines[at.line])
			if sum += share * a.To(b); sum >= ran {
				w.strong = max(w.strong, 2*ran)
			}
		}
		if rest < s.set.least() {
			w.sides = append(w.sides, left...)
		}
	}
	w.strong = max(w.strong, s.set.least())
	for _, key := range w.sides {
		a, b := ends(key)
		w.length += a.To(b)
		w.path = append(w.path, a, b)
	}
	w.path = spanOf(w.path)
	return w
}

// sawnRuns says whether the tension across a groove drives an opening on that has run
// so far.
func (s *slabState) sawnRuns(mean [][3]float64, key side, line int, ran float64) bool {
	l := &s.lines[line]
	share, strength := s.sawnShare(mean, key, l)
	pour := s.frame.pour[s.frame.beside[key][0]]
	return strength > 0 && share >= ArrestShare(s.now[pour].Modulus, s.fracture(pour), strength*l.Share, ran)
}

// crackWay finds where a crack from a place would run, or one that ends there run on.
func (s *slabState) crackWay(mean [][3]float64, at site, most float64) way {
	t := s.tracer(mean)
	t.most = most
	start, tip := t.begin(at.tri)
	w := way{at: s.frame.middle(int(at.tri)), start: start, tip: tip.sides > 0, line: len(s.lines)}
	if !w.tip && s.startedNear(s.frame.at[start]) {
		return w
	}
	if w.tip && s.lines[tip.line].Kind == CrackLine {
		w.line = tip.line
		t.started = s.lengthOpen(w.line)
	}
	_, _, angle := principal(mean[at.tri])
	w.stations = t.ways(start, tip, plan.Point{X: -math.Sin(angle), Y: math.Cos(angle)})
	path := t.path(start, w.stations)
	length := plan.Polyline(path).Length()
	if len(path) < 2 || !w.tip && length < 2*s.set.Reach {
		return w // nothing, or a chip off an edge
	}
	w.path, w.length, w.strong = path, length, max(t.strong, s.set.least())
	return w
}

// openCrack opens a way through sound concrete and returns the name of the crack.
func (s *slabState) openCrack(w way) string {
	if !w.tip {
		s.starts = append(s.starts, s.frame.at[w.start])
	}
	if w.line == len(s.lines) {
		s.lines = append(s.lines, Line{ID: fmt.Sprintf("C%d", len(s.lines)-len(s.model.Lines)+1), Kind: CrackLine, Path: w.path, From: s.hour})
	} else {
		s.lines[w.line].Path = joinPaths(s.lines[w.line].Path, w.path)
	}
	s.openAlong(w.start, w.stations, w.line)
	return s.lines[w.line].ID
}

// ways follows a crack from its start, both ways or, from the end of another or from
// an edge, one.
func (t *tracer) ways(start int32, tip tip, direction plan.Point) (ways [2][]station) {
	if tip.sides > 0 {
		if turn := direction.Dot(tip.away); turn < -widestKink {
			direction = direction.Times(-1)
		} else if turn < widestKink {
			direction = tip.away
		}
		ways[0] = t.follow(start, direction)
		return ways
	}
	ways[0] = t.follow(start, direction)
	ways[1] = t.follow(start, direction.Times(-1))
	if r, _ := t.rank(start); r > 0 {
		if len(ways[0]) < len(ways[1]) {
			ways[0] = ways[1]
		}
		ways[1] = nil
	}
	return ways
}

// path puts the places of both ways in order.
func (t *tracer) path(start int32, ways [2][]station) (path []plan.Point) {
	for _, st := range slices.Backward(ways[1]) {
		path = append(path, st.at)
	}
	path = append(path, t.frame.at[start])
	for _, st := range ways[0] {
		path = append(path, st.at)
	}
	return path
}

// openAlong refines the net along both ways and opens the line there.
func (s *slabState) openAlong(start int32, ways [2][]station, line int) {
	c := &carried{s.corners(s.u), s.corners(s.slid), s.frame.ranks()}
	for _, way := range ways {
		laid, whole := s.lay(start, way, c)
		for _, key := range laid {
			if _, open := s.cut[key]; !open {
				s.cut[key] = line
			}
			s.frame.onLine[key] = append(s.frame.onLine[key], line)
		}
		if !whole {
			break
		}
	}
	s.reframe(c)
}

// widestKink is the cosine of the most a crack turns where it runs on: 80 degrees. A
// crack whose sides touch and slide turns by 70.5 degrees (Erdogan and Sih, 1963).
const widestKink = 0.17

// joinPaths puts a new stretch at the end of a path that it starts from.
func joinPaths(path, more []plan.Point) []plan.Point {
	if more[0].To(path[0]) < more[0].To(path[len(path)-1]) {
		out := slices.Clone(more)
		slices.Reverse(out)
		return append(out, path[1:]...)
	}
	return append(slices.Clone(path), more[1:]...)
}

// lengthOpen returns how much of a line is open, m.
func (s *slabState) lengthOpen(line int) (length float64) {
	for key, l := range s.cut {
		if l == line {
			length += s.frame.at[key[0]].To(s.frame.at[key[1]])
		}
	}
	return length
}
