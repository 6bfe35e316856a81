package concrete

import (
	_ "embed"
	"math"
)

// TangentModulusMC returns Eci at 28 days, MPa.
//
//	mean        cylinder strength, 20 to 130 [MPa]
//	aggregate   1.2 basalt, 1.0 quartzite, 0.9 limestone, 0.7 sandstone
//
// Source: fib Model Code 2010 (5.1-21); seen as coded in fib structuralcodes.
func TangentModulusMC(mean, aggregate float64) float64 {
	return 21500 * aggregate * math.Cbrt(mean/10)
}

// SecantFactorMC returns αi, the reduced modulus Ec over the tangent one.
//
// Source: fib Model Code 2010 (5.1-24); from memory.
func SecantFactorMC(mean float64) float64 { return math.Min(1, 0.8+0.2*mean/88) }

// FractureEnergyMC returns Gf, N/m, the work to pull a crack of a square metre
// open, from the mean strength in MPa.
//
// Source: fib Model Code 2010 (5.1-9); seen as coded in fib structuralcodes.
func FractureEnergyMC(mean float64) float64 { return 73 * math.Pow(mean, 0.18) }

//go:embed development_mc.csv
var developmentMCCSV string

var _, developmentMCRows = readTable("development_mc.csv", developmentMCCSV)

// DevelopmentCoefficientMC returns s for a strength class of cement such as
// "42.5N", 0.20 for any cement above a mean strength of 60 MPa; ok is false for an
// unknown class.
//
// Source: fib Model Code 2010 Table 5.1-9; seen as coded in fib structuralcodes.
func DevelopmentCoefficientMC(cement string, mean float64) (s float64, ok bool) {
	row, ok := developmentMCRows[cement]
	if !ok {
		return 0, false
	}
	if mean > 60 {
		return 0.20, true
	}
	return number("development_mc.csv", row, "s"), true
}

// MC2010 is the strength model of fib Model Code 2010.
type MC2010 struct {
	Mean28    float64 // mean cylinder strength at 28 days [MPa]
	Cement    string  // strength class: 32.5N, 32.5R, 42.5N, 42.5R, 52.5N, 52.5R
	Aggregate float64 // αE: 1.2 basalt, 1.0 quartzite, 0.9 limestone, 0.7 sandstone
}

// NewMC2010 returns the model for a characteristic cylinder strength in MPa.
func NewMC2010(characteristic float64, cement string, aggregate float64) MC2010 {
	if _, ok := developmentMCRows[cement]; !ok {
		panic("concrete: no cement strength class " + cement)
	}
	return MC2010{Mean28: characteristic + 8, Cement: cement, Aggregate: aggregate}
}

// Code returns "fib Model Code 2010".
func (MC2010) Code() string { return "fib Model Code 2010" }

// From returns 3 days, as for EN 1992-1-1, whose curve it shares.
func (MC2010) From() float64 { return 3 }

// Strength returns fcm(t), MPa.
func (m MC2010) Strength(age float64) float64 { return m.Mean28 * m.development(age) }

// Tensile returns fctm(t), MPa. The code gives 28-day tension and warns that at
// early age it depends on curing; it grows here with strength as in EN 1992-1-1 (3.4).
func (m MC2010) Tensile(age float64) float64 {
	return MeanTensileEN(m.Mean28-8) * TensileDevelopmentEN(m.development(age), age)
}

// Modulus returns the tangent modulus Eci(t), MPa: the square root of the
// development of strength (5.1-56).
func (m MC2010) Modulus(age float64) float64 {
	return TangentModulusMC(m.Mean28, m.Aggregate) * math.Sqrt(m.development(age))
}

func (m MC2010) development(age float64) float64 {
	s, _ := DevelopmentCoefficientMC(m.Cement, m.Mean28)
	return DevelopmentEN(s, age)
}
