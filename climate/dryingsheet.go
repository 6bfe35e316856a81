package climate

import (
	"fmt"
	"math"

	"slabwright/source"
	"slabwright/working"
)

// DryingSheet works the drying rate of one hour by every published form, line by
// line in the units each is printed in, with one form beside the other as check.
//
//	id         of the sheet, "drying-peak"
//	concrete   temperature of the concrete surface [°C]
//	air        temperature of the air [°C]
//	humidity   relative humidity [0..1]
//	wind       wind at the instrument [m/s]
//	height     of the instrument [m]
//	roughness  of the ground [m]
func DryingSheet(id string, concrete, air, humidity, wind, height, roughness float64) working.Sheet {
	s := working.Sheet{ID: id, Title: "Drying rate of the fresh surface", Basis: []string{
		"Free water stands on the surface; once it is gone the concrete itself sets the pace.",
		"The forms are within about 40 % of measured evaporation."}}
	s.Basis = append(s.Basis, fitNotes(math.Min(concrete, air), math.Max(concrete, air))...)
	share := WindReduction(SlabWindHeight, height, roughness)
	kmh := wind * share / kilometrePerHour
	s.Add(windLines(wind, height, roughness, share, kmh)...)
	s.Add(unoLine(concrete, air, humidity, kmh))
	s.Add(menzelLines(concrete, air, humidity, kmh)...)
	s.Add(unoUSLines(concrete, air, humidity, kmh)...)
	s.Add(verdictLine(concrete, air, humidity, kmh))
	return s
}

func windLines(wind, height, roughness, share, kmh float64) []working.Line {
	return []working.Line{
		working.New("f_w", "share of the wind felt 0.5 m above the slab", "ln(h_s/z_0) / ln(h_m/z_0)", share, "",
			source.Cite("mechanics", "logarithmic law of the wind"),
			working.In("h_s", SlabWindHeight, "m", "height above the slab"),
			working.In("h_m", height, "m", "height of the instrument"),
			working.In("z_0", roughness, "m", "roughness of the ground")),
		working.New("V", "wind at the slab", "3.6·f_w·v_m", kmh, "km/h", source.Cite("mechanics", "units"),
			working.In("f_w", share, "", "share of the wind"),
			working.In("v_m", wind, "m/s", "wind at the instrument")),
	}
}

func unoLine(concrete, air, humidity, kmh float64) working.Line {
	beside := Menzel(SaturationPressure(concrete), SaturationPressure(air), humidity, kmh)
	return working.New("E_U", "drying rate, Uno", "5·((T_c + 18)^2.5 − r·(T_a + 18)^2.5)·(V + 4)·10^−6",
		Uno(concrete, air, humidity, kmh), "kg/m²h", DryingUno.Source,
		working.In("T_c", concrete, "°C", "concrete surface"), working.In("T_a", air, "°C", "air"),
		working.In("r", humidity, "", "relative humidity"), working.In("V", kmh, "km/h", "wind at the slab")).
		Beside("Menzel", beside, DryingMenzel.Source, "two fits to one law; in still air Uno keeps a larger rate")
}

func menzelLines(concrete, air, humidity, kmh float64) []working.Line {
	tetens := source.Cite("fao56", "Eq. (11)")
	es, ea := SaturationPressure(concrete), SaturationPressure(air)
	return []working.Line{
		working.New("e_0", "saturation pressure at the concrete", "0.6108·exp(17.27·T_c/(T_c + 237.3))", es, "kPa", tetens,
			working.In("T_c", concrete, "°C", "concrete surface")).
			Beside("Hyland and Wexler", SaturationPressureHylandWexler(concrete), source.Cite("ashrae2017", "ch. 1 Eqs. (5), (6)"), ""),
		working.New("e_a", "saturation pressure at the air", "0.6108·exp(17.27·T_a/(T_a + 237.3))", ea, "kPa", tetens,
			working.In("T_a", air, "°C", "air")).
			Beside("Hyland and Wexler", SaturationPressureHylandWexler(air), source.Cite("ashrae2017", "ch. 1 Eqs. (5), (6)"), ""),
		working.New("E_M", "drying rate, Menzel", "0.315·(e_0 − r·e_a)·(0.253 + 0.060·V)", Menzel(es, ea, humidity, kmh), "kg/m²h", DryingMenzel.Source,
			working.In("e_0", es, "kPa", "saturation pressure at the concrete"), working.In("e_a", ea, "kPa", "saturation pressure at the air"),
			working.In("r", humidity, "", "relative humidity"), working.In("V", kmh, "km/h", "wind at the slab")).
			Beside("Menzel in US units", DryingMenzelUS.Rate(concrete, air, humidity, kmh*kilometrePerHour), DryingMenzelUS.Source, "rounded constants"),
	}
}

func unoUSLines(concrete, air, humidity, kmh float64) []working.Line {
	mph := kmh * kilometrePerHour / milePerHour
	us := UnoUS(Fahrenheit(concrete), Fahrenheit(air), humidity, mph)
	return []working.Line{
		working.New("E_F", "drying rate, Uno in US units", "(T_cF^2.5 − r·T_aF^2.5)·(1 + 0.4·V_mph)·10^−6", us, "lb/ft²h", DryingUnoUS.Source,
			working.In("T_cF", Fahrenheit(concrete), "°F", "concrete surface"), working.In("T_aF", Fahrenheit(air), "°F", "air"),
			working.In("r", humidity, "", "relative humidity"), working.In("V_mph", mph, "mph", "wind at the slab")),
		working.New("E_US", "the same in SI units", "4.88243·E_F", us*poundPerSquareFoot, "kg/m²h", source.Cite("mechanics", "units"),
			working.In("E_F", us, "lb/ft²h", "drying rate, Uno in US units")).
			Beside("Uno in SI units", Uno(concrete, air, humidity, kmh), DryingUno.Source, "rounded constants"),
	}
}

// verdictLine holds the greatest of the forms against the limit.
func verdictLine(concrete, air, humidity, kmh float64) working.Line {
	row := DryingRow{Uno: Uno(concrete, air, humidity, kmh),
		UnoUS:  DryingUnoUS.Rate(concrete, air, humidity, kmh*kilometrePerHour),
		Menzel: DryingMenzel.Rate(concrete, air, humidity, kmh*kilometrePerHour)}
	line := working.New("u", "greatest rate against the limit", "max(E_U, E_M, E_US) / E_lim", row.Highest()/DryingLimit, "",
		source.Cite("aci305", "0.2 lb/ft²h"),
		working.In("E_U", row.Uno, "kg/m²h", "Uno"), working.In("E_M", row.Menzel, "kg/m²h", "Menzel"),
		working.In("E_US", row.UnoUS, "kg/m²h", "Uno in US units"), working.In("E_lim", DryingLimit, "kg/m²h", "limit"))
	switch {
	case row.Highest() > DryingLimit:
		line.Verdict = "fail"
	case row.Highest() > DryingLimitLowBleed:
		line.Verdict = "note"
		line.What += fmt.Sprintf("; above %g kg/m²h, the limit for mixes that bleed little", DryingLimitLowBleed)
	default:
		line.Verdict = "pass"
	}
	return line
}
