package climate

import "math"

// ClearSkyHaurwitz returns the sun on level ground under a clear sky in W/m2.
//
//	zenith  angle of the sun from overhead [°]
//
// No altitude and no haze in it: a quick check of [ClearSkyIneichen].
//
// Source: Haurwitz, Journal of Meteorology 2 (1945). Seen as coded in pvlib.
func ClearSkyHaurwitz(zenith float64) float64 {
	c := math.Cos(radians(zenith))
	if c <= 0 {
		return 0
	}
	return 1098 * c * math.Exp(-0.057/c)
}

// AirMass returns how many times the air straight overhead the sun's beam passes,
// at sea level.
//
//	zenith  angle of the sun from overhead [°], below 96
//
// Source: Kasten and Young, Applied Optics 28 (1989). From memory.
func AirMass(zenith float64) float64 {
	return 1 / (math.Cos(radians(zenith)) + 0.50572*math.Pow(96.07995-zenith, -1.6364))
}

// Irradiance is the sun reaching a place, in W/m2.
type Irradiance struct {
	Global  float64 // on level ground
	Direct  float64 // on a face turned to the sun
	Diffuse float64 // from the rest of the sky, on level ground
}

// TypicalTurbidity is the Linke turbidity of ordinary clean air: 2 is very clear, 3
// clean and warm, 5 hazy.
const TypicalTurbidity = 3.0

// ClearSkyIneichen returns the sun under a clear sky for a place's altitude and
// haze.
//
//	zenith     angle of the sun from overhead [°]
//	altitude   above sea level [m]
//	pressure   of the air [kPa], see [AirPressure]
//	turbidity  Linke turbidity [-], 2 to 7
//	outside    the sun outside the air, square to the beam [W/m2]
//
// Source: Ineichen and Perez, Solar Energy 73(3) 2002. Coefficients seen as coded
// in pvlib.
func ClearSkyIneichen(zenith, altitude, pressure, turbidity, outside float64) Irradiance {
	c := math.Cos(radians(zenith))
	if c <= 0 {
		return Irradiance{}
	}
	am := AirMass(zenith) * pressure / StandardPressure
	fh1, fh2 := math.Exp(-altitude/8000), math.Exp(-altitude/1250)
	cg1, cg2 := 5.09e-5*altitude+0.868, 3.92e-5*altitude+0.0387
	global := cg1 * outside * c * math.Exp(-cg2*am*(fh1+fh2*(turbidity-1)))
	beam := outside * (0.664 + 0.163/fh1) * math.Exp(-0.09*am*(turbidity-1))
	most := global * math.Max(0, 1-(0.1-0.2*math.Exp(-turbidity))/(0.1+0.882/fh1)) / c
	direct := math.Min(beam, most)
	return Irradiance{Global: global, Direct: direct, Diffuse: global - direct*c}
}
