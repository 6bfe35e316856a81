package steel

import "math"

// Inertia returns the second moment of a round bar, πd⁴/64.
func Inertia(diameter float64) float64 { return math.Pi * math.Pow(diameter, 4) / 64 }

// RelativeStiffness returns β of a dowel in concrete, 1/length: how quickly its
// bending dies out along it. Embedment counts as long from about 2/β each side.
//
//	support    modulus of dowel support K, 81 to 407 N/mm³ (0.3 to 1.5 million pci)
//	diameter   [mm]
//	modulus    of the bar [MPa]
//
// K is a fitted number: published values differ by five times. Any consistent
// units.
//
// Source: Friberg, ASCE Transactions 105 (1940); seen in lecture slides.
func RelativeStiffness(support, diameter, modulus float64) float64 {
	return math.Pow(support*diameter/(4*modulus*Inertia(diameter)), 0.25)
}

// FaceDeflection returns y0, how far the dowel presses into the concrete at the
// joint face under a shear force.
//
//	force      through the dowel [N]
//	beta       see [RelativeStiffness] [1/mm]
//	opening    of the joint z [mm]
//	diameter   [mm]
//	modulus    of the bar [MPa]
//
// Infinite embedment; looseness of the bar is not in it.
//
// Source: Friberg 1940; seen in lecture slides.
func FaceDeflection(force, beta, opening, diameter, modulus float64) float64 {
	return force * (2 + beta*opening) / (4 * math.Pow(beta, 3) * modulus * Inertia(diameter))
}

// BearingStress returns σb, the stress of the dowel on the concrete at the joint
// face, K·y0: the number to keep below [AllowableBearing]. Too high, and the bar
// works loose.
//
// Source: Friberg 1940; seen in lecture slides.
func BearingStress(force, support, opening, diameter, modulus float64) float64 {
	beta := RelativeStiffness(support, diameter, modulus)
	return support * FaceDeflection(force, beta, opening, diameter, modulus)
}

// GreatestMoment returns the largest bending moment in the dowel, which lies beyond
// the joint face.
//
//	force     [N]
//	beta      [1/mm]
//	opening   z [mm]
//
// Source: Friberg 1940; from memory.
func GreatestMoment(force, beta, opening float64) float64 {
	reach := 1 + beta*opening
	place := math.Atan(1 / reach) // β x of the greatest moment
	return force / (2 * beta) * math.Exp(-place) * math.Sqrt(1+reach*reach)
}

// AllowableBearing returns the allowable bearing stress, in the unit of the
// strength, from the cylinder strength and the diameter in mm (below 100).
//
// Source: ACI Committee 325 (1956), ((4 − d)/3) f'c with d in inches; seen in
// lecture slides.
func AllowableBearing(diameter, cylinder float64) float64 {
	return (4 - diameter/25.4) / 3 * cylinder
}

// AllowableBearingCube returns the allowable bearing stress, MPa, from the 28-day
// cube strength in MPa.
//
// Source: Indian practice, (101.6 − d) fck/95.25; its printed example seen.
func AllowableBearingCube(diameter, cube float64) float64 {
	return (101.6 - diameter) * cube / 95.25
}

// DowelShearStiffness returns D, N/mm: the shear force through one dowel over the
// difference in level of the two slabs at the joint. Divided by the spacing it is
// the stiffness of the joint per length.
//
//	support    K [N/mm³]
//	diameter   [mm]
//	modulus    of the bar [MPa]
//	poisson    of the bar, 0.3
//	opening    of the joint z > 0 [mm]
//
// Two springs in line: the bar in the concrete on both sides and the piece of bar
// across the gap in bending and shear (0.9 of its area).
//
// Source: Tabatabaie and Barenberg 1978; Nishizawa 1989; from memory.
func DowelShearStiffness(support, diameter, modulus, poisson, opening float64) float64 {
	bedding := BeddingStiffness(support, diameter, modulus, opening)
	gap := GapStiffness(diameter, modulus, poisson, opening)
	return 1 / (1/bedding + 1/gap)
}

// BeddingStiffness returns DCI = 4β³EI/(2+βz), the part of [DowelShearStiffness]
// in the concrete, N/mm.
//
// Source: as [DowelShearStiffness].
func BeddingStiffness(support, diameter, modulus, opening float64) float64 {
	beta := RelativeStiffness(support, diameter, modulus)
	return 4 * math.Pow(beta, 3) * modulus * Inertia(diameter) / (2 + beta*opening)
}

// GapStiffness returns 12C, the part of [DowelShearStiffness] across the gap, N/mm;
// without limit for a closed joint.
//
// Source: as [DowelShearStiffness].
func GapStiffness(diameter, modulus, poisson, opening float64) float64 {
	shearArea := 0.9 * CircleArea(diameter)
	shear := modulus / (2 * (1 + poisson))
	phi := 12 * modulus * Inertia(diameter) / (shear * shearArea * opening * opening)
	return 12 * modulus * Inertia(diameter) / (math.Pow(opening, 3) * (1 + phi))
}

// JointEffectiveness returns Ej = 2·LTE/(1+LTE) from the load transfer efficiency
// by deflection (unloaded over loaded side): two numbers often taken for each
// other.
//
// Source: Colley and Humphrey 1967; from memory.
func JointEffectiveness(loadTransfer float64) float64 { return 2 * loadTransfer / (1 + loadTransfer) }
