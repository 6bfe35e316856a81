package job

import (
	"fmt"
	"strings"

	"slabwright/source"
	"slabwright/unit"
	"slabwright/working"
)

// check compares one number with its row of ranges.csv: outside the range it
// is an error with the likely mend, outside the usual range a warning.
func (r Range) check(field string, value float64) (Problem, bool) {
	p := Problem{Code: "range", Field: field, Found: r.Label + " " + r.with(value)}
	switch {
	case value >= r.UsualMin && value <= r.UsualMax:
		return Problem{}, false
	case !(value >= r.Min && value <= r.Max): // NaN too
		p.Level, p.Want = Error, fmt.Sprintf("%s to %s (%s; %s)", plainNumber(r.Min), r.with(r.Max), r.Why, r.Source)
	default:
		p.Level, p.Code = Warning, "unusual"
		p.Want = fmt.Sprintf("%s to %s is usual (%s)", plainNumber(r.UsualMin), r.with(r.UsualMax), r.Why)
	}
	if mend, how, ok := r.mend(value); ok {
		p.Mend = fmt.Sprintf("Did you mean %s? That is %s.", plainNumber(mend), how)
	} else if p.Level == Error {
		p.Mend = "Look it up again, or leave it out where nobody knows it."
	}
	return p, true
}

// mend finds the value that was probably meant: the first way of typing it that
// lands in the usual range.
func (r Range) mend(value float64) (meant float64, how string, ok bool) {
	for _, typed := range r.TypedAs {
		v := value
		how = ""
		for _, step := range strings.Fields(typed) {
			switch step {
			case "x0.1":
				v /= 10
				how = strings.TrimSpace(how + " with the decimal point one place on")
			case "%":
				v /= 100
				how = plainNumber(value) + " % as a share"
			default:
				base := unit.Convert(r.Quantity, value, step, unit.Names(r.Quantity)[0])
				v = unit.Convert(r.Quantity, base, unit.Names(r.Quantity)[0], r.Unit)
				how = plainNumber(value) + " " + step
				if r.Unit != "" {
					how += " in " + r.Unit
				}
			}
		}
		if v >= r.UsualMin && v <= r.UsualMax {
			if strings.HasPrefix(how, "with") {
				how = plainNumber(value) + " " + how
			}
			return v, how, true
		}
	}
	return 0, "", false
}

func (r Range) with(v float64) string {
	return strings.TrimSpace(plainNumber(v) + " " + strings.Replace(r.Unit, "/K", "1/K", 1))
}

func plainNumber(v float64) string {
	s := working.Figure(v, 4)
	if strings.Contains(s, ".") && !strings.Contains(s, "·") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// checkFact checks a fact beside its range: low, value and high in order, and how
// it is known.
func checkFact(field, pattern string, f source.Fact) []Problem {
	var problems []Problem
	if r, ok := ranges[pattern]; ok {
		if p, bad := r.check(field, f.Value); bad {
			problems = append(problems, p)
		}
		low, high := f.Bounds()
		if len(problems) == 0 && (low < r.Min || high > r.Max) {
			problems = append(problems, Problem{Level: Error, Code: "range", Field: field,
				Found: fmt.Sprintf("%s from %s to %s", r.Label, plainNumber(low), r.with(high)),
				Want:  fmt.Sprintf("a range within %s to %s", plainNumber(r.Min), r.with(r.Max)), Mend: "Narrow the range."})
		}
	}
	low, high := f.Bounds()
	if !(low <= f.Value && f.Value <= high) {
		p := Problem{Level: Error, Code: "range-order", Field: field,
			Found: fmt.Sprintf("low %s, value %s, high %s", plainNumber(low), plainNumber(f.Value), plainNumber(high)),
			Want:  "low ≤ value ≤ high", Mend: "The value must lie in its own range."}
		if low > high {
			p.Mend = "Low and high are probably swapped."
		}
		problems = append(problems, p)
	}
	return append(problems, checkKnown(field, f.Known)...)
}

var knownWords = []string{string(source.Measured), string(source.Recorded), string(source.Assumed), string(source.Default)}

func checkKnown(field string, k source.Known) []Problem {
	return checkWord(Problem{Level: Error, Code: "known-word", Field: field + ".known", Found: fmt.Sprintf("known %q", k)}, string(k), knownWords)
}

// checkWord finishes the problem when a word is none of those allowed.
func checkWord(p Problem, word string, words []string) []Problem {
	for _, w := range words {
		if w == word {
			return nil
		}
	}
	p.Want = "one of: " + strings.Join(words, ", ")
	if near, ok := nearWord(word, words); ok {
		p.Mend = fmt.Sprintf("Did you mean %q?", near)
	}
	return []Problem{p}
}

// nearWord is [unit.Nearest] after joining marks are made alike: part_top is
// part-top.
func nearWord(word string, words []string) (string, bool) {
	plain := strings.NewReplacer("_", "-", " ", "-")
	for _, w := range words {
		if strings.EqualFold(plain.Replace(w), plain.Replace(word)) {
			return w, true
		}
	}
	if near, ok := unit.Nearest(word, words); ok {
		return near, true
	}
	for _, w := range words { // "dense" for "dense_trowel"
		first, _, _ := strings.Cut(plain.Replace(strings.ToLower(word)), "-")
		if len(first) > 3 && strings.HasPrefix(w, first) {
			return w, true
		}
	}
	return "", false
}
