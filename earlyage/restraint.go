package earlyage

import (
	"math"

	"slabwright/concrete"
)

// Restraint is what holds an uncut length of slab on its base while it cools.
type Restraint struct {
	UncutLength  float64 // between free edges, joints or cuts, m
	Friction     float64 // coefficient on the base
	FrictionLow  float64
	FrictionHigh float64
	UnitWeight   float64 // of the slab, kN/m3
	BedStiffness float64 // shear stiffness of the base before it slips, N/mm3; 0: rigid
	Subgrade     float64 // modulus of subgrade reaction, N/mm3
}

// DragStress returns the tension at mid-length, MPa, that base friction can bring
// into a slab that slides toward its middle over the whole length.
//
//	friction    coefficient [-]
//	unitWeight  of the slab [kN/m3]
//	length      between free ends [m]
//
// It is an upper bound on what friction does and does not depend on thickness.
// Source: subgrade drag, ACI 360R form; textbook.
func DragStress(friction, unitWeight, length float64) float64 {
	return friction * unitWeight * length / 2 / 1000
}

// BedShare returns the share of full restraint felt at mid-length of a slab on a
// base that yields elastically in shear.
//
//	modulus    of the concrete [MPa]
//	thickness  [mm]
//	stiffness  of the bed [N/mm3]
//	length     between free ends [mm]
//
// Source: shear lag; textbook.
func BedShare(modulus, thickness, stiffness, length float64) float64 {
	b := math.Sqrt(stiffness / (modulus * thickness))
	return 1 - 1/math.Cosh(b*length/2)
}

// RelativeStiffness returns the radius of relative stiffness, mm: the scale over
// which a slab bends on its ground.
//
//	modulus [MPa], thickness [mm], poisson [-], subgrade [N/mm3]
//
// Source: Westergaard 1926.
func RelativeStiffness(modulus, thickness, poisson, subgrade float64) float64 {
	return math.Pow(modulus*thickness*thickness*thickness/(12*(1-poisson*poisson)*subgrade), 0.25)
}

// CurlShare returns Bradbury's C, the share of full bending restraint at the middle
// of a slab of a length in radii of relative stiffness; up to 1.086 near 8.7.
//
// Source: Bradbury 1938, from Westergaard's strip; closed form.
func CurlShare(lengthOverRadius float64) float64 {
	l := lengthOverRadius / math.Sqrt(8)
	if l > 30 {
		return 1
	}
	return 1 - 2*math.Cos(l)*math.Cosh(l)/(math.Sin(2*l)+math.Sinh(2*l))*(math.Tan(l)+math.Tanh(l))
}

// WeightStress returns the largest bending stress, MPa, that the slab's own weight
// can bring when its ends hang free: a lifted slab is not pressed flat by more.
//
//	unitWeight [kN/m3], thickness [m], length [m]
//
// Source: moment of a cantilever of half the length; statics.
func WeightStress(unitWeight, thickness, length float64) float64 {
	return 0.75 * unitWeight * length * length / thickness / 1000
}

// Tension is the stress at one time in the middle of an uncut length, MPa.
type Tension struct {
	Axial, Curl, Self  float64 // in the top
	Top, Middle, Under float64 // whole stress
	Ratio              float64 // largest use of the tensile strength, bending counted by flexural strength
}

// Follow returns the stress in the middle of the uncut length at every time of a
// history.
//
// Axial: each change of the fully restrained stress comes with the share that an
// elastic bed holds, and the slab slips when it comes to the drag of the base, in
// either direction: a slab that pushed outward while it warmed begins to be
// pulled as soon as it cools. Curl: the restrained curvature times Bradbury's
// share, cut to what the weight can hold. Self: what the layers do to each other.
// All three already creep. Bending is set against flexural strength (EN 1992-1-1
// (3.23)), the rest against axial. The bed's share and the radius take the modulus
// of the moment.
//
//	thickness [m], poisson [-]
func (r Restraint) Follow(h *History, thickness, poisson float64) []Tension {
	out := make([]Tension, len(h.Hours))
	axial := 0.0
	for i := range h.Hours {
		m := h.moment(i)
		if i > 0 {
			axial = r.slide(axial, m.FullRestraint-h.FullRestraint[i-1], m.E, thickness)
		}
		out[i] = r.tension(m, axial, thickness, poisson)
	}
	return out
}

// slide returns the axial stress after a change of the fully restrained stress.
func (r Restraint) slide(axial, change, modulus, thickness float64) float64 {
	if modulus <= 0 {
		return 0
	}
	if r.BedStiffness > 0 {
		change *= BedShare(modulus, thickness*1000, r.BedStiffness, r.UncutLength*1000)
	}
	return bounded(axial+change, DragStress(r.Friction, r.UnitWeight, r.UncutLength))
}

func bounded(stress, limit float64) float64 { return math.Max(-limit, math.Min(limit, stress)) }

// tension puts the parts together at a moment.
func (r Restraint) tension(m Moment, axial, thickness, poisson float64) Tension {
	if m.E <= 0 || m.Fct <= 0 {
		return Tension{}
	}
	radius := RelativeStiffness(m.E, thickness*1000, poisson, r.Subgrade)
	curl := bounded(m.FullCurl*CurlShare(r.UncutLength*1000/radius), WeightStress(r.UnitWeight, thickness, r.UncutLength))
	t := Tension{Axial: axial, Curl: curl, Self: m.SelfTop,
		Top: axial + curl + m.SelfTop, Middle: axial + m.SelfMid, Under: axial - curl + m.SelfBottom}
	if m.Fct < leastTension {
		return t
	}
	top := m.TopFct
	if top < m.Fct/2 {
		top = m.Fct // a zone that has hardly set leaves the stress to the layers below it
	}
	bending := concrete.FlexuralRatioEN(thickness * 1000)
	t.Ratio = math.Max((axial+m.SelfMid)/m.Fct,
		math.Max((axial+m.SelfTop+curl/bending)/top, (axial+m.SelfBottom-curl/bending)/m.Fct))
	return t
}

// leastTension is the tensile strength, MPa, below which a slab is still too soft
// for a stress to mean anything: plastic cracking is judged by drying instead.
const leastTension = 0.02

// problem returns everything that cannot be right about the restraint.
func (r Restraint) problems() (wrong []string) {
	if !(r.UncutLength > 0 && r.UncutLength < 500) {
		wrong = append(wrong, "Uncut length must be above 0 and below 500 m.")
	}
	if !(r.FrictionLow <= r.Friction && r.Friction <= r.FrictionHigh && r.FrictionLow >= 0 && r.FrictionHigh <= 5) {
		wrong = append(wrong, "Friction needs low ≤ value ≤ high within 0 to 5; polythene 0.3, gravel 1.5.")
	}
	if !(r.UnitWeight > 10 && r.UnitWeight < 40) {
		wrong = append(wrong, "Unit weight is outside 10 to 40 kN/m3; concrete is about 24.")
	}
	if !(r.Subgrade > 0.002 && r.Subgrade < 1) {
		wrong = append(wrong, "Subgrade modulus is outside 0.002 to 1 N/mm3; 50 MPa/m is 0.05 N/mm3.")
	}
	return wrong
}
