package climate

import (
	"math"

	"slabwright/source"
)

// StefanBoltzmann is the radiation of a black body in W/m2K4.
const StefanBoltzmann = 5.670374e-8

// SkyBrunt returns the emissivity of a clear sky from the vapour pressure [kPa]
// near the ground.
//
// Source: Brunt 1932, with the constants 0.52 and 0.065 (hPa). From memory.
func SkyBrunt(vapour float64) float64 { return 0.52 + 0.065*math.Sqrt(10*vapour) }

// SkyBrutsaert returns the emissivity of a clear sky from the vapour pressure
// [kPa] and air temperature [°C] near the ground.
//
// Source: Brutsaert 1975. From memory.
func SkyBrutsaert(air, vapour float64) float64 {
	return 1.24 * math.Pow(10*vapour/(air+kelvin), 1.0/7)
}

// SkySwinbank returns the temperature of a clear sky in °C from that of the air
// [°C] alone. Made for mild humid places; too warm a sky in a desert.
//
// Source: Swinbank 1963. From memory.
func SkySwinbank(air float64) float64 {
	return 0.0552*math.Pow(air+kelvin, 1.5) - kelvin
}

// SkyBerdahlMartin returns the emissivity of a clear sky from the dew point [°C].
//
// Source: Berdahl and Martin, Solar Energy 32 (1984). From memory.
func SkyBerdahlMartin(dewPoint float64) float64 {
	x := dewPoint / 100
	return 0.711 + 0.56*x + 0.73*x*x
}

// SkyIdsoJackson returns the emissivity of a clear sky from the air temperature
// [°C] alone.
//
// Source: Idso and Jackson 1969. From memory.
func SkyIdsoJackson(air float64) float64 {
	d := 273 - (air + kelvin)
	return 1 - 0.261*math.Exp(-7.77e-4*d*d)
}

// SkyForm is one published emissivity of a clear sky in terms of air temperature
// [°C] and relative humidity, so that all can be run side by side.
type SkyForm struct {
	Name       string
	Source     source.Citation
	emissivity func(air, humidity float64) float64
}

// Emissivity returns the emissivity of a clear sky.
func (f SkyForm) Emissivity(air, humidity float64) float64 { return f.emissivity(air, humidity) }

// The published forms. They differ by up to 0.1, which is 40 W/m2.
var (
	SkyFormBerdahlMartin = SkyForm{"Berdahl and Martin", source.Cite("berdahl1984", "clear-sky emissivity"),
		func(air, humidity float64) float64 {
			return SkyBerdahlMartin(DewPoint(air, math.Max(humidity, driestSky)))
		}}
	SkyFormBrunt = SkyForm{"Brunt", source.Cite("brunt1932", "clear-sky emissivity"),
		func(air, humidity float64) float64 { return SkyBrunt(VapourPressure(air, humidity)) }}
	SkyFormBrutsaert = SkyForm{"Brutsaert", source.Cite("brutsaert1975", "clear-sky emissivity"),
		func(air, humidity float64) float64 { return SkyBrutsaert(air, VapourPressure(air, humidity)) }}
	SkyFormSwinbank = SkyForm{"Swinbank", source.Cite("swinbank1963", "sky temperature"),
		func(air, _ float64) float64 { return math.Pow((SkySwinbank(air)+kelvin)/(air+kelvin), 4) }}
	SkyFormIdsoJackson = SkyForm{"Idso and Jackson", source.Cite("idso1969", "clear-sky emissivity"),
		func(air, _ float64) float64 { return SkyIdsoJackson(air) }}
)

// driestSky keeps the dew point finite in air reported as wholly dry.
const driestSky = 0.01

// SkyForms returns every published form, the one used unless chosen otherwise
// first.
func SkyForms() []SkyForm {
	return []SkyForm{SkyFormBerdahlMartin, SkyFormBrunt, SkyFormBrutsaert, SkyFormSwinbank, SkyFormIdsoJackson}
}

// CloudedEmissivity returns the emissivity of a sky partly covered: cloud radiates
// like a black body.
//
//	clear  emissivity of the clear sky
//	cloud  share of the sky covered [0..1]
//
// Source: Crawford and Duchon, Journal of Applied Meteorology 38 (1999). From
// memory.
func CloudedEmissivity(clear, cloud float64) float64 { return clear*(1-cloud) + cloud }

// SkyRadiation returns the heat the sky sends down on level ground in W/m2. A slab
// sends up about 400 W/m2 at 20 °C, so on a clear night it loses 50 to 100 more
// than it gets.
//
//	emissivity  of the sky [-]
//	air         temperature of the air [°C]
func SkyRadiation(emissivity, air float64) float64 {
	return emissivity * StefanBoltzmann * math.Pow(air+kelvin, 4)
}
