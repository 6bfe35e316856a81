package earlyage

import (
	"fmt"
	"math"

	"slabwright/concrete"
	"slabwright/source"
	"slabwright/working"
)

// creepShare is the share of an elastic restrained stress left by creep in the hand
// checks. Source: CIRIA C660, K1; from memory.
const creepShare = 0.65

// closingLines are stress and strength where the window closes, or where the
// stress is closest to the strength if it never does.
func (m *Members) closingLines(w CutWindow) []working.Line {
	hours, when := w.closes, "where the window closes"
	if math.IsNaN(hours) {
		hours, when = m.worstHour(), "where stress comes closest to strength"
	}
	p := m.Pour
	thickness := p.Column.Thickness
	at := m.Expected().At(hours)
	t := m.Tension(hours)
	lines := []working.Line{
		working.New("t", "hours after placing, "+when, "t", hours, "h", source.Cite("own", "march of the column"), working.In("t", hours, "h", "")),
	}
	lines = append(lines, m.axialLines(at, t)...)
	lines = append(lines, m.curlLines(at, t)...)
	bending := concrete.FlexuralRatioEN(thickness * 1000)
	lines = append(lines,
		working.New("σ_s", "stress of the layers on each other, mean of the zone the saw cuts", "σ_s", at.SelfTop, "MPa",
			source.Cite("own", "strain less its plane, with creep"), working.In("σ_s", at.SelfTop, "MPa", "")),
		working.New("r_fl", "flexural over axial strength", "max(1.6 - h/1000, 1)", bending, "-", source.Cite("en1992", "(3.23)"),
			working.In("h", thickness*1000, "mm", "thickness")),
	)
	if at.TopFct > 0 {
		use := (t.Axial + at.SelfTop + t.Curl/bending) / at.TopFct
		line := working.New("u", "use of tensile strength in the top", "(σ_a + σ_s + σ_c/r_fl)/f_ct", use, "-", source.Cite("aci207", "cracking at 0.7 to 1.0 of tensile strength, 0.8 in design"),
			working.In("σ_a", t.Axial, "MPa", "axial"), working.In("σ_s", at.SelfTop, "MPa", "layers"), working.In("σ_c", t.Curl, "MPa", "curl"),
			working.In("r_fl", bending, "-", ""), working.In("f_ct", at.TopFct, "MPa", "tensile strength of the zone"))
		line.Verdict = "pass"
		if t.Ratio > StressShare {
			line.Verdict = "fail"
		}
		lines = append(lines, line)
	}
	chance := w.chanceAt(hours).Cracked
	return append(lines, working.New("P", fmt.Sprintf("chance of a crack elsewhere by then, over %d members", len(m.members)), "P", chance, "-",
		source.Cite("own", "members of the pour"), working.In("P", chance, "-", fmt.Sprintf("accepted %.2f", w.Risk))))
}

// worstHour is when the expected course comes closest to its strength.
func (m *Members) worstHour() float64 {
	best := 0
	for i, v := range m.expected.ratio {
		if v > m.expected.ratio[best] {
			best = i
		}
	}
	return m.Hours[best]
}

// axialLines are the stress along the slab.
func (m *Members) axialLines(at Moment, t Tension) []working.Line {
	r, c := m.Pour.Restraint, m.Pour.Column
	own := source.Cite("own", "superposition with creep in rate form")
	full := working.New("σ_full", "stress if the mean strain were held fully, with creep", "σ_full", at.FullRestraint, "MPa", own,
		working.In("σ_full", at.FullRestraint, "MPa", "")).
		Beside("0.65 of the shortening since the longest times E, less the lengthening before it times the modulus it met", m.handRestraint(at), source.Cite("c660", "K1 = 0.65"),
			"one factor for all creep")
	drag := DragStress(r.Friction, r.UnitWeight, r.UncutLength)
	lines := []working.Line{full,
		working.New("σ_drag", "most that base friction can bring at mid-length", "μ·γ·L/2000", drag, "MPa", source.Cite("aci360", "subgrade drag"),
			working.In("μ", r.Friction, "-", "friction"), working.In("γ", r.UnitWeight, "kN/m3", "unit weight"), working.In("L", r.UncutLength, "m", "uncut length")),
	}
	if r.BedStiffness > 0 && at.E > 0 {
		b := math.Sqrt(r.BedStiffness / (at.E * c.Thickness * 1000))
		lines = append(lines, working.New("R", "share of full restraint on an elastic bed", "1 - 1/cosh(b·L/2)",
			BedShare(at.E, c.Thickness*1000, r.BedStiffness, r.UncutLength*1000), "-", source.Cite("mechanics", "shear lag"),
			working.In("b", b, "1/mm", "sqrt(ks/(E·h))"), working.In("L", r.UncutLength*1000, "mm", "uncut length")))
	}
	return append(lines, working.New("σ_a", "axial stress: R of each change of σ_full since set, slipping at σ_drag", "σ_a", t.Axial, "MPa", source.Cite("mechanics", "elastic bed that slips"),
		working.In("σ_a", t.Axial, "MPa", "summed over the steps")))
}

// handRestraint estimates the fully restrained stress of a moment by hand: the
// lengthening up to the longest, times the mean modulus of that time, pushes; the
// shortening since, times the modulus now, pulls; creep leaves 0.65 of both.
func (m *Members) handRestraint(at Moment) float64 {
	h := m.Expected()
	longest, stiff, stiffAtLongest, met := 0.0, 0.0, 0.0, 0.0
	for i := 1; i < len(h.Hours) && h.Hours[i] <= at.Hours; i++ {
		if h.E[i] <= 0 {
			continue
		}
		dt := h.Hours[i] - h.Hours[i-1]
		stiff += h.E[i] * dt
		met += dt
		if h.MeanStrain[i] > longest {
			longest, stiffAtLongest = h.MeanStrain[i], stiff/met
		}
	}
	return creepShare * ((longest-at.MeanStrain)*at.E - longest*stiffAtLongest)
}

// curlLines are the stress in the top of held curvature.
func (m *Members) curlLines(at Moment, t Tension) []working.Line {
	r, c := m.Pour.Restraint, m.Pour.Column
	if at.E <= 0 {
		return nil
	}
	a, mu := c.Concrete.Expansion, c.Concrete.Poisson
	radius := RelativeStiffness(at.E, c.Thickness*1000, mu, r.Subgrade)
	return []working.Line{
		working.New("ΔT", "equivalent difference top less bottom since set", "ΔT", at.Gradient, "K", source.Cite("mechanics", "moment of the free strain"),
			working.In("ΔT", at.Gradient, "K", "heat, drying and self-drying of the layers")),
		working.New("σ_c,full", "stress in the top if the slab were held flat, with creep", "σ_c,full", at.FullCurl, "MPa",
			source.Cite("own", "superposition with creep in rate form"), working.In("σ_c,full", at.FullCurl, "MPa", "")).
			Beside("elastic closed form with 0.65 for creep", -creepShare*at.E*a*at.Gradient/(2*(1-mu)), source.Cite("westergaard1927", "infinite slab"),
				"the closed form puts all the strain on the modulus of the moment"),
		working.New("l", "radius of relative stiffness", "(E·h^3/(12·(1 - ν^2)·k))^0.25", radius, "mm", source.Cite("westergaard1926", "radius of relative stiffness"),
			working.In("E", at.E, "MPa", "modulus then"), working.In("h", c.Thickness*1000, "mm", ""), working.In("ν", mu, "-", ""), working.In("k", r.Subgrade, "N/mm3", "subgrade")),
		working.New("C", "share of full bending restraint in the middle of the uncut length", "C", CurlShare(r.UncutLength*1000/radius), "-",
			source.Cite("bradbury1938", "C"), working.In("C", CurlShare(r.UncutLength*1000/radius), "-", fmt.Sprintf("at L/l = %.1f", r.UncutLength*1000/radius))),
		working.New("σ_w", "most that the weight of lifted ends can bring", "0.75·γ·L^2/h/1000", WeightStress(r.UnitWeight, c.Thickness, r.UncutLength), "MPa",
			source.Cite("mechanics", "cantilever of half the length"), working.In("γ", r.UnitWeight, "kN/m3", ""), working.In("L", r.UncutLength, "m", ""), working.In("h", c.Thickness, "m", "")),
		working.New("σ_c", "curl stress in the top", "σ_c", t.Curl, "MPa", source.Cite("mechanics", "C times σ_c,full, not above σ_w"), working.In("σ_c", t.Curl, "MPa", "")),
	}
}
