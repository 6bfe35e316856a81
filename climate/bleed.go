package climate

import "math"

// Bleed is how fast water rises to the surface of a fresh slab: a rate that falls
// in a straight line to nothing. The capacity is half of rate times end.
type Bleed struct {
	Rate float64 // at the start [kg/m2/h]; slabs 0.5 to 1.5
	End  float64 // when bleeding stops [h]
}

// At returns the bleed rate in kg/m2/h at a time in hours after placing.
func (b Bleed) At(hours float64) float64 {
	if hours < 0 || hours >= b.End {
		return 0
	}
	return b.Rate * (1 - hours/b.End)
}

// Total returns all the water that bleeds, in kg/m2 (1 kg/m2 is 1 mm).
func (b Bleed) Total() float64 { return b.Rate * b.End / 2 }

// FilmExhausted returns the hours after placing at which drying at a steady rate
// has taken all the water that bled, so the surface begins to dry out. If this
// comes before final set the surface pulls apart easily.
//
//	bleed        the bleeding of the mix
//	evaporation  steady drying rate [kg/m2/h]
//
// At once (0) if drying outruns bleeding from the start; +Inf without drying.
//
// Source: the balance stated in ACI 305R, integrated in closed form for a bleed
// rate that falls in a straight line.
func FilmExhausted(bleed Bleed, evaporation float64) float64 {
	b0, T := bleed.Rate, bleed.End
	switch {
	case evaporation <= 0:
		return math.Inf(1)
	case evaporation >= b0:
		return 0
	case evaporation >= b0/2:
		return 2 * T * (1 - evaporation/b0)
	}
	return b0 * T / (2 * evaporation)
}

// FilmPoint is the water on the surface at one time.
type FilmPoint struct {
	Hours       float64 // after placing
	Bled        float64 // so far [kg/m2]
	Evaporated  float64 // what the weather could take so far [kg/m2]
	Film        float64 // bled less evaporated [kg/m2], negative once dry
	Evaporation float64 // rate now [kg/m2/h]
}

// FilmHistory follows the water on the surface under a drying rate that changes
// with the weather, by the trapezoidal rule (error falls with the step squared),
// and returns every step and the hour at which the film is gone, NaN if it lasts
// to the end.
//
//	bleed        rate at a time after placing [h -> kg/m2/h]
//	evaporation  rate at a time after placing [h -> kg/m2/h]
//	step, until  [h]
//
// Dew counts as water added.
func FilmHistory(bleed, evaporation func(hours float64) float64, step, until float64) (points []FilmPoint, exhausted float64) {
	if !(step > 0) || !(until > 0) {
		panic("climate: FilmHistory needs a step and an end above zero")
	}
	exhausted = math.NaN()
	p := FilmPoint{Evaporation: evaporation(0)}
	bleedNow := bleed(0)
	if p.Evaporation > bleedNow {
		exhausted = 0
	}
	points = append(points, p)
	for n := int(math.Ceil(until/step - 1e-9)); n > 0; n-- {
		next := p
		next.Hours = math.Min(until, p.Hours+step)
		dt := next.Hours - p.Hours
		bleedNext := bleed(next.Hours)
		next.Evaporation = evaporation(next.Hours)
		next.Bled += dt * (bleedNow + bleedNext) / 2
		next.Evaporated += dt * (p.Evaporation + next.Evaporation) / 2
		next.Film = next.Bled - next.Evaporated
		if math.IsNaN(exhausted) && next.Film < 0 {
			exhausted = p.Hours + dt*p.Film/(p.Film-next.Film)
		}
		points = append(points, next)
		p, bleedNow = next, bleedNext
	}
	return points, exhausted
}
