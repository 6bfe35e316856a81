package flexure

import "math"

// Position is where a load stands.
type Position string

// Positions of a load.
const (
	Interior Position = "interior"
	Edge     Position = "edge"
	Corner   Position = "corner"
)

// CollapseLoad returns the load at which a slab folds along yield lines.
//
//	position        edges and corners free; with sure transfer divide by one less
//	                the share carried over
//	radius          contact radius over l                                          [–]
//	residual        moment Mp the cracked underside still bears (fibre, mesh);
//	                0 for plain concrete                                           [N·m/m]
//	cracking        moment Mn at which the top cracks                              [N·m/m]
//
// Result in N. From a point load at 0 to the spread form at 0.2 in a straight line.
//
// Source: Meyerhof (1962) as in Concrete Society TR34, 4th edition, section 7, from
// memory.
func CollapseLoad(position Position, radius, residual, cracking float64) float64 {
	const spreadFrom = 0.2
	if radius >= spreadFrom {
		return spreadCollapse(position, radius, residual, cracking)
	}
	point := pointCollapse(position, residual, cracking)
	return point + radius/spreadFrom*(spreadCollapse(position, spreadFrom, residual, cracking)-point)
}

func pointCollapse(position Position, residual, cracking float64) float64 {
	switch position {
	case Edge:
		return math.Pi*(residual+cracking)/2 + 2*cracking
	case Corner:
		return 2 * cracking
	}
	return 2 * math.Pi * (residual + cracking)
}

func spreadCollapse(position Position, radius, residual, cracking float64) float64 {
	switch position {
	case Edge:
		return (math.Pi*(residual+cracking) + 4*cracking) / (1 - 2*radius/3)
	case Corner:
		return 4 * cracking / (1 - radius)
	}
	return 4 * math.Pi * (residual + cracking) / (1 - radius/3)
}

// CrackingMoment returns Mn of plain concrete: flexural strength times section
// modulus of unit width. Result in N·m/m. Source: statics.
func CrackingMoment(flexuralStrength, thickness float64) float64 {
	return flexuralStrength * thickness * thickness / 6
}

// LineFactor returns λ of a beam on springs, one over its length of decay.
//
//	support [N/m³]   modulus [Pa]   thickness [m]
//
// Result in 1/m. Source: Hetényi, beams on elastic foundation, from memory.
func LineFactor(support, modulus, thickness float64) float64 {
	return math.Pow(3*support/(modulus*math.Pow(thickness, 3)), 0.25)
}

// LineLoad returns the line load that cracks the underside of a long slab, N/m.
//
// Source: Hetényi, from memory.
func LineLoad(factor, cracking float64) float64 { return 4 * factor * cracking }

// AisleLoad returns the evenly spread load on both sides of the worst aisle that
// cracks the top in the aisle, N/m².
//
// Source: Concrete Society TR34, from memory; 1/5.95 is the 0.168 of its method,
// the exact strip gives 0.161.
func AisleLoad(factor, cracking float64) float64 { return 5.95 * factor * factor * cracking }

// StripMoment returns the greatest moment under a load spread over the worst
// width π/(2λ) of a beam on springs, N·m/m.
//
// Source: Hetényi, from memory.
func StripMoment(load, factor float64) float64 {
	return load * math.Exp(-math.Pi/4) * math.Sin(math.Pi/4) / (2 * factor * factor)
}
