package restraint

import (
	"math"
	"math/rand/v2"

	"slabwright/plan"
)

// scatter is how strength varies over the plan: lognormal with mean 1, alike in all
// directions, smooth over a length. It depends on the place and the seed alone, not on
// triangles. Since a larger slab holds more weak places, it brings the size effect of
// a weakest link with it.
type scatter struct {
	kx, ky, phase []float64
	deviation     float64
}

const scatterWaves = 96

func newScatter(set Settings) *scatter {
	s := &scatter{deviation: math.Sqrt(math.Log(1 + set.Scatter*set.Scatter))}
	if set.Scatter == 0 {
		return s
	}
	r := rand.New(rand.NewPCG(set.Seed, 0x51ab))
	for range scatterWaves {
		s.kx = append(s.kx, r.NormFloat64()/set.Patch*math.Sqrt2)
		s.ky = append(s.ky, r.NormFloat64()/set.Patch*math.Sqrt2)
		s.phase = append(s.phase, 2*math.Pi*r.Float64())
	}
	return s
}

// at returns the factor on the mean strength at a place. Correlation falls as
// exp(−(d/Patch)²).
func (s *scatter) at(p plan.Point) float64 {
	if s.deviation == 0 {
		return 1
	}
	z := 0.0
	for i, k := range s.kx {
		z += math.Cos(k*p.X + s.ky[i]*p.Y + s.phase[i])
	}
	z *= math.Sqrt(2. / scatterWaves)
	return math.Exp(s.deviation*z - s.deviation*s.deviation/2)
}
