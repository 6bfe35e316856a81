package earlyage

import (
	"math"

	"slabwright/concrete"
)

// hydrating is the cement of the slab's nodes as the march sees it: the hidden
// state is the equivalent age in seconds at 21.1 °C. The degree of hydration is
// held at points that divide every doubling of the age into 32, joined by cubics
// that match value and slope; they are within 1e-7 of the curve.
type hydrating struct {
	total      []float64 // J/m2 of full hydration, by node
	delay      float64   // s
	inverseRef float64   // 1/K
	activation float64   // K
	points     octaves
	rows       []cubic
}

// cubic is a + s(b + s(c + s d)) over one part, s from 0 to 1.
type cubic struct{ a, b, c, d, width float64 }

// Ages, s, between which the degree is tabulated: nothing hydrates in the first
// minute, and after 300 years nothing more.
const firstAge, lastAge = 60, 1e10

func newHydrating(c Concrete, volumes []float64) *hydrating {
	h := c.Hydration
	l := &hydrating{delay: h.Delay * 3600,
		inverseRef: 1 / (concrete.HydrationReference_C + concrete.ZeroCelsius),
		activation: h.ActivationEnergy / concrete.GasConstant,
		points:     newOctaves(firstAge, lastAge)}
	full := h.HeatContent(1)
	for _, v := range volumes {
		l.total = append(l.total, v*full)
	}
	at := func(i int) (degree, slope float64) {
		age := l.points.point(i)
		return curve(age, h.Ultimate, h.Tau*3600, h.Beta)
	}
	l.rows = make([]cubic, l.points.count-1)
	a, slopeA := at(0)
	for i := range l.rows {
		width := l.points.point(i+1) - l.points.point(i)
		b, slopeB := at(i + 1)
		rise, s0, s1 := b-a, slopeA*width, slopeB*width
		l.rows[i] = cubic{a, s0, 3*rise - 2*s0 - s1, s0 + s1 - 2*rise, width}
		a, slopeA = b, slopeB
	}
	return l
}

// curve returns the degree of hydration at an age and its slope, by the formula
// of [concrete.DegreeOfHydration]; age and tau in the same unit.
func curve(age, ultimate, tau, beta float64) (degree, slope float64) {
	power := math.Pow(tau/age, beta)
	degree = ultimate * math.Exp(-power)
	return degree, degree * power * beta / age
}

func (l *hydrating) Count() int { return len(l.total) }

func (l *hydrating) Rate(_ int, temperature float64) (rate, slope float64) {
	inverse := 1 / (temperature + concrete.ZeroCelsius)
	rate = math.Exp(l.activation * (l.inverseRef - inverse))
	return rate, rate * l.activation * inverse * inverse
}

// degree is the degree of hydration at an equivalent age in seconds, with its
// slope.
func (l *hydrating) degree(age float64) (degree, slope float64) {
	age -= l.delay
	if age <= firstAge {
		return 0, 0
	}
	i, s := l.points.place(age)
	r := &l.rows[i]
	return r.a + s*(r.b+s*(r.c+s*r.d)), (r.b + s*(2*r.c+3*s*r.d)) / r.width
}

func (l *hydrating) Release(node int, age float64) (amount, slope float64) {
	degree, rise := l.degree(age)
	return l.total[node] * degree, l.total[node] * rise
}
