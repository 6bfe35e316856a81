package earlyage

import (
	"math"

	"slabwright/concrete"
	"slabwright/internal/march"
)

// curves are the two curves of a cement, tabulated once for all members of a set,
// close enough that no temperature changes by 1e-5 K.
type curves struct {
	activation, beta float64
	rates            *march.Table   // speed of hydration by temperature
	ripe             *march.Octaves // exp(-x^-beta), share of the ultimate degree by age over the time constant
}

// Ages over the time constant between which the degree is tabulated: nothing
// hydrates in the first minute, and after many years nothing more. Temperatures,
// °C, likewise.
const (
	firstRipe, lastRipe = 1e-3, 1e6
	coldest, hottest    = -40, 120
)

// newCurves tabulates the curves of a cement whose age runs as fast as the clock at
// the reference temperature, °C.
func newCurves(c concrete.Hydration, reference float64) *curves {
	t := &curves{activation: c.ActivationEnergy, beta: c.Beta}
	inverseReference := 1 / (reference + concrete.ZeroCelsius)
	activation := c.ActivationEnergy / concrete.GasConstant
	t.rates = march.NewTable(func(temperature float64) (rate, slope float64) {
		inverse := 1 / (temperature + concrete.ZeroCelsius)
		rate = math.Exp(activation * (inverseReference - inverse))
		return rate, rate * activation * inverse * inverse
	}, coldest, hottest, 4*(hottest-coldest))
	t.ripe = march.NewOctaves(func(age float64) (share, slope float64) {
		return concrete.DegreeOfHydration(age, 1, 1, c.Beta), concrete.DegreeRate(age, 1, 1, c.Beta)
	}, firstRipe, lastRipe)
	return t
}

// suit reports whether the curves are those of a cement.
func (t *curves) suit(c concrete.Hydration) bool {
	return t != nil && t.activation == c.ActivationEnergy && t.beta == c.Beta
}

// hydrating is the cement of the slab's nodes as the march sees it: the hidden
// state is the equivalent age in seconds at 21.1 °C.
type hydrating struct {
	total    []float64 // J/m2 of full hydration, by node
	delay    float64   // s
	perTau   float64   // 1/s
	ultimate float64
	*curves
}

// newHydrating returns the cement of nodes with these volumes per unit area.
func newHydrating(c concrete.Hydration, t *curves, volumes []float64) *hydrating {
	l := &hydrating{delay: c.Delay * 3600, perTau: 1 / (c.Tau * 3600), ultimate: c.Ultimate, curves: t}
	full := c.HeatContent(1)
	for _, v := range volumes {
		l.total = append(l.total, v*full)
	}
	return l
}

func (l *hydrating) Count() int { return len(l.total) }

func (l *hydrating) Rate(_ int, temperature float64) (rate, slope float64) {
	return l.rates.At(temperature)
}

// degree is the degree of hydration at an equivalent age in seconds, with its
// slope.
func (l *hydrating) degree(age float64) (degree, slope float64) {
	share, rise := l.ripe.At((age - l.delay) * l.perTau)
	return l.ultimate * share, l.ultimate * rise * l.perTau
}

func (l *hydrating) Release(node int, age float64) (amount, slope float64) {
	degree, rise := l.degree(age)
	return l.total[node] * degree, l.total[node] * rise
}
