package flexure

import "math"

// Bradbury returns C, the share of full restraint that a slab of this length
// feels in the middle when its top and underside differ in temperature. Short
// panels curl freely (0.04 at 2 l), long ones are held flat by their weight (near
// 1 from 7 l on, with a crest of 1.086 at 8.9 l).
//
//	length   in the direction of the stress over l   [–]
//
// The printed chart is a plot of this function; readings of it differ by 0.03.
//
// Source: Westergaard (1927) and Bradbury (1938), from memory; the same curve
// follows from [Strip].
func Bradbury(length float64) float64 {
	x := length / math.Sqrt(8)
	switch {
	case x <= 0:
		return 0
	case x > 300: // beyond it the sinh overflows and C is 1
		return 1
	}
	return 1 - 2*(math.Sin(x)*math.Cosh(x)+math.Cos(x)*math.Sinh(x))/(math.Sin(2*x)+math.Sinh(2*x))
}

// CurlEdgeStress returns the curling stress along an edge at mid-length.
//
//	restraint    C of [Bradbury] for the length of that edge           [–]
//	modulus      long-term or short, as the difference came             [Pa]
//	expansion    coefficient of thermal expansion                       [1/K]
//	difference   top less bottom temperature over the full thickness;
//	             a difference of shrinkage counts by EquivalentDifference [K]
//
// Result in Pa, positive for tension on the underside: a colder or drier top
// (negative difference) gives tension on top, a negative value.
//
// Source: Westergaard (1927), from memory; the steps seen in a training course.
func CurlEdgeStress(restraint, modulus, expansion, difference float64) float64 {
	return restraint * modulus * expansion * difference / 2
}

// CurlInteriorStress returns the curling stress in the middle of the slab in one
// direction.
//
//	along, across   C of [Bradbury] in the direction of the stress and square to it
//
// Other arguments and sign as [CurlEdgeStress]. Source: as there.
func CurlInteriorStress(along, across, modulus, expansion, difference, poisson float64) float64 {
	return modulus * expansion * difference / (2 * (1 - poisson*poisson)) * (along + poisson*across)
}

// CurlCornerStress returns the curling stress at a corner, where a corner load
// would crack it, for adding to the corner load's.
//
//	radius, stiffness   contact radius and l   [m]
//
// Source: Bradbury (1938), from memory; the step seen in a training course.
func CurlCornerStress(modulus, expansion, difference, poisson, radius, stiffness float64) float64 {
	return modulus * expansion * difference / (3 * (1 - poisson)) * math.Sqrt(radius/stiffness)
}

// CurlFullRestraint returns the stress of a slab held flat in both directions.
//
// Source: mechanics.
func CurlFullRestraint(modulus, expansion, difference, poisson float64) float64 {
	return modulus * expansion * difference / (2 * (1 - poisson))
}

// FreeCurvature returns the curvature of a slab that nothing holds. Result in 1/m.
func FreeCurvature(expansion, difference, thickness float64) float64 {
	return expansion * difference / thickness
}

// FreeCurlLift returns how far a place rises above the middle of a weightless slab
// of that curvature: at mid-edge with half the length, at a corner with half the
// diagonal. Result in m. Source: geometry.
func FreeCurlLift(curvature, fromMiddle float64) float64 {
	return curvature * fromMiddle * fromMiddle / 2
}

// WeightBound returns the greatest bending stress that the slab's own weight can
// make over a length held up at its ends or its middle: curl cannot bend a slab
// flat against more than its weight.
//
//	unitWeight [N/m³]   length, thickness [m]
//
// Result in Pa. Source: statics (q L²/8 on the section modulus of unit width).
func WeightBound(unitWeight, length, thickness float64) float64 {
	return 6 * unitWeight * length * length / (8 * thickness)
}

// EquivalentDifference returns the temperature difference that curls a slab as
// much as a difference of shrinkage. Result in K.
//
//	shrinkageDifference   top less bottom shortening, positive when the top has
//	                      shrunk more                                           [–]
//	expansion             [1/K]
//
// Source: textbook.
func EquivalentDifference(shrinkageDifference, expansion float64) float64 {
	return shrinkageDifference / expansion
}

// EquivalentOfProfile returns mean shortening and equivalent temperature
// difference of a measured or computed profile: the straight line that shortens
// and bends the slab alike. What is left balances itself within the depth and
// stresses the surface only.
//
//	depths       from the top face, ascending, first 0 and last the thickness   [m]
//	shortening   at each depth, straight lines between                          [–]
//
// The difference is positive when the top shortens more. Source: textbook.
func EquivalentOfProfile(depths, shortening []float64, expansion float64) (mean, difference float64) {
	if len(depths) != len(shortening) || len(depths) < 2 {
		panic("flexure: profile needs as many strains as depths, two or more")
	}
	h := depths[len(depths)-1]
	var moment float64
	for i := 1; i < len(depths); i++ {
		d := depths[i] - depths[i-1]
		a, b := shortening[i-1], shortening[i]
		za, zb := h/2-depths[i-1], h/2-depths[i] // above mid-depth
		mean += d * (a + b) / 2 / h
		moment += d * (2*a*za + a*zb + b*za + 2*b*zb) / 6
	}
	return mean, 12 * moment / (h * h * expansion)
}
