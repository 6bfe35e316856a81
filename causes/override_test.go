package causes

import (
	"math"
	"strings"
	"testing"
)

func TestOverridden(t *testing.T) {
	r := Rank(evidence("pattern=line", "location=near-joint", "sawing=late", "age=8-72h"))
	was := r.Weight("late-cut").P
	o, err := r.Overridden([]Override{{Cause: "early-thermal", Chance: 0.7, Reason: "core seen", By: "R. Ansell"}})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "set", o.Weight("early-thermal").P, 0.7, 0)
	left := 1 - r.Weight("early-thermal").P
	near(t, "the rest in proportion", o.Weight("late-cut").P, was*0.3/left, rounding)
	for name, layer := range map[string][]Weight{"all": o.All, "triggers": o.Triggers, "mechanisms": o.Mechanisms} {
		sum := 0.0
		for _, w := range layer {
			sum += w.P
			if w.Low > w.P || w.High < w.P {
				t.Errorf("%s: %g not within %g to %g", w.Cause, w.P, w.Low, w.High)
			}
		}
		near(t, name, sum, 1, 1e-9)
	}
	if o.Top().Cause != "early-thermal" || !o.Decided || !strings.Contains(o.Answer, o.Top().Name) {
		t.Errorf("%v %s", o.Decided, o.Answer)
	}
	if r.Weight("late-cut").P != was || r.Top().Cause == "early-thermal" {
		t.Error("the ranking that was worked out has changed")
	}
	for name, bad := range map[string][]Override{
		"no such cause": {{Cause: "frog", Chance: 0.5}}, "above 0": {{Cause: "late-cut", Chance: 1}}, "twice": {{Cause: "late-cut", Chance: 0.5}, {Cause: "late-cut", Chance: 0.2}},
		"add up": {{Cause: "late-cut", Chance: 0.6}, {Cause: "overload", Chance: 0.6}}, "nan": {{Cause: "late-cut", Chance: math.NaN()}},
	} {
		if _, err := r.Overridden(bad); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}

func TestSuppose(t *testing.T) {
	e := evidence("pattern=line", "location=mid-panel", "aggregate=through", "age=1-12mo")
	changed, err := e.Suppose("aggregate", "around")
	if err != nil {
		t.Fatal(err)
	}
	want := Rank(evidence("pattern=line", "location=mid-panel", "age=1-12mo", "aggregate=around"))
	for _, w := range want.All {
		near(t, w.Cause, Rank(changed).Weight(w.Cause).P, w.P, rounding)
	}
	if len(e.Observations) != 4 || e.Observations[2].State != "through" {
		t.Error("the evidence given has changed")
	}
	gone, _ := e.Suppose("aggregate", Unknown)
	if len(gone.Observations) != 3 {
		t.Error("unknown does not take it away")
	}
	for _, c := range []struct{ value, state string }{{"0.6", "0.3-1"}, {"0.6 mm", "0.3-1"}, {"2mm", "1-3"}, {"below-0.1", "below-0.1"}} {
		x, err := e.Suppose("width", c.value)
		if err != nil || x.Observations[4].State != c.state {
			t.Errorf("%s: %v %+v", c.value, err, x.Observations)
		}
	}
	for _, bad := range [][2]string{{"aggregat", "around"}, {"aggregate", "round"}, {"width", "wide"}, {"width", "-1"}} {
		if _, err := e.Suppose(bad[0], bad[1]); err == nil {
			t.Errorf("%v is taken", bad)
		}
	}
}
