package job

import (
	"context"
	"strings"
	"testing"
)

// A chance set by hand leads, shows what was worked out beside it, and its reason.
func TestOverrideIsShownAndCounts(t *testing.T) {
	d := weighed(t, func(j *Job) {
		j.Walks[0].Findings = j.Walks[0].Findings[:1]
		j.Overrides = []Override{{Finding: "F1", Cause: "held-by-fixture", Chance: 0.8, Reason: "the probe met concrete at all four sides", By: "R. Ansell"}}
	})
	run := d.sheets[0]
	if run.ranking.Top().Cause != "held-by-fixture" || run.ranking.Top().P != 0.8 {
		t.Errorf("in front: %s %g", run.ranking.Top().Cause, run.ranking.Top().P)
	}
	o := run.sheet.Overrides
	if len(o) != 1 || o[0].Set.P != 0.8 || !(o[0].Was.P < 0.8) || o[0].Reason == "" || o[0].By == "" {
		t.Errorf("%+v", o)
	}
}

func TestOverridesAreChecked(t *testing.T) {
	good := Override{Finding: "F1", Cause: "late-cut", Chance: 0.5, Reason: "seen", By: "R. Ansell"}
	for name, c := range map[string]struct {
		spoil func(*Override)
		field string
	}{
		"reason": {func(o *Override) { o.Reason = " " }, "overrides[0].reason"}, "by": {func(o *Override) { o.By = "" }, "overrides[0].by"},
		"finding": {func(o *Override) { o.Finding = "F99" }, "overrides[0].finding"}, "cause": {func(o *Override) { o.Cause = "frog" }, "overrides[0].cause"},
		"chance": {func(o *Override) { o.Chance = 1.5 }, "overrides[0].chance"}, "none": {func(*Override) {}, ""},
	} {
		j := demo(t)
		o := good
		c.spoil(&o)
		j.Overrides = []Override{o}
		found := ""
		for _, p := range j.Validate(DemoFS()) {
			if p.IsError() {
				found += p.Field + " "
			}
		}
		if c.field == "" && found != "" || !strings.Contains(found, c.field) {
			t.Errorf("%s: errors at %q, want %q", name, found, c.field)
		}
	}
	j := demo(t)
	j.Overrides = []Override{good, good}
	if len(j.checkOverrides()) == 0 {
		t.Error("set twice and taken")
	}
}

// One fact changed moves the causes and nothing else.
func TestCausesIf(t *testing.T) {
	j := quickDemo(t)
	j.Walks[0].Findings = j.Walks[0].Findings[:2]
	s, err := CausesIf(context.Background(), j, DemoFS(), "F2", []SupposedFact{{"sawing", "in-window"}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range s.Rows {
		if r.Cause == "late-cut" && !(r.After.P < r.Before.P) {
			t.Errorf("cut in time, and late cut goes from %g to %g", r.Before.P, r.After.P)
		}
	}
	if len(s.Rows) == 0 || s.Before == s.After || !strings.Contains(s.Changed[0], "it was late") {
		t.Errorf("%+v", s)
	}
	if _, err := CausesIf(context.Background(), j, DemoFS(), "F9", nil, nil); err == nil {
		t.Error("a finding that is not there is taken")
	}
}
