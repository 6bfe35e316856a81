package restraint

import (
	"fmt"
	"math"
	"slices"

	"slabwright/plan"
)

// openSawn opens a sawn line from a side both ways, as far as the tension drives it.
func (s *slabState) openSawn(mean [][3]float64, at site) (opened []side) {
	sides := s.sidesOf(at.line)
	first := slices.Index(sides, at.side)
	opened = append(opened, at.side)
	length := func(key side) float64 { return s.frame.at[key[0]].To(s.frame.at[key[1]]) }
	for _, way := range []int{1, -1} {
		ran := length(at.side)
		for k := first + way; k >= 0 && k < len(sides); k += way {
			if s.weakLine(sides[k]) != at.line || ran > s.set.least() && !s.sawnRuns(mean, sides[k], at.line, ran) {
				break
			}
			ran += length(sides[k])
			opened = append(opened, sides[k])
		}
	}
	for _, key := range opened {
		s.cut[key] = at.line
	}
	s.opened()
	return opened
}

// sawnRuns says whether the tension across a groove drives an opening on that has run
// so far.
func (s *slabState) sawnRuns(mean [][3]float64, key side, line int, ran float64) bool {
	l := &s.lines[line]
	share, strength := s.sawnShare(mean, key, l)
	pour := s.frame.pour[s.frame.beside[key][0]]
	return strength > 0 && share >= ArrestShare(s.now[pour].Modulus, s.fracture(pour), strength*l.Share, ran)
}

// crackFrom starts a crack at a place or lets one that ends there run on. It returns
// the line and the path of what is new; no path if it cannot start.
func (s *slabState) crackFrom(mean [][3]float64, at site) (line int, path []plan.Point) {
	t := s.tracer(mean)
	start, tip := t.begin(at.tri)
	line = len(s.lines)
	if tip.sides == 0 && s.startedNear(s.frame.at[start]) {
		return line, nil
	}
	if tip.sides > 0 && s.lines[tip.line].Kind == CrackLine {
		line = tip.line
		t.started = s.lengthOpen(line)
	}
	_, _, angle := principal(mean[at.tri])
	ways := t.ways(start, tip, plan.Point{X: -math.Sin(angle), Y: math.Cos(angle)})
	path = t.path(start, ways)
	if len(path) < 2 || tip.sides == 0 && plan.Polyline(path).Length() < 2*s.set.Reach {
		return line, nil // nothing, or a chip off an edge
	}
	if tip.sides == 0 {
		s.starts = append(s.starts, s.frame.at[start])
	}
	if line == len(s.lines) {
		s.lines = append(s.lines, Line{ID: fmt.Sprintf("C%d", len(s.lines)-len(s.model.Lines)+1), Kind: CrackLine, Path: path, From: s.hour})
	} else {
		s.lines[line].Path = joinPaths(s.lines[line].Path, path)
	}
	s.openAlong(start, ways, line)
	return line, path
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
	c := &carried{s.corners(s.u), s.corners(s.slid)}
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
	s.reframe(c.u, c.slid)
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
