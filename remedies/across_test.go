package remedies

import (
	"math"
	"strings"
	"testing"

	"slabwright/steel"
)

// The published points: at the usable opening the lenient criterion is just met; at the
// opening of the design value 15 % of a load is passed on, which is 0.15/0.85 of the
// deflection.
func TestInterlockLeft(t *testing.T) {
	criterion, _ := steel.TransferCriterion("lenient")
	if got := InterlockLeft(steel.InterlockUsableOpening() / 1e3); math.Abs(got-criterion) > 1e-9 {
		t.Errorf("at the usable opening %.3f, want %.3f", got, criterion)
	}
	share, opening := steel.InterlockDesignTransfer()
	if got := InterlockLeft(opening / 1e3); math.Abs(got-share/(1-share)) > 1e-9 {
		t.Errorf("at %.1f mm %.3f, want %.3f", opening, got, share/(1-share))
	}
	for w := 0.0; w < 0.003; w += 0.0001 {
		if a, b := InterlockLeft(w), InterlockLeft(w+0.0001); !(b < a) || a > 1 || b < 0 {
			t.Errorf("%.1f mm: %.3f, then %.3f", 1e3*w, a, b)
		}
	}
}

func TestAcross(t *testing.T) {
	at := func(v float64) *float64 { return &v }
	for _, c := range []struct {
		in   Situation
		says string
	}{
		{Situation{Pattern: "line", Width: at(0.0002), Exposure: "external"}, "within the 0.30 mm"},
		{Situation{Pattern: "line", Width: at(0.0002), Exposure: "external", Salt: true}, "above the 0.18 mm"},
		{Situation{Pattern: "line", Width: at(0.0005), Exposure: "indoor"}, "above the 0.41 mm"},
		{Situation{Pattern: "line", Width: at(0.0005), Exposure: "indoor", Rocking: "strong"}, "carry little across"},
	} {
		text, sheet, ok := Across(c.in)
		if !ok || !strings.Contains(text, c.says) || len(sheet.Lines) < 2 {
			t.Errorf("%q does not say %q", text, c.says)
		}
	}
	for _, in := range []Situation{{Pattern: "line"}, {Pattern: "surface-loss", Width: at(0.001)}} {
		if _, _, ok := Across(in); ok {
			t.Errorf("%+v has a width to speak of", in)
		}
	}
}
