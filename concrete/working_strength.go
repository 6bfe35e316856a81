package concrete

import (
	"fmt"

	"slabwright/source"
	"slabwright/working"
)

// StrengthWorking returns the calculation of strength, tensile strength and modulus by
// one of the models of this package at a temperature-adjusted age in days, with
// another code's value beside each.
func StrengthWorking(model StrengthModel, age float64) working.Sheet {
	sheet := working.Sheet{
		ID: "strength", Title: fmt.Sprintf("Strength at %g days, %s", age, model.Code()),
		Basis: []string{"age: days at 20 °C", "mean cylinder strength"},
	}
	if age < model.From() {
		sheet.Basis = append(sheet.Basis, fmt.Sprintf("the curve of the code is meant from %g days up; below that the degree of hydration rules", model.From()))
	}
	switch m := model.(type) {
	case EN1992:
		sheet.Add(strengthLinesEN(m, age)...)
	case MC2010:
		sheet.Add(strengthLinesMC(m, age)...)
	case ACI209:
		sheet.Add(strengthLinesACI(m, age)...)
	case AS3600:
		sheet.Add(strengthLinesAS(m, age)...)
	default:
		panic("concrete: no working for the strength model " + model.Code())
	}
	return sheet
}

// developmentLine shows βcc of EN 1992-1-1, which three codes share.
func developmentLine(s, age float64, src source.Citation) working.Line {
	return working.New("β_cc", "strength at the age over that at 28 days", "exp(s·(1 − sqrt(28/t)))", DevelopmentEN(s, age), "", src,
		working.In("s", s, "", "for the cement"), working.In("t", age, "d", "age")).
		Beside("t/(4.0 + 0.85·t)", DevelopmentACI(4.0, 0.85, age), source.Cite("aci209", "(2-1), type I, moist cured"), "the codes differ most in the first days")
}

// tensileLines show fctm at 28 days and at the age.
func tensileLines(mean28, development, age float64, work string) []working.Line {
	characteristic := mean28 - 8
	at28 := MeanTensileEN(characteristic)
	first := working.New("f_ctm", "mean axial tensile strength at 28 days", "0.30·(f_cm − 8)^(2/3)", at28, "MPa", source.Cite(work, "Table 3.1"),
		working.In("f_cm", mean28, "MPa", "mean strength"))
	if characteristic > 50 {
		first = working.New("f_ctm", "mean axial tensile strength at 28 days", "2.12·ln(1 + f_cm/10)", at28, "MPa", source.Cite(work, "Table 3.1"),
			working.In("f_cm", mean28, "MPa", "mean strength"))
	}
	power := 1.0
	if age >= 28 {
		power = 2.0 / 3
	}
	at := at28 * TensileDevelopmentEN(development, age)
	return []working.Line{first, working.New("f_ctm,t", "mean axial tensile strength at the age", "β_cc^a·f_ctm", at, "MPa", source.Cite(work, "(3.4)"),
		working.In("β_cc", development, "", "line above"), working.In("a", power, "", "1 before 28 days, 2/3 after"), working.In("f_ctm", at28, "MPa", "line above")).
		Beside("0.0069·sqrt(2400·f)", DirectTensionACI(2400, mean28*development), source.Cite("aci209", "(2-4)"), "another relation between tension and compression")}
}

func strengthLinesEN(m EN1992, age float64) []working.Line {
	s := m.slope()
	d := DevelopmentEN(s, age)
	lines := []working.Line{
		developmentLine(s, age, source.Cite("en1992", "(3.2)")),
		working.New("f_cm,t", "mean strength at the age", "β_cc·f_cm", m.Strength(age), "MPa", source.Cite("en1992", "(3.1)"),
			working.In("β_cc", d, "", "line above"), working.In("f_cm", m.Mean28, "MPa", "mean strength at 28 days")),
	}
	lines = append(lines, tensileLines(m.Mean28, d, age, "en1992")...)
	return append(lines, working.New("E_cm,t", "secant modulus at the age", "k·22000·(f_cm/10)^0.3·β_cc^0.3", m.Modulus(age), "MPa",
		source.Cite("en1992", "Table 3.1, 3.1.3(2), (3.5)"), working.In("k", m.AggregateFactor, "", "for the aggregate"),
		working.In("f_cm", m.Mean28, "MPa", "mean strength at 28 days"), working.In("β_cc", d, "", "line above")).
		Beside("4700·sqrt(f)", ModulusACI(m.Strength(age)), source.Cite("aci318", "19.2.2.1(b)"), "f is the strength of the line above"))
}

func strengthLinesMC(m MC2010, age float64) []working.Line {
	s, _ := DevelopmentCoefficientMC(m.Cement, m.Mean28)
	d := DevelopmentEN(s, age)
	lines := []working.Line{
		developmentLine(s, age, source.Cite("mc2010", "(5.1-51)")),
		working.New("f_cm,t", "mean strength at the age", "β_cc·f_cm", m.Strength(age), "MPa", source.Cite("mc2010", "(5.1-50)"),
			working.In("β_cc", d, "", "line above"), working.In("f_cm", m.Mean28, "MPa", "mean strength at 28 days")),
	}
	lines = append(lines, tensileLines(m.Mean28, d, age, "en1992")...)
	return append(lines, working.New("E_ci,t", "tangent modulus at the age", "21500·α_E·(f_cm/10)^(1/3)·sqrt(β_cc)", m.Modulus(age), "MPa",
		source.Cite("mc2010", "(5.1-21), (5.1-56)"), working.In("α_E", m.Aggregate, "", "for the aggregate"),
		working.In("f_cm", m.Mean28, "MPa", "mean strength at 28 days"), working.In("β_cc", d, "", "line above")).
		Beside("secant modulus of EN 1992-1-1 times 1.05", TangentOverSecantEN*MeanModulusEN(m.Mean28)*ModulusDevelopmentEN(d)*m.Aggregate, source.Cite("en1992", "(3.5)"), ""))
}

func strengthLinesACI(m ACI209, age float64) []working.Line {
	f, d := m.Strength(age), DevelopmentACI(m.A, m.B, age)
	in := working.In("f_c,t", f, "MPa", "line above")
	return []working.Line{
		working.New("f_c,t", "strength at the age", "f_c·t/(a + b·t)", f, "MPa", source.Cite("aci209", "(2-1)"),
			working.In("f_c", m.Strength28, "MPa", "strength at 28 days"), working.In("t", age, "d", "age"),
			working.In("a", m.A, "d", "cement and curing"), working.In("b", m.B, "", "cement and curing")).
			Beside("EN 1992-1-1, class N", m.Strength28*DevelopmentEN(0.25, age), source.Cite("en1992", "(3.2)"), "the codes differ most in the first days"),
		working.New("f_t", "axial tensile strength at the age", "0.0069·sqrt(w·f_c,t)", m.Tensile(age), "MPa", source.Cite("aci209", "(2-4)"),
			working.In("w", m.Density, "kg/m³", "density"), in).
			Beside("0.30·(28-day strength − 8)^(2/3), times the development", MeanTensileEN(m.Strength28-8)*d, source.Cite("en1992", "Table 3.1, (3.4)"), "another relation between tension and compression"),
		working.New("E_c", "modulus at the age", "0.043·w^1.5·sqrt(f_c,t)", m.Modulus(age), "MPa", source.Cite("aci318", "19.2.2.1(a)"),
			working.In("w", m.Density, "kg/m³", "density"), in).
			Beside("4700·sqrt(f)", ModulusACI(f), source.Cite("aci318", "19.2.2.1(b)"), ""),
	}
}

func strengthLinesAS(m AS3600, age float64) []working.Line {
	s, _ := DevelopmentCoefficientEN(m.Class)
	d := DevelopmentEN(s, age)
	mean, f := MeanInSituAS(m.Characteristic), m.Strength(age)
	modulus := working.New("E_c", "modulus at the age, ±20 %", "ρ^1.5·0.043·sqrt(f_cmi,t)", m.Modulus(age), "MPa", source.Cite("as3600", "3.1.2"),
		working.In("ρ", m.Density, "kg/m³", "density"), working.In("f_cmi,t", f, "MPa", "line above"))
	if f > 40 {
		modulus = working.New("E_c", "modulus at the age, ±20 %", "ρ^1.5·max(0.043·sqrt(40); 0.024·sqrt(f_cmi,t) + 0.12)", m.Modulus(age), "MPa", source.Cite("as3600", "3.1.2"),
			working.In("ρ", m.Density, "kg/m³", "density"), working.In("f_cmi,t", f, "MPa", "line above"))
	}
	return []working.Line{
		developmentLine(s, age, source.Cite("en1992", "(3.2), in place of a curve AS 3600 does not give")),
		working.New("f_cmi,t", "mean in-situ strength at the age", "β_cc·f_cmi", f, "MPa", source.Cite("as3600", "Table 3.1.2"),
			working.In("β_cc", d, "", "line above"), working.In("f_cmi", mean, "MPa", "mean in-situ strength at 28 days")),
		working.New("f_ct", "mean axial tensile strength at the age", "1.4·0.36·sqrt(f_c·β_cc)", m.Tensile(age), "MPa", source.Cite("as3600", "3.1.1.3"),
			working.In("f_c", m.Characteristic, "MPa", "characteristic strength"), working.In("β_cc", d, "", "line above")).
			Beside("EN 1992-1-1", MeanTensileEN(m.Characteristic)*TensileDevelopmentEN(d, age), source.Cite("en1992", "Table 3.1, (3.4)"), ""),
		modulus.Beside("4700·sqrt(f)", ModulusACI(f), source.Cite("aci318", "19.2.2.1(b)"), ""),
	}
}
