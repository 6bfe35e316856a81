package earlyage

import "math"

// bleeding keeps the account of water on the fresh surface.
//
// While a film stands on it, the surface dries at the open rate. When the film is
// gone it keeps that rate, out of the pores, until initial set (menisci are still
// at the surface); from there to final set the rate falls to what the hardened
// pores let through. What is drawn out of the concrete before final set is the
// deficit that pulls a plastic surface together.
type bleeding struct {
	bleed   func(hours float64) float64
	Film    float64 // kg/m2
	Deficit float64 // kg/m2, up to final set of the surface
	Gone    float64 // h, NaN while the film has not gone before final set
	rate    float64 // from the concrete now, kg/m2/h
}

// step moves the account over a step and returns the share of the open rate that
// the concrete gives.
//
//	hours, dt   start and length of the step [h]
//	open        drying rate of a wet surface under what lies on it [kg/m2/h]
//	hardened    0 at initial set and before, 1 at final set of the surface and after
//	pores       what hardened concrete lets through [kg/m2/h]
func (b *bleeding) step(hours, dt, open, hardened, pores float64) (share float64) {
	bled := dt / 6 * (b.bleed(hours) + 4*b.bleed(hours+dt/2) + b.bleed(hours+dt))
	if hardened >= 1 {
		bled = 0
	}
	if open <= 0 {
		b.Film += bled - math.Min(open, 0)*dt
		b.rate = 0
		return 1
	}
	can := math.Min(open, (1-hardened)*open+hardened*pores)
	before := b.Film
	b.Film += bled - open*dt
	if b.Film >= 0 {
		b.rate = open
		return 1
	}
	short := -b.Film // open rate that the film did not cover, kg/m2
	b.Film = 0
	taken := short * can / open
	b.rate = open - (short-taken)/dt
	if hardened < 1 {
		b.Deficit += taken
		if math.IsNaN(b.Gone) {
			b.Gone = hours + dt*before/(before+short)
		}
	}
	return math.Max(0, b.rate/open)
}
