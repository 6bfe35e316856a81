package earlyage

import "math"

// Creep is a creep coefficient that is, or is taken to be, the product of one
// function of the age at loading and one of the time under load, which lets a
// stress history be followed without remembering all of it.
//
// The time function is held as a sum of exponentials, fitted once by least
// squares. EN 1992-1-1 and ACI 209 have this product form exactly; for others
// it is an approximation about the reference age.
type Creep struct {
	Ageing  func(loaded float64) float64 // final coefficient for an age at loading in days
	Instant float64                      // share of the time function that comes at once
	Share   []float64                    // share of each exponential
	Time    []float64                    // its retardation time, days
}

// creepReference is the age at loading, days, about which the time function is
// taken from a coefficient, and creepHorizon the time under load taken as final.
const (
	creepReference = 28.0
	creepHorizon   = 1e5
)

// NewCreep returns the creep of a coefficient function (age, age at loading, in
// days).
func NewCreep(coefficient func(age, loaded float64) float64) Creep {
	final := func(loaded float64) float64 { return coefficient(loaded+creepHorizon, loaded) }
	whole := final(creepReference)
	duration := func(d float64) float64 {
		return coefficient(creepReference+d, creepReference) / whole
	}
	c := fitDuration(duration)
	c.Ageing = final
	return c
}

// fitDuration fits a growing time function by exponentials whose times are
// spaced by the square root of ten from 1e-4 to 1e5 days.
func fitDuration(duration func(days float64) float64) Creep {
	const first, count, perDecade = 1e-4, 19, 2
	times := make([]float64, count)
	for j := range times {
		times[j] = first * math.Pow(10, float64(j)/perDecade)
	}
	n := count + 1
	normal := make([][]float64, n)
	for i := range normal {
		normal[i] = make([]float64, n+1)
	}
	row := make([]float64, n)
	for k := 0; k <= 200; k++ {
		d := first / 3 * math.Pow(10, float64(k)/200*9.5)
		row[0] = 1
		for j, tau := range times {
			row[j+1] = -math.Expm1(-d / tau)
		}
		want := duration(d)
		for i := range n {
			for j := range n {
				normal[i][j] += row[i] * row[j]
			}
			normal[i][n] += row[i] * want
		}
	}
	const ridge = 1e-7 // keeps neighbouring exponentials from cancelling each other
	for i := range n {
		normal[i][i] += ridge
	}
	solution := eliminate(normal)
	return Creep{Instant: solution[0], Share: solution[1:], Time: times}
}

// eliminate solves a symmetric positive system given with its right side in the
// last column, overwriting it.
func eliminate(a [][]float64) []float64 {
	n := len(a)
	for i := range n {
		for k := i + 1; k < n; k++ {
			f := a[k][i] / a[i][i]
			for j := i; j <= n; j++ {
				a[k][j] -= f * a[i][j]
			}
		}
	}
	x := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		x[i] = a[i][n]
		for j := i + 1; j < n; j++ {
			x[i] -= a[i][j] * x[j]
		}
		x[i] /= a[i][i]
	}
	return x
}

// Duration returns the fitted share of the final coefficient reached after d days
// under load.
func (c Creep) Duration(d float64) float64 {
	sum := c.Instant
	for j, tau := range c.Time {
		sum -= c.Share[j] * math.Expm1(-d/tau)
	}
	return sum
}

// fade holds, for one step of time, what each exponential keeps and the mean it
// keeps of a stress that grows evenly over the step.
type fade struct {
	keep, mean []float64
	days       float64 // length of the step
	yield      float64 // creep of an evenly growing stress over the step, per final coefficient
}

func newFade(c Creep) fade {
	return fade{keep: make([]float64, len(c.Time)), mean: make([]float64, len(c.Time))}
}

func (f *fade) set(c Creep, days float64) {
	if math.Abs(days-f.days) < 1e-9*days {
		return
	}
	f.days, f.yield = days, c.Instant
	for j, tau := range c.Time {
		f.keep[j] = math.Exp(-days / tau)
		f.mean[j] = 1
		if days > 1e-9*tau {
			f.mean[j] = -math.Expm1(-days/tau) * tau / days
		}
		f.yield += c.Share[j] * (1 - f.mean[j])
	}
}

// relaxing is a fibre of concrete that is made to take a strain and creeps under
// the stress this gives: the integral of superposition in rate form.
type relaxing struct {
	stress float64
	memory []float64 // by exponential
}

func newRelaxing(c Creep) relaxing { return relaxing{memory: make([]float64, len(c.Time))} }

// take lets the fibre take an increment of strain over the step of f and returns
// the increment of stress.
//
//	modulus      tangent modulus in the middle of the step [MPa]
//	compliance   final creep coefficient at this age over the modulus it refers to [1/MPa]
//
// A fibre without stiffness takes no stress.
func (r *relaxing) take(strain float64, c Creep, f *fade, modulus, compliance float64) float64 {
	if modulus <= 0 {
		return 0
	}
	past := 0.0
	for j, m := range r.memory {
		past += c.Share[j] * m * (1 - f.keep[j])
	}
	change := (strain - past) / (1/modulus + compliance*f.yield)
	load := compliance * change
	for j := range r.memory {
		r.memory[j] = r.memory[j]*f.keep[j] + load*f.mean[j]
	}
	r.stress += change
	return change
}

// Relaxation returns the stress that is left, as a share of the first, of a strain
// applied at one age and held, by following the creep in rate form.
//
//	modulus     tangent modulus at an age in days [MPa]
//	reference   modulus that the creep coefficient refers to [MPa]
//	loaded      age at which the strain comes [d]
//	ages        at which the share is wanted, growing [d]
//
// Source: principle of superposition; EN 1992-1-1:2004 Annex B.1 where the creep is
// of that code.
func Relaxation(c Creep, modulus func(age float64) float64, reference, loaded float64, ages []float64) []float64 {
	r, f := newRelaxing(c), newFade(c)
	first := 1e-6
	f.set(c, first)
	r.take(1/modulus(loaded), c, &f, modulus(loaded), c.Ageing(loaded)/reference)
	at := first
	out := make([]float64, 0, len(ages))
	const growth = 1.03
	for step := first; len(out) < len(ages); step *= growth {
		end := math.Min(at+step, ages[len(out)]-loaded)
		if end > at {
			middle := loaded + (at+end)/2
			f.set(c, end-at)
			r.take(0, c, &f, modulus(middle), c.Ageing(middle)/reference)
			at = end
		}
		if at >= ages[len(out)]-loaded {
			out = append(out, r.stress)
		}
	}
	return out
}
