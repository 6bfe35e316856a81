package concrete

import (
	"fmt"
	"math"

	"slabwright/source"
	"slabwright/working"
)

// memberBasis says what dries.
func memberBasis(m Member) string {
	return fmt.Sprintf("notional size %s mm (twice the volume over the surface that dries), air at %s %%, drying from %s days",
		working.Figure(m.NotionalSize(), 3), working.Figure(100*m.Humidity, 3), working.Figure(m.DryingFrom, 2))
}

// ShrinkageWorking returns the calculation of shrinkage by EN 1992-1-1 of a member at
// an age in days, with GL2000 beside the sum.
func ShrinkageWorking(m ShrinkageEN, member Member, age float64) working.Sheet {
	en := func(place string) source.Citation { return source.Cite("en1992", place) }
	h0, drying := member.NotionalSize(), math.Max(0, age-member.DryingFrom)
	basic := BasicDryingShrinkageEN(m.Mean28, m.Class, member.Humidity)
	kh, progress := SizeFactorEN(h0), DryingProgressEN(drying, h0)
	dry, own := m.Drying(member, age), m.Autogenous(age)
	gl := GL2000{Mean28: m.Mean28, Cement: "I"}
	sheet := working.Sheet{ID: "shrinkage", Title: fmt.Sprintf("Shrinkage at %g days", age),
		Basis: []string{memberBasis(member), "mean value, coefficient of variation about 30 %"}}
	sheet.Add(
		working.New("β_RH", "factor for the humidity", "1.55·(1 − RH^3)", HumidityFactorEN(member.Humidity), "", en("(B.12)"),
			working.In("RH", member.Humidity, "", "humidity of the air, fraction")),
		working.New("ε_cd0", "drying shrinkage of a thin piece in the end", "0.85·(220 + 110·a1)·exp(−a2·f_cm/10)·0.000001·β_RH", basic, "", en("(B.11)"),
			working.In("a1", classConstantEN(m.Class, "drying1"), "", "cement"), working.In("a2", classConstantEN(m.Class, "drying2"), "", "cement"),
			working.In("f_cm", m.Mean28, "MPa", "mean strength"), working.In("β_RH", HumidityFactorEN(member.Humidity), "", "line above")),
		working.New("β_ds", "share of it after the time of drying", "t_d/(t_d + 0.04·h_0^1.5)", progress, "", en("(3.10)"),
			working.In("t_d", drying, "d", "drying"), working.In("h_0", h0, "mm", "notional size")),
		working.New("ε_cd", "drying shrinkage", "β_ds·k_h·ε_cd0", dry, "", en("(3.9), Table 3.3"),
			working.In("β_ds", progress, "", "line above"), working.In("k_h", kh, "", "factor for the size"), working.In("ε_cd0", basic, "", "line above")),
		working.New("ε_ca", "autogenous shrinkage", "2.5·(f_cm − 18)·0.000001·(1 − exp(−0.2·sqrt(t)))", own, "", en("(3.11) to (3.13)"),
			working.In("f_cm", m.Mean28, "MPa", "mean strength"), working.In("t", age, "d", "age")),
		working.New("ε_cs", "shrinkage", "ε_cd + ε_ca", dry+own, "", en("(3.8)"),
			working.In("ε_cd", dry, "", "line above"), working.In("ε_ca", own, "", "line above")).
			Beside("GL2000, cement type I", TotalShrinkage(gl, member, age), source.Cite("gl2000", "shrinkage"), "the models differ by a third and more; so do slabs"),
	)
	return sheet
}

// CreepWorking returns the calculation of the creep coefficient by EN 1992-1-1 of a
// member loaded at a temperature-adjusted age, with fib Model Code 2010 beside it.
func CreepWorking(m CreepEN, member Member, loaded, age float64) working.Sheet {
	en := func(place string) source.Citation { return source.Cite("en1992", place) }
	h0, exponent := member.NotionalSize(), classConstantEN(m.Class, "creepage")
	t0, days := AdjustedLoadingAge(loaded, exponent), math.Max(0, age-loaded)
	phi0, phi := NotionalCreepEN(m.Mean28, member.Humidity, h0, t0), m.Coefficient(member, loaded, age)
	a1, a2, a3 := math.Min(1, math.Pow(35/m.Mean28, 0.7)), math.Min(1, math.Pow(35/m.Mean28, 0.2)), math.Min(1, math.Sqrt(35/m.Mean28))
	humidity := (1 + (1-member.Humidity)/(0.1*math.Cbrt(h0))*a1) * a2
	bH := math.Min(1.5*(1+math.Pow(1.2*member.Humidity, 18))*h0+250*a3, 1500*a3)
	cement := map[CementClass]string{Slow: "32.5N", Normal: "42.5N", Rapid: "42.5R"}[m.Class]
	other := CreepMC{MC2010{Mean28: m.Mean28, Cement: cement, Aggregate: 1}}
	size, rh := working.In("h_0", h0, "mm", "notional size"), working.In("RH", member.Humidity, "", "humidity, fraction")
	strength := working.In("f_cm", m.Mean28, "MPa", "mean strength")
	sheet := working.Sheet{ID: "creep", Title: fmt.Sprintf("Creep from %g to %g days", loaded, age),
		Basis: []string{memberBasis(member), "strain is φ times stress over 1.05 Ecm at 28 days, for stresses up to 0.45 of the strength"}}
	sheet.Add(
		working.New("t_0,adj", "age at loading, changed for the cement", "max(0.5; t_0·(9/(2 + t_0^1.2) + 1)^a)", t0, "d", en("(B.9)"),
			working.In("t_0", loaded, "d", "age at loading"), working.In("a", exponent, "", "−1 S, 0 N, 1 R")),
		working.New("φ_RH", "factor for drying", "(1 + (1 − RH)/(0.1·h_0^(1/3))·a_1)·a_2", humidity, "", en("(B.3), (B.8c)"), rh, size,
			working.In("a_1", a1, "", "(35/f_cm)^0.7, at most 1"), working.In("a_2", a2, "", "(35/f_cm)^0.2, at most 1")),
		working.New("φ_0", "creep coefficient in the end", "φ_RH·16.8/sqrt(f_cm)/(0.1 + t_0,adj^0.2)", phi0, "", en("(B.2) to (B.5)"),
			working.In("φ_RH", humidity, "", "line above"), strength, working.In("t_0,adj", t0, "d", "line above")),
		working.New("β_H", "how slowly it comes", "min(1.5·(1 + (1.2·RH)^18)·h_0 + 250·a_3; 1500·a_3)", bH, "d", en("(B.8)"), rh, size,
			working.In("a_3", a3, "", "sqrt(35/f_cm), at most 1")),
		working.New("φ", "creep coefficient", "φ_0·(t_l/(β_H + t_l))^0.3", phi, "", en("(B.1), (B.7)"),
			working.In("φ_0", phi0, "", "line above"), working.In("t_l", days, "d", "under load"), working.In("β_H", bH, "d", "line above")).
			Beside("fib Model Code 2010", other.Coefficient(member, loaded, age), source.Cite("mc2010", "(5.1-63)"), "stands on the tangent modulus, 0 to 5 % higher"),
	)
	return sheet
}
