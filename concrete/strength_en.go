package concrete

import (
	_ "embed"
	"math"
)

// MeanStrengthEN returns fcm, the mean cylinder strength expected where the
// characteristic strength fck is ordered, MPa.
//
// Source: EN 1992-1-1:2004 Table 3.1; seen as coded in fib structuralcodes.
func MeanStrengthEN(characteristic float64) float64 { return characteristic + 8 }

// MeanTensileEN returns fctm, the mean axial tensile strength at 28 days, MPa,
// for characteristic strengths of 12 to 90 MPa.
//
// Source: EN 1992-1-1:2004 Table 3.1; seen as coded in fib structuralcodes.
func MeanTensileEN(characteristic float64) float64 {
	if characteristic <= 50 {
		return 0.30 * math.Pow(characteristic, 2.0/3)
	}
	return 2.12 * math.Log(1+MeanStrengthEN(characteristic)/10)
}

// TensileFractile5EN and TensileFractile95EN are the shares of fctm that 5 % and
// 95 % of results fall below.
//
// Source: EN 1992-1-1:2004 Table 3.1; seen as coded in fib structuralcodes.
const (
	TensileFractile5EN  = 0.7
	TensileFractile95EN = 1.3
)

// MeanModulusEN returns Ecm, the secant modulus at 28 days, MPa, from the mean
// strength in MPa. The tangent modulus is 1.05 of it. It stands for quartzite
// aggregate: limestone is 10 % lower, sandstone 30 % lower, basalt 20 % higher.
//
// Source: EN 1992-1-1:2004 Table 3.1 and 3.1.3(2); seen as coded in fib
// structuralcodes.
func MeanModulusEN(mean float64) float64 { return 22000 * math.Pow(mean/10, 0.3) }

// DevelopmentEN returns βcc, the strength at an age over that at 28 days.
//
//	s     0.20, 0.25 or 0.38 for cement of class R, N, S
//	age   temperature-adjusted, 3 days and more [d]
//
// Below 3 days tests are asked for; below 1 day the expression gives strength
// before the concrete has set.
//
// Source: EN 1992-1-1:2004 (3.2); seen as coded in fib structuralcodes.
func DevelopmentEN(s, age float64) float64 {
	if age <= 0 {
		return 0
	}
	return math.Exp(s * (1 - math.Sqrt(28/age)))
}

// TensileDevelopmentEN returns fctm(t)/fctm: βcc before 28 days, βcc^(2/3) after.
//
// Source: EN 1992-1-1:2004 (3.4); seen as coded in fib structuralcodes.
func TensileDevelopmentEN(development, age float64) float64 {
	if age < 28 {
		return development
	}
	return math.Pow(development, 2.0/3)
}

// ModulusDevelopmentEN returns Ecm(t)/Ecm from the development of strength.
//
// Source: EN 1992-1-1:2004 (3.5); seen as coded in fib structuralcodes.
func ModulusDevelopmentEN(development float64) float64 { return math.Pow(development, 0.3) }

//go:embed development.csv
var developmentCSV string

var _, developmentRows = readTable("development.csv", developmentCSV)

// DevelopmentCoefficientEN returns s of EN 1992-1-1 3.1.2(6) for a class of cement;
// ok is false for an unknown class.
func DevelopmentCoefficientEN(class CementClass) (s float64, ok bool) {
	row, ok := developmentRows[string(class)]
	if !ok {
		return 0, false
	}
	return number("development.csv", row, "s"), true
}

// EN1992 is the strength model of EN 1992-1-1:2004.
type EN1992 struct {
	Mean28          float64     // mean cylinder strength at 28 days [MPa]
	Class           CementClass // of the cement
	AggregateFactor float64     // on the modulus: 1.2 basalt, 1.0 quartzite, 0.9 limestone, 0.7 sandstone
	Slope           *float64    // s from tests or [DevelopmentSlope] in place of the class's; nil keeps the class's
}

// NewEN1992 returns the model for an ordered characteristic cylinder strength in
// MPa, with quartzite aggregate. Put cylinder results in Mean28 to replace the
// nominal mean.
func NewEN1992(characteristic float64, class CementClass) EN1992 {
	if _, ok := DevelopmentCoefficientEN(class); !ok {
		panic("concrete: cement class must be S, N or R, not " + string(class))
	}
	return EN1992{Mean28: MeanStrengthEN(characteristic), Class: class, AggregateFactor: 1}
}

// Code returns "EN 1992-1-1:2004".
func (EN1992) Code() string { return "EN 1992-1-1:2004" }

// From returns 3 days: below that the standard asks for tests (3.1.2(5)).
func (EN1992) From() float64 { return 3 }

// Strength returns fcm(t), MPa.
func (m EN1992) Strength(age float64) float64 { return m.Mean28 * m.development(age) }

// Tensile returns fctm(t), MPa.
func (m EN1992) Tensile(age float64) float64 {
	return MeanTensileEN(m.Mean28-8) * TensileDevelopmentEN(m.development(age), age)
}

// Modulus returns Ecm(t), MPa.
func (m EN1992) Modulus(age float64) float64 {
	return m.AggregateFactor * MeanModulusEN(m.Mean28) * ModulusDevelopmentEN(m.development(age))
}

func (m EN1992) development(age float64) float64 { return DevelopmentEN(m.slope(), age) }

// slope returns s: the mix's own where it is known, else the class's.
func (m EN1992) slope() float64 {
	if m.Slope != nil {
		return *m.Slope
	}
	s, _ := DevelopmentCoefficientEN(m.Class)
	return s
}
