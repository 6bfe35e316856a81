package earlyage

import (
	"math"

	"slabwright/concrete"
)

// variation is a member while it is put together.
type variation struct {
	column    Column
	restraint Restraint
	edge      float64 // place in the range of edge strengths, 0 to 1
	scatter   float64 // coefficient of variation of tensile strength
	speed     float64 // of the cement
	ratio     float64 // water over binder
	thickness float64 // m
	setShift  float64 // h at 21.1 °C
}

// vary returns the pour with its unknowns at these values.
func (p Pour) vary(values []float64) variation {
	v := variation{column: p.Column, restraint: p.Restraint}
	for i, k := range unknowns {
		k.set(&v, values[i])
	}
	v.thicken()
	v.remix(p.Column.Concrete)
	return v
}

// thicken changes the slab's thickness; bleeding goes with it.
func (v *variation) thicken() {
	share := v.thickness / v.column.Thickness
	v.column.Thickness = v.thickness
	v.column.Concrete.Bleed.Rate *= share
	if v.column.CutDepth > 0 {
		v.column.CutDepth = math.Min(v.column.CutDepth, v.thickness)
	}
}

// Exponents with which tensile strength and modulus follow the compressive
// strength: EN 1992-1-1 Table 3.1.
const tensileExponent, modulusExponent = 2.0 / 3, 0.3

// remix changes speed, water and set of the concrete. Strength keeps to the
// hydration: the new concrete has at its final set what the old one had at its, and
// goes on from there as much faster; with more water it is weaker throughout, as
// the mean strengths by water over binder are (concrete.MeanStrengthFor).
func (v *variation) remix(old Concrete) {
	h := &v.column.Concrete.Hydration
	if v.speed == 1 && v.setShift == 0 && v.ratio == h.WaterBinder {
		return
	}
	speed := v.speed
	h.Tau /= v.speed
	if v.ratio > 0 && h.WaterBinder > 0 {
		h.Ultimate = math.Min(1, h.Ultimate*concrete.UltimateDegree(v.ratio, 0, 0)/concrete.UltimateDegree(h.WaterBinder, 0, 0))
		h.WaterBinder = v.ratio
	}
	if h.Delay += v.setShift; h.Delay < 0 { // earlier than the curve's start: it runs quicker, as in concrete.NewHydration
		const quickest = 0.3
		early := h.Delay
		h.Delay = 0
		set := h.FinalSet()
		quicker := math.Max(quickest, (set+early)/set)
		h.Tau *= quicker
		speed /= quicker
	}
	from, to := old.Hydration.FinalSet(), h.FinalSet()
	strength := concrete.MeanStrengthFor(h.WaterBinder) / concrete.MeanStrengthFor(old.Hydration.WaterBinder)
	tensile, modulus := math.Pow(strength, tensileExponent), math.Pow(strength, modulusExponent)
	before := old.Properties
	v.column.Concrete.Properties = func(equivalentAge float64) concrete.Properties {
		p := before(from + (equivalentAge-to)*speed)
		return concrete.Properties{Strength: strength * p.Strength, Tensile: tensile * p.Tensile, Modulus: modulus * p.Modulus}
	}
}
