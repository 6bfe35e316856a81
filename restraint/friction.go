package restraint

import "math"

// DragStress returns the tension at mid-length of a slab that slides on its base
// over its whole length: half the slab's weight times the coefficient of friction,
// spread over its thickness, which cancels.
//
// On site: the most that the base alone can do. It grows with the distance between
// free ends and not with shrinkage; a 5 m panel on crushed stone gets less than a
// tenth of a megapascal, which sound concrete bears from its first night on.
//
//	friction     coefficient of friction of slab on base       [–]
//	unitWeight   weight of concrete, about 24 000              [N/m³]
//	length       distance between free ends                    [m]
//
// Result in Pa. Valid while it is below the tension of full restraint (see
// [SlipLength]). First slip is stiffer than later cycles.
//
// Source: subgrade drag, ACI 360R, from memory.
func DragStress(friction, unitWeight, length float64) float64 {
	return friction * unitWeight * length / 2
}

// SlipLength returns the length between free ends at which drag reaches the
// tension of full restraint. Below it the whole slab slides; in a longer slab a
// middle part stays put with the full tension.
//
//	modulus      of elasticity, creep included if it acts      [Pa]
//	strain       free shortening, positive                     [–]
//	friction     coefficient                                   [–]
//	unitWeight   of the concrete                               [N/m³]
//
// Result in m. Source: statics.
func SlipLength(modulus, strain, friction, unitWeight float64) float64 {
	return 2 * modulus * strain / (friction * unitWeight)
}

// SlidingEndMovement returns how far each end of a sliding slab moves inwards:
// the free shortening of half the length less what the drag stretches back.
//
//	strain       free shortening, positive                     [–]
//	friction     coefficient                                   [–]
//	unitWeight   of the concrete                               [N/m³]
//	length       between free ends                             [m]
//	modulus      of elasticity                                 [Pa]
//
// Result in m. Valid while length is below [SlipLength].
//
// Source: statics (drag grows linearly from the free end).
func SlidingEndMovement(strain, friction, unitWeight, length, modulus float64) float64 {
	return strain*length/2 - friction*unitWeight*length*length/(8*modulus)
}

// ShearLag returns the number b that says how fast tension builds up from a free
// end on a base that holds like a spring: 1/b is the length over which 63 % of the
// full restraint is reached in a long slab.
//
//	shearStiffness   drag per unit area and movement of the base    [N/m³]
//	modulus          of elasticity of the concrete                  [Pa]
//	thickness        of the slab                                    [m]
//
// Result in 1/m. Source: shear lag, strength of materials.
func ShearLag(shearStiffness, modulus, thickness float64) float64 {
	return math.Sqrt(shearStiffness / (modulus * thickness))
}

// ElasticBedStress returns the tension at mid-length of a slab whose base has not
// slipped but gives like a spring. It is the other bound beside [DragStress]: the
// base can do no more than the lesser of the two, nearly.
//
//	modulus, strain          of the concrete, free shortening positive   [Pa] [–]
//	length, thickness        of the slab between free ends               [m]
//	shearStiffness           of the base, see [ShearLag]                 [N/m³]
//
// Result in Pa. Source: shear lag, strength of materials.
func ElasticBedStress(modulus, strain, length, thickness, shearStiffness float64) float64 {
	return modulus * strain * (1 - 1/math.Cosh(ShearLag(shearStiffness, modulus, thickness)*length/2))
}

// ElasticBedEndSlip returns how far each end moves over the base in the same case.
//
// Result in m. Source: shear lag, strength of materials.
func ElasticBedEndSlip(modulus, strain, length, thickness, shearStiffness float64) float64 {
	b := ShearLag(shearStiffness, modulus, thickness)
	return strain * math.Tanh(b*length/2) / b
}

// ReleaseLength returns the distance from a full-depth crack (or a free end) at
// which the drag of the base has brought the tension back to the strength: between
// there and the next crack lies at least this, at most twice this.
//
//	strength    tensile strength of the concrete now     [Pa]
//	thickness   of the slab                              [m]
//	drag        shear of the base per unit of plan area  [Pa]
//
// Result in m. When it is many times the panel, base friction alone cannot have
// cracked the panel. Source: statics.
func ReleaseLength(strength, thickness, drag float64) float64 {
	return strength * thickness / drag
}

// CrackSpacing returns the least and the greatest distance between cracks that
// base drag alone makes in a long slab: once and twice [ReleaseLength].
func CrackSpacing(strength, thickness, drag float64) (least, greatest float64) {
	x := ReleaseLength(strength, thickness, drag)
	return x, 2 * x
}
