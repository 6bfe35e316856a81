package restraint

import "math"

// DegreeOfRestraint returns the share of free shortening that a stiff base holds
// back at a height above it, along the centre-line of a wall or block.
//
// It was made for mass concrete. In slabs length over thickness is tens, so the
// value is near 1 at the base; the mean through the depth is what counts.
//
//	lengthOverHeight   L/H of the member               [–], above 1
//	height             height above the base over H    [–], 0 to 1
//
// The two branches do not meet at L/H = 2.5 (0.143 and 0.120 at the top).
//
// Source: ACI 207.2R, chapter 4, from memory.
func DegreeOfRestraint(lengthOverHeight, height float64) float64 {
	if lengthOverHeight >= 2.5 {
		return math.Pow((lengthOverHeight-2)/(lengthOverHeight+1), height)
	}
	if lengthOverHeight <= 1 {
		return 0
	}
	return math.Pow((lengthOverHeight-1)/(lengthOverHeight+10), height)
}

// NeighbourRestraint returns the share of free shortening held back where new
// concrete is joined to old: 1 against something rigid, 0 against nothing. The same
// form serves as the multiplier of ACI 207.2R for a foundation that gives.
//
//	newArea, newModulus   section and modulus of the new part    [m²] [Pa]
//	oldArea, oldModulus   of what holds it                       [m²] [Pa]
//
// Source: CIRIA C660 (2007) and C766 (2018), joint restraint, from memory.
func NeighbourRestraint(newArea, newModulus, oldArea, oldModulus float64) float64 {
	return 1 / (1 + newArea*newModulus/(oldArea*oldModulus))
}

// Stage is one part of the movement of a restrained member.
type Stage struct {
	FreeStrain float64 // shortening if nothing held it, positive, plain number
	Restraint  float64 // share held back, 0 to 1
}

// RestrainedStrain returns the strain held back over all stages, eased by creep:
// early thermal with autogenous shrinkage, seasonal cooling, drying.
//
// The factor 0.65 (CIRIA C660) already contains creep; do not divide a stress made
// from this strain by 1 + χφ again. C766 uses 0.65 for early movement and 0.5 for
// the rest.
//
// Source: CIRIA C660 (2007), from memory.
func RestrainedStrain(creepFactor float64, stages ...Stage) float64 {
	var sum float64
	for _, s := range stages {
		sum += s.FreeStrain * s.Restraint
	}
	return creepFactor * sum
}

// RestrainedStress returns the tension of a strain that came slowly, so that creep
// eased it while it grew: the age-adjusted modulus E/(1+χφ).
//
//	restraint   share held back, 0 to 1                                     [–]
//	modulus     of elasticity when the strain began                         [Pa]
//	strain      free shortening, positive                                   [–]
//	ageing      χ, 0.65 to 0.9, usually 0.8                                 [–]
//	creep       coefficient φ from then to now; 0 for a strain of one night [–]
//
// Result in Pa. Source: Trost (1967) and Bažant (1972), textbook form.
func RestrainedStress(restraint, modulus, strain, ageing, creep float64) float64 {
	return restraint * modulus * strain / (1 + ageing*creep)
}
