package job

import (
	"context"
	"math"
	"strings"
	"testing"

	"slabwright/plan"
)

// weighed runs the demo up to its findings' causes.
func weighed(t *testing.T, change func(*Job)) *diagnosis {
	t.Helper()
	j := demo(t)
	j.Walks[0].Findings = j.Walks[0].Findings[:3]
	change(j)
	d, err := begin(context.Background(), j, DemoFS(), nil)
	if err != nil {
		t.Fatal(err)
	}
	d.head()
	if err := d.followPours(); err != nil {
		t.Fatal(err)
	}
	d.holds()
	d.movement()
	if err := d.explainFindings(); err != nil {
		t.Fatal(err)
	}
	return d
}

// The replays join the evidence of cracks and idle joints, with a sheet behind each
// sentence, and say what would have prevented them.
func TestReplaysWeighIn(t *testing.T) {
	d := weighed(t, func(*Job) {})
	run := d.sheets[0] // F1, from a corner of the pit that nothing parts from the slab
	if len(run.scores) < 5 || len(run.evidence.Physics) != 1 {
		t.Fatalf("%d scores, %d pieces of physics", len(run.scores), len(run.evidence.Physics))
	}
	if run.ranking.Top().P == run.bands.Top().P {
		t.Error("the replays changed nothing")
	}
	held := run.score("held-by-fixture")
	if held == nil || !(held.With > held.Without) {
		t.Errorf("a crack from the corner of a pit cast against the slab: %+v", held)
	}
	for _, s := range run.scores {
		if math.IsNaN(s.LogRatio) || s.With < 0 || s.With > 1 || s.Without < 0 || s.Without > 1 || len(s.Working.Lines) == 0 {
			t.Errorf("%+v", s)
		}
	}
	found := false
	for _, p := range run.sheet.Prevented {
		found = found || p.Cause == "held-by-fixture" && p.After.P < p.Before.P && p.By != "" && strings.Contains(p.Text, "soft strip")
		if d.book.Sheets == nil || p.Working == "" {
			t.Errorf("no working behind %+v", p)
		}
		if p.Before.Low > p.Before.P || p.Before.High < p.Before.P {
			t.Errorf("range of %+v", p)
		}
	}
	if !found {
		t.Errorf("a strip round the pit is not among what would have prevented F1: %+v", run.sheet.Prevented)
	}
}

// Without a clock there is nothing to replay, and the causes stand on the rest.
func TestCausesWithoutReplays(t *testing.T) {
	d := weighed(t, func(j *Job) {
		for i := range j.Pours {
			j.Pours[i].Start = nil
		}
	})
	for _, run := range d.sheets {
		if len(run.scores) != 0 || len(run.ranking.All) == 0 {
			t.Errorf("%s: %d scores, %d causes", run.finding.ID, len(run.scores), len(run.ranking.All))
		}
	}
}

// Stopped during the replays, the first answer comes back with the error.
func TestStoppedInReplaysKeepsTheFirstAnswer(t *testing.T) {
	j := quickDemo(t)
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	c, err := Diagnose(ctx, j, DemoFS(), func(what string, _ float64) {
		if strings.HasPrefix(what, "causes against replays") {
			stop()
		}
	})
	if err == nil || c == nil || len(c.Findings) != len(j.Walks[0].Findings) || c.PageOne.Answers[2].Plain == "" {
		t.Fatalf("%v, content %v", err, c != nil)
	}
}

func TestFirstMet(t *testing.T) {
	s := plan.Slab{Outline: []plan.Point{{X: 0, Y: 0}, {X: 6, Y: 0}, {X: 6, Y: 4}, {X: 0, Y: 4}},
		Joints: []plan.Joint{{ID: "J", Path: []plan.Point{{X: 3, Y: 0}, {X: 3, Y: 4}}}}}
	at, away := firstMet(s, plan.Point{X: 1, Y: 2}, plan.Point{X: 1, Y: 0})
	if math.Abs(away-2) > 1e-12 || math.Abs(at.X-3) > 1e-12 {
		t.Errorf("met at %v after %g", at, away)
	}
	if _, away := firstMet(s, plan.Point{X: 1, Y: 2}, plan.Point{X: -1, Y: 0}); math.Abs(away-1) > 1e-12 {
		t.Errorf("edge after %g", away)
	}
}

func TestSampledRange(t *testing.T) {
	// Wilson interval of 3 in 6 with z = 1, by hand: (0.5 + 1/12)/(1 + 1/6) ± sqrt(0.25/6 + 1/144)/(1 + 1/6)
	c := sampled(0.5, 6)
	if math.Abs(c.Low-(0.5-0.22048/1.16667)) > 1e-4 || math.Abs(c.High-(0.5+0.22048/1.16667)) > 1e-4 {
		t.Errorf("%+v", c)
	}
	if all := sampled(1, 6); all.High != 1 || all.Low > 0.9 {
		t.Errorf("%+v", all)
	}
}
