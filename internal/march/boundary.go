package march

import "math"

// End is what happens at an end of the line: the flow into the line per unit
// area at time t when the end node has value u, and its derivative with u.
type End interface {
	Into(t, u float64) (flow, slope float64)
}

// Held keeps the end node at a value that may change with time.
type Held func(t float64) float64

// Into is never asked: a held node has no balance of its own.
func (h Held) Into(t, u float64) (flow, slope float64) {
	panic("march: a held end has no flow law")
}

// Constant is a value that does not change.
func Constant(value float64) func(float64) float64 {
	return func(float64) float64 { return value }
}

// Sine is mean + amplitude sin(2 pi t / period): the daily or yearly wave.
func Sine(mean, amplitude, period float64) func(float64) float64 {
	return func(t float64) float64 { return mean + amplitude*math.Sin(2*math.Pi*t/period) }
}

// Flux lets a flow in that does not depend on the value there.
type Flux func(t float64) float64

// Into returns the flow.
func (f Flux) Into(t, u float64) (flow, slope float64) { return f(t), 0 }

// Sealed lets nothing through.
type Sealed struct{}

// Into returns no flow.
func (Sealed) Into(t, u float64) (flow, slope float64) { return 0, 0 }

// Film exchanges with surroundings through a film: flow = Coefficient(t) *
// (Ambient(t) - u) + Gain(t). Gain may be nil.
type Film struct {
	Coefficient func(t float64) float64 // W/m2K
	Ambient     func(t float64) float64
	Gain        func(t float64) float64 // W/m2
}

// Into returns the film's flow.
func (f Film) Into(t, u float64) (flow, slope float64) {
	h := f.Coefficient(t)
	flow = h * (f.Ambient(t) - u)
	if f.Gain != nil {
		flow += f.Gain(t)
	}
	return flow, -h
}

// StefanBoltzmann is the radiation constant in W/m2K4 (CODATA 2018).
const StefanBoltzmann = 5.670374e-8

// Kelvin is the absolute temperature of 0 degrees Celsius.
const Kelvin = 273.15

// Radiating is a film that also exchanges long waves: it receives
// emissivity*Longwave(t) and sends emissivity*sigma*T^4. Values are in degrees
// Celsius.
type Radiating struct {
	Film
	Emissivity float64
	Longwave   func(t float64) float64 // W/m2 coming down
}

// Into returns the flow by film and radiation, with the exact derivative.
func (r Radiating) Into(t, u float64) (flow, slope float64) {
	flow, slope = r.Film.Into(t, u)
	absolute := u + Kelvin
	cube := absolute * absolute * absolute
	flow += r.Emissivity * (r.Longwave(t) - StefanBoltzmann*cube*absolute)
	slope -= 4 * r.Emissivity * StefanBoltzmann * cube
	return flow, slope
}
