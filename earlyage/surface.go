package earlyage

import (
	"math"

	"slabwright/climate"
	"slabwright/internal/march"
)

// LatentHeat is the heat taken by a kilogram of water that evaporates, J/kg, at
// about 20 °C. Source: FAO Irrigation and Drainage Paper 56; from memory.
const LatentHeat = 2.45e6

// surface is the top of the slab: sun, sky, wind and drying, with whatever lies
// on it.
type surface struct {
	weather *record
	wind    float64 // factor on the wind
	warmer  float64 // K added to the air
	open    Cover
	covers  []Cover
	drying  climate.DryingForm
	wet     float64 // share of the open drying rate that the concrete can supply, 0 to 1

	time  float64 // s, of feel and cover
	feel  Feel
	cover Cover
}

// look brings the feel to time t in seconds.
func (s *surface) look(t float64) {
	if t == s.time {
		return
	}
	s.time = t
	s.feel = s.weather.at(t / 3600)
	s.feel.Wind *= s.wind * (1 - s.cover.WindKept)
	s.feel.Sun *= 1 - s.cover.SunKept
	s.feel.Air += s.warmer
}

// lay puts on what lies on the slab at an hour, the last of the covers that do,
// with everything that stands over it. It is asked for the middle of each step,
// since steps end where covers change.
func (s *surface) lay(hours float64) {
	s.cover = s.open
	for _, c := range s.covers {
		if c.lies(hours) && !c.Stands {
			s.cover = c
		}
	}
	for _, c := range s.covers {
		if c.lies(hours) && c.Stands {
			s.cover = s.cover.with(c)
		}
	}
	s.time = math.NaN() // wind and sun may have changed at this very time
}

// potential is the drying rate, kg/m2/h, of a wet surface at temperature u in the
// present air; negative is dew.
func (s *surface) potential(u float64) float64 {
	return s.drying.Rate(u, s.feel.Air, s.feel.Humidity, s.feel.Wind)
}

// latent returns the heat taken by drying, W/m2, and its slope.
func (s *surface) latent(u, share float64) (heat, slope float64) {
	const d = 0.05 // K, for the slope
	rate := s.potential(u)
	if rate < 0 {
		share = 1
		if s.cover.Resistance > 0 && !s.cover.KeptWet {
			share = 0
		}
	}
	if share == 0 {
		return 0, 0
	}
	factor := share * LatentHeat / 3600
	return factor * rate, factor * (s.potential(u+d) - rate) / d
}

// outside returns the flow of sun, sky and wind into a face at temperature u, and
// its slope.
func (s *surface) outside(u float64) (flow, slope float64) {
	h := climate.FilmBentz(s.feel.Wind)
	absolute := u + march.Kelvin
	cube := absolute * absolute * absolute
	c := &s.cover
	flow = c.Absorptivity*s.feel.Sun + c.Emissivity*(s.feel.Longwave-march.StefanBoltzmann*cube*absolute) + h*(s.feel.Air-u)
	return flow, -h - 4*c.Emissivity*march.StefanBoltzmann*cube
}

// Into is the flow into the top of the slab at temperature u.
//
// A cover with a resistance has a face of its own, without heat capacity, whose
// temperature balances what it gets from outside with what passes through it.
func (s *surface) Into(t, u float64) (flow, slope float64) {
	s.look(t)
	share := s.wet * s.cover.Evaporation
	if s.cover.KeptWet {
		share = s.cover.Evaporation
	}
	if s.cover.Resistance <= 0 {
		flow, slope = s.outside(u)
		heat, rise := s.latent(u, share)
		return flow - heat, slope - rise
	}
	through := 1 / s.cover.Resistance
	face := u
	var gainSlope float64
	for range 4 {
		gain, rise := s.outside(face)
		heat, heatRise := s.latent(face, share)
		gain, gainSlope = gain-heat, rise-heatRise
		face += (gain + through*(u-face)) / (through - gainSlope)
	}
	// d(face)/du = through/(through - gainSlope), by the balance of the face.
	return through * (face - u), through * (through/(through-gainSlope) - 1)
}
