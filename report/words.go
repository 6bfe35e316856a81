package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"slabwright/causes"
	"slabwright/source"
)

// thin stands between a number and its unit and keeps them on one line.
const thin = "\u202f"

// signed writes a true minus.
func signed(s string) string { return strings.Replace(s, "-", "−", 1) }

// fixed writes a number with so many decimals.
func fixed(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "not known"
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return signed(s)
}

// with puts a unit behind a number.
func with(number, unit string) string { return number + thin + unit }

// millimetres writes metres as millimetres, with a decimal below 10 mm and two
// below 1 mm.
func millimetres(m float64) string {
	v := m * 1000
	switch a := math.Abs(v); {
	case a >= 9.95 || v == math.Trunc(v):
		return fixed(v, 0)
	case a >= 0.995:
		return fixed(v, 1)
	}
	return strings.TrimSuffix(fixed(v, 2), "0")
}

// ranged writes a fact with its range and how it is known: "0.6 mm (0.5 to 0.8),
// measured".
func ranged(f *source.Fact, write func(float64) string, unit string) string {
	if f == nil {
		return "not known"
	}
	s := with(write(f.Value), unit)
	if f.Low != nil || f.High != nil {
		low, high := f.Bounds()
		s += " (" + write(low) + " to " + write(high) + ")"
	}
	return s + ", " + string(f.Known)
}

// clock writes times in the site's zone.
type clock struct {
	zone *time.Location
	name string
}

// clockOf returns the clock of the site. Where the zone's rules are not to be had
// times are written in UTC and say so.
func clockOf(h Head) clock {
	if z, err := time.LoadLocation(h.Zone); err == nil && h.Zone != "" {
		return clock{z, h.Zone}
	}
	return clock{time.UTC, "UTC"}
}

// hour is "Wed 14 May 19:30".
func (c clock) hour(t time.Time) string { return c.write(t, "Mon 2 Jan 15:04") }

// short is "Wed 19:30".
func (c clock) short(t time.Time) string { return c.write(t, "Mon 15:04") }

// time is "19:30".
func (c clock) time(t time.Time) string { return c.write(t, "15:04") }

// day is "Wed 14 May 2025".
func (c clock) day(t time.Time) string { return c.write(t, "Mon 2 January 2006") }

func (c clock) write(t time.Time, form string) string {
	s := t.In(c.zone).Format(form)
	if c.name == "UTC" && strings.Contains(form, "15") {
		s += " UTC"
	}
	return s
}

// hourOr is hour, or a word where the time is not known.
func (c clock) hourOr(t *time.Time, absent string) string {
	if t == nil {
		return absent
	}
	return c.hour(*t)
}

// span writes a time with the earliest and latest it may be.
func (c clock) span(t, low, high *time.Time, absent string) string {
	s := c.hourOr(t, absent)
	if low != nil && high != nil {
		s += " (" + c.spanEnd(*low, t) + " to " + c.spanEnd(*high, t) + ")"
	}
	return s
}

// spanShort is span without dates, for tables of one day and night.
func (c clock) spanShort(t, low, high *time.Time, absent string) string {
	s := c.shortOr(t, absent)
	if low != nil && high != nil {
		s += " (" + c.spanEnd(*low, t) + " to " + c.spanEnd(*high, t) + ")"
	}
	return s
}

// shortOr is short, or a word where the time is not known.
func (c clock) shortOr(t *time.Time, absent string) string {
	if t == nil {
		return absent
	}
	return c.short(*t)
}

func (c clock) spanEnd(t time.Time, beside *time.Time) string {
	if beside != nil && t.In(c.zone).YearDay() == beside.In(c.zone).YearDay() {
		return c.time(t)
	}
	return c.short(t)
}

// span is the range of a chance, "6 to 8 in 10", and nothing where both ends round to
// the same.
func (c Chance) span() string {
	if text := causes.Range(c.P, c.Low, c.High); strings.Contains(text, " to ") {
		return text
	}
	return ""
}

// Words is the chance as a sentence says it: "about 7 in 10 (5 to 8 in 10)".
func (c Chance) Words() string {
	about := c.About
	if about == "" {
		about = fmt.Sprintf("about %.0f in 10", math.Round(c.P*10))
	}
	if span := c.span(); span != "" && !strings.Contains(about, "(") {
		return about + " (" + span + ")"
	}
	return about
}

// Lines is Words with the range on a line of its own.
func (c Chance) Lines() string { return tidy(strings.Replace(c.Words(), " (", "\n(", 1)) }

// chanceWords is Words, or a dash.
func chanceWords(c *Chance) string {
	if c == nil {
		return "–"
	}
	return c.Words()
}

// or returns s, or a word where it is empty.
func or(s, absent string) string {
	if strings.TrimSpace(s) == "" {
		return absent
	}
	return s
}

// number writes an optional number, or a dash.
func number(v *float64, scale float64, decimals int) string {
	if v == nil {
		return "–"
	}
	return fixed(*v*scale, decimals)
}

// plainWord reports whether a text begins with a word that may take a capital: not
// with a symbol such as w/c or ε_sh.
func plainWord(s []rune) bool {
	if s[0] < 'a' || s[0] > 'z' {
		return false
	}
	return len(s) == 1 || s[1] == ' ' || s[1] == '-' || s[1] == '\'' || (s[1] >= 'a' && s[1] <= 'z')
}

// sentence puts a capital first and a full stop last.
func sentence(s string) string {
	s = strings.TrimSpace(s)
	if s == "" {
		return ""
	}
	if first := []rune(s); plainWord(first) {
		s = strings.ToUpper(string(first[0])) + string(first[1:])
	}
	if strings.ContainsRune(".!?:", rune(s[len(s)-1])) {
		return s
	}
	return s + "."
}
