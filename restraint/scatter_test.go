package restraint

import (
	"math"
	"testing"

	"slabwright/plan"
)

// A larger slab holds weaker places, as a weakest link does. How weak the weakest is on
// the mean follows from the number of places beyond a level u to be expected of a smooth
// Gaussian field over a square: e^(−u²/2)·[A·κ·u/(2π)^1.5 + L·√κ/2π] + Φ(−u), A the area, L half the rim,
// κ = 2/Patch² for a correlation exp(−(d/Patch)²). The mean of the greatest lies where that is
// e^−0.577. Source: Adler and Taylor, Random fields and geometry, 2007, from memory.
func TestScatterHasASizeEffect(t *testing.T) {
	const variation, seeds = 0.1, 40
	for _, size := range []float64{2, 6, 18} {
		sum := 0.0
		for seed := range uint64(seeds) {
			s := newScatter(Settings{Scatter: variation, Patch: 0.7, Seed: seed + 1}.filled())
			least := math.Inf(1)
			for x := 0.0; x < size; x += 0.2 {
				for y := 0.0; y < size; y += 0.2 {
					least = math.Min(least, s.at(plan.Point{X: x, Y: y}))
				}
			}
			d := s.deviation
			sum += (math.Log(least) + d*d/2) / d / seeds
		}
		want := 0.0
		for beyond := 1.0; beyond > math.Exp(-0.5772); want -= 0.01 {
			u, kappa := -want, 2/(0.7*0.7)
			beyond = math.Exp(-u*u/2)*(size*size*kappa*u/math.Pow(2*math.Pi, 1.5)+2*size*math.Sqrt(kappa)/(2*math.Pi)) + math.Erfc(u/math.Sqrt2)/2
			if u < 1 {
				beyond = 1
			}
		}
		t.Logf("%g m: weakest place %.2f deviations from the mean, by hand %.2f; %.3f of the mean strength", size, sum, want, math.Exp(variation*sum))
		if math.Abs(sum-want) > 0.15 {
			t.Errorf("%g m: weakest place %.2f deviations from the mean, by hand %.2f", size, sum, want)
		}
	}
}
