package climate

// Menzel returns the drying rate in kg/m2/h of a fresh slab with free water on it,
// in SI units: the form behind the evaporation chart used on site.
//
//	surface   saturation vapour pressure at the concrete temperature [kPa]
//	air       saturation vapour pressure at the air temperature [kPa]
//	humidity  relative humidity of the air [0..1]
//	wind      wind 0.5 m above the surface [km/h]
//
// Its constants are rounded from [MenzelUS]; the two are about 1 % apart.
//
// Source: Menzel 1954 in the SI form given by Uno, ACI Materials Journal 95(4)
// 1998. From memory.
func Menzel(surface, air, humidity, wind float64) float64 {
	return 0.315 * (surface - humidity*air) * (0.253 + 0.060*wind)
}

// MenzelUS returns the drying rate in lb/ft2/h from US customary units.
//
//	surface   saturation vapour pressure at the concrete temperature [psi]
//	air       saturation vapour pressure at the air temperature [psi]
//	humidity  relative humidity of the air [0..1]
//	wind      wind 20 in. above the surface [mph]
//
// Source: Menzel 1954, as in ACI 305R. From memory.
func MenzelUS(surface, air, humidity, wind float64) float64 {
	return 0.44 * (surface - humidity*air) * (0.253 + 0.096*wind)
}
