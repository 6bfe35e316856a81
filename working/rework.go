package working

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// Rework works the line's formula out again from its inputs, as a checker with a
// pocket calculator would. It must give the line's value; a test holds that for
// every sheet of the worked example.
//
// It knows + − · / ^, raised digits, √, brackets, bars for the absolute value, π,
// e, and the functions of the table below. The error says where it stopped.
func (l Line) Rework() (value float64, err error) {
	symbols := map[string]float64{"π": math.Pi, "e": math.E}
	for _, in := range l.Inputs {
		symbols[in.Symbol] = in.Value
	}
	r := &reader{text: []rune(strings.TrimSpace(l.Formula)), symbols: symbols}
	defer func() {
		if p := recover(); p != nil {
			stop, ok := p.(unreadable)
			if !ok {
				panic(p)
			}
			err = fmt.Errorf("formula %q: %s", l.Formula, string(stop))
		}
	}()
	value = r.sum()
	if r.at < len(r.text) {
		r.stop("cannot go on at " + string(r.text[r.at:]))
	}
	return value, nil
}

// unreadable is what a reader stops with.
type unreadable string

// reader works a formula out from left to right, binding as on paper.
type reader struct {
	text    []rune
	at      int
	symbols map[string]float64
}

func (r *reader) stop(why string) { panic(unreadable(why)) }

// next returns the rune to come, spaces passed over; 0 at the end.
func (r *reader) next() rune {
	for r.at < len(r.text) && (r.text[r.at] == ' ' || r.text[r.at] == '\u202f') {
		r.at++
	}
	if r.at < len(r.text) {
		return r.text[r.at]
	}
	return 0
}

// take moves on over one of the runes and reports whether it did.
func (r *reader) take(any string) bool {
	if c := r.next(); c != 0 && strings.ContainsRune(any, c) {
		r.at++
		return true
	}
	return false
}

func (r *reader) sum() float64 {
	v := r.product()
	for {
		switch {
		case r.take("+"):
			v += r.product()
		case r.take("−-"):
			v -= r.product()
		default:
			return v
		}
	}
}

func (r *reader) product() float64 {
	v := r.signed()
	for {
		switch {
		case r.take("·×*"):
			v *= r.signed()
		case r.take("/"):
			v /= r.signed()
		default:
			return v
		}
	}
}

func (r *reader) signed() float64 {
	if r.take("−-") {
		return -r.signed()
	}
	return r.power()
}

const raisedDigits = "⁰¹²³⁴⁵⁶⁷⁸⁹"

func (r *reader) power() float64 {
	v := r.atom()
	if c := r.next(); c == '⁻' || c != 0 && strings.ContainsRune(raisedDigits, c) {
		v = math.Pow(v, r.raised())
	}
	if r.take("^") {
		if r.take("−-") {
			return math.Pow(v, -r.atom())
		}
		return math.Pow(v, r.atom())
	}
	return v
}

// raised reads a power written in raised digits.
func (r *reader) raised() float64 {
	sign := 1.0
	if r.take("⁻") {
		sign = -1
	}
	n := 0.0
	for {
		i := strings.IndexRune(raisedDigits, r.next())
		if r.next() == 0 || i < 0 {
			return sign * n
		}
		n = 10*n + float64(len([]rune(raisedDigits[:i])))
		r.at++
	}
}

// functions are what may stand in a formula by name.
var functions = map[string]func(x []float64) float64{
	"sqrt": one(math.Sqrt), "ln": one(math.Log), "log10": one(math.Log10), "exp": one(math.Exp), "erf": one(math.Erf), "abs": one(math.Abs),
	"sin": one(math.Sin), "cos": one(math.Cos), "tan": one(math.Tan), "sinh": one(math.Sinh), "cosh": one(math.Cosh), "tanh": one(math.Tanh),
	"max": most(math.Max), "min": most(math.Min),
}

func one(f func(float64) float64) func([]float64) float64 {
	return func(x []float64) float64 { return f(x[0]) }
}

func most(f func(a, b float64) float64) func([]float64) float64 {
	return func(x []float64) float64 {
		v := x[0]
		for _, y := range x[1:] {
			v = f(v, y)
		}
		return v
	}
}

func (r *reader) atom() float64 {
	switch {
	case r.take("("):
		return r.closed(")")
	case r.take("["):
		return r.closed("]")
	case r.take("{"):
		return r.closed("}")
	case r.take("|"):
		return math.Abs(r.closed("|"))
	case r.take("√"):
		return math.Sqrt(r.atom())
	case unicode.IsDigit(r.next()):
		return r.number()
	}
	return r.word()
}

func (r *reader) closed(by string) float64 {
	v := r.sum()
	if !r.take(by) {
		r.stop("no " + by + " after " + string(r.text[:r.at]))
	}
	return v
}

func (r *reader) number() float64 {
	start := r.at
	for r.at < len(r.text) && (r.text[r.at] >= '0' && r.text[r.at] <= '9' || r.text[r.at] == '.') {
		r.at++
	}
	v, err := strconv.ParseFloat(string(r.text[start:r.at]), 64)
	if err != nil {
		r.stop("no number: " + string(r.text[start:r.at]))
	}
	if unicode.IsLetter(r.next()) || r.next() == '(' { // 2L and 2(a + b) are products
		v *= r.power()
	}
	return v
}

// word reads a symbol or a function.
func (r *reader) word() float64 {
	r.next()
	start := r.at
	for r.at < len(r.text) && (symbolRune(r.text, r.at) || r.text[r.at] == '∞') {
		r.at++
	}
	word := string(r.text[start:r.at])
	if f, ok := functions[word]; ok && r.take("([") {
		x := []float64{r.sum()}
		for r.take(",;") {
			x = append(x, r.sum())
		}
		if !r.take(")]") {
			r.stop("no ) after " + word)
		}
		return f(x)
	}
	v, ok := r.symbols[word]
	if !ok {
		r.stop(fmt.Sprintf("no input %q", word))
	}
	return v
}
