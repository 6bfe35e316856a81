package earlyage

import "math"

// CrackChance returns the chance that a stress exceeds a tensile strength that
// scatters lognormally about its mean.
//
//	ratio      stress over mean tensile strength [-]
//	variation  coefficient of variation of the strength [-]
//
// Source: probability; the law is a usual choice.
func CrackChance(ratio, variation float64) float64 {
	return crackChance(ratio, lognormalSpread(variation))
}

// lognormalSpread is the standard deviation of the logarithm.
func lognormalSpread(variation float64) float64 { return math.Sqrt(math.Log(1 + variation*variation)) }

func crackChance(ratio, s float64) float64 {
	if ratio <= 0 {
		return 0
	}
	return 0.5 * math.Erfc(-(math.Log(ratio)+s*s/2)/(s*math.Sqrt2))
}

// RatioAtChance returns the stress over mean tensile strength at which
// [CrackChance] comes to a chance between 0 and 1: its inverse.
func RatioAtChance(chance, variation float64) float64 {
	s := lognormalSpread(variation)
	return math.Exp(-s*math.Sqrt2*math.Erfcinv(2*chance) - s*s/2)
}
