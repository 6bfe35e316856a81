package earlyage

import "math"

// WaterCapacity returns the water that a cubic metre of concrete gives up as the
// humidity of its pores falls, kg/m3 per unit of humidity. Young paste holds its water in
// wide pores: it must lose much before its humidity falls. As it hydrates the pores
// narrow and the same loss dries it further.
//
//	humidity  of the pores, 0 to 1
//	degree    of hydration, up to the ultimate
//	ultimate  degree of hydration
//	water     of the mix [kg/m3]
//	binder    [kg/m3], counted as cement
//
// It is the slope of the evaporable water we = G1 (1 - exp(-x h)) + K1 (exp(x h) - 1) with
// x = 10 (1.5 ultimate - degree), G1 = 0.2 degree binder and K1 such that at humidity 1 the
// paste holds water - 0.188 degree binder.
//
// Source: Norling Mjoernell 1997 in the form of Di Luzio and Cusatis, Cement and Concrete
// Composites 31 (2009). From memory.
func WaterCapacity(humidity, degree, ultimate, water, binder float64) float64 {
	const gel, bound, steep = 0.2, 0.188, 1.5
	x := 10 * (steep*ultimate - degree)
	g := gel * degree * binder
	end := math.Exp(x)
	k := math.Max(0, water-bound*degree*binder-g*(1-1/end)) / (end - 1)
	rise := math.Exp(x * humidity)
	return x * (g/rise + k*rise)
}
