package unit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// ParseError says why a quantity was not read.
type ParseError struct {
	Text     string   // as typed
	Quantity Quantity // what was expected
	Why      string
	Units    []string // the units that would do
	Mend     string   // "did you mean ..."; empty when there is no likely one
}

// Error returns one sentence with what was found, why it was not taken, the units
// that would do and the likely mend.
func (e *ParseError) Error() string {
	s := fmt.Sprintf("%s %q: %s", e.Quantity, e.Text, e.Why)
	if len(e.Units) > 0 {
		s += " (" + strings.Join(e.Units, ", ") + ")"
	}
	if e.Mend != "" {
		s += ". Did you mean " + e.Mend + "?"
	}
	return s
}

// Parse reads a quantity typed in any of its units and returns it in its base
// unit. A bare number is refused unless it is the same in every unit.
func Parse(q Quantity, text string) (float64, error) {
	fail := func(why, mend string, units ...string) (float64, error) {
		return 0, &ParseError{Text: text, Quantity: q, Why: why, Units: units, Mend: mend}
	}
	if strings.TrimSpace(plainSpaces(text)) == "" {
		return fail("nothing was typed", "")
	}
	if v, ok, err := compound(q, text); ok {
		if err != nil {
			return fail(err.Error(), "")
		}
		return fifteenFigures(v), nil
	}
	digits, name := splitNumber(text)
	if digits == "" {
		return fail("there is no number; write one with its unit", "", Names(q)...)
	}
	if strings.HasPrefix(name, "/") { // "0.5 1/K": the one belongs to the unit
		digits = strings.TrimSuffix(digits, " 1")
	}
	v, err := number(digits)
	if err != nil {
		return fail(err.Error(), "")
	}
	if name == "" {
		return bare(q, v, digits, fail)
	}
	u, ok := Find(q, name)
	if !ok {
		return fail(unknownUnit(q, name), meant(q, digits, name), Names(q)...)
	}
	base := u.toBase(v)
	if math.IsNaN(base) || math.IsInf(base, 0) {
		return fail("the number is too large", "")
	}
	if q == TemperatureOf && base < -273.15-1e-9 {
		return fail("this is below absolute zero, −273.15 °C", "")
	}
	return fifteenFigures(base), nil
}

// fifteenFigures rounds off what binary arithmetic leaves at the end, so that 6 in
// is 0.1524 m in a file and not 0.15239999999999998.
func fifteenFigures(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 14, 64), 64)
	if err != nil {
		return v
	}
	return r
}

// bare takes a number without a unit: nought where it is nought in every unit, a
// share from 0 up to below 1. Everything else is asked about.
func bare(q Quantity, v float64, digits string, fail func(string, string, ...string) (float64, error)) (float64, error) {
	offset := q == TemperatureOf
	switch {
	case v == 0 && !offset:
		return 0, nil
	case q == ShareOf && v > 0 && v < 1:
		return v, nil
	case q == ShareOf && v == 1:
		return fail("1 may be one in a hundred or the whole", "1 % or 100 %", "%", "a number below 1")
	case q == ShareOf:
		return fail("a share without % lies between 0 and 1", digits+" %", "%", "a number below 1")
	}
	return fail("the unit is missing; write one of these behind the number", "", Names(q)...)
}

func unknownUnit(q Quantity, name string) string {
	for _, u := range units {
		if u.Quantity == q {
			continue
		}
		if other, ok := Find(u.Quantity, name); ok {
			return fmt.Sprintf("%s is a unit of %s, not of %s", other.Name, other.Quantity, q)
		}
	}
	return fmt.Sprintf("%q is no unit of %s", name, q)
}

func meant(q Quantity, digits, name string) string {
	var words []string
	for _, u := range Units(q) {
		words = append(words, u.Name)
		words = append(words, u.Also...)
	}
	if near, ok := Nearest(plainUnit(name), words); ok {
		if u, ok := Find(q, near); ok {
			near = u.Name
		}
		return digits + " " + near
	}
	return ""
}

// Nearest returns the word that a mistyped one most likely stands for: equal but
// for case, or at most a third of its letters (and not more than two) wrong,
// swapped, missing or too many. Of equally near words the first wins.
func Nearest(word string, words []string) (string, bool) {
	best, at := 1+min(2, max(1, len([]rune(word))/3)), -1
	w := []rune(strings.ToLower(word))
	for i, candidate := range words {
		c := []rune(strings.ToLower(candidate))
		if len(w) <= 1 && len(c) != len(w) || len(c) == 0 || len(w) == 0 {
			continue
		}
		if d := apart(w, c); d < best && d < len(c) {
			best, at = d, i
		}
	}
	if at < 0 {
		return "", false
	}
	return words[at], true
}

// apart counts the letters to change, add, drop or swap with a neighbour (the
// restricted Damerau-Levenshtein distance).
func apart(a, b []rune) int {
	before, last, row := []int(nil), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, make([]int, len(b)+1)
	}
	return last[len(b)]
}
