package layout

import (
	"math"
	"testing"

	"slabwright/plan"
)

// Parted at the forms a plan has the same joints in the same places, no piece of a sawn
// one crosses a form, and the rules are kept as before.
func TestCutAtForms(t *testing.T) {
	for _, a := range proposed(t, "yard of the study") {
		in := brief(named(t, "yard of the study").Slab)
		cut := CutAtForms(a.Slab)
		if bad := cut.Check(); len(bad) > 0 {
			t.Fatal(bad)
		}
		before, after := 0.0, 0.0
		for _, j := range a.Slab.Joints {
			before += plan.Polyline(j.Path).Length()
		}
		for _, j := range cut.Joints {
			after += plan.Polyline(j.Path).Length()
			if n := len(atForms(cut, j)); n != 1 {
				t.Errorf("%s still crosses %d forms", j.ID, n-1)
			}
		}
		if math.Abs(before-after) > 1e-6 {
			t.Errorf("%s: %.3f m of joint, %.3f m parted", a.Name, before, after)
		}
		if b, c := musts(Review(a.Slab, in)), musts(Review(cut, in)); c > b {
			t.Errorf("%s: %d rules that must be kept are not, %d once parted: %+v", a.Name, b, c, Review(cut, in)[0])
		}
	}
	forms := 0
	for _, j := range CutAtForms(proposed(t, "yard of the study")[2].Slab).Joints {
		if len(j.ID) > 2 && j.ID[len(j.ID)-1] >= 'a' {
			forms++
		}
	}
	if forms == 0 {
		t.Error("nothing was parted on a plan in strips")
	}
}
