package checks

import (
	"math"

	"slabwright/flexure"
	"slabwright/source"
	"slabwright/working"
)

// withCurl checks a load together with the curl that adds to it: a warm top in the
// interior and along edges, a cold or dry one at corners.
func (w *worker) withCurl(l *Load, p Place, c contact, stress float64) {
	s := working.Sheet{ID: "curl-" + l.ID + "-" + string(p), Title: name(l, p) + ": load and curl together", Basis: []string{
		"Straight gradient through the depth; the slab stays on the ground. Where edges lift, curl alone is less and a load there is more.",
		"Against the strength itself: a crack in use, not a collapse."}}
	cold := p == Corner
	key := "hot"
	if cold {
		key = "cold"
	}
	if !w.has(key) {
		w.leaveOut(s.Title, "nobody knows how much colder or warmer the top gets ("+key+")")
		return
	}
	curl, lines := w.curlAt(p, c, key)
	s.Add(lines...)
	total := stress + curl
	limit := w.in.Code.laws.service(w.flexural)
	w.curled[s.ID] = &c
	clause := source.Cite("westergaard1927", "curl")
	if cold {
		clause = source.Cite("bradbury1938", "corner")
	}
	s.Add(working.New("Σσ", "Load and curl together", "σ_P + σ_T", total, "MPa", source.Cite("mechanics", "superposition"), derived("σ_P", stress, "MPa", "by the load, sheet bending-"+l.ID+"-"+string(p)), derived("σ_T", curl, "MPa", "by curl")),
		working.New("σ_R", "Strength that curl and load together may use", limit.formula, limit.value, "MPa", limit.cite, append(limit.inputs, w.flexuralIn())...))
	w.row(Row{ID: s.ID, Group: Thickness, Check: s.Title, Load: l.title(), Place: p, Demand: total, Capacity: limit.value, Unit: "MPa", Clause: clause}, s)
}

// curlAt is the tension of curl on the side and at the place where a load adds to
// it.
func (w *worker) curlAt(p Place, c contact, key string) (float64, []working.Line) {
	dT, alpha := w.val(key), w.val("expansion")
	in := w.put(key)
	length, width := 1000*w.val("length"), 1000*w.val("width")
	westergaard := source.Cite("westergaard1927", "")
	e, a := w.modulusIn, w.put("expansion")
	if p == Corner {
		r := c.radius
		v := flexure.CurlCornerStress(w.e, alpha, dT, w.nu, r, w.l)
		return v, []working.Line{working.New("σ_T", "Tension on top of the corner by curl", "E · α · ΔT_c / (3 · (1 − ν)) · sqrt(a / l)", v, "MPa", source.Cite("bradbury1938", "corner"),
			e, a, in, w.put("poisson"), derived("a", r, "mm", "contact radius"), w.lIn())}
	}
	cx, cy := flexure.Bradbury(length/w.l), flexure.Bradbury(width/w.l)
	lines := []working.Line{w.relative("x_L", "L", "length"), shareLine("C_x", "along", "x_L", length/w.l, cx)}
	eisenmann := flexure.EisenmannStress(length, flexure.EisenmannLength(w.h/1000, w.e*1e6, alpha, dT/(w.h/1000), length <= 1.2*width)*1000, flexure.CurlFullRestraint(w.e, alpha, dT, w.nu))
	const reason = "It counts the weight of the slab, not the stiffness of the ground; short panels part furthest."
	if p == Interior {
		v := flexure.CurlInteriorStress(cx, cy, w.e, alpha, dT, w.nu)
		lines = append(lines, w.relative("x_B", "B", "width"), shareLine("C_y", "across", "x_B", width/w.l, cy))
		return v, append(lines, working.New("σ_T", "Tension underneath by a warm top, middle of the panel", "E · α · ΔT_h / (2 · (1 − ν²)) · (C_x + ν · C_y)", v, "MPa", westergaard,
			e, a, in, w.put("poisson"), derived("C_x", cx, "–", "along"), derived("C_y", cy, "–", "across")).Beside("by Eisenmann's critical length", eisenmann, source.Cite("eisenmann1979", "stress by length"), reason))
	}
	v := flexure.CurlEdgeStress(cx, w.e, alpha, dT)
	return v, append(lines, working.New("σ_T", "Tension underneath by a warm top, middle of the long edge", "C_x · E · α · ΔT_h / 2", v, "MPa", westergaard,
		derived("C_x", cx, "–", "along"), e, a, in).Beside("by Eisenmann's critical length", eisenmann*(1-w.nu), source.Cite("eisenmann1979", "stress by length, held one way"), reason))
}

func (w *worker) relative(symbol, side, key string) working.Line {
	return working.New(symbol, "Relative "+key, "1000 · "+side+" / (l · sqrt(8))", 1000*w.val(key)/w.l/math.Sqrt(8), "–", source.Cite("bradbury1938", "coefficient C"), w.put(key), w.lIn())
}

func shareLine(symbol, what, x string, ratio, value float64) working.Line {
	formula := "1 − 2 · (sin(" + x + ") · cosh(" + x + ") + cos(" + x + ") · sinh(" + x + ")) / (sin(2 · " + x + ") + sinh(2 · " + x + "))"
	return working.New(symbol, "Share of full restraint "+what+" (angles in radians)", formula, value, "–", source.Cite("bradbury1938", "coefficient C"), derived(x, ratio/math.Sqrt(8), "–", "relative length"))
}
