package climate

import "math"

// GroundTemperature returns the temperature of undisturbed soil in °C through the
// year. The yearly swing fades and lags with depth: at 2 m the soil is coldest a
// month or two after the air.
//
//	depth        below the surface [m]
//	day          day of the year
//	mean         yearly mean of the surface [°C]
//	amplitude    half the yearly swing of the surface [K]
//	coldest      day of the year on which the surface is coldest
//	diffusivity  of the soil [m2/day], about 0.03 to 0.1
//
// Source: Kusuda and Achenbach (1965). From memory; it is the exact solution for a
// half-space under a swing with a period of 365 days.
func GroundTemperature(depth, day, mean, amplitude, coldest, diffusivity float64) float64 {
	fade := depth * math.Sqrt(math.Pi/(365*diffusivity))
	lag := depth / 2 * math.Sqrt(365/(math.Pi*diffusivity))
	return mean - amplitude*math.Exp(-fade)*math.Cos(2*math.Pi/365*(day-coldest-lag))
}
