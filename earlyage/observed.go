package earlyage

import (
	"fmt"
	"math"
	"time"
)

// Observed is what was measured at the slab after placing. Each error is one standard
// deviation, of the measurement and of what a column of one place can say of it; zero
// takes the usual one.
type Observed struct {
	Cylinders    []CylinderResult
	Temperatures []LoggedTemperature
	InitialSets  []SetTime // of the surface or a sample beside it
	FinalSets    []SetTime
	TrialCuts    []TrialCut
}

// CylinderResult is the strength of cylinders, MPa.
type CylinderResult struct {
	At       time.Time
	Strength float64
	Error    float64 // MPa; 0: 10 % of the strength, 0.5 MPa at least
	// CuredAt is the temperature of a curing tank, °C; nil: they lay with the slab and
	// are set against the mean of its section.
	CuredAt *float64
}

// LoggedTemperature is the temperature of the concrete at a depth, °C.
type LoggedTemperature struct {
	At    time.Time
	Depth float64 // from the top, m
	Value float64
	Error float64 // K; 0: 1
}

// SetTime is when set was found.
type SetTime struct {
	At    time.Time
	Error time.Duration // 0: half an hour
}

// TrialCut is a short cut made to see whether the edge holds.
type TrialCut struct {
	At    time.Time
	Saw   Saw
	Clean bool // it did not ravel
}

// Usual errors, and how sharply a trial cut tells: own judgement.
const (
	cylinderError    = 0.10 // share
	cylinderLeast    = 0.5  // MPa
	temperatureError = 1.0  // K
	setError         = 0.5  // h
	trialSharpness   = 0.15 // of the edge strength
	// Readings of one logger within this time of each other tell hardly more than one:
	// they share its count.
	loggedApart = 3.0 // h
)

// reading is one observation in the form in which members are weighed.
type reading struct {
	what   string
	value  float64
	error  float64
	count  float64 // how many independent readings it stands for, up to 1
	unit   string
	trial  bool // value is 1 for a clean cut, a member gives its edge strength over that needed
	member func(h *History, v *variation) float64
}

// any reports whether anything was observed.
func (o Observed) any() bool {
	return len(o.Cylinders)+len(o.Temperatures)+len(o.InitialSets)+len(o.FinalSets)+len(o.TrialCuts) > 0
}

// readings lists every observation, in a fixed order.
func (o Observed) readings(placed time.Time) []reading {
	hours := func(t time.Time) float64 { return t.Sub(placed).Hours() }
	var out []reading
	for _, c := range o.Cylinders {
		out = append(out, c.reading(hours(c.At)))
	}
	for _, l := range o.Temperatures {
		at := hours(l.At)
		out = append(out, reading{what: fmt.Sprintf("temperature %.0f mm deep, %s", l.Depth*1000, clockText(l.At)), value: l.Value,
			unit: "°C", error: usually(l.Error, temperatureError), count: 1 / o.near(l),
			member: func(h *History, _ *variation) float64 { return h.temperatureAt(at, l.Depth) }})
	}
	sets := func(name string, times []SetTime, of func(*History) float64) {
		for _, s := range times {
			out = append(out, reading{what: name + " set of " + clockText(s.At), value: hours(s.At), unit: "h after placing", count: 1,
				error: usually(s.Error.Hours(), setError), member: func(h *History, _ *variation) float64 { return of(h) }})
		}
	}
	sets("initial", o.InitialSets, func(h *History) float64 { return neverLast(h, h.InitialSet.Surface) })
	sets("final", o.FinalSets, func(h *History) float64 { return neverLast(h, h.FinalSet.Surface) })
	for _, c := range o.TrialCuts {
		out = append(out, c.reading(hours(c.At)))
	}
	return out
}

func clockText(t time.Time) string { return t.Format("2 Jan 15:04") }

// usually is a number, or the usual one where none was given.
func usually(given, usual float64) float64 {
	if given > 0 {
		return given
	}
	return usual
}

func (c CylinderResult) reading(hours float64) reading {
	return reading{what: "cylinders of " + clockText(c.At), value: c.Strength, unit: "MPa", count: 1,
		error: usually(c.Error, math.Max(cylinderError*c.Strength, cylinderLeast)),
		member: func(h *History, v *variation) float64 {
			if c.CuredAt == nil {
				return h.At(hours).Fc
			}
			k := v.column.Concrete
			return k.Properties(hours * k.Hydration.AgeRate(*c.CuredAt)).Strength
		}}
}

func (c TrialCut) reading(hours float64) reading {
	clean := 0.0
	if c.Clean {
		clean = 1
	}
	return reading{what: "trial cut of " + clockText(c.At), value: clean, error: trialSharpness, count: 1, trial: true,
		member: func(h *History, v *variation) float64 {
			m := member{edge: v.edge}
			return h.At(hours).EdgeFc / m.edgeStrength(c.Saw)
		}}
}

// near is how many readings at its depth a reading shares its count with, itself
// included; one far from all others has 1.
func (o Observed) near(l LoggedTemperature) (sum float64) {
	for _, other := range o.Temperatures {
		if apart := l.At.Sub(other.At).Abs().Hours(); apart < loggedApart && other.Depth == l.Depth {
			sum += 1 - apart/loggedApart
		}
	}
	return sum
}

// neverLast puts a set that did not come within the run at its end.
func neverLast(h *History, hours float64) float64 {
	if math.IsNaN(hours) {
		return h.Hours[len(h.Hours)-1]
	}
	return hours
}

// temperatureAt is the temperature at a time in hours and a depth in metres; it needs
// the profiles.
func (h *History) temperatureAt(hours, depth float64) float64 {
	i, s := h.place(hours)
	at := func(values []float64) float64 {
		for k := 0; k+1 < len(h.Depth); k++ {
			if a, b := h.Depth[k], h.Depth[k+1]; depth <= b {
				return values[k] + (values[k+1]-values[k])*math.Max(0, depth-a)/(b-a)
			}
		}
		return values[len(h.Depth)-1]
	}
	return (1-s)*at(h.Temperature[i]) + s*at(h.Temperature[i+1])
}

// seenBy is what a member gives for each observation.
func (o Observed) seenBy(h *History, v *variation) []float64 {
	var out []float64
	for _, r := range o.readings(h.Placed) {
		out = append(out, r.member(h, v))
	}
	return out
}

// likelihood is the logarithm of how likely a reading is if a member is true.
func (r reading) likelihood(seen float64) float64 {
	if r.trial {
		x := (seen - 1) / r.error
		if r.value == 0 {
			x = -x
		}
		return r.count * math.Log(math.Max(0.5*math.Erfc(-x/math.Sqrt2), 1e-6))
	}
	x := (r.value - seen) / r.error
	return -r.count * x * x / 2
}

// problems is what cannot be right about the observations.
func (o Observed) problems(c Column) (wrong []string) {
	within := func(what string, t time.Time) {
		if h := t.Sub(c.Placed).Hours(); !(h >= 0 && h <= c.Until) {
			wrong = append(wrong, fmt.Sprintf("%s at %s is %.1f h after placing, outside the run of 0 to %.0f h: is the date wrong?", what, t.Format("2 Jan 2006 15:04"), h, c.Until))
		}
	}
	number := func(what string, x, low, high float64, unit string) {
		if !(x >= low && x <= high) {
			wrong = append(wrong, fmt.Sprintf("%s %.4g %s is outside %g to %g %s.", what, x, unit, low, high, unit))
		}
	}
	for _, r := range o.Cylinders {
		within("Cylinder result", r.At)
		number("Cylinder strength", r.Strength, 0.01, 150, "MPa")
		if r.CuredAt != nil {
			number("Curing temperature", *r.CuredAt, 0, 100, "°C")
		}
	}
	for _, r := range o.Temperatures {
		within("Temperature", r.At)
		number("Temperature of the concrete", r.Value, -20, 100, "°C")
		number("Depth", r.Depth, 0, c.Thickness, "m")
	}
	for _, r := range append(append([]SetTime(nil), o.InitialSets...), o.FinalSets...) {
		within("Set", r.At)
	}
	for _, r := range o.TrialCuts {
		within("Trial cut", r.At)
		number("Edge strength of the trial cut's saw", r.Saw.Edge, 0.1, 50, "MPa")
	}
	return wrong
}
