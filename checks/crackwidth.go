package checks

import (
	"math"

	"slabwright/source"
	"slabwright/steel"
	"slabwright/working"
)

// steel checks the mesh or bars: to drag the slab, and where it is held at its ends
// to keep cracks fine.
func (w *worker) steel() {
	st := w.in.Steel
	if st == nil {
		w.leaveOut("steel", "no mesh or bars are given")
		return
	}
	area := steel.AreaPerMetre(w.val("bar_diameter"), w.val("bar_spacing"))
	s := working.Sheet{ID: "steel-area", Title: "Steel there is"}
	s.Add(working.New("A_s", "Steel each way", "π · φ² / 4 · 1000 / s", area, "mm²/m", source.Cite("mechanics", ""), w.put("bar_diameter"), w.put("bar_spacing")))
	w.res.Sheets = append(w.res.Sheets, s)
	w.drag(area)
	if !st.Held {
		w.leaveOut("steel for crack width", "the slab is not held at its ends: the drag of the base governs")
		return
	}
	switch w.in.Code.Key {
	case "ACI":
		w.crackACI(area)
	case "AS":
		w.crackAS(area)
	default:
		w.crackEN(area)
	}
}

func areaIn(area float64) working.Input { return derived("A_s", area, "mm²/m", "steel each way") }

// drag checks the steel that holds a crack shut while half the slab is dragged over
// its base.
func (w *worker) drag(area float64) {
	s := working.Sheet{ID: "steel-drag", Title: "Steel to drag the slab over its base", Basis: []string{"It holds a crack shut; it does not stop one, and it does not control cracks in a slab that is held."}}
	stress := 2.0 / 3 * w.val("yield")
	need := steel.DragSteel(w.val("friction"), w.val("free_length"), w.val("unit_weight")*w.h, stress)
	cite := source.Cite("aci360", "subgrade drag")
	w.row(Row{ID: s.ID, Group: Reinforce, Check: s.Title, Demand: need, Capacity: area, Unit: "mm²/m", Clause: cite}, s,
		working.New("σ_s", "Stress allowed in the steel", "2 / 3 · f_y", stress, "MPa", cite, w.put("yield")),
		working.New("A_drag", "Steel needed", "μ · L_f · γ · h / (2 · σ_s)", need, "mm²/m", cite, w.put("friction"), w.put("free_length"), w.put("unit_weight"), w.put("thickness"), derived("σ_s", stress, "MPa", "stress allowed")).
			Beside("by the distance to the free end, half the length, without the 2", steel.TieSteel(w.val("friction"), w.val("free_length")/2, w.val("unit_weight")*w.h, stress), source.Cite("huang", "tie steel"), ""))
}

func (w *worker) tension() law { return w.in.Code.laws.tensile(w.fc) }

func (w *worker) tensionLine() working.Line {
	t := w.tension()
	return working.New("f_ct", "Tensile strength when it cracks, taken at 28 days", t.formula, t.value, "MPa", t.cite, append(t.inputs, w.put("strength"))...)
}

func (w *worker) tensionIn() working.Input {
	return derived("f_ct", w.tension().value, "MPa", "tensile strength when it cracks")
}

// leastLines is the steel that takes over what the concrete carried when it cracks.
func (w *worker) leastLines() (float64, []working.Line) {
	k := steel.SelfStressFactorEN(w.h)
	need := steel.MinimumSteelEN(1, k, w.tension().value, 1000*w.h, w.val("yield"))
	return need, []working.Line{w.tensionLine(),
		working.New("k_s", "Factor for stress within the section", "max(0.65, min(1, 1 − 0.35 · (h − 300) / 500))", k, "–", source.Cite("en1992", "7.3.2(2)"), w.put("thickness")),
		working.New("A_min", "Steel that takes over from the concrete, at yield", "k_s · f_ct · 1000 · h / f_y", need, "mm²/m", source.Cite("en1992", "(7.1), k_c = 1"), derived("k_s", k, "–", "line above"), w.tensionIn(), w.put("thickness"), w.put("yield"))}
}

// crackEN checks least steel and crack width by EN 1992-1-1 and EN 1992-3.
func (w *worker) crackEN(area float64) {
	s := working.Sheet{ID: "steel-least", Title: "Least steel of a slab that is held", Basis: []string{"Pure tension through the whole depth."}}
	need, lines := w.leastLines()
	asControl, _ := steel.RestrainedSteelAS("moderate", w.h)
	lines[2] = lines[2].Beside("AS 3600, moderate crack control", asControl, source.Cite("as3600", "9.5.3"), "AS 3600 asks for a ratio of the section, whatever its strength.")
	w.row(Row{ID: s.ID, Group: Reinforce, Check: s.Title, Demand: need, Capacity: area, Unit: "mm²/m", Clause: source.Cite("en1992", "(7.1)")}, s, lines...)
	w.widthEN(area, need)
}

func (w *worker) widthEN(area, least float64) {
	if w.in.Use.Exposure == "" {
		w.leaveOut("crack width", "no exposure class is given")
		return
	}
	limit, ok := steel.CrackLimitFor(w.in.Use.Exposure)
	if !ok {
		w.leaveOut("crack width", "EN 1992-1-1 Table 7.1N has no width for exposure class "+w.in.Use.Exposure)
		return
	}
	s := working.Sheet{ID: "steel-crack", Title: "Crack width of a slab held at its ends", Basis: []string{"Each crack opens by what the concrete can pull before the next one forms; the shortening itself does not appear.", "Steel over the whole section, pure tension."}}
	rho, ratio := area/(1000*w.h), steelModulus/w.e
	k, ct := steel.SelfStressFactorEN(w.h), w.tension().value
	strain := steel.EndRestraintStrain(ratio, rho, 1, k, ct, steelModulus)
	spacing, spacingLine := w.crackSpacing(area)
	width := steel.CrackWidthEN(spacing, strain)
	stress := math.Min(w.val("yield"), ct*1000*w.h/area)
	cover := w.val("cover") + w.val("bar_diameter")/2
	en3 := source.Cite("en1992-3", "(M.1)")
	s.Add(w.tensionLine(),
		working.New("ρ", "Steel over the section", "A_s / (1000 · h)", rho, "–", source.Cite("mechanics", ""), areaIn(area), w.put("thickness")),
		working.New("α_e", "Ratio of moduli", "E_s / E", ratio, "–", source.Cite("mechanics", ""), working.In("E_s", steelModulus, "MPa", "modulus of steel"), w.modulusIn),
		working.New("Δε", "Strain of the steel beyond that of the concrete", "0.5 · α_e · k_s · f_ct / E_s · (1 + 1 / (α_e · ρ))", strain, "–", en3, derived("α_e", ratio, "–", "ratio of moduli"), derived("k_s", k, "–", "factor, sheet steel-least"), w.tensionIn(), working.In("E_s", steelModulus, "MPa", "modulus of steel"), derived("ρ", rho, "–", "steel over the section")),
		spacingLine,
		working.New("w_k", "Crack width", "s_r · Δε", width, "mm", source.Cite("en1992", "(7.8)"), derived("s_r", spacing, "mm", "spacing of cracks"), derived("Δε", strain, "–", "strain")).
			Beside("direct tension by ACI 224.2R at the stress in the crack, at most yield", steel.CrackWidthTension(stress, cover, 2*cover*w.val("bar_spacing")), source.Cite("aci224", "224.2R").As(source.Memory), "A fit to tests of bars in tension, from cover and stress alone."),
		working.New("w_lim", "Widest crack for exposure "+w.in.Use.Exposure, "w_lim", limit.Width, "mm", source.Cite(limit.Source, "Table 7.1N")))
	row := Row{ID: s.ID, Group: Reinforce, Check: s.Title, Demand: width, Capacity: limit.Width, Unit: "mm", Clause: en3}
	if area < least {
		row.Note = "The steel yields at the first crack: the width is not controlled at all."
	}
	w.row(row, s)
}

// crackSpacing is the widest spacing of cracks by EN 1992-1-1, with its line.
func (w *worker) crackSpacing(area float64) (float64, working.Line) {
	cover, diameter := w.val("cover"), w.val("bar_diameter")
	if steel.BarsWideApartEN(w.val("bar_spacing"), cover, diameter) {
		v := steel.WideSpacingEN(w.h, 0)
		return v, working.New("s_r", "Spacing of cracks, bars wider apart than 5 · (c + φ/2)", "1.3 · h", v, "mm", source.Cite("en1992", "(7.14), x = 0"), w.put("thickness"))
	}
	depth := w.h - cover - diameter/2
	effective := steel.EffectiveDepthEN(w.h, depth, 0)
	rho := area / (1000 * effective)
	v := steel.CrackSpacingEN(cover, 0.8, 1, diameter, rho)
	return v, working.New("s_r", "Spacing of cracks", "3.4 · c + 0.425 · 0.8 · 1.0 · φ · 1000 · min(2.5 · (c + φ / 2), h / 3) / A_s", v, "mm", source.Cite("en1992", "(7.11), tension"), w.put("cover"), w.put("bar_diameter"), w.put("thickness"), areaIn(area))
}

// crackACI checks the crack width in direct tension against the guide of ACI 224R.
func (w *worker) crackACI(area float64) {
	const exposure = "humidity, moist air, soil"
	limit, _ := steel.CrackLimitFor(exposure)
	s := working.Sheet{ID: "steel-crack", Title: "Crack width of a slab held at its ends", Basis: []string{"The steel takes what the concrete carried when it cracked; a guide, a portion of cracks will exceed it."}}
	t := w.tension()
	free := t.value * 1000 * w.h / area
	stress := math.Min(w.val("yield"), free)
	cover := w.val("cover") + w.val("bar_diameter")/2
	round := 2 * cover * w.val("bar_spacing")
	width := steel.CrackWidthTension(stress, cover, round)
	cite := source.Cite("aci224", "224.2R, direct tension").As(source.Memory)
	dc := derived("d_c", cover, "mm", "to the middle of the bar")
	s.Add(w.tensionLine(),
		working.New("f_s", "Stress of the steel in the crack, at most yield", "min(f_y, f_ct · 1000 · h / A_s)", stress, "MPa", source.Cite("mechanics", "balance at the crack"), w.put("yield"), w.tensionIn(), w.put("thickness"), areaIn(area)),
		working.New("d_c", "Cover to the middle of the bar", "c + φ / 2", cover, "mm", source.Cite("mechanics", ""), w.put("cover"), w.put("bar_diameter")),
		working.New("w", "Crack width", "0.10 / 6.894757 · f_s · (d_c · 2 · d_c · s)^(1/3) / 1000", width, "mm", cite, derived("f_s", stress, "MPa", "stress of the steel"), dc, w.put("bar_spacing")).
			Beside("Frosch, from the distance of the bars alone", steel.CrackWidthFrosch(stress, steelModulus, 1, cover, w.val("bar_spacing")), source.Cite("practice", "Frosch, ACI Structural Journal 96(3) 1999"), "Made for bending; the constants are fits to different tests."),
		working.New("w_lim", "Guide for "+exposure, "w_lim", limit.Width, "mm", source.Cite("aci224", "Table 4.1")))
	row := Row{ID: s.ID, Group: Reinforce, Check: s.Title, Demand: width, Capacity: limit.Width, Unit: "mm", Clause: cite}
	if free > w.val("yield") {
		row.Note = "The steel yields at the first crack: the width is not controlled at all."
	}
	w.row(row, s)
}

// crackAS checks the ratio of steel by the degree of crack control.
func (w *worker) crackAS(area float64) {
	control := w.in.Use.Control
	if control == "" {
		control = "moderate"
	}
	need, _ := steel.RestrainedSteelAS(control, w.h)
	least, lines := w.leastLines()
	s := working.Sheet{ID: "steel-crack", Title: "Steel of a slab that is held, " + control + " crack control"}
	cite := source.Cite("as3600", "9.5.3")
	s.Add(lines...)
	w.row(Row{ID: s.ID, Group: Reinforce, Check: s.Title, Demand: need, Capacity: area, Unit: "mm²/m", Clause: cite}, s,
		working.New("A_R", "Steel each way", "r · 1000 · h", need, "mm²/m", cite, working.In("r", need/(1000*w.h), "–", "ratio for "+control+" control"), w.put("thickness")).
			Beside("what takes over from the concrete at yield, EN 1992 (7.1)", least, source.Cite("en1992", "(7.1)"), "AS 3600 asks for a ratio of the section, whatever its strength."))
}
