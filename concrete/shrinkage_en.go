package concrete

import (
	_ "embed"
	"math"
)

//go:embed shrinkage_en.csv
var shrinkageENCSV string

//go:embed size_en.csv
var sizeENCSV string

var (
	_, shrinkageENRows = readTable("shrinkage_en.csv", shrinkageENCSV)
	sizesEN, factorsEN = curve("size_en.csv", sizeENCSV, "h0", "kh")
)

func classConstantEN(class CementClass, column string) float64 {
	row, ok := shrinkageENRows[string(class)]
	if !ok {
		panic("concrete: cement class must be S, N or R, not " + string(class))
	}
	return number("shrinkage_en.csv", row, column)
}

// BasicDryingShrinkageEN returns εcd,0, the strain a thin piece would reach in
// the end.
//
//	mean       strength fcm at 28 days [MPa]
//	class      of the cement
//	humidity   of the air, fraction
//
// Mean value: the coefficient of variation is about 30 %.
//
// Source: EN 1992-1-1:2004 (B.11), (B.12); seen as coded in fib structuralcodes.
func BasicDryingShrinkageEN(mean float64, class CementClass, humidity float64) float64 {
	return 0.85 * (220 + 110*classConstantEN(class, "drying1")) *
		math.Exp(-classConstantEN(class, "drying2")*mean/10) * 1e-6 * HumidityFactorEN(humidity)
}

// HumidityFactorEN returns βRH from the humidity as a fraction.
//
// Source: EN 1992-1-1:2004 (B.12); seen as coded in fib structuralcodes.
func HumidityFactorEN(humidity float64) float64 { return 1.55 * (1 - math.Pow(humidity, 3)) }

// SizeFactorEN returns kh for a notional size in mm, linear between the rows.
//
// Source: EN 1992-1-1:2004 Table 3.3; seen as coded in fib structuralcodes.
func SizeFactorEN(notionalSize float64) float64 { return interpolate(sizesEN, factorsEN, notionalSize) }

// DryingProgressEN returns βds, the share of the drying shrinkage there is after
// so many days of drying.
//
//	drying         [d]
//	notionalSize   h0 [mm]
//
// Source: EN 1992-1-1:2004 (3.10); seen as coded in fib structuralcodes.
func DryingProgressEN(drying, notionalSize float64) float64 {
	if drying <= 0 {
		return 0
	}
	return drying / (drying + 0.04*math.Pow(notionalSize, 1.5))
}

// AutogenousShrinkageEN returns εca at an age in days, from the characteristic
// strength in MPa.
//
// Source: EN 1992-1-1:2004 (3.11) to (3.13); seen as coded in fib structuralcodes.
func AutogenousShrinkageEN(characteristic, age float64) float64 {
	if age <= 0 {
		return 0
	}
	return math.Max(0, 2.5*(characteristic-10)*1e-6) * (1 - math.Exp(-0.2*math.Sqrt(age)))
}

// ShrinkageEN is the shrinkage model of EN 1992-1-1:2004.
type ShrinkageEN struct {
	Mean28 float64 // [MPa]
	Class  CementClass
}

// Code returns "EN 1992-1-1:2004".
func (ShrinkageEN) Code() string { return "EN 1992-1-1:2004" }

// Autogenous returns εca.
func (m ShrinkageEN) Autogenous(age float64) float64 { return AutogenousShrinkageEN(m.Mean28-8, age) }

// Drying returns εcd.
func (m ShrinkageEN) Drying(member Member, age float64) float64 {
	h0 := member.NotionalSize()
	return DryingProgressEN(age-member.DryingFrom, h0) * SizeFactorEN(h0) *
		BasicDryingShrinkageEN(m.Mean28, m.Class, member.Humidity)
}
