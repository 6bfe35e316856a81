package steel

import (
	_ "embed"
	"math"

	"slabwright/internal/table"
)

// SelfStressFactorEN returns k, which allows for stress that a thick member makes
// within itself: 1.0 to 300 mm, 0.65 from 800 mm.
//
// Source: EN 1992-1-1:2004 7.3.2(2); seen as coded in fib structuralcodes.
func SelfStressFactorEN(thickness float64) float64 {
	return math.Min(1, math.Max(0.65, 1-0.35*(thickness-300)/500))
}

// MinimumSteelEN returns the steel, mm², that takes over what the concrete carried
// when it cracks, so that several fine cracks form in place of one.
//
//	kc        1.0 pure tension, 0.4 pure bending
//	k         see [SelfStressFactorEN]
//	tensile   strength when cracking fct,eff: low at early age [MPa]
//	area      of concrete in tension just before the crack [mm²]
//	stress    allowed in the steel, its yield or less for a crack width [MPa]
//
// Source: EN 1992-1-1:2004 (7.1); seen as coded in fib structuralcodes.
func MinimumSteelEN(kc, k, tensile, area, stress float64) float64 {
	return kc * k * tensile * area / stress
}

//go:embed ratios_as.csv
var ratiosASCSV string

var ratiosAS = table.Read("ratios_as.csv", ratiosASCSV)

// RestrainedSteelAS returns the steel, mm²/m each way, of a slab restrained in its
// plane, for a degree of crack control: "minor", "moderate" or "strong"; ok is false
// for another word.
//
// Source: AS 3600:2018 9.5.3 (9.4.3 in 2009); from memory.
func RestrainedSteelAS(control string, thickness float64) (area float64, ok bool) {
	i := ratiosAS.Find(control)
	if i < 0 {
		return 0, false
	}
	return ratiosAS.Number(i, "ratio") * thickness * 1000, true
}
