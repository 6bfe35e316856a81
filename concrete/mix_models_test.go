package concrete

import (
	"math"
	"testing"
)

// Every model of every typical mix must give a strength, a shrinkage and a creep that
// concrete has: a constant read from the wrong column would not.
func TestEveryModelOfEveryMix(t *testing.T) {
	slab := SlabDryingFromTop(0.15, 0.5, 7)
	for _, key := range Cements() {
		m := mixOf(t, 32, key)
		for _, s := range m.StrengthModels() {
			if f := s.Strength(28); math.Abs(f/40-1) > 0.15 {
				t.Errorf("%s, %s: %.1f MPa at 28 days where 40 were asked for", key, s.Code(), f)
			}
			if ft, e := s.Tensile(28), s.Modulus(28); ft < 2.0 || ft > 3.6 || e < 24000 || e > 37000 {
				t.Errorf("%s, %s: tension %.2f MPa, modulus %.0f MPa", key, s.Code(), ft, e)
			}
		}
		for _, s := range m.ShrinkageModels(7, 1000e-6) {
			if v := TotalShrinkage(s, slab, 10000); v < 250e-6 || v > 1200e-6 {
				t.Errorf("%s, %s: %.0f microstrain", key, s.Code(), 1e6*v)
			}
		}
		for _, c := range m.CreepModels(7, 1000e-6) {
			if j := 1e6 * c.Compliance(slab, 28, 10000); j < 60 || j > 300 {
				t.Errorf("%s, %s: %.0f microstrain per MPa", key, c.Code(), j)
			}
		}
	}
}
