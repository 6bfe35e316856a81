package climate

import (
	"embed"
	"time"

	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares every published value of this package with what it computes.
func Checks() []source.Result {
	return source.Prove(published, "testdata/published", quantities)
}

// quantities answers the columns of the published tables in their own units.
var quantities = map[string]source.Func{
	"uno_si": func(in source.Inputs) float64 {
		return Uno(in.Num("concrete_C"), in.Num("air_C"), in.Num("humidity"), in.Num("wind_km_h"))
	},
	"uno_us": func(in source.Inputs) float64 {
		return UnoUS(in.Num("concrete_F"), in.Num("air_F"), in.Num("humidity"), in.Num("wind_mph"))
	},
	"uno_critical_humidity": func(in source.Inputs) float64 {
		return 100 * CriticalHumidity(DryingUno, in.Num("concrete_C"), in.Num("air_C"),
			in.Num("wind_km_h")*kilometrePerHour, in.Num("limit_kg_m2_h"))
	},
	"uno_us_critical_humidity": func(in source.Inputs) float64 {
		return 100 * CriticalHumidity(DryingUnoUS, Celsius(in.Num("concrete_F")), Celsius(in.Num("air_F")),
			in.Num("wind_mph")*milePerHour, in.Num("limit_lb_ft2_h")*poundPerSquareFoot)
	},
	"menzel_si": func(in source.Inputs) float64 {
		return Menzel(SaturationPressure(in.Num("concrete_C")), SaturationPressure(in.Num("air_C")),
			in.Num("humidity"), in.Num("wind_km_h"))
	},
	"menzel_us": func(in source.Inputs) float64 {
		return MenzelUS(SaturationPressureHylandWexler(Celsius(in.Num("concrete_F")))/psi,
			SaturationPressureHylandWexler(Celsius(in.Num("air_F")))/psi, in.Num("humidity"), in.Num("wind_mph"))
	},
	"pounds_per_square_foot": func(in source.Inputs) float64 { return in.Num("value") * poundPerSquareFoot },
	"bleed_total":            func(in source.Inputs) float64 { return bleedOf(in).Total() },
	"film_exhausted":         func(in source.Inputs) float64 { return FilmExhausted(bleedOf(in), in.Num("evaporation")) },
	"film_exhausted_marched": func(in source.Inputs) float64 {
		steady := func(float64) float64 { return in.Num("evaporation") }
		_, t := FilmHistory(bleedOf(in).At, steady, 0.05, 12)
		return t
	},
	"saturation":               func(in source.Inputs) float64 { return SaturationPressure(in.Num("air_C")) },
	"saturation_hyland_wexler": func(in source.Inputs) float64 { return SaturationPressureHylandWexler(in.Num("air_C")) },
	"dew_point":                func(in source.Inputs) float64 { return DewPoint(in.Num("air_C"), in.Num("humidity")) },
	"dew_point_hyland_wexler": func(in source.Inputs) float64 {
		return DewPointHylandWexler(in.Num("air_C"), in.Num("humidity"))
	},
	"wet_bulb": func(in source.Inputs) float64 {
		return WetBulb(in.Num("air_C"), in.Num("humidity"), in.Num("pressure_kPa"))
	},
	"zenith":                   func(in source.Inputs) float64 { z, _ := sunOf(in); return z },
	"azimuth":                  func(in source.Inputs) float64 { _, a := sunOf(in); return a },
	"haurwitz":                 func(in source.Inputs) float64 { z, _ := sunOf(in); return ClearSkyHaurwitz(z) },
	"ineichen_global":          func(in source.Inputs) float64 { return clearOf(in).Global },
	"ineichen_direct":          func(in source.Inputs) float64 { return clearOf(in).Direct },
	"ineichen_diffuse":         func(in source.Inputs) float64 { return clearOf(in).Diffuse },
	"declination":              func(in source.Inputs) float64 { return Declination(in.Num("day")) },
	"equation_of_time":         func(in source.Inputs) float64 { return EquationOfTime(in.Num("day")) },
	"sky_temperature_swinbank": func(in source.Inputs) float64 { return SkySwinbank(in.Num("air_C")) + kelvin },
	"sky_radiation_swinbank":   skyRadiationOf(SkyFormSwinbank),
	"sky_emissivity_brunt":     skyEmissivityOf(SkyFormBrunt),
	"sky_radiation_brunt":      skyRadiationOf(SkyFormBrunt),
	"sky_emissivity_brutsaert": skyEmissivityOf(SkyFormBrutsaert),
	"sky_radiation_brutsaert":  skyRadiationOf(SkyFormBrutsaert),
	"sky_emissivity_berdahl":   skyEmissivityOf(SkyFormBerdahlMartin),
	"sky_radiation_berdahl":    skyRadiationOf(SkyFormBerdahlMartin),
	"sky_emissivity_idso":      skyEmissivityOf(SkyFormIdsoJackson),
	"sky_radiation_idso":       skyRadiationOf(SkyFormIdsoJackson),
	"film_bentz":               func(in source.Inputs) float64 { return FilmBentz(in.Num("wind_m_s")) },
	"film_c680": func(in source.Inputs) float64 {
		return FilmASTMC680(in.Num("surface_C"), in.Num("air_C"), in.Num("wind_m_s"))
	},
	"wind_reduction": func(in source.Inputs) float64 {
		return WindReduction(in.Num("low_m"), in.Num("high_m"), in.Num("roughness_m"))
	},
	"ground_temperature": func(in source.Inputs) float64 {
		return GroundTemperature(in.Num("depth_m"), in.Num("day"), in.Num("mean_C"), in.Num("amplitude_K"),
			in.Num("coldest_day"), in.Num("diffusivity_m2_day"))
	},
}

func bleedOf(in source.Inputs) Bleed { return Bleed{Rate: in.Num("bleed"), End: in.Num("end_h")} }

func sunOf(in source.Inputs) (zenith, azimuth float64) {
	t, err := time.Parse("2006-01-02T15:04Z07:00", in.Word("time"))
	if err != nil {
		panic("climate: published row: " + err.Error())
	}
	return SunPosition(t, in.Num("latitude"), in.Num("longitude"))
}

func clearOf(in source.Inputs) Irradiance {
	zenith, _ := sunOf(in)
	return ClearSkyIneichen(zenith, in.Num("altitude"), in.Num("pressure_kPa"), in.Num("turbidity"), in.Num("outside"))
}

func skyEmissivityOf(form SkyForm) source.Func {
	return func(in source.Inputs) float64 { return form.Emissivity(in.Num("air_C"), in.Num("humidity")) }
}

func skyRadiationOf(form SkyForm) source.Func {
	return func(in source.Inputs) float64 {
		return SkyRadiation(form.Emissivity(in.Num("air_C"), in.Num("humidity")), in.Num("air_C"))
	}
}
