package concrete

import "math"

// Hydration is the heat and hydration curve of one mix.
type Hydration struct {
	Heat             float64 // of the binder when all has hydrated [J/g]
	Binder           float64 // content [kg/m³]
	ActivationEnergy float64 // [J/mol]
	Ultimate         float64 // αu [-]
	Tau              float64 // τ [h at 21.1 °C]
	Beta             float64 // β [-]
	Delay            float64 // retardation, ≥ 0 [h at 21.1 °C]: the curve starts that much later
	WaterBinder      float64 // w/cm [-]
}

// NewHydration returns the curve of a binder.
//
//	content       binder [kg/m³]
//	waterBinder   w/cm [-]
//	setShift      how much later final set comes by admixtures [h at 21.1 °C];
//	              negative with an accelerator
//
// A retarder moves the whole curve later: it holds the silicates asleep, then
// they run as before. An accelerator quickens the curve: τ is shortened so that
// final set comes earlier by the shift, to no less than 0.3 of itself. Both
// readings are our own; suppliers' set times are the datum.
func NewHydration(b Binder, content, waterBinder, setShift float64) Hydration {
	h := Hydration{
		Heat: BinderHeat(CementHeat(b.Composition), b), Binder: content,
		ActivationEnergy: ActivationEnergy(b), Ultimate: UltimateDegree(waterBinder, b.Ash, b.Slag),
		Tau: HydrationTime(b), Beta: HydrationSlope(b), WaterBinder: waterBinder,
	}
	if setShift >= 0 {
		h.Delay = setShift
		return h
	}
	const quickest = 0.3
	set := h.FinalSet()
	h.Tau *= math.Max(quickest, (set+setShift)/set)
	return h
}

// Degree returns α at an equivalent age in hours at 21.1 °C.
func (h Hydration) Degree(equivalentAge float64) float64 {
	return DegreeOfHydration(equivalentAge-h.Delay, h.Ultimate, h.Tau, h.Beta)
}

// DegreeRate returns dα/dte per hour of equivalent age.
func (h Hydration) DegreeRate(equivalentAge float64) float64 {
	return DegreeRate(equivalentAge-h.Delay, h.Ultimate, h.Tau, h.Beta)
}

// EquivalentAge returns the equivalent age, h at 21.1 °C, at which a degree is
// reached; without limit from the ultimate degree up.
func (h Hydration) EquivalentAge(degree float64) float64 {
	return h.Delay + EquivalentAgeOf(degree, h.Ultimate, h.Tau, h.Beta)
}

// AgeRate returns the hours of equivalent age that pass in an hour at a
// temperature in °C.
func (h Hydration) AgeRate(temperature float64) float64 {
	return AgeRate(h.ActivationEnergy, temperature, HydrationReference_C)
}

// HeatRate returns the heat given off, W/m³, at an equivalent age in hours and a
// temperature in °C.
func (h Hydration) HeatRate(equivalentAge, temperature float64) float64 {
	return HeatRate(h.Heat, h.Binder, h.DegreeRate(equivalentAge), h.AgeRate(temperature))
}

// HeatContent returns the heat given off so far, J/m³.
func (h Hydration) HeatContent(degree float64) float64 { return h.Heat * 1000 * h.Binder * degree }

// InitialSet returns the equivalent age at initial set, h at 21.1 °C.
func (h Hydration) InitialSet() float64 { return h.EquivalentAge(InitialSetDegree(h.WaterBinder)) }

// FinalSet returns the equivalent age at final set, h at 21.1 °C.
func (h Hydration) FinalSet() float64 { return h.EquivalentAge(FinalSetDegree(h.WaterBinder)) }

// ClockHours returns the hours it takes at a steady temperature in °C to reach an
// equivalent age.
func (h Hydration) ClockHours(equivalentAge, temperature float64) float64 {
	return equivalentAge / h.AgeRate(temperature)
}

// DaysAt20 returns an equivalent age, h at 21.1 °C, as days at 20 °C, the age the
// strength curves of the codes stand on.
func (h Hydration) DaysAt20(equivalentAge float64) float64 {
	return equivalentAge / 24 / h.AgeRate(StrengthReference_C)
}

// EquivalentAgeAt20 is the inverse of [Hydration.DaysAt20].
func (h Hydration) EquivalentAgeAt20(days float64) float64 {
	return days * 24 * h.AgeRate(StrengthReference_C)
}
