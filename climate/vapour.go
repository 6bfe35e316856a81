package climate

import "math"

// SaturationPressure returns the pressure of water vapour over water at
// saturation, in kPa: the most vapour air of this temperature can hold. A warm wet
// surface under cool air dries fast because its saturation pressure lies far above
// what the air carries.
//
//	air  temperature [°C]
//
// Good to 0.1 % from 0 to 40 °C, over water also below freezing.
//
// Source: FAO Irrigation and Drainage Paper 56, Eq. (11), the form of Tetens. From
// memory.
func SaturationPressure(air float64) float64 {
	return 0.6108 * math.Exp(17.27*air/(air+237.3))
}

// SaturationPressureHylandWexler returns the same pressure in kPa by the longer
// equations of Hyland and Wexler: over ice up to the triple point at 0.01 °C, over
// water above it. Use it from -100 to 200 °C, or as the check of
// [SaturationPressure].
//
// Source: ASHRAE Handbook Fundamentals 2017, chapter 1, Eqs. (5) and (6). Seen as
// coded in a public library of psychrometrics.
func SaturationPressureHylandWexler(air float64) float64 {
	const triplePoint = 0.01 // °C
	T := air + kelvin
	if air <= triplePoint {
		return 1e-3 * math.Exp(-5.6745359e3/T+6.3925247-9.677843e-3*T+6.2215701e-7*T*T+
			2.0747825e-9*T*T*T-9.484024e-13*T*T*T*T+4.1635019*math.Log(T))
	}
	return 1e-3 * math.Exp(-5.8002206e3/T+1.3914993-4.8640239e-2*T+4.1764768e-5*T*T-
		1.4452093e-8*T*T*T+6.5459673*math.Log(T))
}

// VapourPressure returns the pressure of the water vapour in the air, in kPa.
//
//	air       temperature [°C]
//	humidity  relative humidity [0..1]
func VapourPressure(air, humidity float64) float64 {
	return humidity * SaturationPressure(air)
}

// DewPoint returns the temperature in °C at which the air would begin to give off
// water. A slab colder than this is wetted by the air: no finishing, no coating.
//
//	air       temperature [°C]
//	humidity  relative humidity, above 0 to 1
//
// Dry air (humidity 0) has no dew point and gives -Inf.
//
// Source: inverse of FAO Paper 56, Eq. (11).
func DewPoint(air, humidity float64) float64 {
	if humidity <= 0 {
		return math.Inf(-1)
	}
	a := math.Log(humidity) + 17.27*air/(air+237.3)
	return 237.3 * a / (17.27 - a)
}

// HumidityFromDewPoint returns the relative humidity of air with this dew point,
// never above 1.
func HumidityFromDewPoint(air, dewPoint float64) float64 {
	return math.Min(1, SaturationPressure(dewPoint)/SaturationPressure(air))
}

// DewPointHylandWexler returns the dew point in °C that belongs to
// [SaturationPressureHylandWexler], found by halving between -100 °C and the air
// temperature. It is the second route beside [DewPoint].
func DewPointHylandWexler(air, humidity float64) float64 {
	want := humidity * SaturationPressureHylandWexler(air)
	return bisect(-100, air, func(T float64) float64 { return SaturationPressureHylandWexler(T) - want })
}

// kelvin is 0 °C on the absolute scale.
const kelvin = 273.15

// bisect returns where a rising function passes zero between low and high, to
// 1e-9 of the range.
func bisect(low, high float64, f func(float64) float64) float64 {
	for range 60 {
		mid := (low + high) / 2
		if f(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}
