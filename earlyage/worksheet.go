package earlyage

import (
	"fmt"
	"math"

	"slabwright/concrete"
	"slabwright/source"
	"slabwright/working"
)

// WindowWorking returns the calculation of a cut window in its expected course:
// age, strength and set where it opens, stress and strength where it closes, with
// the hand checks and the clock rules beside.
//
//	id     of the sheet, short and stable: "window-strip-2"
//	where  for its title: "strip 2"
func (m *Members) WindowWorking(w CutWindow, id, where string) working.Sheet {
	s := working.Sheet{ID: id, Title: "Cut window of " + where + ", " + w.Saw.Name, Basis: w.Basis}
	s.Add(m.settingLines()...)
	if !w.Opens.IsZero() {
		s.Add(m.openingLines(w)...)
	}
	s.Add(m.closingLines(w)...)
	return s
}

// settingLines are the set of the concrete.
func (m *Members) settingLines() []working.Line {
	h := m.Pour.Column.Concrete.Hydration
	expected := m.Expected()
	src := source.Cite("schindler2004", "final set at 0.26 w/cm")
	degree := concrete.FinalSetDegree(h.WaterBinder)
	lines := []working.Line{
		working.New("α_fs", "degree of hydration at final set", "0.26·w", degree, "-", src,
			working.In("w", h.WaterBinder, "-", "water over binder")),
		working.New("t_e,fs", "equivalent age at final set, hours at 21.1 °C", "d + τ·ln(α_u/α_fs)^(-1/β)", h.FinalSet(), "h", src,
			working.In("τ", h.Tau, "h", "time constant of the cement"), working.In("β", h.Beta, "-", "slope of the cement"),
			working.In("α_u", h.Ultimate, "-", "ultimate degree of hydration"), working.In("α_fs", degree, "-", "at final set"),
			working.In("d", h.Delay, "h", "retardation")),
	}
	if set := expected.FinalSet.Mid; !math.IsNaN(set) {
		mean := meanUntil(expected.Hours, expected.Mid, set)
		line := working.New("t_fs", "final set at mid-depth, hours after placing, from the temperature of the model", "t_fs", set, "h",
			source.Cite("own", "march of the column"), working.In("t_fs", set, "h", "when t_e comes to t_e,fs"))
		lines = append(lines, line.Beside(fmt.Sprintf("at the mean temperature %.1f °C", mean), h.ClockHours(h.FinalSet(), mean),
			source.Cite("fhp1977", "Arrhenius rate"), "the mean of a rate is not the rate at the mean"))
	}
	return append(lines, m.heatLine())
}

// heatLine is the highest temperature in the middle of the slab, beside what it
// would be if no heat came or went.
func (m *Members) heatLine() working.Line {
	c, h := m.Pour.Column, m.Expected()
	hottest := 0
	for i, v := range h.Mid {
		if v > h.Mid[hottest] {
			hottest = i
		}
	}
	heat, degree := c.Concrete.Hydration, h.Degree[hottest]
	rise := concrete.AdiabaticRise(heat.Heat, degree, heat.Binder, c.Concrete.Density, c.Concrete.SpecificHeat(degree/2, h.Mid[hottest]))
	return working.New("T_max", fmt.Sprintf("highest temperature at mid-depth, %.1f h after placing", h.Hours[hottest]), "T_max", h.Mid[hottest], "°C",
		source.Cite("own", "march of the column"), working.In("T_max", h.Mid[hottest], "°C", "")).
		Beside("placing temperature and the heat of hydration by then, nothing lost or won", c.PlacingTemperature+rise, source.Cite("schindler2005", "adiabatic rise"),
			"sun and air add to it, soil and wind take from it")
}

// openingLines are the strength of the edge where the window opens.
func (m *Members) openingLines(w CutWindow) []working.Line {
	c, expected := m.Pour.Column.Concrete, m.Expected()
	at := expected.At(w.opens)
	h := c.Hydration
	hyd := source.Cite("schindler2005", "degree of hydration")
	degree := h.Degree(at.EdgeAge)
	mean := meanUntil(expected.Hours, expected.Surface, w.opens)
	strength := c.Properties(at.EdgeAge).Strength
	lines := []working.Line{
		working.New("t_e", "equivalent age of the zone the saw cuts when the window opens", "t_e", at.EdgeAge, "h",
			source.Cite("fhp1977", "equivalent age"), working.In("t_e", at.EdgeAge, "h", "summed over the temperature of the model")).
			Beside(fmt.Sprintf("at the mean surface temperature %.1f °C", mean), w.opens*h.AgeRate(mean),
				source.Cite("fhp1977", "Arrhenius rate"), "the surface is not the zone, and the mean of a rate is not the rate at the mean"),
		working.New("α", "degree of hydration there", "α_u·exp(-(τ/(t_e - d))^β)", degree, "-", hyd,
			working.In("α_u", h.Ultimate, "-", ""), working.In("τ", h.Tau, "h", ""), working.In("t_e", at.EdgeAge, "h", ""),
			working.In("d", h.Delay, "h", ""), working.In("β", h.Beta, "-", "")),
		working.New("f_edge", "compressive strength of the zone", "f_edge", at.EdgeFc, "MPa",
			source.Cite("deschutter1996", "strength by degree of hydration from final set"), working.In("f_edge", at.EdgeFc, "MPa", "mean of the zone")).
			Beside("at the mean age of the zone", strength, source.Cite("own", "one layer for the zone"), "the mean of a strength is not the strength at the mean age"),
		working.New("f_req", "strength the saw needs", "f_req", w.Saw.Edge, "MPa", w.Saw.Source, working.In("f_req", w.Saw.Edge, "MPa",
			fmt.Sprintf("basis value, range %.1f to %.1f", w.Saw.EdgeLow, w.Saw.EdgeHigh))),
	}
	finishing := expected.InitialSet.Surface
	for _, rule := range ClockRules(w.Saw.Key) {
		reason := "rules of thumb stand for ordinary mixes and weather"
		if rule.From == "finishing" {
			reason = "finishing taken at initial set of the surface"
		}
		lines = append(lines, working.New("t_open", "opening, hours after placing, against "+rule.Name, "t_open", w.opens, "h", rule.Source,
			working.In("t_open", w.opens, "h", "")).
			Beside(fmt.Sprintf("%g to %g h after %s, nearest", rule.Hot, rule.Cold, rule.From), rule.Nearest(w.opens, finishing), rule.Source, reason))
	}
	return lines
}

// meanUntil is the mean of a series from the start to an hour.
func meanUntil(hours, values []float64, end float64) float64 {
	var sum float64
	for i := 1; i < len(hours) && hours[i-1] < end; i++ {
		to := math.Min(hours[i], end)
		share := (to - hours[i-1]) / (hours[i] - hours[i-1])
		last := values[i-1] + share*(values[i]-values[i-1])
		sum += (to - hours[i-1]) * (values[i-1] + last) / 2
	}
	return sum / end
}
