package earlyage

import (
	"math"

	"slabwright/concrete"
	"slabwright/internal/march"
)

// hydrating is the cement of the slab's nodes as the march sees it: the hidden
// state is the equivalent age in seconds at 21.1 °C. Both curves are tabulated,
// close enough that no temperature changes by 1e-5 K.
type hydrating struct {
	total []float64 // J/m2 of full hydration, by node
	delay float64   // s
	rates *march.Table
	ages  *march.Octaves // degree of hydration by age in seconds
}

// Ages, s, between which the degree is tabulated: nothing hydrates in the first
// minute, and after 300 years nothing more. Temperatures, °C, likewise.
const (
	firstAge, lastAge = 60, 1e10
	coldest, hottest  = -40, 120
)

// newHydrating returns the cement of nodes with these volumes per unit area. Its
// age runs as fast as the clock at the reference temperature, °C.
func newHydrating(c concrete.Hydration, reference float64, volumes []float64) *hydrating {
	l := &hydrating{delay: c.Delay * 3600}
	full := c.HeatContent(1)
	for _, v := range volumes {
		l.total = append(l.total, v*full)
	}
	inverseReference := 1 / (reference + concrete.ZeroCelsius)
	activation := c.ActivationEnergy / concrete.GasConstant
	l.rates = march.NewTable(func(temperature float64) (rate, slope float64) {
		inverse := 1 / (temperature + concrete.ZeroCelsius)
		rate = math.Exp(activation * (inverseReference - inverse))
		return rate, rate * activation * inverse * inverse
	}, coldest, hottest, 4*(hottest-coldest))
	l.ages = march.NewOctaves(func(age float64) (degree, slope float64) {
		hours := age / 3600
		return concrete.DegreeOfHydration(hours, c.Ultimate, c.Tau, c.Beta), concrete.DegreeRate(hours, c.Ultimate, c.Tau, c.Beta) / 3600
	}, firstAge, lastAge)
	return l
}

func (l *hydrating) Count() int { return len(l.total) }

func (l *hydrating) Rate(_ int, temperature float64) (rate, slope float64) {
	return l.rates.At(temperature)
}

// degree is the degree of hydration at an equivalent age in seconds, with its
// slope.
func (l *hydrating) degree(age float64) (degree, slope float64) { return l.ages.At(age - l.delay) }

func (l *hydrating) Release(node int, age float64) (amount, slope float64) {
	degree, rise := l.degree(age)
	return l.total[node] * degree, l.total[node] * rise
}
