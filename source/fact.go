package source

import "math"

// Known says how a fact of the job is known.
type Known string

// The four ways a fact is known, strongest first.
const (
	Measured Known = "measured" // read off an instrument at the slab
	Recorded Known = "recorded" // written down at the time: ticket, log, drawing
	Assumed  Known = "assumed"  // chosen by the engineer, with a reason
	Default  Known = "default"  // put in by the program; always shown as such
)

// Fact is one number known of the job. The unit is the suffix of the field that
// holds it (thickness_m is in metres). A fact that nobody knows is a nil *Fact,
// never a zero.
type Fact struct {
	Value float64  `json:"value"`
	Low   *float64 `json:"low,omitempty"`
	High  *float64 `json:"high,omitempty"`
	Known Known    `json:"known"`
	By    string   `json:"by,omitempty"`
	Note  string   `json:"note,omitempty"`
}

// Bounds returns the lowest and highest value the fact may have; both are the
// value itself when no range was given.
func (f Fact) Bounds() (low, high float64) {
	low, high = f.Value, f.Value
	if f.Low != nil {
		low = *f.Low
	}
	if f.High != nil {
		high = *f.High
	}
	return low, high
}

// Or returns the fact's value, or fallback where nobody knows it. The caller
// says in the assumptions that the fallback was used.
func (f *Fact) Or(fallback float64) float64 {
	if f == nil {
		return fallback
	}
	return f.Value
}

// OrNaN returns the fact's value, or NaN where nobody knows it.
func (f *Fact) OrNaN() float64 { return f.Or(math.NaN()) }

// Choice is one thing known of the job that is a word rather than a number.
// A nil *Choice is not known.
type Choice struct {
	Value string `json:"value"`
	Known Known  `json:"known"`
	By    string `json:"by,omitempty"`
	Note  string `json:"note,omitempty"`
}

// Is reports whether the choice is known and has this value.
func (c *Choice) Is(value string) bool { return c != nil && c.Value == value }

// Or returns the choice's word, or fallback where nobody knows it.
func (c *Choice) Or(fallback string) string {
	if c == nil {
		return fallback
	}
	return c.Value
}
