package unit

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
)

var fractionSigns = map[rune]float64{'¼': 1. / 4, '½': 1. / 2, '¾': 3. / 4, '⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8, '⅓': 1. / 3, '⅔': 2. / 3}

// plainSpaces turns every kind of space into one blank, and the true minus and
// dashes used for it into a hyphen.
func plainSpaces(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r) || r == '\u2009' || r == '\u202f' || r == '\u200a' || r == '\u2007':
			return ' '
		case r == '−' || r == '–' || r == '‑':
			return '-'
		case r == '⁄' || r == '∕':
			return '/'
		}
		return r
	}, text)
}

// splitNumber parts "6 1/2 in" into the text of its number and of its unit.
func splitNumber(text string) (number, unit string) {
	s := strings.TrimSpace(plainSpaces(text))
	end := 0
	runes := []rune(s)
	for i := 0; i < len(runes); i++ {
		r := runes[i]
		_, fraction := fractionSigns[r]
		digit := r >= '0' && r <= '9'
		next := func(n int) bool { return i+n < len(runes) && runes[i+n] >= '0' && runes[i+n] <= '9' }
		switch {
		case digit || fraction:
			end = i + 1
		case (r == 'e' || r == 'E') && end == i && i > 0 &&
			(next(1) || i+2 < len(runes) && (runes[i+1] == '-' || runes[i+1] == '+') && next(2)):
			i++ // the sign or first digit of a power of ten
			end = i + 1
		case strings.ContainsRune(" .,+-/", r):
		default:
			return strings.TrimSpace(string(runes[:end])), strings.TrimSpace(string(runes[end:]))
		}
	}
	return strings.TrimSpace(string(runes[:end])), strings.TrimSpace(string(runes[end:]))
}

// number reads "12.5", "12,5", "-3", "1/4", "6 1/2", "6-1/2", "6½", "4 000" and
// "1.5e-3". It refuses "1,500", which may be one and a half or fifteen hundred.
func number(text string) (float64, error) {
	s := strings.TrimSpace(plainSpaces(text))
	sign := 1.0
	if rest, ok := strings.CutPrefix(s, "-"); ok {
		sign, s = -1, strings.TrimSpace(rest)
	} else if rest, ok := strings.CutPrefix(s, "+"); ok {
		s = strings.TrimSpace(rest)
	}
	if s == "" {
		return 0, errors.New("there is no number")
	}
	whole, part, err := fraction(s)
	if err != nil {
		return 0, err
	}
	if whole == "" {
		return sign * part, nil
	}
	v, err := decimal(whole)
	if err != nil {
		return 0, err
	}
	if part != 0 && v != math.Trunc(v) {
		return 0, fmt.Errorf("%q mixes decimals and a fraction", text)
	}
	return sign * (v + part), nil
}

// fraction takes the fraction off the end of a number: "6 1/2" is "6" and 0.5.
func fraction(s string) (whole string, part float64, err error) {
	runes := []rune(s)
	if v, ok := fractionSigns[runes[len(runes)-1]]; ok {
		return strings.TrimRight(string(runes[:len(runes)-1]), " -"), v, nil
	}
	above, below, ok := strings.Cut(s, "/")
	if !ok {
		return s, 0, nil
	}
	above = strings.TrimSpace(above)
	if i := strings.LastIndexAny(above, " -"); i >= 0 {
		whole, above = strings.TrimRight(above[:i], " -"), above[i+1:]
	}
	top, err1 := strconv.ParseUint(above, 10, 32)
	bottom, err2 := strconv.ParseUint(strings.TrimSpace(below), 10, 32)
	if err1 != nil || err2 != nil || bottom == 0 {
		return "", 0, fmt.Errorf("%q is not a fraction such as 1/4 or 6 1/2", s)
	}
	return whole, float64(top) / float64(bottom), nil
}

// decimal reads a number with a decimal point or comma and grouped thousands.
func decimal(s string) (float64, error) {
	mantissa, power := s, ""
	if i := strings.IndexAny(s, "eE"); i >= 0 {
		mantissa, power = s[:i], s[i:]
	}
	plain, err := ungroup(mantissa)
	if err != nil {
		return 0, err
	}
	if strings.Trim(plain, "0123456789.") != "" {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	v, err := strconv.ParseFloat(plain+power, 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	return v, nil
}

// ungroup takes thousands marks out and turns a decimal comma into a point.
func ungroup(s string) (string, error) {
	commas, points, spaces := strings.Count(s, ","), strings.Count(s, "."), strings.Count(s, " ")
	mark, point := "", ""
	switch {
	case spaces > 0:
		mark, point = " ", "."
		if commas > 0 {
			point = ","
		}
	case commas > 0 && points > 0:
		mark, point = ",", "."
		if strings.LastIndex(s, ",") > strings.LastIndex(s, ".") {
			mark, point = ".", ","
		}
	case commas > 1:
		mark = ","
	case points > 1:
		mark = "."
	case commas == 1:
		before, after, _ := strings.Cut(s, ",")
		if len(after) == 3 && len(before) > 0 && len(before) <= 3 && before[0] != '0' {
			return "", fmt.Errorf("%q may be %s.%s or %s%s: write it with a point, or without the comma", s, before, after, before, after)
		}
		point = ","
	default:
		point = "."
	}
	whole, rest := s, ""
	if point != "" {
		var found bool
		if whole, rest, found = strings.Cut(s, point); found {
			rest = "." + rest
		}
	}
	if mark != "" {
		groups := strings.Split(whole, mark)
		for i, g := range groups {
			if i > 0 && len(g) != 3 || i == 0 && (g == "" || len(g) > 3) {
				return "", fmt.Errorf("%q is not a number: thousands come in groups of three digits", s)
			}
		}
		whole = strings.Join(groups, "")
	}
	return whole + rest, nil
}
