package earlyage

import "math"

// noteSets records the clock times of initial and final set by layer.
func (r *run) noteSets(hours, dt float64) {
	initial, final := r.setFrom, r.setTo
	for i, age := range r.heat.Hidden {
		if !math.IsNaN(r.last[i]) {
			continue
		}
		te := age / 3600
		rate, _ := r.local.Rate(i, r.heat.Value[i])
		back := func(level float64) float64 {
			return math.Max(hours, hours+dt-(te-level)/rate)
		}
		if math.IsNaN(r.initial[i]) && te >= initial {
			r.initial[i] = back(initial)
		}
		if te >= final {
			r.last[i] = back(final)
		}
	}
}

// hardened is 0 up to initial set of the surface and 1 from its final set on.
func (r *run) hardened(equivalentAge float64) float64 {
	return math.Min(math.Max((equivalentAge-r.setFrom)/(r.setTo-r.setFrom), 0), 1)
}

// shortest is the least part of a step, h.
const shortest = 1e-3

// untilTurn returns how much of a step of dt hours can be gone in one: up to where the
// film on the surface runs out or its set begins or ends, since drying turns there.
func (r *run) untilTurn(hours, dt float64) float64 {
	age := r.heat.Hidden[0] / 3600
	if r.hardened(age) >= 1 && r.film.Film <= 0 {
		return dt
	}
	part := dt
	rate, _ := r.local.Rate(0, r.heat.Ahead(0, dt*1800))
	for _, turn := range []float64{r.setFrom, r.setTo} {
		if to := (turn - age) / rate; to > shortest && to < part-shortest {
			part = to
		}
	}
	s := r.surface
	s.lay(hours + dt/2)
	if r.film.Film <= 0 || s.cover.KeptWet {
		return part
	}
	s.look((hours + part/2) * 3600)
	left := r.film
	left.step(hours, part, s.wouldDry(r.heat.Ahead(0, part*1800)), r.hardened(age), 0)
	if left.Film > 0 {
		return part
	}
	spent := s.wouldDry(r.heat.Ahead(0, part*1800))*part - bledBy(r.film.bleed, hours+part) + bledBy(r.film.bleed, hours)
	if to := part * r.film.Film / spent; spent > 0 && to > shortest && to < part-shortest {
		return to
	}
	return part
}

// wetAhead works out, before the heat of a step, how wet its surface will be: a
// surface that has set and stands dry gives what its pores let through, else the
// film and the fresh concrete are carried on at the temperature foreseen. What the
// foresight missed goes to the account and into the heat of the next step.
func (r *run) wetAhead(hours, dt float64) error {
	s := r.surface
	s.look((hours + dt/2) * 3600)
	age := r.heat.Hidden[0] / 3600
	r.top.begin(dt * 3600)
	r.poreLoss, r.poresDone = 0, false
	if r.hardened(age) >= 1 && r.film.Film <= 0 {
		return r.dryPores(dt)
	}
	if s.cover.KeptWet {
		s.wet = 1
		return nil
	}
	open := s.wouldDry(r.heat.Ahead(0, dt*1800))
	rate, _ := r.local.Rate(0, r.heat.Value[0])
	hardened := r.hardened(age + rate*dt/2)
	ahead := r.film // a copy
	s.wet = ahead.step(hours, dt, open, hardened, r.canGive(hardened))
	return nil
}

// dryPores moves the water of the pores over a step; the heat this takes is known
// before the heat of the step is.
func (r *run) dryPores(dt float64) error {
	s := r.surface
	r.water.ripen(func(node int) float64 { return r.heat.Hidden[node] * r.daysPerSecond })
	r.water.loosen(&r.Concrete.Hydration, r.degree, dt*3600)
	loss, err := r.water.step(dt*3600, s.cover, s.feel.Humidity)
	if err != nil {
		return err
	}
	r.poresDone, r.poreLoss, r.account.Pores = true, loss, r.account.Pores+loss
	if !s.cover.KeptWet { // else the cover gives it
		s.wet, r.account.Dried = 0, r.account.Dried+loss
		r.top.taken = loss * LatentHeat / (dt * 3600)
	}
	return nil
}

// canGive is what the pores would let through now, kg/m2/h.
func (r *run) canGive(hardened float64) float64 {
	if hardened <= 0 {
		return 0
	}
	return r.water.canGive(r.surface.feel.Humidity) * r.surface.cover.Evaporation
}

// wouldDry is the drying rate, kg/m2/h, of a wet surface under what lies on it, with
// the slab at temperature u; negative is dew. Under a cover that resists heat it is
// that of the cover's face.
func (s *surface) wouldDry(u float64) float64 {
	face := u
	if s.cover.Resistance > 0 {
		flow, _ := s.Into(s.time, u)
		face += flow * s.cover.Resistance
	}
	rate := s.potential(face)
	switch {
	case rate >= 0:
		return rate * s.cover.Evaporation
	case s.cover.Resistance > 0 && !s.cover.KeptWet:
		return 0
	}
	return rate
}

// dry moves the water on the surface and in the pores, at the temperatures the
// step came to.
func (r *run) dry(hours, dt float64) error {
	s, a := r.surface, &r.account
	wet := s.wet
	var rates [3]float64 // at the times the march asks for, kg/m2/s
	stage := 0
	open := r.heat.Over(0, func(t, u float64) float64 { // kg/m2 over the step
		s.look(t)
		rates[stage] = s.wouldDry(u) / 3600
		stage++
		return rates[stage-1]
	})
	stage = 0
	charged := r.heat.Over(0, func(_, _ float64) float64 { // of it, by the heat of the step
		rate := rates[stage]
		stage++
		if rate > 0 && !s.cover.KeptWet {
			rate *= wet
		}
		return rate
	})
	a.Latent += LatentHeat*charged + r.top.spent(dt*3600)
	s.look((hours + dt/2) * 3600)
	if s.cover.KeptWet {
		a.Added += charged // what evaporates is added water
		open, charged = 0, 0
	}
	rate, _ := r.local.Rate(0, r.heat.Value[0])
	hardened := r.hardened(r.heat.Hidden[0]/3600 - rate*dt/2)
	before := r.film.Lost - r.film.Gained
	r.film.step(hours, dt, open/dt, hardened, r.canGive(hardened))
	left := r.film.Lost - r.film.Gained - before
	if hardened >= 1 && r.film.Film <= 0 && !r.poresDone {
		if err := r.dryPores(dt); err != nil {
			return err
		}
		if !s.cover.KeptWet {
			left += r.poreLoss
		}
	}
	if r.poresDone {
		r.film.rate = r.poreLoss / dt
	}
	// What left the slab beyond what its heat was charged for comes with the next step.
	r.top.owe(LatentHeat*(left-charged), dt*3600)
	return nil
}
