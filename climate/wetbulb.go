package climate

import "math"

// StandardPressure is the pressure of the air at sea level in kPa.
const StandardPressure = 101.325

// AirPressure returns the pressure of the standard atmosphere in kPa.
//
//	altitude  height above sea level [m], -500 to 11000
//
// Source: ASHRAE Handbook Fundamentals 2017, chapter 1, Eq. (3). From memory.
func AirPressure(altitude float64) float64 {
	return StandardPressure * math.Pow(1-2.25577e-5*altitude, 5.2559)
}

// HumidityRatio returns the kilograms of vapour that go with one kilogram of dry
// air.
//
//	vapour    vapour pressure [kPa]
//	pressure  pressure of the air [kPa]
//
// Source: ASHRAE Handbook Fundamentals 2017, chapter 1, Eq. (20).
func HumidityRatio(vapour, pressure float64) float64 {
	return 0.621945 * vapour / (pressure - vapour)
}

// WetBulb returns the temperature in °C that a wet cloth, or a wet slab in the
// shade with nothing below it, takes in moving air. Water and ice are told apart at
// 0 °C.
//
//	air       temperature [°C]
//	humidity  relative humidity [0..1]
//	pressure  pressure of the air [kPa]
//
// Source: ASHRAE Handbook Fundamentals 2017, chapter 1, Eqs. (33) and (35), solved
// by halving. Seen as coded in a public library of psychrometrics.
func WetBulb(air, humidity, pressure float64) float64 {
	have := HumidityRatio(humidity*SaturationPressureHylandWexler(air), pressure)
	return bisect(-100, air, func(wet float64) float64 { return wetBulbRatio(air, wet, pressure) - have })
}

// wetBulbRatio returns the humidity ratio of air at a dry and a wet bulb reading.
func wetBulbRatio(air, wet, pressure float64) float64 {
	saturated := HumidityRatio(SaturationPressureHylandWexler(wet), pressure)
	if wet >= 0 {
		return ((2501-2.326*wet)*saturated - 1.006*(air-wet)) / (2501 + 1.86*air - 4.186*wet)
	}
	return ((2830-0.24*wet)*saturated - 1.006*(air-wet)) / (2830 + 1.86*air - 2.1*wet)
}
