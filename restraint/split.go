package restraint

import "slices"

// carried are the values that live on triangles and their corners while the net is
// refined.
type carried struct {
	u, slid [][6]float64
	rank    [][3]int32 // when the node at each corner is eliminated
}

// lay refines the net so that a path from a point runs along sides, and returns
// those sides in order. Values of triangles go to their parts. A path that comes back
// to where it ran before ends there, and ok is false.
func (s *slabState) lay(from int32, path []station, c *carried) (laid []side, ok bool) {
	last := from
	for _, st := range path {
		p := st.point
		if p < 0 {
			if _, whole := s.frame.beside[st.side]; !whole {
				return laid, false
			}
			p = s.splitSide(st.side, st.share, c)
		}
		key := sideOf(last, p)
		if _, joined := s.frame.beside[key]; !joined {
			return laid, false
		}
		laid = append(laid, key)
		last = p
	}
	return laid, true
}

// splitSide puts a point on a side and cuts the triangles beside it in two.
func (s *slabState) splitSide(key side, share float64, c *carried) int32 {
	n := s.frame.net
	a, b := key[0], key[1]
	p := int32(len(n.at))
	n.at = append(n.at, n.at[a].Plus(n.at[b].Minus(n.at[a]).Times(share)))
	pair := n.beside[key]
	delete(n.beside, key)
	low, high := sideOf(a, p), sideOf(p, b)
	first := true
	for _, t := range pair {
		if t < 0 {
			continue
		}
		i := n.corner(t, a) % 3
		// Turned so that the split side runs from corner i to j, or from j to i.
		j := n.corner(t, b) % 3
		k := 3 - i - j
		apex := n.tri[t][k]
		fresh := int32(len(n.tri))
		mid := func(v [6]float64) (x, y float64) {
			return v[2*i] + share*(v[2*j]-v[2*i]), v[2*i+1] + share*(v[2*j+1]-v[2*i+1])
		}
		old, other := n.tri[t], n.tri[t]
		old[j], other[i] = p, p
		n.tri = append(n.tri, other)
		n.tri[t] = old
		n.pour = append(n.pour, n.pour[t])
		s.frozen = append(s.frozen, s.frozen[t])
		s.factor = append(s.factor, s.factor[t])
		s.waits.tri = append(s.waits.tri, s.waits.tri[t])
		for _, v := range []*[][6]float64{&c.u, &c.slid} {
			x, y := mid((*v)[t])
			whole := (*v)[t]
			*v = append(*v, whole)
			(*v)[t][2*j], (*v)[t][2*j+1] = x, y
			(*v)[fresh][2*i], (*v)[fresh][2*i+1] = x, y
		}
		// The new point goes with the earlier end of its side: all beside it are beside that.
		early, whole := min(c.rank[t][i], c.rank[t][j]), c.rank[t]
		c.rank = append(c.rank, whole)
		c.rank[t][j], c.rank[fresh][i] = early, early
		n.replace(sideOf(b, apex), t, fresh)
		n.beside[sideOf(p, apex)] = [2]int32{t, fresh}
		if first {
			n.beside[low], n.beside[high] = [2]int32{t, -1}, [2]int32{fresh, -1}
			first = false
		} else {
			n.beside[low] = [2]int32{n.beside[low][0], t}
			n.beside[high] = [2]int32{n.beside[high][0], fresh}
		}
	}
	s.inherit(key, low, high, p, share)
	return p
}

// replace puts another triangle beside a side.
func (n *net) replace(key side, was, is int32) {
	pair := n.beside[key]
	for i := range pair {
		if pair[i] == was {
			pair[i] = is
		}
	}
	n.beside[key] = pair
}

// inherit gives the halves of a side what the whole had: lines, holds, memory.
func (s *slabState) inherit(key, low, high side, p int32, share float64) {
	n := s.frame.net
	if on, ok := n.onLine[key]; ok {
		delete(n.onLine, key)
		n.onLine[low], n.onLine[high] = on, slices.Clone(on)
	}
	if h, ok := n.onHold[key]; ok {
		delete(n.onHold, key)
		n.onHold[low], n.onHold[high] = h, h
	}
	if line, ok := s.cut[key]; ok {
		delete(s.cut, key)
		s.cut[low], s.cut[high] = line, line
	}
	a, knowsA := s.memory[seamKey{key, key[0]}]
	b, knowsB := s.memory[seamKey{key, key[1]}]
	if !knowsA && !knowsB {
		return
	}
	if !knowsA {
		a = b
	}
	if !knowsB {
		b = a
	}
	mix := func(x, y float64) float64 { return x + share*(y-x) }
	mid := memory{alive: a.alive, across0: mix(a.across0, b.across0), along0: mix(a.along0, b.along0), widest: mix(a.widest, b.widest), now: mix(a.now, b.now)}
	delete(s.memory, seamKey{key, key[0]})
	delete(s.memory, seamKey{key, key[1]})
	s.memory[seamKey{low, key[0]}], s.memory[seamKey{low, p}] = a, mid
	s.memory[seamKey{high, p}], s.memory[seamKey{high, key[1]}] = mid, b
}
