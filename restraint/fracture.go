package restraint

import "math"

// FractureEnergy2010 returns the energy that opens one square metre of crack.
//
//	meanStrength   mean cylinder strength (not characteristic)   [MPa]
//
// Result in N/m. Source: fib Model Code 2010, Eq. (5.1-9), seen in another code.
// About twice the value of Model Code 1990: the edition matters.
func FractureEnergy2010(meanStrength float64) float64 {
	return 73 * math.Pow(meanStrength, 0.18)
}

// FractureEnergy1990 returns the same by the older model, with the base value of
// the largest aggregate: 25, 30 and 38 N/m for 8, 16 and 32 mm, straight lines
// between.
//
// Source: CEB-FIP Model Code 1990, from memory.
func FractureEnergy1990(meanStrength, largestAggregate float64) float64 {
	base := interpolate(aggregateSizes, aggregateEnergies, largestAggregate)
	return base * math.Pow(meanStrength/10, 0.7)
}

var (
	aggregateSizes    = []float64{0.008, 0.016, 0.032} // m
	aggregateEnergies = []float64{25, 30, 38}          // N/m
)

func interpolate(x, y []float64, at float64) float64 {
	for i := 1; i < len(x); i++ {
		if at <= x[i] || i == len(x)-1 {
			t := math.Max(0, math.Min(1, (at-x[i-1])/(x[i]-x[i-1])))
			return y[i-1] + t*(y[i]-y[i-1])
		}
	}
	return math.NaN()
}

// CharacteristicLength returns how far ahead of a crack tip concrete softens; a
// slab thinner than this behaves ductile rather than brittle at a notch.
//
//	modulus, fractureEnergy, tensileStrength   [Pa] [N/m] [Pa]
//
// Result in m, 0.4 to 0.7 for usual concrete. Source: Hillerborg (1976), from
// memory.
func CharacteristicLength(modulus, fractureEnergy, tensileStrength float64) float64 {
	return modulus * fractureEnergy / (tensileStrength * tensileStrength)
}

// NotchBending returns the shape factor F of the stress intensity σ√(πa)·F at an
// edge notch (a saw cut) in bending, with relative depth a/h from 0 to 1.
//
// Source: Tada, Paris and Irwin, handbook of stress intensity, from memory; the
// fit is within 0.5 %.
func NotchBending(depth float64) float64 {
	s := 1 - math.Sin(math.Pi*depth/2)
	return notchRoot(depth) * (0.923 + 0.199*s*s*s*s) / math.Cos(math.Pi*depth/2)
}

// NotchTension returns the same factor for direct tension.
//
// Source: Tada, Paris and Irwin, from memory; within 0.5 %.
func NotchTension(depth float64) float64 {
	s := 1 - math.Sin(math.Pi*depth/2)
	return notchRoot(depth) * (0.752 + 2.02*depth + 0.37*s*s*s) / math.Cos(math.Pi*depth/2)
}

func notchRoot(depth float64) float64 {
	return math.Sqrt(2 / (math.Pi * depth) * math.Tan(math.Pi*depth/2))
}

// NotchBendingPolynomial is the older fit of [NotchBending], for depths to 0.6.
func NotchBendingPolynomial(d float64) float64 {
	return 1.122 + d*(-1.40+d*(7.33+d*(-13.08+d*14)))
}

// NotchTensionPolynomial is the older fit of [NotchTension], for depths to 0.6.
func NotchTensionPolynomial(d float64) float64 {
	return 1.122 + d*(-0.231+d*(10.55+d*(-21.71+d*30.382)))
}

// BeamIntensity returns f of K = P S/(B W^1.5)·f for a notched beam on three
// points, span 4 times depth: the usual test of fracture toughness.
//
// Source: ASTM E399, from memory.
func BeamIntensity(depth float64) float64 {
	return 3 * math.Sqrt(depth) * (1.99 - depth*(1-depth)*(2.15-3.93*depth+2.7*depth*depth)) /
		(2 * (1 + 2*depth) * math.Pow(1-depth, 1.5))
}

// Toughness returns the stress intensity at which a crack runs, √(E·G), plane
// stress. Pa and N/m give Pa·√m.
//
// Source: linear fracture mechanics, Hillerborg (1976).
func Toughness(modulus, fractureEnergy float64) float64 {
	return math.Sqrt(modulus * fractureEnergy)
}

// NotchStrength returns the stress in the uncut section at which a crack runs from
// a notch by linear fracture mechanics. Where it is above the tensile strength, the
// strength of the remaining section governs (see [NetSectionBending]): so it is in
// usual slabs, thinner than their [CharacteristicLength].
//
//	toughness   [Pa·√m]   notch   depth of cut [m]   shape   F of the notch [–]
//
// Result in Pa.
func NotchStrength(toughness, notch, shape float64) float64 {
	return toughness / (math.Sqrt(math.Pi*notch) * shape)
}

// NetSectionBending returns the share of the uncut bending capacity left under a
// saw cut of relative depth a/h, without any notch effect.
//
// Source: statics.
func NetSectionBending(depth float64) float64 { return (1 - depth) * (1 - depth) }

// NetSectionTension returns the share of the uncut capacity in direct tension.
//
// Source: statics.
func NetSectionTension(depth float64) float64 { return 1 - depth }

// NetSection returns the share of capacity left under a saw cut when tension and
// bending act together: stresses add on the remaining section and the deeper
// lever of the cut (half its depth) bends it further.
//
//	depth           relative depth of the cut, 0 to below 1                   [–]
//	bendingShare    bending stress at the face over the sum of bending and
//	                axial stress, both of the uncut section, 0 to 1            [–]
//	offCentre       whether the axial force, which acts at mid-depth of the
//	                uncut section, also bends the remaining one: true where
//	                the slab can rotate there, false where it is held flat
//
// Result 0 to 1. Source: statics; with offCentre false and share 0 or 1 it is
// [NetSectionTension] and [NetSectionBending].
func NetSection(depth, bendingShare float64, offCentre bool) float64 {
	net := 1 - depth
	stress := (1-bendingShare)/net + bendingShare/(net*net)
	if offCentre {
		// N·(a/2) over (h-a)²/6, as a multiple of N/h
		stress += (1 - bendingShare) * 3 * depth / (net * net)
	}
	return 1 / stress
}
