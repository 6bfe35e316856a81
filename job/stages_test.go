package job

import (
	"context"
	"encoding/json"
	"errors"
	"strings"
	"testing"
)

// TestFirstAnswer holds that the first answer comes before the replays, is not changed by what
// follows, can be asked what a changed fact does, and that stopping then loses nothing of it.
func TestFirstAnswer(t *testing.T) {
	j, files := demo(t), DemoFS()
	j.Basis.Members = 4
	ctx, stop := context.WithCancel(t.Context())
	var first Stage
	var asWas []byte
	say := func(what string, _ float64) {
		if strings.HasPrefix(what, "causes against replays") { // the slab itself is replayed by then
			stop()
		}
	}
	_, err := DiagnoseInStages(ctx, j, files, say, func(s Stage) {
		first = s
		asWas, _ = json.Marshal(s.Content)
	})
	if !errors.Is(err, context.Canceled) || !first.First || first.Content.Replay != nil {
		t.Fatalf("error %v, first %v", err, first.First)
	}
	if now, _ := json.Marshal(first.Content); string(now) != string(asWas) {
		t.Error("the first answer has changed after it was handed over")
	}
	if n := len(first.Content.Findings); n != len(LastFindings(j)) || n == 0 {
		t.Fatalf("%d findings in the first answer", n)
	}
	facts, err := first.Weighed.Facts("F1")
	if err != nil || len(facts) < 10 || facts[0].Now == "unknown" {
		t.Fatalf("%d facts, %v", len(facts), err)
	}
	shift, err := first.Weighed.Shift("F1", []SupposedFact{{"age", "unknown"}})
	if err != nil || len(shift.Rows) == 0 {
		t.Fatal(shift, err)
	}
	if _, err := first.Weighed.Facts("F99"); err == nil {
		t.Error("a finding that is not there has facts")
	}
}

// TestSetOverride sets a chance, sets it anew and takes it back.
func TestSetOverride(t *testing.T) {
	j := &Job{}
	if before := j.SetOverride(Override{Finding: "F1", Cause: "late-cut", Chance: 0.8, Reason: " log ", By: "A"}); before != nil {
		t.Error("something stood there before the first")
	}
	if before := j.SetOverride(Override{Finding: "F1", Cause: "late-cut", Chance: 0.6}); before == nil || before.Chance != 0.8 || before.Reason != "log" {
		t.Errorf("before the second stood %v", before)
	}
	if len(j.Overrides) != 1 || j.RemoveOverride("F1", "other") != nil {
		t.Errorf("%v", j.Overrides)
	}
	if before := j.RemoveOverride("F1", "late-cut"); before == nil || before.Chance != 0.6 || len(j.Overrides) != 0 {
		t.Errorf("%v taken back, %v left", before, j.Overrides)
	}
}
