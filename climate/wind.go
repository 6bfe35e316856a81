package climate

import "math"

// Heights and roughness used with [WindReduction].
const (
	SlabWindHeight      = 0.5   // m above the slab, where the drying formulas take the wind
	StationWindHeight   = 10.0  // m, the height of a weather station's mast
	RoughnessOpenGround = 0.03  // m, short grass and open ground
	RoughnessBareSlab   = 0.005 // m, a wide bare slab or yard
)

// WindReduction returns the share of the wind at the measuring height that is felt
// lower down, by the logarithmic law over ground of one roughness. Wind reported
// at 10 m is about twice that over the slab.
//
//	low        height wanted [m], above the roughness
//	high       height measured [m]
//	roughness  roughness length of the ground [m]: 0.03 open ground, 0.005 bare slab
//
// It holds for open ground and a steady wind. Behind a building or a fence the
// wind is another one and no mast tells it: measure at the slab.
//
// Source: logarithmic law of the wind (textbook).
func WindReduction(low, high, roughness float64) float64 {
	return math.Log(low/roughness) / math.Log(high/roughness)
}
