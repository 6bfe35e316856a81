package causes

import (
	"fmt"
	"math"
)

// About says a chance the way a lay reader takes it right: "about 7 in 10". No
// more than two figures are given, since nothing here is known better.
func About(p float64) string {
	switch {
	case math.IsNaN(p):
		return "not known"
	case p < 0.005:
		return "less than 1 in 100"
	case p < 0.095:
		return fmt.Sprintf("about %d in 100", int(math.Round(100*p)))
	case p > 0.995:
		return "more than 99 in 100"
	case p > 0.905:
		return fmt.Sprintf("about %d in 100", int(math.Round(100*p)))
	}
	return fmt.Sprintf("about %d in 10", int(math.Round(10*p)))
}

// AboutRange is [About] with the range in brackets: "about 7 in 10 (5 to 9 in 10)".
func AboutRange(p, low, high float64) string {
	return fmt.Sprintf("%s (%s)", About(p), Range(p, low, high))
}

// Range is the range of a chance out of as many as [About] counts it: "5 to 9 in 10".
func Range(p, low, high float64) string {
	if p < 0.095 || p > 0.905 {
		return between(low, high, 100)
	}
	return between(low, high, 10)
}

// between writes a range as counts out of so many; a chance that is not certain
// is never written as none or all.
func between(low, high float64, of int) string {
	n := float64(of)
	l, h := int(math.Round(n*low)), int(math.Round(n*high))
	upper := fmt.Sprint(h)
	if h == of && high < 1 {
		upper = fmt.Sprintf("over %d", of-1)
	}
	lower := fmt.Sprint(l)
	switch {
	case l == of && low < 1:
		return fmt.Sprintf("over %d in %d", of-1, of)
	case h == 0 && high > 0:
		return fmt.Sprintf("under 1 in %d", of)
	case l == 0 && low > 0:
		lower = "under 1"
	case l == h:
		return fmt.Sprintf("%d in %d throughout", l, of)
	}
	return fmt.Sprintf("%s to %s in %d", lower, upper, of)
}
