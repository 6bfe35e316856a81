package earlyage

// EquivalentDifference returns the difference of temperature between top and
// bottom, K, that would curl a slab as a strain through its depth does. Positive:
// top longer than bottom.
//
//	depth     of the points from the top, first 0 [m]
//	strain    at the points, linear between them [-]
//	expansion coefficient of thermal expansion [1/K]
//
// Source: the moment of the strain, 12/(h^2 alpha) integral of eps z dz with z
// upward from mid-depth; textbook.
func EquivalentDifference(depth, strain []float64, expansion float64) float64 {
	h := depth[len(depth)-1]
	var moment float64
	for i := 0; i+1 < len(depth); i++ {
		z0, z1 := h/2-depth[i], h/2-depth[i+1]
		e0, e1 := strain[i], strain[i+1]
		moment += (depth[i+1] - depth[i]) / 6 * (e0*z0 + (e0+e1)*(z0+z1) + e1*z1)
	}
	return 12 / (h * h * expansion) * moment
}

// section splits strains through the depth into a mean, a curvature and a rest,
// each layer counting by its stiffness.
type section struct {
	depth []float64 // of the nodes from the top, m
	rest  []float64 // strain less the plane, by node
	mean  float64   // strain at mid-depth
	slope float64   // strain per metre upward: positive, top longer
	whole float64   // mean modulus of the section
}

// split fits the plane that leaves no force and no moment. Until a third of the
// depth is stiff there is no plane: the strain of the stiff part is then its own.
func (s *section) split(strain, modulus []float64) {
	h := s.depth[len(s.depth)-1]
	var e0, e1, e2, m0, m1 float64
	for i := 0; i+1 < len(s.depth); i++ {
		dx := (s.depth[i+1] - s.depth[i]) / 6
		za, zb := h/2-s.depth[i], h/2-s.depth[i+1]
		zm, em, sm := (za+zb)/2, (modulus[i]+modulus[i+1])/2, (strain[i]+strain[i+1])/2
		a, b, c := dx*modulus[i], 4*dx*em, dx*modulus[i+1]
		e0 += a + b + c
		e1 += a*za + b*zm + c*zb
		e2 += a*za*za + b*zm*zm + c*zb*zb
		m0 += a*strain[i] + b*sm + c*strain[i+1]
		m1 += a*strain[i]*za + b*sm*zm + c*strain[i+1]*zb
	}
	s.whole = e0 / h
	s.mean, s.slope = 0, 0
	if e0 > 0 {
		s.mean = m0 / e0
		if spread := e2 - e1*e1/e0; spread > e0*h*h/12*0.1 {
			s.slope = (m1 - m0*e1/e0) / spread
			s.mean = (m0 - s.slope*e1) / e0
		}
	}
	for i := range s.rest {
		s.rest[i] = strain[i] - s.mean - s.slope*(h/2-s.depth[i])
	}
}
