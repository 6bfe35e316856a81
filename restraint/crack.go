package restraint

import (
	"fmt"
	"math"
	"slices"

	"slabwright/plan"
)

// site is a place where the tension has passed the strength.
type site struct {
	share    float64 // tension over strength
	tri      int32
	side     side
	line     int // sawn line it lies on, −1 for none
	strength float64
}

// worst returns the place where tension is the largest share of strength, in sound
// concrete or under a groove. Places in spent do not count.
func (s *slabState) worst(mean [][3]float64, spent map[int32]bool) site {
	best := s.worstSound(mean, spent)
	for _, key := range s.weakSides() {
		l := s.weakLine(key)
		if v, strength := s.sawnShare(mean, key, &s.lines[l]); v > best.share {
			best = site{share: v, side: key, line: l, tri: -1, strength: strength}
		}
	}
	return best
}

// worstSound leaves grooves out.
func (s *slabState) worstSound(mean [][3]float64, spent map[int32]bool) site {
	best := site{line: -1, tri: -1}
	for t := range s.frame.tri {
		c := s.now[s.frame.pour[t]]
		if c.Strength < s.set.Green || spent[int32(t)] {
			continue
		}
		most, _, _ := principal(mean[t])
		if most <= 0 || most+c.Face <= best.share*c.Strength*s.factor[t] {
			continue
		}
		strength := c.Strength * s.factor[t]
		best = site{share: (most + c.Face) / strength, tri: int32(t), line: -1, strength: strength}
	}
	return best
}

// sawnShare returns tension over strength across a side under a groove.
func (s *slabState) sawnShare(mean [][3]float64, key side, l *Line) (share, strength float64) {
	d, _ := s.frame.at[key[1]].Minus(s.frame.at[key[0]]).Unit()
	n := d.Left()
	pair := s.frame.beside[key]
	factor := (s.factor[pair[0]] + s.factor[pair[1]]) / 2
	for _, t := range pair {
		c := s.now[s.frame.pour[t]]
		if c.Strength < s.set.Green {
			continue
		}
		m := mean[t]
		pull := m[0]*n.X*n.X + m[1]*n.Y*n.Y + 2*m[2]*n.X*n.Y
		if v := (pull/l.Share + c.Face/l.FaceShare) / (c.Strength * factor); pull > 0 && v > share {
			share, strength = v, c.Strength*factor
		}
	}
	return share, strength
}

// weakLine returns the sawn line along a side that is cut by now and has not opened
// there, −1 for none.
func (s *slabState) weakLine(key side) int {
	if _, open := s.cut[key]; open {
		return -1
	}
	for _, l := range s.frame.onLine[key] {
		if s.lines[l].Kind == SawnLine && s.lines[l].From <= s.hour {
			return l
		}
	}
	return -1
}

// weakSides lists the sides under grooves that have not opened, in a fixed order.
func (s *slabState) weakSides() []side {
	var out []side
	for key := range s.frame.onLine {
		if s.weakLine(key) >= 0 && s.frame.beside[key][1] >= 0 {
			out = append(out, key)
		}
	}
	slices.SortFunc(out, compareSides)
	return out
}

func compareSides(a, b side) int {
	if a[0] != b[0] {
		return int(a[0]) - int(b[0])
	}
	return int(a[1]) - int(b[1])
}

// sidesOf lists the sides of a line in its order.
func (s *slabState) sidesOf(line int) []side {
	path := plan.Polyline(s.lines[line].Path)
	along := map[side]float64{}
	var out []side
	for key, on := range s.frame.onLine {
		if slices.Contains(on, line) {
			along[key], _, _ = path.Nearest(s.frame.at[key[0]].Plus(s.frame.at[key[1]]).Times(0.5))
			out = append(out, key)
		}
	}
	slices.SortFunc(out, func(a, b side) int {
		if along[a] != along[b] {
			if along[a] < along[b] {
				return -1
			}
			return 1
		}
		return compareSides(a, b)
	})
	return out
}

// openSawn opens a sawn line from a side both ways, as far as the tension drives it.
func (s *slabState) openSawn(mean [][3]float64, at site) (opened []side) {
	l := &s.lines[at.line]
	sides := s.sidesOf(at.line)
	first := slices.Index(sides, at.side)
	opened = append(opened, at.side)
	length := func(key side) float64 { return s.frame.at[key[0]].To(s.frame.at[key[1]]) }
	for _, way := range []int{1, -1} {
		ran := length(at.side)
		for k := first + way; k >= 0 && k < len(sides); k += way {
			if s.weakLine(sides[k]) != at.line {
				break
			}
			share, strength := s.sawnShare(mean, sides[k], l)
			c := s.now[s.frame.pour[s.frame.beside[sides[k]][0]]]
			if ran > s.set.least() && (strength == 0 || share < ArrestShare(c.Modulus, s.fracture(s.frame.pour[s.frame.beside[sides[k]][0]]), strength*l.Share, ran)) {
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

// crackFrom starts a crack at a place or lets one that ends there run on. It returns
// the new line and its sides; none if it cannot start.
func (s *slabState) crackFrom(mean [][3]float64, at site) (line int, sides []side, path []plan.Point) {
	t := s.tracer(mean)
	start, tip := t.begin(at.tri)
	_, _, angle := principal(mean[at.tri])
	direction := plan.Point{X: -math.Sin(angle), Y: math.Cos(angle)}
	if tip.sides == 0 && s.startedNear(s.frame.at[start]) {
		return len(s.lines), nil, nil
	}
	var ways [2][]station
	line = len(s.lines)
	if tip.sides > 0 {
		if turn := direction.Dot(tip.away); turn < -widestKink {
			direction = direction.Times(-1)
		} else if turn < widestKink {
			direction = tip.away
		}
		if tip.line >= len(s.model.Lines) || s.lines[tip.line].Kind == CrackLine {
			line = tip.line
			t.started = s.lengthOpen(line)
		}
		ways[0] = t.follow(start, direction)
	} else {
		ways[0] = t.follow(start, direction)
		ways[1] = t.follow(start, direction.Times(-1))
		if r, _ := t.rank(start); r > 0 { // an edge is left one way only
			if len(ways[0]) < len(ways[1]) {
				ways[0] = ways[1]
			}
			ways[1] = nil
		}
	}
	for i := len(ways[1]) - 1; i >= 0; i-- {
		path = append(path, ways[1][i].at)
	}
	path = append(path, s.frame.at[start])
	for _, st := range ways[0] {
		path = append(path, st.at)
	}
	if len(path) < 2 || tip.sides == 0 && plan.Polyline(path).Length() < 2*s.set.Reach {
		return line, nil, nil // nothing, or a chip off an edge
	}
	if tip.sides == 0 {
		s.starts = append(s.starts, s.frame.at[start])
	}
	if line == len(s.lines) {
		s.lines = append(s.lines, Line{ID: fmt.Sprintf("C%d", len(s.lines)-len(s.model.Lines)+1), Kind: CrackLine, Path: path, From: s.hour})
	} else {
		s.lines[line].Path = joinPaths(s.lines[line].Path, path)
	}
	c := &carried{s.corners(s.u), s.corners(s.slid)}
	for _, way := range ways {
		laid, ok := s.lay(start, way, c)
		sides = append(sides, laid...)
		if !ok {
			break
		}
	}
	for _, key := range sides {
		if _, open := s.cut[key]; !open {
			s.cut[key] = line
		}
		s.frame.onLine[key] = append(s.frame.onLine[key], line)
	}
	s.reframe(c.u, c.slid)
	return line, sides, path
}

// widestKink is the cosine of the most a crack turns where it runs on: 80 degrees. A
// crack whose sides touch and slide turns by 70.5 degrees (Erdogan and Sih, 1963).
const widestKink = 0.17

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

// joinPaths puts a new stretch at the end of a path that it starts from.
func joinPaths(path, more []plan.Point) []plan.Point {
	if more[0].To(path[0]) < more[0].To(path[len(path)-1]) {
		out := slices.Clone(more)
		slices.Reverse(out)
		return append(out, path[1:]...)
	}
	return append(slices.Clone(path), more[1:]...)
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
	for _, o := range t.near.tri[t.near.start[tri]:t.near.start[tri+1]] {
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

// lengthOpen returns how much of a line is open, m.
func (s *slabState) lengthOpen(line int) (length float64) {
	for key, l := range s.cut {
		if l == line {
			length += s.frame.at[key[0]].To(s.frame.at[key[1]])
		}
	}
	return length
}
