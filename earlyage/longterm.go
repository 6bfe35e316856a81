package earlyage

import "slabwright/concrete"

// LongTerm is the shrinkage and creep of the section by a code, for the years
// after the first week. Shrinkage is positive here, ages are days.
type LongTerm struct {
	Shrink concrete.ShrinkageModel
	Creep  concrete.CreepModel
	Member concrete.Member
}

// ENLongTerm returns the long term of a mix by EN 1992-1-1 in a slab that dries
// from its top.
//
//	thickness   [m]
//	humidity    yearly mean of the air, fraction
//	dryingFrom  age when covers and curing come off [d]
func ENLongTerm(m concrete.Mix, thickness, humidity, dryingFrom float64) LongTerm {
	return LongTerm{
		Shrink: concrete.ShrinkageEN{Mean28: m.EN1992().Mean28, Class: m.Class},
		Creep:  concrete.CreepEN{EN1992: m.EN1992()},
		Member: concrete.SlabDryingFromTop(thickness, humidity, dryingFrom),
	}
}

// forever is an age, days, at which code curves have come to their end.
const forever = 1e6

// Shrinkage returns the mean shrinkage strain of the section at an age in days,
// both kinds.
func (l LongTerm) Shrinkage(age float64) float64 {
	return concrete.TotalShrinkage(l.Shrink, l.Member, age)
}

// DryToZero returns the drying shrinkage, after all time, of a layer whose pores
// have no humidity left: the code's final value for this air, scaled by
// 1 - humidity^3 as in EN 1992-1-1 (B.12). A layer with pore humidity h has
// 1 - h^3 of it.
func (l LongTerm) DryToZero() float64 {
	h := l.Member.Humidity
	return l.Shrink.Drying(l.Member, forever) / (1 - h*h*h)
}

// creepModulus is the modulus that the creep coefficient refers to, MPa.
func (l LongTerm) creepModulus() float64 {
	const instant = 1e-9 // days
	t := creepReference
	return l.Creep.Coefficient(l.Member, t, t+forever) /
		(l.Creep.Compliance(l.Member, t, t+forever) - l.Creep.Compliance(l.Member, t, t+instant))
}

// Movement is shrinkage past and to come.
type Movement struct {
	Age    float64 // days
	Past   float64 // mean shrinkage so far, positive
	ToCome float64
	Final  float64
	Half   float64 // age at which half of what is to come has come, days
}

// Movement returns how much of the section's shrinkage is past at an age and how
// much is still to come: what a filler in a joint or crack must follow.
func (l LongTerm) Movement(age float64) Movement {
	m := Movement{Age: age, Past: l.Shrinkage(age), Final: l.Shrinkage(forever)}
	m.ToCome = m.Final - m.Past
	low, high := age, forever
	for range 100 {
		middle := (low + high) / 2
		if l.Shrinkage(middle)-m.Past < m.ToCome/2 {
			low = middle
		} else {
			high = middle
		}
	}
	m.Half = (low + high) / 2
	return m
}
