package earlyage

import (
	"fmt"
	"math"

	"slabwright/climate"
	"slabwright/concrete"
	"slabwright/source"
	"slabwright/working"
)

// PlasticHoursWorking returns the calculation of [History.PlasticHours]: a line an
// hour for rate against bleeding, the pull at its worst step by step, and the
// chance of cracks over bars.
//
//	id     of the sheet, short and stable: "plastic-hours-strip-2"
//	where  for its title: "strip 2"
func (h *History) PlasticHoursWorking(in PlasticInput, id, where string) working.Sheet {
	s := working.Sheet{ID: id, Title: "Fresh slab by the hour, " + where, Basis: []string{
		"While water stands on the surface it dries at the open rate; after that water is drawn out of the concrete and pulls it together until final set.",
		"Suction, strength and scatter are our own model, made to agree with the published limits of 0.5 and 1.0 kg/m2/h; they rank hours and measures, they are not a forecast.",
		"Cracks over bars follow small laboratory blocks (Dakhil, Cady and Carrier 1975): for ranking.",
	}}
	s.Add(h.filmLine(in))
	for _, p := range h.PlasticHours(in) {
		s.Add(p.line())
	}
	s.Add(h.pullLines(in)...)
	if in.Bar > 0 {
		s.Add(h.settlementLines(in)...)
	}
	return s
}

// filmLine is the hour at which the film was gone, beside the closed form for a
// steady rate.
func (h *History) filmLine(in PlasticInput) working.Line {
	if math.IsNaN(h.FilmGone) {
		return working.New("w", "water still standing on the surface at the last hour of the run before final set", "w", h.seriesAt(h.BleedFilm, newPlasticWalk(h, in).final), "kg/m2",
			source.Cite("aci305", "surface drying starts when evaporation has taken the bleed water"), working.In("w", h.seriesAt(h.BleedFilm, newPlasticWalk(h, in).final), "kg/m2", "bled less evaporated"))
	}
	at := h.FilmGone
	line := working.New("t_dry", "hours after placing at which the surface fell dry", "t_dry", at, "h",
		source.Cite("aci305", "surface drying starts when evaporation has taken the bleed water"), working.In("t_dry", at, "h", "bled equals evaporated"))
	if at == 0 {
		return line
	}
	steady := climate.FilmExhausted(h.steadyBleed(), h.seriesAt(h.Lost, at)/at)
	return line.Beside("bleeding that falls in a straight line against the mean rate so far", steady, source.Cite("aci305", "balance in closed form"), "the true rate changes with the weather")
}

// steadyBleed is the straight line of bleeding that gives the water of the history:
// all of it, and what came in the first step.
func (h *History) steadyBleed() climate.Bleed {
	total := h.Bled[len(h.Bled)-1]
	first, dt := h.Bled[1], h.Hours[1]-h.Hours[0]
	// rate·dt - rate·dt²/(2·end) = first with rate = 2·total/end, solved for end
	end := dt * (total + math.Sqrt(total*total-total*first)) / first
	return climate.Bleed{Rate: 2 * total / end, End: end}
}

// line is one hour: the balance of the water.
func (p PlasticHour) line() working.Line {
	what := fmt.Sprintf("%s: gain of the surface, water that rises less water that leaves; film %.2f, drawn out %.2f kg/m2, chance of tearing %.0f %%",
		p.Time.Format("2 Jan 15:04 MST"), p.Film, p.Deficit, 100*p.ShrinkageChance)
	l := working.New("g", what, "b - E", p.Bleed-p.Rate, "kg/m2/h", source.Cite("aci305", "bleeding against drying"),
		working.In("b", p.Bleed, "kg/m2/h", "mean of the hour"), working.In("E", p.Rate, "kg/m2/h", fmt.Sprintf("open rate %.2f", p.Open)))
	l.Verdict = verdict(!p.OverLimit && p.Deficit <= 0)
	return l
}

// pullLines are the pull at its worst.
func (h *History) pullLines(in PlasticInput) []working.Line {
	w := newPlasticWalk(h, in)
	var worst pull
	at := 0.0
	for i := 1; i < len(h.Hours) && h.Hours[i-1] < w.final-1e-9; i++ {
		if w.step(i); w.pull.Tension/w.pull.Strength > worst.Tension/math.Max(worst.Strength, 1e-9) {
			worst, at = w.pull, h.Hours[i]
		}
	}
	if worst.Tension == 0 {
		return nil
	}
	own := source.Cite("own", "pull on a fresh surface")
	nu := pullValue["poisson"]
	chance := CrackChance(worst.Tension/worst.Strength, pullValue["variation"])
	return []working.Line{
		working.New("s", fmt.Sprintf("suction in the pore water where the pull is worst, %.1f h after placing", at), "s", worst.Suction, "kPa", own,
			working.In("s", worst.Suction, "kPa", fmt.Sprintf("summed over the water drawn out; air enters at %.0f", pullValue["air_entry"]))).
			Beside("water drawn out by then times the mean stiffness since the surface fell dry", h.handSuction(w, at), own, "the mean takes steady drying"),
		working.New("σ_p", "level tension it brings", "s·(1 - 2ν)/(1 - ν)", worst.Tension, "kPa", source.Cite("mechanics", "porous layer held in plan"),
			working.In("s", worst.Suction, "kPa", ""), working.In("ν", nu, "-", "drained skeleton")),
		working.New("u_p", "pull over strength", "σ_p/f", worst.Tension/worst.Strength, "-", own,
			working.In("σ_p", worst.Tension, "kPa", ""), working.In("f", worst.Strength, "kPa", "tensile strength of the fresh surface")),
		working.New("P_p", "chance that the surface tore", "(1 + erf((ln(u_p) + s_v^2/2)/(s_v·sqrt(2))))/2", chance, "-", own,
			working.In("u_p", worst.Tension/worst.Strength, "-", ""), working.In("s_v", logSpread(pullValue["variation"]), "-",
				fmt.Sprintf("sqrt(ln(1 + v²)), coefficient of variation v = %.2f of strength against pull", pullValue["variation"]))),
	}
}

// handSuction estimates the suction at an hour by hand: the stiffness grows by a steady
// share from the fall dry on, so its mean is (K2 - K1)/ln(K2/K1).
func (h *History) handSuction(w *plasticWalk, hours float64) float64 {
	stiffness := func(at float64) float64 {
		age := h.seriesAt(h.SurfaceAge, at)
		return SuctionPerWater(age/w.age, (age-w.age)/(w.ageEnd-w.age))
	}
	first, last := stiffness(h.FilmGone), stiffness(hours)
	mean := last
	if last > first*1.000001 {
		mean = (last - first) / math.Log(last/first)
	}
	return math.Min(pullValue["air_entry"], h.seriesAt(h.Drawn, hours)*mean)
}

// logSpread is the standard deviation of the logarithm of what varies lognormally.
func logSpread(variation float64) float64 { return math.Sqrt(math.Log(1 + variation*variation)) }

// settlementLines are the cracks over bars.
func (h *History) settlementLines(in PlasticInput) []working.Line {
	w := newPlasticWalk(h, in)
	dakhil := source.Cite("dakhil1975", "table, linear between its rows")
	return []working.Line{
		working.New("Δ", "sinking of the surface by initial set", "Δ", w.bled, "mm", source.Cite("mechanics", "1 kg/m2 of bleed water is 1 mm"), working.In("Δ", w.bled, "mm", "")),
		working.New("P_s", fmt.Sprintf("chance of cracks over the bars by initial set, %.1f h after placing", w.initial), "P_s",
			concrete.SettlementCracking(in.Cover, in.Slump, in.Bar), "-", dakhil, working.In("P_s",
				concrete.SettlementCracking(in.Cover, in.Slump, in.Bar), "-", fmt.Sprintf("cover %.0f mm, slump %.0f mm, bar %.0f mm", in.Cover, in.Slump, in.Bar))),
	}
}
