package concrete

import (
	_ "embed"
	"math"
)

//go:embed cement_b3.csv
var cementB3CSV string

var _, cementB3Rows = readTable("cement_b3.csv", cementB3CSV)

// MixB3 is what model B3 asks of a mix.
type MixB3 struct {
	Mean28          float64 // [MPa]
	Cement          float64 // c [kg/m³]
	Water           float64 // w [kg/m³]
	AggregateCement float64 // a/c [-]
	Type            string  // I, II, III
	Curing          float64 // α2: 0.75 steam, 1.0 in water or humid, 1.2 sealed
	Shape           float64 // ks: 1.0 slab
}

// HumidityFactorB3 returns kh: 1 − h³ up to 0.98, then falling to −0.2, swelling in
// water.
//
// Source: Bazant and Baweja 2000; seen in another code.
func HumidityFactorB3(humidity float64) float64 {
	const bend = 0.98
	if humidity <= bend {
		return 1 - math.Pow(humidity, 3)
	}
	top := 1 - math.Pow(bend, 3)
	return top + (-0.2-top)*(humidity-bend)/(1-bend)
}

// ShrinkageHalfTimeB3 returns τsh, days, over which drying reaches in.
//
//	dryingFrom     tc [d]
//	mean           [MPa]
//	shape          ks
//	volumeSurface  V/S [mm]
//
// Source: Bazant and Baweja 2000 in the SI form of ACI 209.2R-08; seen in another
// code.
func ShrinkageHalfTimeB3(dryingFrom, mean, shape, volumeSurface float64) float64 {
	return 0.085 * math.Pow(dryingFrom, -0.08) * math.Pow(mean, -0.25) * math.Pow(2*shape*volumeSurface, 2)
}

// stiffnessB3 is E(t)/E28 of ACI 209: sqrt(t/(4+0.85t)).
func stiffnessB3(age float64) float64 { return math.Sqrt(age / (4 + 0.85*age)) }

// LimitStrainB3 returns εs∞, the shrinkage of a thin piece in dry air.
//
// Source: as [ShrinkageHalfTimeB3].
func LimitStrainB3(m MixB3) float64 {
	row, ok := cementB3Rows[m.Type]
	if !ok {
		panic("concrete: B3 knows cement I, II and III, not " + m.Type)
	}
	return number("cement_b3.csv", row, "a1") * m.Curing * (0.019*math.Pow(m.Water, 2.1)*math.Pow(m.Mean28, -0.28) + 270) * 1e-6
}

// UltimateShrinkageB3 returns εsh∞: the limit strain changed for the stiffness it
// meets while the member dries.
//
// Source: as [ShrinkageHalfTimeB3].
func UltimateShrinkageB3(limit, dryingFrom, halfTime float64) float64 {
	return limit * stiffnessB3(607) / stiffnessB3(dryingFrom+halfTime)
}

// FlowIntegral returns Q(t,t′) of the solidification theory by its closed
// approximation, within 0.15 % of the integral (m = 0.5, n = 0.1).
//
//	loaded       t′ [d]
//	loadedDays   t − t′ > 0 [d]
//
// Source: Bazant and Baweja 2000; seen in another code.
func FlowIntegral(loaded, loadedDays float64) float64 {
	qf := 1 / (0.086*math.Pow(loaded, 2.0/9) + 1.21*math.Pow(loaded, 4.0/9))
	z := math.Log(1+math.Pow(loadedDays, 0.1)) / math.Sqrt(loaded)
	r := 1.7*math.Pow(loaded, 0.12) + 8
	return qf * math.Pow(1+math.Pow(qf/z, r), -1/r)
}

// B3 is the shrinkage and creep model of Bazant and Baweja.
type B3 struct{ MixB3 }

// Code returns "model B3".
func (B3) Code() string { return "model B3" }

// Autogenous returns 0: the model does not part it from drying.
func (B3) Autogenous(float64) float64 { return 0 }

func (m B3) halfTime(member Member) float64 {
	return ShrinkageHalfTimeB3(member.DryingFrom, m.Mean28, m.Shape, member.VolumeSurface)
}

func (m B3) ultimate(member Member) float64 {
	return UltimateShrinkageB3(LimitStrainB3(m.MixB3), member.DryingFrom, m.halfTime(member))
}

// Drying returns the shrinkage of a member.
func (m B3) Drying(member Member, age float64) float64 {
	return m.ultimate(member) * HumidityFactorB3(member.Humidity) * m.progress(member, age)
}

// progress is S(t) = tanh sqrt((t−tc)/τsh).
func (m B3) progress(member Member, age float64) float64 {
	return dryingTanh(age-member.DryingFrom, m.halfTime(member))
}

func dryingTanh(drying, halfTime float64) float64 {
	if drying <= 0 {
		return 0
	}
	return math.Tanh(math.Sqrt(drying / halfTime))
}

// FactorsB3 are q1 to q5 of model B3, 1/MPa.
type FactorsB3 struct{ Q1, Q2, Q3, Q4, Q5 float64 }

// CreepFactorsB3 returns the five factors of the compliance.
//
//	modulus28            E28 [MPa]
//	ultimateShrinkage    εsh∞ [-]
//
// Source: Bazant and Baweja 2000 in the SI form of ACI 209.2R-08; from memory.
func CreepFactorsB3(m MixB3, modulus28, ultimateShrinkage float64) FactorsB3 {
	q2 := 185.4e-6 * math.Sqrt(m.Cement) * math.Pow(m.Mean28, -0.9)
	return FactorsB3{
		Q1: 0.6 / modulus28,
		Q2: q2,
		Q3: 0.29 * math.Pow(m.Water/m.Cement, 4) * q2,
		Q4: 20.3e-6 * math.Pow(m.AggregateCement, -0.7),
		Q5: 0.757 / m.Mean28 * math.Pow(ultimateShrinkage*1e6, -0.6),
	}
}

// ModulusB3 returns E28, MPa, from the mean strength in MPa.
//
// Source: as [CreepFactorsB3].
func ModulusB3(mean float64) float64 { return 4734 * math.Sqrt(mean) }

func (m B3) factors(member Member) FactorsB3 {
	return CreepFactorsB3(m.MixB3, ModulusB3(m.Mean28), m.ultimate(member))
}

// BasicCompliance returns C0, creep without drying, 1/MPa.
func (m B3) BasicCompliance(member Member, loaded, age float64) float64 {
	q := m.factors(member)
	return basicCompliance(q.Q2, q.Q3, q.Q4, loaded, age)
}

func basicCompliance(q2, q3, q4, loaded, age float64) float64 {
	if age <= loaded {
		return 0
	}
	d := age - loaded
	return q2*FlowIntegral(loaded, d) + q3*math.Log(1+math.Pow(d, 0.1)) + q4*math.Log(age/loaded)
}

// DryingCompliance returns Cd, creep by drying under load, 1/MPa.
func (m B3) DryingCompliance(member Member, loaded, age float64) float64 {
	pore := func(t float64) float64 { return 1 - (1-member.Humidity)*m.progress(member, t) }
	return m.factors(member).Q5 * dryingRoot(8, pore, max(loaded, member.DryingFrom), age)
}

// dryingRoot is sqrt(exp(−p H(t)) − exp(−p H(t0))), nothing before drying.
func dryingRoot(p float64, pore func(float64) float64, from, age float64) float64 {
	if age <= from {
		return 0
	}
	return math.Sqrt(math.Max(0, math.Exp(-p*pore(age))-math.Exp(-p*pore(from))))
}

// Compliance returns J = q1 + C0 + Cd, 1/MPa.
func (m B3) Compliance(member Member, loaded, age float64) float64 {
	return m.factors(member).Q1 + m.BasicCompliance(member, loaded, age) + m.DryingCompliance(member, loaded, age)
}

// Coefficient returns (C0 + Cd)·E28. It is larger than the coefficients of the
// codes because the model's elastic part q1 is that of an instant: creep of the
// first minutes is in it.
func (m B3) Coefficient(member Member, loaded, age float64) float64 {
	return (m.BasicCompliance(member, loaded, age) + m.DryingCompliance(member, loaded, age)) * ModulusB3(m.Mean28)
}
