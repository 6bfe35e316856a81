package concrete

import (
	"fmt"

	"slabwright/source"
	"slabwright/working"
)

// SetWorking returns the calculation of heat, hydration curve and set of a mix at a
// steady concrete temperature in °C.
func SetWorking(m Mix, temperature float64) working.Sheet {
	h, b := m.Hydration(), m.Binder
	sheet := working.Sheet{
		ID: "set", Title: fmt.Sprintf("Set of %s at %g °C", m.Name, temperature),
		Basis: []string{
			"composition: " + basisOf(m),
			"equivalent ages are hours at 21.1 °C; the clock starts when water meets cement",
			"admixtures shift final set by " + working.Figure(m.SetShift, 2) + " h",
		},
	}
	sheet.Add(heatLines(b, h)...)
	sheet.Add(curveLines(m, b, h)...)
	sheet.Add(setLines(m, h, temperature)...)
	return sheet
}

// basisOf says where the composition of a mix comes from.
func basisOf(m Mix) string {
	if c, ok := TypicalCement(m.Cement); ok && c.Binder.Composition == m.Binder.Composition {
		return "typical " + c.Name + " (" + c.Known + "), not a mill certificate"
	}
	return "as entered"
}

func heatLines(b Binder, h Hydration) []working.Line {
	folliard := source.Cite("schindler2005", "heat of hydration of the compounds")
	cement := CementHeat(b.Composition)
	return []working.Line{
		working.New("H_cem", "heat of the Portland cement when all has hydrated",
			"500·C3S + 260·C2S + 866·C3A + 420·C4AF + 624·SO3 + 1186·CaO + 850·MgO", cement, "J/g", folliard,
			working.In("C3S", b.C3S, "", "share of cement"), working.In("C2S", b.C2S, "", "share of cement"),
			working.In("C3A", b.C3A, "", "share of cement"), working.In("C4AF", b.C4AF, "", "share of cement"),
			working.In("SO3", b.SO3, "", "share of cement"), working.In("CaO", b.FreeCaO, "", "free lime"),
			working.In("MgO", b.MgO, "", "share of cement")),
		working.New("H_u", "heat of the binder", "H_cem·p_c + 461·p_s + 1800·CaO_fa·p_fa + 330·p_sf", h.Heat, "J/g", folliard,
			working.In("H_cem", cement, "J/g", "line above"), working.In("p_c", b.Cement, "", "Portland share of binder"),
			working.In("p_s", b.Slag, "", "slag share"), working.In("CaO_fa", b.AshCaO, "", "CaO of the ash"),
			working.In("p_fa", b.Ash, "", "ash share"), working.In("p_sf", b.SilicaFume, "", "silica fume share")),
	}
}

func curveLines(m Mix, b Binder, h Hydration) []working.Line {
	folliard := func(place string) source.Citation { return source.Cite("schindler2005", place) }
	compounds := []working.Input{
		working.In("C3A", b.C3A, "", "share of cement"), working.In("C3S", b.C3S, "", "share of cement"),
		working.In("C4AF", b.C4AF, "", "share of cement"), working.In("SO3", b.SO3, "", "share of cement"),
		working.In("Blaine", b.Blaine, "m²/kg", "fineness"), working.In("p_s", b.Slag, "", "slag share"),
		working.In("p_fa", b.Ash, "", "ash share"), working.In("CaO_fa", b.AshCaO, "", "CaO of the ash"),
	}
	tau := HydrationTime(b)
	lines := []working.Line{
		working.New("E_a", "activation energy",
			"22100·C3A^0.30·C4AF^0.25·Blaine^0.35·(1 − 1.05·p_fa·(1 − CaO_fa/0.40) + 0.40·p_s)", h.ActivationEnergy, "J/mol",
			source.Cite("schindler2004", ""), compounds...).
			Beside("regression of Poole", ActivationEnergyPoole(b), source.Cite("poole2007", "without admixtures"),
				"two regressions on different cements; the second is less surely remembered"),
		working.New("α_u", "degree of hydration in the end", "min(1; 1.031·w/(0.194 + w) + 0.50·p_fa + 0.30·p_s)", h.Ultimate, "",
			folliard("after Mills 1966"), working.In("w", h.WaterBinder, "", "water over binder"),
			working.In("p_fa", b.Ash, "", "ash share"), working.In("p_s", b.Slag, "", "slag share")),
		working.New("τ_0", "time parameter without accelerator",
			"66.78·C3A^(−0.154)·C3S^(−0.401)·Blaine^(−0.804)·SO3^(−0.758)·exp(2.187·p_s + 9.50·p_fa·CaO_fa)", tau, "h",
			folliard("hydration parameters"), compounds...),
	}
	if h.Tau != tau {
		lines = append(lines, working.New("τ", "time parameter, quickened by the accelerator", "τ_0·a", h.Tau, "h",
			source.Cite("own", "the shift of final set read as a quicker curve"),
			working.In("τ_0", tau, "h", "line above"), working.In("a", h.Tau/tau, "", "share of the time left")))
	}
	return append(lines, working.New("β", "slope parameter", "181.4·C3A^0.146·C3S^0.227·Blaine^(−0.535)·SO3^0.558·exp(−0.647·p_s)", h.Beta, "",
		folliard("hydration parameters"), compounds...))
}

func setLines(m Mix, h Hydration, temperature float64) []working.Line {
	pinto := source.Cite("schindler2004", "set after Byfors and Pinto")
	rate := h.AgeRate(temperature)
	lines := []working.Line{
		working.New("r", "hours of equivalent age that pass in an hour",
			"exp(−E_a/8.314·(1/(T + 273.15) − 1/(21.1 + 273.15)))", rate, "", source.Cite("fhp1977", "Arrhenius"),
			working.In("E_a", h.ActivationEnergy, "J/mol", "line above"), working.In("T", temperature, "°C", "concrete temperature")).
			Beside("with the activation energy that depends on temperature only",
				AgeRate(ActivationEnergyByTemperature(temperature), temperature, HydrationReference_C),
				source.Cite("fhp1977", "33.5 kJ/mol and more below 20 °C"), "takes no account of the cement"),
	}
	for _, set := range []struct {
		symbol, name string
		factor, at   float64
	}{{"i", "initial set", 0.15, InitialSetDegree(h.WaterBinder)}, {"f", "final set", 0.26, FinalSetDegree(h.WaterBinder)}} {
		te := h.EquivalentAge(set.at)
		lines = append(lines,
			working.New("α_"+set.symbol, "degree of hydration at "+set.name, "c·w", set.at, "", pinto,
				working.In("c", set.factor, "", "constant of "+set.name), working.In("w", h.WaterBinder, "", "water over binder")),
			working.New("te_"+set.symbol, "equivalent age at "+set.name, "d + τ·(ln(α_u/α))^(−1/β)", te, "h", pinto,
				working.In("d", h.Delay, "h", "retardation"), working.In("τ", h.Tau, "h", "time parameter"),
				working.In("α_u", h.Ultimate, "", "degree in the end"), working.In("α", set.at, "", "line above"),
				working.In("β", h.Beta, "", "slope parameter")),
			working.New("t_"+set.symbol, set.name+" by the clock", "te/r", h.ClockHours(te, temperature), "h", pinto,
				working.In("te", te, "h", "line above"), working.In("r", rate, "", "rate at this temperature")),
		)
	}
	return lines
}
