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
	if ratio <= 0 {
		return 0
	}
	s := math.Sqrt(math.Log(1 + variation*variation))
	return 0.5 * math.Erfc(-(math.Log(ratio)+s*s/2)/(s*math.Sqrt2))
}
