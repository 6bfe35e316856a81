package concrete

import "math"

// CementHeat returns the heat a Portland cement would give if all of it
// hydrated, J per gram of cement: each compound gives its own heat.
//
// Errors: measured heats of 13 laboratory cements after long curing are 0.92 of
// this with 4.5 % spread (Woods, Steinour and Starke 1932).
//
// Source: Schindler and Folliard, ACI Materials Journal 102(1) 2005; from memory.
func CementHeat(c Composition) float64 {
	return 500*c.C3S + 260*c.C2S + 866*c.C3A + 420*c.C4AF + 624*c.SO3 + 1186*c.FreeCaO + 850*c.MgO
}

// BinderHeat returns the heat all the binder would give, J per gram of binder.
//
//	cementHeat   heat of the Portland part [J/g of it]
//
// Slag gives 461 J/g; ash gives by its lime, 1800 J per gram of CaO; silica fume
// 330 J/g; inert filler nothing.
//
// Source: Schindler and Folliard 2005 (slag, ash); silica fume from Riding et al.
// 2012. From memory.
func BinderHeat(cementHeat float64, b Binder) float64 {
	return cementHeat*b.Cement + 461*b.Slag + 1800*b.AshCaO*b.Ash + 330*b.SilicaFume
}

// UltimateDegree returns the share of the binder that will ever hydrate.
//
//	waterBinder   water over binder by mass, 0.30 to 0.70 [-]
//	ash, slag     share of binder [-]
//
// The rest stays as unhydrated cores: there is no room or water for it. With much
// ash and slag the sum passes one and is held there.
//
// Source: Mills 1966 with Schindler and Folliard 2005; from memory.
func UltimateDegree(waterBinder, ash, slag float64) float64 {
	return math.Min(1, 1.031*waterBinder/(0.194+waterBinder)+0.50*ash+0.30*slag)
}

// HydrationTime returns τ, the equivalent age in hours at 21.1 °C at which the
// degree of hydration is 1/e of the ultimate one. A larger τ sets later.
//
// Compared by its authors with Blaine 289 to 579 m²/kg and w/cm 0.36 to 0.53
// (range from memory).
//
// Source: Schindler and Folliard 2005; from memory.
func HydrationTime(b Binder) float64 {
	return 66.78 * math.Pow(b.C3A, -0.154) * math.Pow(b.C3S, -0.401) * math.Pow(b.Blaine, -0.804) *
		math.Pow(b.SO3, -0.758) * math.Exp(2.187*b.Slag+9.50*b.Ash*b.AshCaO)
}

// HydrationSlope returns β, the exponent of the hydration curve: the higher, the
// more suddenly heat comes once it starts.
//
// Source: Schindler and Folliard 2005; from memory.
func HydrationSlope(b Binder) float64 {
	return 181.4 * math.Pow(b.C3A, 0.146) * math.Pow(b.C3S, 0.227) * math.Pow(b.Blaine, -0.535) *
		math.Pow(b.SO3, 0.558) * math.Exp(-0.647*b.Slag)
}

// ActivationEnergy returns the apparent activation energy in J/mol, which says
// how strongly temperature speeds or slows the binder.
//
// Source: Schindler, ACI Materials Journal 101(1) 2004; from memory.
func ActivationEnergy(b Binder) float64 {
	blend := 1 - 1.05*b.Ash*(1-b.AshCaO/0.40) + 0.40*b.Slag
	return 22100 * math.Pow(b.C3A, 0.30) * math.Pow(b.C4AF, 0.25) * math.Pow(b.Blaine, 0.35) * blend
}

// ActivationEnergyPoole returns the apparent activation energy in J/mol by a
// later regression, without its admixture terms. Its constants are less surely
// remembered: use it as a plausibility check beside [ActivationEnergy].
//
// Source: Poole 2007, as in Riding et al. 2012; from memory, moderate confidence.
func ActivationEnergyPoole(b Binder) float64 {
	return 41230 + 1416000*(b.C3A+b.C4AF)*b.Cement*b.SO3*b.Cement - 347000*b.Na2Oeq - 19.8*b.Blaine +
		29600*b.Ash*b.AshCaO + 16200*b.Slag
}

// DegreeOfHydration returns α, the share of the binder that has hydrated.
//
//	equivalentAge   hours at 21.1 °C
//	ultimate        αu [-]
//	tau             [h]
//	beta            [-]
//
// Source: Schindler and Folliard 2005; from memory.
func DegreeOfHydration(equivalentAge, ultimate, tau, beta float64) float64 {
	if equivalentAge <= 0 {
		return 0
	}
	return ultimate * math.Exp(-math.Pow(tau/equivalentAge, beta))
}

// DegreeRate returns dα/dte, per hour of equivalent age, of [DegreeOfHydration].
func DegreeRate(equivalentAge, ultimate, tau, beta float64) float64 {
	if equivalentAge <= 0 {
		return 0
	}
	power := math.Pow(tau/equivalentAge, beta)
	return ultimate * math.Exp(-power) * power * beta / equivalentAge
}

// EquivalentAgeOf returns the equivalent age in hours at which the degree of
// hydration is reached, the inverse of [DegreeOfHydration]. It is zero for a
// degree of zero or less and without limit from the ultimate degree up.
func EquivalentAgeOf(degree, ultimate, tau, beta float64) float64 {
	switch {
	case degree <= 0:
		return 0
	case degree >= ultimate:
		return math.Inf(1)
	}
	return tau * math.Pow(math.Log(ultimate/degree), -1/beta)
}

// HeatRate returns the heat the concrete gives off, W/m³.
//
//	heat      of the binder when all of it has hydrated [J/g]
//	binder    content [kg/m³]
//	degreeRate  dα/dte [1/h]
//	ageRate   dte/dt at the concrete's temperature [-]
//
// Source: Schindler and Folliard 2005; from memory.
func HeatRate(heat, binder, degreeRate, ageRate float64) float64 {
	const gramsPerKilogram, secondsPerHour = 1000, 3600
	return heat * gramsPerKilogram * binder * degreeRate * ageRate / secondsPerHour
}

// AdiabaticRise returns how much warmer, K, concrete that loses no heat is once
// the degree of hydration is reached.
//
//	heat              of the binder [J/g]
//	degree            α [-]
//	binder            content [kg/m³]
//	density           of the concrete [kg/m³]
//	specificHeat      [J/(kg K)]
//
// Source: energy balance.
func AdiabaticRise(heat, degree, binder, density, specificHeat float64) float64 {
	return heat * 1000 * degree * binder / (density * specificHeat)
}
