package job

import (
	"fmt"
	"math"
	"sort"
	"time"

	"slabwright/concrete"
	"slabwright/earlyage"
	"slabwright/restraint"
)

// How far a replay goes unless asked otherwise, h.
const (
	hoursPerDay  = 24.0
	replayTwoYrs = 2 * 365 * hoursPerDay
)

// planPour is the concrete of one pour through time, as the sheet in plan needs it.
// Hours count from the start of the first pour.
type planPour struct {
	run     *pourRun
	history *earlyage.History
	offset  float64 // hour at which the column of this pour was placed
	hours   []float64
	creep   []float64 // at each of hours, since set
	face    []float64 // share of the strength in tension that held curl uses, likewise
	hinge   []float64 // energy that curl gives to a crack, N/m, likewise
	panel   float64   // length over which curl is held, m
}

// planPourOf readies the column of a pour to be followed on for so many hours. What it
// returns does that, and reads off it what acts in plan; several may run at once.
func (d *diagnosis) planPourOf(p *pourRun, start time.Time, hours float64) func() (*planPour, error) {
	c := p.model.Column
	c.Until = hours
	c.Weather = earlyage.FromExposure(d.weatherOn(p, hours))
	held := d.restraint(p)
	return func() (*planPour, error) {
		h, err := c.Run(d.ctx)
		if err != nil {
			return nil, fmt.Errorf("pour %s, followed on to %.0f days: %w", p.pour.ID, hours/hoursPerDay, err)
		}
		out := &planPour{run: p, history: h, offset: p.centre.Sub(start).Hours(), hours: h.Hours, panel: d.meanPanelLength()}
		out.creepThrough(c.Concrete)
		out.matchCreep()
		out.faces(held, c.Thickness)
		return out, nil
	}
}

// creepThrough works out how much of a stress has relaxed since the set, as the creep
// coefficient of a concrete that forgets its age: minus the logarithm of the relaxation of
// the code's creep from a strain held since the section first carried stress.
func (p *planPour) creepThrough(c earlyage.Concrete) {
	h := p.history
	loaded := math.NaN()
	var ages []float64
	var at []int
	p.creep = make([]float64, len(h.Hours))
	for i, e := range h.E {
		age := c.Hydration.DaysAt20(h.EquivalentAge[i])
		switch {
		case e <= 0:
		case math.IsNaN(loaded):
			loaded = age
		case len(ages) == 0 || age > ages[len(ages)-1]+1e-6:
			ages, at = append(ages, age), append(at, i)
		}
	}
	if len(ages) == 0 {
		return
	}
	modulus := func(age float64) float64 {
		i := sort.SearchFloat64s(ages, age)
		return math.Max(1, h.E[at[min(i, len(at)-1)]])
	}
	last := 0.0
	left := earlyage.Relaxation(c.Creep, modulus, c.CreepModulus, loaded, ages)
	next := 0
	for i := range p.creep {
		if next < len(at) && at[next] == i {
			last = math.Max(last, -math.Log(math.Max(left[next], 1e-3)))
			next++
		}
		p.creep[i] = last
	}
}

// matchCreep scales the creep so that the stress of full restraint comes out as that of
// the column, which remembers the age at which each stress came. A coefficient that
// forgets it is too small for what comes late.
func (p *planPour) matchCreep() {
	best, least := 1.0, math.Inf(1)
	for scale := 0.5; scale <= 6; scale *= 1.02 {
		if off := p.offFull(scale); off < least {
			best, least = scale, off
		}
	}
	for i := range p.creep {
		p.creep[i] *= best
	}
}

// offFull is the mean square by which the stress of full restraint, with the creep
// scaled, is off that of the column, each hour counting by the logarithm of time.
func (p *planPour) offFull(scale float64) (sum float64) {
	for i, s := range p.fullRestraint(scale) {
		if i > 0 && p.history.E[i] > 0 {
			off := s - p.history.FullRestraint[i]
			sum += off * off * (p.hours[i] - p.hours[i-1]) / p.hours[i]
		}
	}
	return sum
}

// fullRestraint is the stress, MPa, of a section held along one direction, by the rate
// form of creep that the sheet in plan goes by.
func (p *planPour) fullRestraint(scale float64) []float64 {
	h := p.history
	out := make([]float64, len(h.Hours))
	for i := 1; i < len(out); i++ {
		keep := math.Exp(-scale * (p.creep[i] - p.creep[i-1]))
		out[i] = out[i-1]*keep - (h.E[i]+h.E[i-1])/2*math.Sqrt(keep)*(h.MeanStrain[i]-h.MeanStrain[i-1])
	}
	return out
}

// faces works out what curl that is held down does to a crack: the share of the strength
// it uses at the face it pulls, and the energy it gives to a crack, by its area.
//
// Curl tears a face on its own, but the tear goes through the depth only as far as the
// curl that it lets go can drive it. So the share counted is the lesser of stress over
// bending strength and of the root of the energy that a hinge sets free over the whole
// that a crack takes. What the layers do to each other is left out: it tears the skin only.
func (p *planPour) faces(r earlyage.Restraint, thickness float64) {
	h := p.history
	p.face, p.hinge = make([]float64, len(h.Hours)), make([]float64, len(h.Hours))
	bending := concrete.FlexuralRatioEN(1000 * thickness)
	for i := range h.Hours {
		if h.E[i] <= 0 || h.Fct[i] <= 0 {
			continue
		}
		radius := earlyage.RelativeStiffness(h.E[i], 1000*thickness, poisson, r.Subgrade) / 1000
		held := earlyage.WeightStress(r.UnitWeight, thickness, p.panel)
		curl := math.Min(held, math.Abs(h.FullCurl[i])*earlyage.CurlShare(p.panel/radius))
		strong := h.Fct[i]
		if h.FullCurl[i] > 0 {
			strong = math.Max(h.TopFct[i], h.Fct[i]/2)
		}
		p.hinge[i] = hingeEnergy(1e6*curl, thickness, 1e6*h.E[i], radius) / thickness
		p.face[i] = math.Min(curl/bending/strong, math.Sqrt(p.hinge[i]/concrete.FractureEnergyMC(h.Fc[i])))
	}
}

// tearing is the energy, N/m, that a crack must find in the pull in plan: what tears at
// once, less what curl gives. The tail of the softening is paid while it opens further,
// by the shortening that opens it. That the whole energy is some 2.5 times what counts at
// the peak: Bažant and Planas 1998; from memory.
func tearing(strength, hinge float64) float64 {
	const wholeOverPeak = 2.5
	const least = 1 // N/m; curl alone carries it
	return math.Max(least, concrete.FractureEnergyMC(math.Max(strength, 0.1))/wholeOverPeak-hinge)
}

// hingeEnergy is the energy set free per metre of a hinge that forms in a wide slab held
// flat, J/m: half the moment times the turn of both ends.
//
//	stress     at the face before it [Pa]
//	thickness  [m]
//	modulus    [Pa]
//	radius     of relative stiffness [m]
//
// Source: moment at the end of a long beam on springs, Hetényi 1946; from memory.
func hingeEnergy(stress, thickness, modulus, radius float64) float64 {
	moment := stress * thickness * thickness / 6
	stiffness := modulus * math.Pow(thickness, 3) / 12 / (1 - poisson*poisson)
	turn := 2 * moment * math.Sqrt2 * radius / stiffness
	return moment * turn / 2
}

// at returns the concrete at an hour of the replay. shrink is the share of the shrinkage
// that comes.
func (p *planPour) at(hour, shrink float64) restraint.Concrete {
	h := p.history
	since := hour - p.offset
	if since <= 0 {
		return restraint.Concrete{}
	}
	i := min(max(sort.SearchFloat64s(h.Hours, since), 1), len(h.Hours)-1)
	share := math.Min(1, math.Max(0, (since-h.Hours[i-1])/(h.Hours[i]-h.Hours[i-1])))
	mix := func(v []float64) float64 { return v[i-1] + share*(v[i]-v[i-1]) }
	strength := 1e6 * math.Max(0, mix(h.Fct))
	return restraint.Concrete{
		Strain:  mix(h.MeanStrain) - (1-shrink)*(mix(h.Drying)+mix(h.Autogenous)),
		Modulus: 1e6 * math.Max(0, mix(h.E)), Strength: strength,
		Creep: mix(p.creep), Face: mix(p.face) * strength, Fracture: tearing(mix(h.Fc), mix(p.hinge)),
	}
}

// fullAt is the stress, MPa, that full restraint along one direction would have brought
// by an hour of the replay.
func (p *planPour) fullAt(hour float64) float64 {
	since := hour - p.offset
	if since <= 0 {
		return 0
	}
	return p.history.At(since).FullRestraint
}
