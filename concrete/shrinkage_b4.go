package concrete

import (
	_ "embed"
	"math"
)

//go:embed cement_b4.csv
var cementB4CSV string

var _, cementB4Rows = readTable("cement_b4.csv", cementB4CSV)

func parameterB4(name string) float64 { return number("cement_b4.csv", cementB4Rows[name], "R") }

// B4 is the shrinkage and creep model of RILEM TC-242-MDC (2015) for ordinary
// cement, without temperature and with the aggregate factors at one.
type B4 struct {
	Mean28          float64 // [MPa]
	Cement          float64 // c [kg/m³]
	WaterCement     float64 // w/c
	AggregateCement float64 // a/c
	Density         float64 // of the concrete [kg/m³]
	Shape           float64 // ks: 1.0 slab
}

// Code returns "RILEM model B4".
func (B4) Code() string { return "RILEM model B4" }

// power3 is the product the model's parameters all have: what a/c, w/c and cement
// share do to a constant.
func (m B4) power3(base, a, w, c float64) float64 {
	return base * math.Pow(m.AggregateCement/6, a) * math.Pow(m.WaterCement/0.38, w) * math.Pow(6.5*m.Cement/m.Density, c)
}

// HalfTime returns τsh, days.
//
// Source: RILEM TC-242-MDC 2015; from memory, constants met by a public script.
func (m B4) HalfTime(member Member) float64 {
	d := 2 * member.VolumeSurface * m.Shape
	return m.power3(parameterB4("tau_cem"), parameterB4("p_tau_a"), parameterB4("p_tau_w"), parameterB4("p_tau_c")) * d * d
}

// LimitStrain returns ε0.
//
// Source: as [B4.HalfTime].
func (m B4) LimitStrain() float64 {
	return m.power3(parameterB4("eps_cem"), parameterB4("p_eps_a"), parameterB4("p_eps_w"), parameterB4("p_eps_c"))
}

// UltimateShrinkage returns εsh∞ of a member.
//
// Source: as [B4.HalfTime].
func (m B4) UltimateShrinkage(member Member) float64 {
	stiffness := func(t float64) float64 { return math.Sqrt(t / (4 + 6.0/7*t)) }
	return m.LimitStrain() * stiffness(607) / stiffness(member.DryingFrom+m.HalfTime(member))
}

// Drying returns the shrinkage by drying.
func (m B4) Drying(member Member, age float64) float64 {
	return m.UltimateShrinkage(member) * HumidityFactorB3(member.Humidity) * dryingTanh(age-member.DryingFrom, m.HalfTime(member))
}

// Autogenous returns the shrinkage without loss of water at an age in days.
//
// Source: RILEM TC-242-MDC 2015; from memory, checked against nothing.
func (m B4) Autogenous(age float64) float64 {
	if age <= 0 {
		return 0
	}
	w := m.WaterCement / 0.38
	end := m.power3(parameterB4("eps_au_cem"), parameterB4("r_eps_a"), parameterB4("r_eps_w"), 0)
	tau := parameterB4("tau_au_cem") * math.Pow(w, parameterB4("r_tau_w"))
	return end * math.Pow(1+math.Pow(tau/age, parameterB4("r_alpha")*w), parameterB4("r_t"))
}

func (m B4) q1() float64 { return parameterB4("p1") / ModulusB3(m.Mean28) }

// BasicCompliance returns C0, 1/MPa.
//
// Source: as [B4.HalfTime].
func (m B4) BasicCompliance(loaded, age float64) float64 {
	const perGPa = 1e-3 // 1/MPa
	q2 := m.power3(parameterB4("p2"), 0, parameterB4("p2w"), 0) * perGPa
	q3 := q2 * m.power3(parameterB4("p3"), parameterB4("p3a"), parameterB4("p3w"), 0)
	q4 := m.power3(parameterB4("p4"), parameterB4("p4a"), parameterB4("p4w"), 0) * perGPa
	return basicCompliance(q2, q3, q4, loaded, age)
}

// DryingCompliance returns Cd, 1/MPa.
//
// Source: as [B4.HalfTime].
func (m B4) DryingCompliance(member Member, loaded, age float64) float64 {
	const perGPa = 1e-3 // 1/MPa
	strain := math.Abs(HumidityFactorB3(member.Humidity) * m.UltimateShrinkage(member))
	q5 := m.power3(parameterB4("p5"), parameterB4("p5a"), parameterB4("p5w"), 0) * perGPa * math.Pow(strain, parameterB4("p5eps"))
	pore := func(t float64) float64 {
		return 1 - (1-member.Humidity)*dryingTanh(t-member.DryingFrom, m.HalfTime(member))
	}
	return q5 * dryingRoot(parameterB4("p5H"), pore, max(loaded, member.DryingFrom), age)
}

// Compliance returns J, 1/MPa.
func (m B4) Compliance(member Member, loaded, age float64) float64 {
	return m.q1() + m.BasicCompliance(loaded, age) + m.DryingCompliance(member, loaded, age)
}

// Coefficient returns (C0 + Cd)·E28; see [B3.Coefficient].
func (m B4) Coefficient(member Member, loaded, age float64) float64 {
	return (m.BasicCompliance(loaded, age) + m.DryingCompliance(member, loaded, age)) * ModulusB3(m.Mean28)
}
