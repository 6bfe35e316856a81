package restraint

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"slabwright/working"
)

// The printed formulas are worked again from their inputs, as a checker with a
// pocket calculator would: what stands on the sheet must give the value beside it.
func TestSheetCanBeWorkedAgain(t *testing.T) {
	slow := panelInput()
	slow.Creep, slow.CutDepth, slow.Strain = 2.5, 0, 5e-6
	for _, s := range []working.Sheet{FrictionWorking(panelInput()), FrictionWorking(slow), JointWorking(jointInput())} {
		for _, l := range s.Lines {
			got, err := redo(l)
			if err != nil || math.Abs(got-l.Value) > 1e-9*math.Max(1e-12, math.Abs(l.Value)) {
				t.Errorf("%s: %q gives %.12g (%v), sheet says %.12g", l.Symbol, l.Formula, got, err, l.Value)
			}
		}
	}
}

// redo works a line's formula out from its inputs.
func redo(l working.Line) (v float64, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("%v", p)
		}
	}()
	r := reader{text: []rune(strings.ReplaceAll(l.Formula, " ", "")), symbols: map[string]float64{"π": math.Pi}}
	for _, i := range l.Inputs {
		r.symbols[i.Symbol] = i.Value
	}
	v = r.sum()
	if r.at < len(r.text) {
		return v, fmt.Errorf("stopped at %q", string(r.text[r.at:]))
	}
	return v, nil
}

type reader struct {
	text    []rune
	at      int
	symbols map[string]float64
}

func (r *reader) next() rune {
	if r.at < len(r.text) {
		return r.text[r.at]
	}
	return 0
}

func (r *reader) take(c rune) bool {
	if r.next() == c {
		r.at++
		return true
	}
	return false
}

func (r *reader) sum() float64 {
	v := r.product()
	for {
		switch {
		case r.take('+'):
			v += r.product()
		case r.take('−'):
			v -= r.product()
		default:
			return v
		}
	}
}

func (r *reader) product() float64 {
	v := r.power()
	for {
		switch {
		case r.take('·'):
			v *= r.power()
		case r.take('/'):
			v /= r.power()
		default:
			return v
		}
	}
}

func (r *reader) power() float64 {
	if r.take('−') {
		return -r.power()
	}
	v := r.atom()
	for {
		i := strings.IndexRune("⁰¹²³⁴⁵⁶", r.next())
		if r.next() == 0 || i < 0 {
			break
		}
		n := len([]rune("⁰¹²³⁴⁵⁶"[:i]))
		r.at++
		v = math.Pow(v, float64(n))
	}
	if r.take('^') {
		v = math.Pow(v, r.atom())
	}
	return v
}

var functions = map[string]func(...float64) float64{
	"sqrt": func(x ...float64) float64 { return math.Sqrt(x[0]) }, "ln": func(x ...float64) float64 { return math.Log(x[0]) },
	"sin": func(x ...float64) float64 { return math.Sin(x[0]) }, "cos": func(x ...float64) float64 { return math.Cos(x[0]) },
	"sinh": func(x ...float64) float64 { return math.Sinh(x[0]) }, "cosh": func(x ...float64) float64 { return math.Cosh(x[0]) },
	"min": func(x ...float64) float64 { return math.Min(x[0], math.Min(x[1], x[2])) },
}

func (r *reader) atom() float64 {
	switch {
	case r.take('('):
		v := r.sum()
		if !r.take(')') {
			panic("bracket not closed")
		}
		return v
	case r.take('|'):
		v := r.sum()
		if !r.take('|') {
			panic("bar not closed")
		}
		return math.Abs(v)
	}
	start := r.at
	if unicode.IsDigit(r.next()) {
		for unicode.IsDigit(r.next()) && !strings.ContainsRune("²³¹", r.next()) || r.next() == '.' {
			r.at++
		}
		v, err := strconv.ParseFloat(string(r.text[start:r.at]), 64)
		if err != nil {
			panic(err)
		}
		return v
	}
	for unicode.IsLetter(r.next()) || r.next() == '_' || r.next() == '∞' {
		r.at++
	}
	for r.at > start && r.next() >= '0' && r.next() <= '9' {
		r.at++
	}
	word := string(r.text[start:r.at])
	if f, ok := functions[word]; ok && r.take('(') {
		args := []float64{r.sum()}
		for r.take(',') {
			args = append(args, r.sum())
		}
		if !r.take(')') {
			panic("bracket not closed after " + word)
		}
		return f(args...)
	}
	v, ok := r.symbols[word]
	if !ok {
		panic("no input " + word)
	}
	return v
}
