package restraint

import "math"

// DowelSideStiffness returns the force that moves one side of a closed joint against
// the other by one metre, across one round bar that has no room sideways: the bar is a
// beam on the concrete, bent in both slabs.
//
//	diameter   of the bar                                              [m]
//	support    pressure of the concrete per movement, 80 to 410 GN/m³  [N/m³]
//	modulus    of the steel, 200 GPa                                   [Pa]
//
// Result in N/m: β³EI with β = (support·diameter/4EI)^¼, for a force at the face and no
// gap: each of the two slabs lets the bar give by P/2β³EI, one after the other. Models that
// count one slab only give twice this. Times bars per metre it is the spring along a
// joint ([Bars]). Source: Friberg (1940), after Timoshenko and Lessels, textbook form.
func DowelSideStiffness(diameter, support, modulus float64) float64 {
	bending := modulus * math.Pi * math.Pow(diameter, 4) / 64
	beta := math.Pow(support*diameter/(4*bending), 0.25)
	return 2 * bending * math.Pow(beta, 3) / 2
}

// BarStretchStiffness returns the force that stretches one bar across a joint by one
// metre: bonded beyond a free length on which it can stretch.
//
//	diameter   of the bar                                   [m]
//	free       length without bond, both sides together     [m]
//	modulus    of the steel                                 [Pa]
//
// Result in N/m. Source: strength of materials.
func BarStretchStiffness(diameter, free, modulus float64) float64 {
	return modulus * math.Pi * diameter * diameter / 4 / free
}

// MisalignedStiffness returns the force that opens a joint by one metre against one bar
// that lies out of line, so that opening pushes it sideways.
//
//	side   stiffness of the bar sideways, DowelSideStiffness   [N/m]
//	skew   out of line per length                              [–]
//
// Result in N/m, side·skew²: a lower bound, since friction on the pushed side adds to
// it. Source: geometry.
func MisalignedStiffness(side, skew float64) float64 { return side * skew * skew }
