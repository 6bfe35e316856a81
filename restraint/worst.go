package restraint

import (
	"math"
	"slices"

	"slabwright/plan"
)

// site is a place where the tension has passed the strength.
type site struct {
	share    float64 // tension over strength
	ready    float64 // the same where nothing was tried yet, else over what the next try waits for
	tri      int32
	side     side
	line     int // sawn line it lies on, −1 for none
	strength float64
}

// waited says whether a place was looked at before and waits for more tension.
func (at site) waited() bool { return at.ready < at.share }

// pace is how near a place is to opening, for choosing steps: one that waits opens by
// work and not by tension, and asks for shorter steps only once it has opened.
func (at site) pace() float64 {
	if at.waited() {
		return math.Min(at.ready, 1)
	}
	return at.ready
}

// worst returns the place where tension is nearest to opening something, in sound
// concrete or under a groove. Places in spent do not count.
func (s *slabState) worst(mean [][3]float64, spent map[int32]bool) site {
	best := s.worstSound(mean, spent)
	for _, key := range s.weakSides() {
		l := s.weakLine(key)
		v, strength := s.sawnShare(mean, key, &s.lines[l])
		pour := s.frame.pour[s.frame.beside[key][0]]
		if ready := v * strength / math.Max(strength, s.waits.line[l]*s.tough[pour]); ready > best.ready {
			best = site{share: v, ready: ready, side: key, line: l, tri: -1, strength: strength}
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
		most := tension(mean[t])
		strength := c.Strength * s.factor[t]
		until := math.Max(strength, s.waits.tri[t]*s.tough[s.frame.pour[t]])
		if most <= 0 || most+c.Face <= best.ready*until {
			continue
		}
		best = site{share: (most + c.Face) / strength, ready: (most + c.Face) / until, tri: int32(t), line: -1, strength: strength}
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
	if _, open := s.cut[key]; open || s.frame.beside[key][1] < 0 {
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
		if s.weakLine(key) >= 0 {
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
