package flexure

import (
	"math"
	"testing"
)

// The moments must be those of the deflection under the same load: second
// differences of PointDeflection, with D = k = l = P = 1.
func TestNeighbourMomentsFollowTheDeflection(t *testing.T) {
	const step, poisson = 1e-3, 0.2
	for _, r := range []float64{0.3, 0.7, 1, 1.5, 2.5, 4} {
		w := func(x float64) float64 { return PointDeflection(x) }
		bend := (w(r+step) - 2*w(r) + w(r-step)) / (step * step)
		around := (w(r+step) - w(r-step)) / (2 * step) / r
		wantAlong, wantAcross := -(bend + poisson*around), -(around + poisson*bend)
		along, across := NeighbourMoments(r, poisson)
		// Second differences with step 1e-3: truncation of step² and rounding of 1e-16/step².
		if math.Abs(along-wantAlong) > 1e-5 || math.Abs(across-wantAcross) > 1e-5 {
			t.Errorf("r = %g l: got %.6f and %.6f, second differences of the deflection give %.6f and %.6f", r, along, across, wantAlong, wantAcross)
		}
	}
}
