package earlyage

import (
	"math"

	"slabwright/internal/march"
)

// Balance is the account of heat and water of a run, per square metre: what the
// column holds more at its end than at placing against what came in. Its two
// errors say how well the march kept both.
type Balance struct {
	Stored    float64 // heat in slab and ground, J
	Hydration float64 // heat released by the cement, J
	Ends      float64 // heat that came in through surface and deep soil, J; what drying took is in it
	Latent    float64 // heat taken by water that evaporated, less that of dew, J
	HeatError float64 // stored, less released, less come in, over the heat released

	Bled, Dew, Drawn float64 // water that came up, settled as dew, and was drawn out of fresh concrete, kg
	Film             float64 // water standing at the end, kg
	Lost             float64 // water that evaporated from the film and out of concrete up to final set, kg
	Pores            float64 // water the pores gave after final set, kg; negative: drew in under a wet cover
	PoreStore        float64 // of it, by what is left in the pores, kg
	Added            float64 // water of covers kept wet that evaporated, kg
	WaterError       float64 // of film and pores, over all water that moved
	LatentError      float64 // heat taken for evaporation against the water that left, over the heat so taken
}

// account gathers heat and water over the steps.
type account struct {
	Stored, Hydration, Ends, Latent, Pores, Added float64 // as in Balance
	Dried                                         float64 // water that the pores gave to the air, kg/m2
	released, before                              []float64
}

// heatStep moves the heat one step of dt seconds and counts it. Heat capacities are
// changed between steps, so what is stored is summed by steps.
func (a *account) heatStep(m *march.Marcher, dt float64) error {
	if a.before == nil {
		a.before, a.released = make([]float64, len(m.Value)), make([]float64, len(m.Hidden))
		for i, s := range m.Hidden {
			a.released[i], _ = m.Local.Release(i, s)
		}
	}
	copy(a.before, m.Value)
	entered := m.Entered()
	if err := m.Step(dt); err != nil {
		return err
	}
	a.Ends += m.Entered() - entered
	for i, u := range m.Value {
		a.Stored += m.Capacity[i] * (u - a.before[i])
	}
	return nil
}

// balance closes the account.
func (r *run) balance() Balance {
	a, f := &r.account, &r.film
	for i, s := range r.heat.Hidden {
		now, _ := r.local.Release(i, s)
		a.Hydration += now - a.released[i]
	}
	b := Balance{Stored: a.Stored, Hydration: a.Hydration, Ends: a.Ends, Latent: a.Latent,
		Bled: f.Bled, Dew: f.Gained, Drawn: f.Deficit, Film: f.Film, Lost: f.Lost, Pores: a.Pores, Added: a.Added}
	b.PoreStore = r.water.given
	b.HeatError = (b.Stored - b.Hydration - b.Ends) / math.Max(1, b.Hydration)
	moved := math.Max(1e-3, b.Bled+b.Dew+b.Lost+math.Abs(b.Pores))
	b.WaterError = math.Max(math.Abs(b.Bled+b.Dew-b.Lost+b.Drawn-b.Film), math.Abs(b.Pores-b.PoreStore)) / moved
	left := b.Lost - b.Dew + b.Added + a.Dried
	b.LatentError = (b.Latent + r.top.owed - LatentHeat*left) / math.Max(1, LatentHeat*moved)
	return b
}

// topFace is the surface with the heat that the pores' water takes and what is owed
// from the step before.
type topFace struct {
	*surface
	taken float64 // W/m2
	owed  float64 // J/m2, taken over the time that follows
	over  float64 // s, that time
	now   float64 // W/m2, of it in this step
}

// begin starts a step of dt seconds: what is owed is paid in it, or as much of it as
// falls due. A short step must not pay for a long one, or it freezes the surface.
func (f *topFace) begin(dt float64) {
	paid := f.owed
	if dt < f.over {
		paid *= dt / f.over
	}
	f.now, f.taken = paid/dt, 0
	f.owed, f.over = f.owed-paid, math.Max(0, f.over-dt)
}

// owe adds what a step of dt seconds took beyond what its heat was charged for.
func (f *topFace) owe(heat, dt float64) {
	f.owed += heat
	f.over = math.Max(f.over, dt)
}

// spent is what a step of dt seconds took in both ways, J/m2.
func (f *topFace) spent(dt float64) float64 { return (f.now + f.taken) * dt }

func (f *topFace) Into(t, u float64) (flow, slope float64) {
	flow, slope = f.surface.Into(t, u)
	return flow - f.taken - f.now, slope
}
