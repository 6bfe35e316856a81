package earlyage

import "math"

// BuiltIn is what a slab keeps from its first day for good: at this difference and
// this temperature it would lie flat and free of stress, but for drying and creep.
type BuiltIn struct {
	Difference   float64 // top less bottom at final set of the middle, K; NaN if not set
	ZeroStressAt float64 // h at which the fully restrained stress turned to tension, NaN if not in the run
	ZeroStress   float64 // temperature at mid-depth then, °C
}

// BuiltIn returns the difference built in at set and the zero-stress temperature. A
// rule by cement content and month misses the latter by 4 to 8 K (Yeon, Choi and
// Won, Construction and Building Materials 2013; abstract).
func (h *History) BuiltIn() BuiltIn {
	b := BuiltIn{math.NaN(), math.NaN(), math.NaN()}
	if set := h.FinalSet.Mid; !math.IsNaN(set) {
		m := h.At(set)
		b.Difference = m.Surface - m.Bottom
	}
	for i := 1; i < len(h.Hours); i++ {
		if h.FullRestraint[i-1] < 0 && h.FullRestraint[i] >= 0 {
			share := h.FullRestraint[i-1] / (h.FullRestraint[i-1] - h.FullRestraint[i])
			b.ZeroStressAt = h.Hours[i-1] + share*(h.Hours[i]-h.Hours[i-1])
			b.ZeroStress = h.At(b.ZeroStressAt).Mid
			break
		}
	}
	return b
}
