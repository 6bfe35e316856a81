package flexure

import "math"

// CornerStress returns the tension on top, across the bisector of a free corner,
// for a wheel that touches both edges: the load that breaks corners off.
//
//	load [N]   radius of contact, thickness, stiffness l [m]
//
// Result in Pa; it acts at [CornerStressDistance] from the corner, not under the
// load. Full support assumed: a curled or pumped corner is worse (see
// [CornerStressPickett]).
//
// Source: Westergaard (1926), from memory. Within 1 % of a plate solution.
func CornerStress(load, radius, thickness, stiffness float64) float64 {
	return cantilever(load, thickness) * (1 - math.Pow(radius*math.Sqrt2/stiffness, 0.6))
}

// cantilever is the corner stress of a point load at the tip of an unsupported
// corner, 3P/h²: the oldest corner formula (Goldbeck) and the head of the others.
func cantilever(load, thickness float64) float64 { return 3 * load / (thickness * thickness) }

// CornerStressGoldbeck returns 3P/h², an unsupported corner loaded at its tip: the
// upper bound of the forms here save Pickett's.
//
// Source: Goldbeck (1919), from memory.
func CornerStressGoldbeck(load, thickness float64) float64 { return cantilever(load, thickness) }

// CornerDeflection returns the deflection of that corner, in m; 10 % low against a
// plate solution. Source: Westergaard (1926), from memory.
func CornerDeflection(load, radius, stiffness, support float64) float64 {
	return load / (support * stiffness * stiffness) * (1.1 - 0.88*radius*math.Sqrt2/stiffness)
}

// CornerStressDistance returns where along the bisector the stress of
// [CornerStress] is greatest. Result in m. Source: Westergaard (1926), from memory.
func CornerStressDistance(radius, stiffness float64) float64 {
	return 2 * math.Sqrt(radius*math.Sqrt2*stiffness)
}

// squareSide is the side of the square with the area of a circle of radius 1, as
// rounded in the source.
const squareSide = 1.772

// CornerStressIoannides returns the corner stress by regression on plate
// solutions.
//
// Source: Ioannides, Thompson and Barenberg, TRR 1043 (1985), from memory.
func CornerStressIoannides(load, radius, thickness, stiffness float64) float64 {
	return cantilever(load, thickness) * (1 - math.Pow(squareSide*radius/stiffness, 0.72))
}

// CornerDeflectionIoannides returns the corner deflection of the same regression;
// the better one. Result in m.
func CornerDeflectionIoannides(load, radius, stiffness, support float64) float64 {
	return load / (support * stiffness * stiffness) * (1.205 - 0.69*squareSide*radius/stiffness)
}

// CornerStressBradbury returns the corner stress of Bradbury (1938), from memory.
func CornerStressBradbury(load, radius, thickness, stiffness float64) float64 {
	return cantilever(load, thickness) * (1 - math.Pow(radius/stiffness, 0.6))
}

// CornerStressKelley returns the corner stress of Kelley (1939), from memory.
func CornerStressKelley(load, radius, thickness, stiffness float64) float64 {
	return cantilever(load, thickness) * (1 - math.Pow(radius*math.Sqrt2/stiffness, 1.2))
}

// CornerStressPickett returns the corner stress with an allowance for support lost
// by curl, for a corner without load transfer or with it (protected).
//
// Source: Pickett (1951), from memory.
func CornerStressPickett(load, radius, thickness, stiffness float64, protected bool) float64 {
	head := 4.2
	if protected {
		head = 3.36
	}
	ratio := radius / stiffness
	return head * load / (thickness * thickness) * (1 - math.Sqrt(ratio)/(0.925+0.22*ratio))
}
