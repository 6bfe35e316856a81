package steel

import (
	"math"
	"strings"
	"testing"

	"slabwright/working"
)

func lineOf(t *testing.T, s working.Sheet, symbol string) working.Line {
	t.Helper()
	for _, l := range s.Lines {
		if l.Symbol == symbol {
			return l
		}
	}
	t.Fatalf("%s has no line %s", s.Title, symbol)
	return working.Line{}
}

func TestDowelWorking(t *testing.T) {
	c := DowelCase{Force: 15437.5, Support: 415, Opening: 15, Diameter: 32, Modulus: 2e5, Cylinder: 32}
	s := DowelWorking(c)
	// (415·32/(4·200000·51472))^0.25 and so on, by hand: 0.02383 1/mm, 27.1 MPa
	if b := lineOf(t, s, "β"); math.Abs(b.Value-0.02383) > 5e-6 || !strings.Contains(b.Numbers, "415.0·32.00") {
		t.Errorf("β: %s = %g", b.Numbers, b.Value)
	}
	if b := lineOf(t, s, "σ_b"); math.Abs(b.Value-27.1) > 0.05 {
		t.Errorf("σ_b: %s = %g", b.Numbers, b.Value)
	}
	allowed := lineOf(t, s, "f_b")
	if allowed.Verdict != "pass" || allowed.Check == nil {
		t.Errorf("allowed %g MPa: %q", allowed.Value, allowed.Verdict)
	}
	c.Force *= 2
	if v := lineOf(t, DowelWorking(c), "f_b").Verdict; v != "fail" {
		t.Errorf("twice the force: %q", v)
	}
}

func TestMinimumWorking(t *testing.T) {
	s := MinimumWorking(150, 2.565, 500, 1.5, 12)
	// by hand: 2.565·150000/500, and 1.5·12·3600/(2·500)
	if got := lineOf(t, s, "A_s,min").Value; math.Abs(got-769.5) > 1e-9 {
		t.Errorf("least steel %g mm²/m", got)
	}
	drag := lineOf(t, s, "A_s,drag")
	if math.Abs(drag.Value-64.8) > 1e-9 || !drag.Check.Flag {
		t.Errorf("drag steel %g mm²/m, flagged %v: it is far from what shares the crack", drag.Value, drag.Check.Flag)
	}
}
