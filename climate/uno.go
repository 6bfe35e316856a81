package climate

import "math"

// Uno returns the rate in kg/m2/h at which bleed water leaves a fresh slab, in SI
// units. It tells what the weather could take while free water stands on the
// surface; once the film is gone the concrete itself sets the pace.
//
//	concrete  temperature of the concrete surface [°C], about 15 to 35
//	air       temperature of the air [°C]
//	humidity  relative humidity of the air [0..1]
//	wind      wind 0.5 m above the surface [km/h]
//
// Negative means dew forms. In still air it still gives a rate. The family of
// formulas is within about 40 % of measured evaporation.
//
// Source: Uno, ACI Materials Journal 95(4) 1998, SI form.
func Uno(concrete, air, humidity, wind float64) float64 {
	return 5 * (power25(concrete+18) - humidity*power25(air+18)) * (wind + 4) * 1e-6
}

// UnoUS returns the same rate in lb/ft2/h from US customary units.
//
//	concrete  temperature of the concrete surface [°F]
//	air       temperature of the air [°F]
//	humidity  relative humidity of the air [0..1]
//	wind      wind 20 in. above the surface [mph]
//
// Source: Uno, ACI Materials Journal 95(4) 1998, US form. From memory.
func UnoUS(concrete, air, humidity, wind float64) float64 {
	return (power25(concrete) - humidity*power25(air)) * (1 + 0.4*wind) * 1e-6
}

// power25 returns x to the power 2.5; below the root of the fit (-18 °C, 0 °F)
// there is no vapour left and it is zero.
func power25(x float64) float64 {
	if x <= 0 {
		return 0
	}
	return x * x * math.Sqrt(x)
}
