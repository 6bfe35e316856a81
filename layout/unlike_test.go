package layout

import (
	"testing"

	"slabwright/plan"
)

// The plans of a yard with a pit, a column and a notch differ: at least one joint in
// seven lies elsewhere. None has more panels than twice the squares of the area.
func TestPlansOfAYardDiffer(t *testing.T) {
	all := proposed(t, "yard of the study")
	in := brief(named(t, "yard of the study").Slab)
	for i, a := range all {
		for _, b := range all[:i] {
			if alike(a.Slab, b.Slab) {
				t.Errorf("%s and %s lie in the same places", a.Name, b.Name)
			}
		}
		area := slabArea(a.Slab)
		if squares := area / (in.Spacing.Panel * in.Spacing.Panel); float64(a.Measure.Panels) > 2*squares {
			t.Errorf("%s: %d panels for %.0f squares at the limit", a.Name, a.Measure.Panels, squares)
		}
		if a.Measure.Long > 4 {
			t.Errorf("%s: %d panels more than 1.5 times as long as wide", a.Name, a.Measure.Long)
		}
		if len(a.Slab.CornerBars) != len(a.Trimmers) {
			t.Errorf("%s: %d corners with bars on the plan, %d in the list", a.Name, len(a.Slab.CornerBars), len(a.Trimmers))
		}
	}
}

// Bars that are noted meet a corner; taken away, the rule is not kept.
func TestNotedBarsMeetACorner(t *testing.T) {
	a := proposed(t, "yard of the study")[0]
	in := brief(named(t, "yard of the study").Slab)
	if len(a.Slab.CornerBars) == 0 {
		t.Fatal("no corner with bars")
	}
	if n := musts(Review(a.Slab, in)); n > 0 {
		t.Errorf("%d rules that must be kept are not, with bars", n)
	}
	bare := a.Slab
	bare.CornerBars = nil
	bare.Fixtures = append([]plan.Fixture{}, bare.Fixtures...)
	for i := range bare.Fixtures {
		bare.Fixtures[i].Trimmers = nil
	}
	if n := musts(Review(bare, in)); n != len(a.Slab.CornerBars) {
		t.Errorf("%d corners without joint or bars, want %d", n, len(a.Slab.CornerBars))
	}
}
