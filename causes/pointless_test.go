package causes

import (
	"slices"
	"testing"

	"slabwright/source"
)

// What makes no sense at a finding is never proposed as the next thing to look for.
func TestPointlessIsNotProposed(t *testing.T) {
	e := Evidence{Finding: "J", Exposure: "external", Observations: []Observation{
		{Variable: "pattern", State: "line", Text: "an idle joint", From: "seen", Known: source.Assumed}}}
	reveals := func(e Evidence, variable string) bool {
		for _, n := range Rank(e).NextTests {
			if slices.Contains(n.Reveals, variable) {
				return true
			}
		}
		return false
	}
	if !reveals(e, "ends") {
		t.Fatal("without more, some test must propose to look at the ends")
	}
	e.Pointless = []string{"ends"}
	if reveals(e, "ends") {
		t.Error("the ends of a joint are still proposed")
	}
}
