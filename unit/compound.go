package unit

import (
	"fmt"
	"math"
	"strings"
)

// compound reads what is written in two or three units: 3'-6 1/2", 9h30m,
// 12°30'. It reports false when the text is not of that form.
func compound(q Quantity, text string) (value float64, ok bool, err error) {
	steps := map[Quantity][]step{
		LengthOf:   {{"ft", 12, []string{"ft", "feet", "foot", "'", "′", "’"}}, {"in", 0, []string{"in", "inches", "inch", `"`, "″", "”", "''"}}},
		DurationOf: {{"week", 7, []string{"weeks", "week", "wk"}}, {"d", 24, []string{"days", "day", "d"}}, {"h", 60, []string{"hours", "hour", "hrs", "hr", "h"}}, {"min", 60, []string{"minutes", "minute", "mins", "min", "m"}}, {"s", 0, []string{"seconds", "second", "secs", "sec", "s"}}},
	}[q]
	if q == AngleOf {
		return arc(text)
	}
	if steps == nil {
		return 0, false, nil
	}
	return chain(q, text, steps)
}

// step is one unit of a chain; the next smaller unit must stay below limit.
type step struct {
	unit  string
	limit float64
	signs []string
}

func chain(q Quantity, text string, steps []step) (float64, bool, error) {
	s := strings.TrimSpace(plainSpaces(text))
	sign := 1.0
	if rest, cut := strings.CutPrefix(s, "-"); cut {
		sign, s = -1, strings.TrimSpace(rest)
	}
	total, parts, limit, larger := 0.0, 0, math.Inf(1), ""
	if strings.HasPrefix(s, "-") {
		return 0, false, nil
	}
	for s != "" {
		digits, rest := leadingNumber(s)
		i, sign := leadingSign(rest, steps)
		if digits == "" || i < 0 {
			return 0, false, nil
		}
		v, err := number(digits)
		if err != nil {
			return 0, parts > 0, err
		}
		if v >= limit {
			return 0, true, fmt.Errorf("%g %s is more than one %s takes", v, steps[i].unit, larger)
		}
		total += must(q, steps[i].unit).toBase(v)
		parts, limit, larger = parts+1, steps[i].limit, steps[i].unit
		steps = steps[i+1:]
		s = strings.TrimLeft(strings.TrimPrefix(rest, sign), " -,")
	}
	return sign * total, parts > 1 || parts == 1 && q == LengthOf, nil
}

func leadingNumber(s string) (digits, rest string) {
	digits, rest = splitNumber(s)
	return strings.TrimSpace(digits), strings.TrimSpace(rest)
}

// leadingSign finds which unit of the chain the text begins with, by its longest
// spelling; the letters must end there.
func leadingSign(s string, steps []step) (int, string) {
	at, found := -1, ""
	for i, st := range steps {
		for _, sign := range st.signs {
			if len(sign) > len(found) && len(s) >= len(sign) && strings.EqualFold(s[:len(sign)], sign) && !letterAt(s, len(sign)) {
				at, found = i, s[:len(sign)]
			}
		}
	}
	return at, found
}

func letterAt(s string, i int) bool {
	return i < len(s) && (s[i] >= 'a' && s[i] <= 'z' || s[i] >= 'A' && s[i] <= 'Z' || s[i] == '/' || s[i] == '^' || s[i] == '.')
}

// arc reads degrees, minutes and seconds.
func arc(text string) (float64, bool, error) {
	s := strings.TrimSpace(plainSpaces(text))
	degrees, rest, ok := strings.Cut(s, "°")
	if rest = strings.TrimSpace(rest); !ok || rest == "" {
		return 0, false, nil
	}
	v, err := number(degrees)
	if err != nil {
		return 0, true, err
	}
	sign := 1.0
	if strings.HasPrefix(strings.TrimSpace(degrees), "-") {
		sign = -1
	}
	rest = strings.NewReplacer("′", "'", "’", "'", "″", `"`, "”", `"`, "''", `"`).Replace(rest)
	for _, part := range []struct {
		mark  string
		share float64
	}{{"'", 60}, {`"`, 3600}} {
		before, after, found := strings.Cut(rest, part.mark)
		if !found {
			continue
		}
		m, err := number(before)
		if err != nil {
			return 0, true, err
		}
		if m < 0 || m >= 60 {
			return 0, true, fmt.Errorf("%s%s is outside 0 to 60", strings.TrimSpace(before), part.mark)
		}
		v += sign * m / part.share
		rest = strings.TrimSpace(after)
	}
	if rest != "" {
		return 0, true, fmt.Errorf("%q is left over", rest)
	}
	return v, true, nil
}
