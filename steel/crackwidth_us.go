package steel

import "math"

const mpaPerKsi = 6.894757

// CrackWidthGergelyLutz returns the most probable largest crack width in bending,
// mm.
//
//	beta    distance from the neutral axis to the face over that to the steel, 1.2
//	        beams, 1.35 slabs
//	stress  in the steel [MPa]
//	cover   dc to the middle of the outermost bar [mm]
//	area    of concrete round each bar A [mm²]
//
// Source: Gergely and Lutz 1968, 0.076 β fs (dc A)^(1/3) in thousandths of an inch
// and ksi; from memory. The scatter is about ±50 %.
func CrackWidthGergelyLutz(beta, stress, cover, area float64) float64 {
	return 0.076e-3 / mpaPerKsi * beta * stress * math.Cbrt(cover*area)
}

// CrackWidthTension returns the crack width in direct tension, mm.
//
// Source: ACI 224.2R, 0.10 fs (dc A)^(1/3); from memory.
func CrackWidthTension(stress, cover, area float64) float64 {
	return 0.10e-3 / mpaPerKsi * stress * math.Cbrt(cover*area)
}

// CrackWidthFrosch returns the largest crack width in bending, mm, from the distance
// between bars alone.
//
//	stress    in the steel [MPa]
//	modulus   of steel [MPa]
//	beta      as [CrackWidthGergelyLutz]
//	cover     dc [mm]
//	spacing   of the bars [mm]
//
// Any consistent units.
//
// Source: Frosch, ACI Structural Journal 96(3) 1999; from memory.
func CrackWidthFrosch(stress, modulus, beta, cover, spacing float64) float64 {
	return 2 * stress / modulus * beta * math.Hypot(cover, spacing/2)
}
