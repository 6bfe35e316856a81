package concrete

import (
	_ "embed"
	"math"
)

// DevelopmentACI returns the compressive strength at an age in days over that at
// 28 days, t/(a+b·t).
//
// Source: ACI 209R-92 (2-1); from memory.
func DevelopmentACI(a, b, age float64) float64 {
	if age <= 0 {
		return 0
	}
	return age / (a + b*age)
}

// ModulusACI returns Ec of normal-weight concrete, MPa, from the strength f'c in
// MPa.
//
// Source: ACI 318-19, 19.2.2.1(b); seen in an excerpt.
func ModulusACI(strength float64) float64 { return 4700 * math.Sqrt(strength) }

// ModulusByDensityACI returns Ec, MPa, from the density, 1440 to 2560 kg/m³, and
// the strength f'c in MPa.
//
// Source: ACI 318-19, 19.2.2.1(a); from memory.
func ModulusByDensityACI(density, strength float64) float64 {
	return 0.043 * math.Pow(density, 1.5) * math.Sqrt(strength)
}

// ModulusOfRuptureACI returns fr, MPa, from the strength f'c in MPa. It is a value
// for deflections: beams tested in flexure commonly give more.
//
// Source: ACI 318-19, 19.2.3.1; seen in an excerpt.
func ModulusOfRuptureACI(strength float64) float64 { return 0.62 * math.Sqrt(strength) }

// DirectTensionACI returns the axial tensile strength, MPa, of normal-weight concrete
// from f'c in MPa: 0.0069·sqrt(w·f'c) with the density w in kg/m³. It is near a
// lower bound of tests: at 40 MPa some 30 % below the mean of EN 1992-1-1.
//
// Source: ACI 209R-92 (2-4); from memory.
func DirectTensionACI(density, strength float64) float64 {
	return 0.0069 * math.Sqrt(density*strength)
}

//go:embed development_aci.csv
var developmentACICSV string

var _, developmentACIRows = readTable("development_aci.csv", developmentACICSV)

// ACI209 is the strength model of ACI 209R-92 with the moduli of ACI 318-19.
type ACI209 struct {
	Strength28 float64 // cylinder strength at 28 days [MPa]
	A, B       float64 // constants of (2-1)
	Density    float64 // kg/m³
}

// NewACI209 returns the model for a 28-day strength in MPa and a curing row of
// the table: "I moist", "III moist", "I steam" or "III steam".
func NewACI209(strength28 float64, curing string) ACI209 {
	row, ok := developmentACIRows[curing]
	if !ok {
		panic("concrete: no row of ACI 209R for " + curing)
	}
	return ACI209{Strength28: strength28, A: number("development_aci.csv", row, "a"),
		B: number("development_aci.csv", row, "b"), Density: 2400}
}

// Code returns "ACI 209R-92 and ACI 318-19".
func (ACI209) Code() string { return "ACI 209R-92 and ACI 318-19" }

// From returns 1 day, the first age its curve is tabulated for.
func (ACI209) From() float64 { return 1 }

// Strength returns f'c(t), MPa.
func (m ACI209) Strength(age float64) float64 { return m.Strength28 * DevelopmentACI(m.A, m.B, age) }

// Tensile returns the axial tensile strength, MPa.
func (m ACI209) Tensile(age float64) float64 {
	return DirectTensionACI(m.Density, m.Strength(age))
}

// Modulus returns Ec(t), MPa.
func (m ACI209) Modulus(age float64) float64 {
	return ModulusByDensityACI(m.Density, m.Strength(age))
}
