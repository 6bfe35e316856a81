package restraint

// opened takes the net apart along the sides now in cut.
func (s *slabState) opened() {
	s.reframe(&carried{s.corners(s.u), s.corners(s.slid), s.frame.ranks()})
}

// corners copies values of nodes to the corners of triangles.
func (s *slabState) corners(v []float64) [][6]float64 {
	out := make([][6]float64, len(s.frame.tri))
	for t, nodes := range s.frame.node {
		for i, n := range nodes {
			out[t][2*i], out[t][2*i+1] = v[2*n], v[2*n+1]
		}
	}
	return out
}

// reframe numbers the nodes anew and brings values back from the corners.
func (s *slabState) reframe(c *carried) {
	s.frame = newFrame(s.frame.net, s.cut, s.model, s.set, c.rank)
	s.near = nil
	s.moved = nil
	s.u, s.slid = make([]float64, 2*s.frame.nodes), make([]float64, 2*s.frame.nodes)
	for t, nodes := range s.frame.node {
		for i, n := range nodes {
			s.u[2*n], s.u[2*n+1] = c.u[t][2*i], c.u[t][2*i+1]
			s.slid[2*n], s.slid[2*n+1] = c.slid[t][2*i], c.slid[t][2*i+1]
		}
	}
	s.wake(s.now)
}
