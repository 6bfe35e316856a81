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

// dry moves the water on the surface and in the pores.
func (r *run) dry(hours, dt float64) error {
	s := r.surface
	s.look((hours + dt) * 3600)
	cover := s.cover
	open := s.potential(r.heat.Value[0]) * cover.Evaporation
	if cover.KeptWet {
		open = 0 // what evaporates is added water
	}
	te := r.heat.Hidden[0] / 3600
	hardened := math.Min(math.Max((te-r.setFrom)/(r.setTo-r.setFrom), 0), 1)
	pores := 0.0
	if hardened > 0 {
		pores = r.water.canGive(s.feel.Humidity) * cover.Evaporation
	}
	s.wet = r.film.step(hours, dt, open, hardened, pores)
	if hardened < 1 || r.film.Film > 0 {
		return nil
	}
	rate, err := r.water.step(dt*3600, cover, s.feel.Humidity)
	r.film.rate = rate
	return err
}
