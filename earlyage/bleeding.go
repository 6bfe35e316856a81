package earlyage

import (
	"math"

	"slabwright/climate"
)

// bleeding keeps the account of water on the fresh surface.
//
// While a film stands on it, the surface dries at the open rate. When the film is
// gone it keeps that rate, out of the pores, until initial set (menisci are still
// at the surface); from there to final set the rate falls to what the hardened
// pores let through. What is drawn out of the concrete before final set is the
// deficit that pulls a plastic surface together. At all times
// Film = Bled + Gained - Lost + Deficit.
type bleeding struct {
	bleed   climate.Bleed
	Film    float64 // kg/m2
	Deficit float64 // kg/m2, up to final set of the surface
	Bled    float64 // water that came up so far, kg/m2
	Gained  float64 // dew so far, kg/m2
	Lost    float64 // water that evaporated so far from the film, and out of the concrete until final set, kg/m2
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
	bled := bledBy(b.bleed, hours+dt) - bledBy(b.bleed, hours)
	if hardened >= 1 {
		bled = 0
	}
	b.Bled += bled
	if open <= 0 {
		b.Film += bled - open*dt
		b.Gained -= open * dt
		b.rate = 0
		return 1
	}
	can := math.Min(open, (1-hardened)*open+hardened*pores)
	before := b.Film
	b.Film += bled - open*dt
	if b.Film >= 0 {
		b.rate = open
		b.Lost += open * dt
		return 1
	}
	short := -b.Film // open rate that the film did not cover, kg/m2
	b.Film = 0
	taken := short * can / open
	b.rate = open - (short-taken)/dt
	b.Lost += open*dt - short
	if hardened < 1 {
		b.Deficit += taken
		b.Lost += taken
		if math.IsNaN(b.Gone) {
			b.Gone = hours + dt*before/(before+short)
		}
	}
	return math.Max(0, b.rate/open)
}

// bledBy returns the water that has come up by a time in hours after placing,
// kg/m2: the rate of bleeding summed in closed form.
func bledBy(b climate.Bleed, hours float64) float64 {
	t := math.Min(math.Max(hours, 0), b.End)
	if b.End <= 0 {
		return 0
	}
	return b.Rate * (t - t*t/(2*b.End))
}
