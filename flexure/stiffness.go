package flexure

import "math"

// PlateStiffness returns D, the moment per unit width that bends the slab to unit
// curvature.
//
//	modulus [Pa]   thickness [m]   poisson [–], 0.15 to 0.20
//
// Result in N·m. Source: plate theory.
func PlateStiffness(modulus, thickness, poisson float64) float64 {
	return modulus * thickness * thickness * thickness / (12 * (1 - poisson*poisson))
}

// RelativeStiffness returns l, the radius of relative stiffness: how far a load
// spreads through the slab. Usual slabs have 0.5 to 1.0 m; what lies more than
// 3 l away hardly feels the load.
//
//	modulus     of the concrete                     [Pa]
//	thickness   of the slab                         [m]
//	poisson     ratio                               [–]
//	support     pressure of the ground over its
//	            settlement (k of a Winkler base)    [N/m³]
//
// Result in m. Source: Westergaard (1926), from memory; the same form in course
// notes, seen in an excerpt.
func RelativeStiffness(modulus, thickness, poisson, support float64) float64 {
	return math.Pow(PlateStiffness(modulus, thickness, poisson)/support, 0.25)
}

// EquivalentRadius returns b, which replaces the contact radius a in the interior
// stress (and the edge stress of 1926) because a thick slab does not bend sharply
// under a small load. Not for deflections, and not for the edge of 1948 or corners.
//
//	radius, thickness   of contact, of the slab   [m]
//
// Result in m. Source: Westergaard (1926), seen in an excerpt of lecture notes.
func EquivalentRadius(radius, thickness float64) float64 {
	if radius >= 1.724*thickness {
		return radius
	}
	return math.Sqrt(1.6*radius*radius+thickness*thickness) - 0.675*thickness
}

// EqualAreaRadius returns the radius of the circle with the area of a wheel's or
// plate's contact. Source: usual practice.
func EqualAreaRadius(area float64) float64 { return math.Sqrt(area / math.Pi) }
