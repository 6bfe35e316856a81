package climate

import "math"

// FilmBentz returns the coefficient of heat passed between a bare slab and the air
// by the wind, in W/m2K.
//
//	wind  [m/s]
//
// Bare surface only; a cover adds its resistance in series. Radiation is not in it.
// The two branches meet within 1.5 % at 5 m/s.
//
// Source: Bentz, NISTIR 6551 (2000). From memory.
func FilmBentz(wind float64) float64 {
	if wind <= 5 {
		return 5.6 + 4.0*wind
	}
	return 7.2 * math.Pow(wind, 0.78)
}

// FilmASTMC680 returns the coefficient of heat passed between the top of a slab and
// the air in W/m2K, with the buoyancy that FilmBentz leaves out: a surface warmer
// than the air stirs it, a cooler one keeps it still.
//
//	surface, air  temperatures [°C]; their mean must be above -17.8
//	wind          [m/s]
//
// It is zero when the two temperatures are equal, however strong the wind: the
// form was made for hot and cold surfaces. Prefer [FilmBentz] near balance.
//
// Source: ASTM C680 as used for pavements by Schindler et al., Transportation
// Research Record 1813 (2002). From memory.
func FilmASTMC680(surface, air, wind float64) float64 {
	position := 20.40 // top surface warmer than the air
	if surface < air {
		position = 10.15
	}
	mean := (surface + air) / 2
	return 0.2782 * position * math.Pow(1/(mean+17.8), 0.181) *
		math.Pow(math.Abs(surface-air), 0.266) * math.Sqrt(1+2.8566*wind)
}
