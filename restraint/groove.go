package restraint

import "slabwright/plan"

// guided is how much of the tension beside a groove the groove must feel, as a share of
// its own strength against the share in the sound concrete, to lead a crack whose end
// lies on it. Ahead of a crack both are averages over different triangles; 0.8 leaves
// room for that.
const guided = 0.8

// intoGroove lets a place in sound concrete pass to the groove that the end of a crack
// or opened joint lies on, where there is one.
func (s *slabState) intoGroove(mean [][3]float64, at site) site {
	if at.line >= 0 {
		return at
	}
	t := s.tracer(mean)
	start, tip := t.begin(at.tri)
	if tip.sides == 0 {
		return at
	}
	best := at
	best.share = guided * at.share
	for _, key := range s.sidesAt(start) {
		l := s.weakLine(key)
		if l < 0 {
			continue
		}
		if v, strength := s.sawnShare(mean, key, &s.lines[l]); v >= best.share {
			best = site{share: v, ready: at.ready, side: key, line: l, tri: -1, strength: strength}
		}
	}
	if best.line < 0 {
		return at
	}
	return best
}

// sidesAt lists the sides at a point of the net.
func (s *slabState) sidesAt(p int32) (out []side) {
	for _, tri := range s.frame.around(p) {
		v := s.frame.tri[tri]
		i := s.frame.corner(tri, p) % 3
		out = append(out, sideOf(p, v[(i+1)%3]), sideOf(p, v[(i+2)%3]))
	}
	return out
}

// caught says whether a crack that comes upon a groove in a direction turns into it:
// the tension across the groove, cos² of the angle between them, must reach what the
// groove leaves of the strength.
func (t *tracer) caught(st station, direction plan.Point) bool {
	sides := []side{st.side}
	if st.point >= 0 {
		sides = t.sidesAt(st.point)
	}
	for _, key := range sides {
		l := t.weakLine(key)
		if l < 0 {
			continue
		}
		way, _ := t.frame.at[key[1]].Minus(t.frame.at[key[0]]).Unit()
		if c := way.Dot(direction); c*c >= t.lines[l].Share {
			return true
		}
	}
	return false
}
