package causes

import (
	"fmt"
	"math"
	"strconv"

	"slabwright/source"
	"slabwright/working"
)

// limit says where the states of a measured variable begin and end.
type limit struct {
	unit   string
	factor float64 // SI to unit
	bounds []float64
	above  bool // a value on a bound belongs to the band above it
	falls  bool // states fall as the value rises
	text   string
}

var limits = readLimits()

func readLimits() map[string]limit {
	all := map[string]limit{}
	for _, r := range readTable("limits.csv") {
		l := limit{unit: r["unit"], above: r["edge"] == "up", falls: r["order"] == "down", text: r["text"]}
		var err error
		if l.factor, err = strconv.ParseFloat(r["to_unit"], 64); err != nil {
			panic("causes: limits.csv: " + err.Error())
		}
		for _, b := range r.list("limits") {
			v, err := strconv.ParseFloat(b, 64)
			if err != nil {
				panic("causes: limits.csv: " + err.Error())
			}
			l.bounds = append(l.bounds, v)
		}
		if v := FindVariable(r["variable"]); v == nil || len(v.States) != len(l.bounds)+1 && !restApart(v) {
			panic("causes: limits.csv: " + r["variable"] + " does not have one limit less than states")
		}
		all[r["variable"]] = l
	}
	return all
}

// restApart is for variables whose last state is not a value at all.
func restApart(v *Variable) bool { return v.Name == "cover" }

// slack keeps a value that was read on a limit on it, in spite of the rounding of
// its conversion: far below any tool's resolution.
const slack = 1e-9

// band returns the number of the band a value (in the limit's unit) falls into.
func (l limit) band(value float64) int {
	n := 0
	for _, b := range l.bounds {
		near := math.Abs(value-b) <= slack*math.Max(1, b)
		if value > b && !near || near && l.above {
			n++
		}
	}
	return n
}

func (l limit) state(v *Variable, band int) string {
	if l.falls {
		return v.States[len(l.bounds)-band]
	}
	return v.States[band]
}

// StateOf returns the state of a measured variable for a value in SI units. It
// reports a variable that is not measured, or a value that is not a number from
// zero up.
func StateOf(variable string, value float64) (string, error) {
	l, ok := limits[variable]
	if !ok {
		return "", fmt.Errorf("%s is not told by a number", variable)
	}
	if !(value >= 0) || math.IsInf(value, 0) {
		return "", fmt.Errorf("%s is %g; it must be a number from 0 up", variable, value)
	}
	return l.state(FindVariable(variable), l.band(value*l.factor)), nil
}

// firm is the share of a fact's range that must lie in one state for it to count
// as that state without doubt.
const firm = 0.95

// measured turns a number into an observation. A range that reaches into other
// states makes shares of them, as if every value in it were equally likely.
func measured(variable string, f *source.Fact, from, workingID string) (Observation, error) {
	o := Observation{Variable: variable, From: from, Known: f.Known, Working: workingID}
	low, high := f.Bounds()
	for _, x := range []float64{f.Value, low, high} {
		if _, err := StateOf(variable, x); err != nil {
			return o, err
		}
	}
	if low > f.Value || high < f.Value {
		return o, fmt.Errorf("%s: the range %g to %g does not hold the value %g", variable, low, high, f.Value)
	}
	l := limits[variable]
	o.State, _ = StateOf(variable, f.Value)
	o.Text = fmt.Sprintf(l.text, working.Figure(f.Value*l.factor, 2))
	if high > low {
		o.Text += fmt.Sprintf(" (%s to %s)", working.Figure(low*l.factor, 2), working.Figure(high*l.factor, 2))
		if shares := l.shares(FindVariable(variable), low*l.factor, high*l.factor); shares[o.State] < firm {
			o.Weights = shares
		}
	}
	if variable == "age" {
		o.Text = "it was first seen " + duration(f.Value) + " after placing"
	}
	return o, nil
}

// shares returns how much of a range lies in each state.
func (l limit) shares(v *Variable, low, high float64) map[string]float64 {
	edges := append([]float64{math.Inf(-1)}, l.bounds...)
	edges = append(edges, math.Inf(1))
	all := map[string]float64{}
	for i := 0; i+1 < len(edges); i++ {
		part := math.Min(high, edges[i+1]) - math.Max(low, edges[i])
		if part > 0 {
			all[l.state(v, i)] = part / (high - low)
		}
	}
	return all
}

// duration writes seconds the way people say an age.
func duration(seconds float64) string {
	h := seconds / 3600
	switch {
	case h < 1:
		return working.Figure(h*60, 2) + " minutes"
	case h < 72:
		return working.Figure(h, 2) + " hours"
	case h < 60*24:
		return working.Figure(math.Round(h/24), 2) + " days"
	case h < 24*24*30.4:
		return working.Figure(math.Round(h/24/30.44), 2) + " months"
	}
	return working.Figure(h/8766, 2) + " years"
}

// length writes metres the way people read a tape: millimetres below one metre.
func length(metres float64) string {
	if math.Abs(metres) < 0.9995 {
		return fmt.Sprintf("%.0f mm", 1000*metres)
	}
	return working.Figure(metres, 3) + " m"
}
