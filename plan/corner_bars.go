package plan

import (
	"fmt"

	"slabwright/source"
)

// CornerBars are bars laid across one inside corner that no joint meets. They keep a
// crack there narrow; they do not stop it.
type CornerBars struct {
	ID       string       `json:"id"`
	At       Point        `json:"at_m"`      // the corner
	Angle    float64      `json:"angle_deg"` // of the bars, anticlockwise from the x axis, the concrete to their left
	Bars     int          `json:"bars"`
	Diameter *source.Fact `json:"diameter_m,omitempty"`
	Spacing  *source.Fact `json:"spacing_m,omitempty"`
	Length   *source.Fact `json:"length_m,omitempty"`
	Note     string       `json:"note,omitempty"` // why bars and no joint
}

// firstCornerBar is how far the first bar lies from the corner, m.
//
// Source: ordinary cover, common practice, no source.
const firstCornerBar = 0.05

// Lines returns the bars where they lie, the one nearest to the corner first; nil where
// their length is not known.
func (c CornerBars) Lines() []Segment {
	length := c.Length.Or(0)
	if !(length > 0) {
		return nil
	}
	way := Direction(c.Angle)
	var out []Segment
	for i := range c.Bars {
		middle := c.At.Plus(way.Left().Times(firstCornerBar + float64(i)*c.Spacing.Or(0)))
		out = append(out, Segment{A: middle.Minus(way.Times(length / 2)), B: middle.Plus(way.Times(length / 2))})
	}
	return out
}

// BarsAt reports whether corner bars are noted for an inside corner.
func (s Slab) BarsAt(at Point) bool {
	for _, c := range s.CornerBars {
		if c.At.To(at) <= CornerReach {
			return true
		}
	}
	return false
}

// mostCornerBars is more than anybody lays across one corner.
const mostCornerBars = 20

func (s Slab) checkCornerBars(i int, outlineUsable bool) []Problem {
	c, field := s.CornerBars[i], fmt.Sprintf("corner_bars[%d]", i)
	var problems []Problem
	if bad := checkFinite(field+".at_m", c.At); bad != nil {
		return append(problems, *bad)
	}
	if outlineUsable && !s.Inside(c.At, CornerReach) {
		problems = append(problems, Problem{Field: field + ".at_m", Place: &s.CornerBars[i].At, Found: "a place outside the slab",
			Want: "an inside corner of the slab", Mend: "Give the corner that the bars cross, in the slab's own axes."})
	}
	if c.Bars < 1 || c.Bars > mostCornerBars {
		problems = append(problems, Problem{Field: field + ".bars", Found: fmt.Sprint(c.Bars), Want: fmt.Sprintf("1 to %d", mostCornerBars), Mend: "Two or three bars are usual; leave the entry out where there are none."})
	}
	problems = append(problems, checkRange(field+".angle_deg", &source.Fact{Value: c.Angle}, -360, 360, "degrees")...)
	problems = append(problems, checkRange(field+".diameter_m", c.Diameter, 0.005, 0.05, "m")...)
	problems = append(problems, checkRange(field+".spacing_m", c.Spacing, 0.02, 0.5, "m")...)
	return append(problems, checkRange(field+".length_m", c.Length, 0.2, 6, "m")...)
}
