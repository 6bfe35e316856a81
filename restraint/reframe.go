package restraint

// opened takes the net apart along the sides now in cut.
func (s *slabState) opened() {
	u, slid := s.corners(s.u), s.corners(s.slid)
	s.reframe(u, slid)
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
func (s *slabState) reframe(u, slid [][6]float64) {
	s.frame = newFrame(s.frame.net, s.cut, s.model, s.set)
	s.near = nil
	s.moved = nil
	s.u, s.slid = make([]float64, 2*s.frame.nodes), make([]float64, 2*s.frame.nodes)
	for t, nodes := range s.frame.node {
		for i, n := range nodes {
			s.u[2*n], s.u[2*n+1] = u[t][2*i], u[t][2*i+1]
			s.slid[2*n], s.slid[2*n+1] = slid[t][2*i], slid[t][2*i+1]
		}
	}
	s.wake(s.now)
}
