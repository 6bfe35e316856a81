package flexure

import "math"

// StripCurl is the shape and moment of a strip that wants to curl, on ground that
// pushes and pulls like springs, without weight.
type StripCurl struct {
	Moment float64 // in the middle, over that of full restraint; equals Bradbury's C
	Middle float64 // deflection in the middle over κ l², positive down
	End    float64 // of the ends, negative: lift
}

// Strip returns the curl of a strip of this length over l, with ends turned up
// (top colder or drier).
//
// The strip satisfies D w”” + k w = 0 with no moment and no shear at its ends,
// the moment being D (κ + w”). The even solution is A cosh u cos u + B sinh u
// sin u with u = x/(l√2).
//
// Real ground does not pull: where the ends lift, they lift more than this and the
// moment is less.
//
// Source: our own solution of that equation.
func Strip(length float64) StripCurl {
	u := length / (2 * math.Sqrt2)
	if u <= 0 {
		return StripCurl{}
	}
	if u > 300 { // the ends no longer feel one another
		return StripCurl{Moment: 1, Middle: 0, End: -1}
	}
	s, c := math.Sincos(u)
	sh, ch := math.Sinh(u), math.Cosh(u)
	rho := (sh*c - ch*s) / (ch*s + sh*c) // A over B, from no shear
	b := -1 / (ch*c - rho*sh*s)          // from no moment, in κ l²
	a := rho * b
	return StripCurl{Moment: 1 + b, Middle: a, End: a*ch*c + b*sh*s}
}

// EisenmannLength returns the critical length: a panel of that length just rests
// on its ends when it is warmer on top, and its weight bends it as much as full
// restraint would.
//
//	thickness [m]   modulus [Pa]   expansion [1/K]   gradient [K/m]
//	square          228 for square panels, 200 for those longer than 1.2 times
//	                their width (h in mm, E in MPa, gradient in K/mm)
//
// Result in m. Source: Eisenmann (1979), from memory, of moderate confidence; our
// own estimate by [WeightLength] gives about 181.
func EisenmannLength(thickness, modulus, expansion, gradient float64, square bool) float64 {
	factor := 200.0
	if square {
		factor = 228
	}
	const perCubicMM = 1e-9 // N/m³ in N/mm³
	return factor * thickness * math.Sqrt(modulus*expansion*math.Abs(gradient)*perCubicMM)
}

// WeightLength returns the length at which the moment of the slab's weight between
// its ends equals that of full restraint: a check of [EisenmannLength].
//
// Result in m. Source: our own, statics.
func WeightLength(thickness, modulus, expansion, gradient, unitWeight, poisson float64) float64 {
	return thickness * math.Sqrt(2*modulus*expansion*math.Abs(gradient)/(3*(1-poisson)*unitWeight))
}

// EisenmannStress returns the curling stress by length: full restraint in long
// panels, a fifth more near the critical length, falling with the square of the
// length in short ones.
//
//	length     of the panel, less the width of its support at the ends   [m]
//	critical   of [EisenmannLength]                                      [m]
//	full       of [CurlFullRestraint]                                    [Pa]
//
// It jumps by a fifth at 1.1 times the critical length, as printed.
//
// Source: Eisenmann (1979), from memory, of moderate confidence.
func EisenmannStress(length, critical, full float64) float64 {
	switch ratio := length / critical; {
	case ratio >= 1.1:
		return full
	case ratio >= 0.9:
		return 1.2 * full
	default:
		return 1.2 * full * (ratio / 0.9) * (ratio / 0.9)
	}
}
