package earlyage

import (
	"math"
	"testing"

	"slabwright/internal/march"
)

// A strain that is a plane leaves no rest, whatever the stiffness; the rest of any
// strain carries no force and no moment.
func TestSectionSplit(t *testing.T) {
	depth := march.TwoSided(0, 0.2, 8, 1.25)
	n := len(depth)
	s := section{depth: depth, rest: make([]float64, n)}
	stiff, plane, bent := make([]float64, n), make([]float64, n), make([]float64, n)
	for i, d := range depth {
		stiff[i] = 5000 + 1e5*d
		plane[i] = 1e-4 + 2e-3*(0.1-d)
		bent[i] = -4e-4 * math.Exp(-d/0.02)
	}
	s.split(plane, stiff)
	if math.Abs(s.mean-1e-4) > 1e-15 || math.Abs(s.slope-2e-3) > 1e-13 {
		t.Errorf("plane: mean %g slope %g", s.mean, s.slope)
	}
	for i, r := range s.rest {
		if math.Abs(r) > 1e-15 {
			t.Errorf("plane leaves %g in layer %d", r, i)
		}
	}
	s.split(bent, stiff)
	var force, moment, size float64
	for i := 0; i+1 < n; i++ {
		dx := (depth[i+1] - depth[i]) / 6
		for k, w := range []float64{dx, 4 * dx, dx} {
			share := float64(k) / 2
			e := stiff[i] + share*(stiff[i+1]-stiff[i])
			r := s.rest[i] + share*(s.rest[i+1]-s.rest[i])
			z := 0.1 - (depth[i] + share*(depth[i+1]-depth[i]))
			force += w * e * r
			moment += w * e * r * z
			size += w * e * math.Abs(r)
		}
	}
	if math.Abs(force) > 1e-12*size || math.Abs(moment) > 1e-12*size {
		t.Errorf("rest carries force %g and moment %g of %g", force, moment, size)
	}
	// The same plane by the closed form of a uniform section.
	for i := range stiff {
		stiff[i] = 1
	}
	s.split(bent, stiff)
	if got, want := s.slope*0.2/1e-5, EquivalentDifference(depth, bent, 1e-5); math.Abs(got-want) > 1e-9*math.Abs(want) {
		t.Errorf("curvature as difference %.6f K, closed form %.6f K", got, want)
	}
	// Nothing stiff, nothing split.
	s.split(bent, make([]float64, n))
	if s.mean != 0 || s.slope != 0 || s.whole != 0 {
		t.Errorf("liquid section: mean %g slope %g modulus %g", s.mean, s.slope, s.whole)
	}
}
