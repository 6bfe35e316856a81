package concrete

import "math"

// AdjustedLoadingAge returns t0, days, changed for the cement: a slow one counts
// as younger at loading, a quick one as older, never below half a day.
//
//	age        temperature-adjusted age at loading [d]
//	exponent   −1 slow, 0 normal, 1 rapid
//
// Source: EN 1992-1-1:2004 (B.9), fib Model Code 2010 (5.1-73); seen as coded in
// fib structuralcodes.
func AdjustedLoadingAge(age, exponent float64) float64 {
	return math.Max(0.5, age*math.Pow(9/(2+math.Pow(age, 1.2))+1, exponent))
}

// NotionalCreepEN returns φ0, the creep coefficient in the end.
//
//	mean            strength fcm [MPa]
//	humidity        fraction
//	notionalSize    h0 [mm]
//	loadingAge      adjusted, see [AdjustedLoadingAge] [d]
//
// Source: EN 1992-1-1:2004 (B.2) to (B.5), (B.8c); seen as coded in fib
// structuralcodes.
func NotionalCreepEN(mean, humidity, notionalSize, loadingAge float64) float64 {
	dry := (1 - humidity) / (0.1 * math.Cbrt(notionalSize))
	factor := 1 + dry
	if mean > 35 {
		factor = (1 + dry*math.Pow(35/mean, 0.7)) * math.Pow(35/mean, 0.2)
	}
	return factor * 16.8 / math.Sqrt(mean) / (0.1 + math.Pow(loadingAge, 0.20))
}

// CreepProgressEN returns βc(t,t0), the share of the creep there is after so many
// days under load.
//
// Source: EN 1992-1-1:2004 (B.7), (B.8); seen as coded in fib structuralcodes.
func CreepProgressEN(mean, humidity, notionalSize, loadedDays float64) float64 {
	if loadedDays <= 0 {
		return 0
	}
	a3 := math.Min(1, math.Sqrt(35/mean))
	bH := math.Min(1.5*(1+math.Pow(1.2*humidity, 18))*notionalSize+250*a3, 1500*a3)
	return math.Pow(loadedDays/(bH+loadedDays), 0.3)
}

// TangentOverSecantEN is Ec/Ecm.
//
// Source: EN 1992-1-1:2004 3.1.4(2); from memory.
const TangentOverSecantEN = 1.05

// CreepEN is the creep model of EN 1992-1-1:2004 Annex B. Loading ages are
// temperature-adjusted; the coefficient stands on 1.05 Ecm at 28 days.
type CreepEN struct{ EN1992 }

// Coefficient returns φ(t,t0).
func (c CreepEN) Coefficient(member Member, loaded, age float64) float64 {
	t0 := AdjustedLoadingAge(loaded, classConstantEN(c.Class, "creepage"))
	h0 := member.NotionalSize()
	return NotionalCreepEN(c.Mean28, member.Humidity, h0, t0) * CreepProgressEN(c.Mean28, member.Humidity, h0, age-loaded)
}

// Compliance returns 1/(1.05 Ecm(t0)) + φ/(1.05 Ecm).
func (c CreepEN) Compliance(member Member, loaded, age float64) float64 {
	return 1/(TangentOverSecantEN*c.Modulus(loaded)) +
		c.Coefficient(member, loaded, age)/(TangentOverSecantEN*c.Modulus(28))
}
