package plan

import "math"

// LooseEnd is an end of a joint that meets no edge, opening or other joint: a saw
// that was not run out, or a line drawn short.
type LooseEnd struct {
	Joint string  `json:"joint"`
	At    Point   `json:"at"`
	Short float64 `json:"short_m"` // to the nearest edge, opening or joint
}

// LooseEnds returns the ends of joints that stop inside a panel, where they divide
// nothing. They are no mistake in the facts: a groove that stops short is a reason
// for a crack beyond it.
func (s Slab) LooseEnds() []LooseEnd {
	var loose []LooseEnd
	for i, j := range s.Joints {
		if len(j.Path) < 2 {
			continue
		}
		for _, end := range []Point{j.Path[0], j.Path[len(j.Path)-1]} {
			short := s.distance(end)
			for k, o := range s.Joints {
				if k == i {
					continue
				}
				if _, _, d := Polyline(o.Path).Nearest(end); d < short {
					short = d
				}
			}
			if short > JointReach && !math.IsInf(short, 1) && !closes(j.Path) {
				loose = append(loose, LooseEnd{j.ID, end, short})
			}
		}
	}
	return loose
}

// closes reports whether a path comes back to its start.
func closes(path Polyline) bool { return path[0].To(path[len(path)-1]) <= SnapTolerance }
