package restraint

// nearby lists, for each triangle, those over which its stress is averaged: within
// reach of its middle and not across an open line.
type nearby struct {
	start []int32
	tri   []int32
}

func newNearby(f *frame, reach float64) *nearby {
	n := &nearby{start: make([]int32, 1, len(f.tri)+1)}
	seen := make([]int32, len(f.tri))
	for i := range seen {
		seen[i] = -1
	}
	middle := make([][2]float64, len(f.tri))
	for t := range middle {
		p := f.middle(t)
		middle[t] = [2]float64{p.X, p.Y}
	}
	for t := range f.tri {
		// A triangle larger than the reach is averaged with those beside it.
		far := max(reach*reach, 0.9*f.sheet[t])
		first := len(n.tri)
		n.tri = append(n.tri, int32(t))
		seen[t] = int32(t)
		for k := first; k < len(n.tri); k++ {
			for _, o := range f.across[n.tri[k]] {
				if o < 0 || seen[o] == int32(t) {
					continue
				}
				seen[o] = int32(t)
				dx, dy := middle[o][0]-middle[t][0], middle[o][1]-middle[t][1]
				if dx*dx+dy*dy <= far {
					n.tri = append(n.tri, o)
				}
			}
		}
		n.start = append(n.start, int32(len(n.tri)))
	}
	return n
}

// nearTo lists the triangles near triangle t, itself first.
func (s *slabState) nearTo(t int32) []int32 {
	if s.near == nil {
		s.near = newNearby(s.frame, s.set.Reach)
	}
	return s.near.tri[s.near.start[t]:s.near.start[t+1]]
}

// mean returns the averaged stress of every triangle.
func (s *slabState) mean() [][3]float64 {
	raw := s.stress()
	out := make([][3]float64, len(raw))
	for t := range out {
		var sum [3]float64
		whole := 0.0
		for _, o := range s.nearTo(int32(t)) {
			a := s.frame.sheet[o]
			whole += a
			for i, v := range raw[o] {
				sum[i] += a * v
			}
		}
		for i := range sum {
			out[t][i] = sum[i] / whole
		}
	}
	return out
}

// stress returns the stress xx, yy, xy of every triangle.
func (s *slabState) stress() [][3]float64 {
	d := plane(s.set.Poisson)
	out := make([][3]float64, len(s.frame.tri))
	for t := range out {
		out[t] = stressOf(d, s.now[s.frame.pour[t]].Modulus, sub3(s.frame.strainIn(t, s.u), s.frozen[t]))
	}
	return out
}
