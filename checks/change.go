package checks

import (
	"fmt"
	"strings"

	"slabwright/unit"
	"slabwright/working"
)

// With returns the input with one number changed, in the unit it is printed in (mm
// for lengths of the section, m for panels, N/mm³ for k). The key is that of an
// [Assumption]: "thickness", "support", "L1.force". The error names the keys there
// are, or the range the number must lie in.
func (in Input) With(key string, value float64) (Input, error) {
	changed := in.clone()
	var keys []string
	for _, g := range changed.givens() {
		if g.Key != key {
			keys = append(keys, g.Key)
			continue
		}
		g.fact.Value = value / g.number("scale")
		if low, high := g.number("min"), g.number("max"); !(g.fact.Value >= low && g.fact.Value <= high) {
			scale := g.number("scale")
			return in, fmt.Errorf("%s of %s %s is out of range; %s to %s %s can be worked", g.label(), working.Figure(value, 4), g.text("printed_unit"),
				plain(low*scale), plain(high*scale), g.text("printed_unit"))
		}
		return changed, nil
	}
	if near, ok := unit.Nearest(key, keys); ok {
		return in, fmt.Errorf("no number %q among the assumptions; did you mean %q?", key, near)
	}
	return in, fmt.Errorf("no number %q among the assumptions; there are: %s", key, strings.Join(keys, ", "))
}
