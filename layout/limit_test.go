package layout

import (
	"context"
	"math"
	"strings"
	"testing"

	"slabwright/plan"
	"slabwright/working"
)

func TestPublished(t *testing.T) {
	results := Checks()
	if len(results) == 0 {
		t.Fatal("no published rows")
	}
	for _, r := range results {
		if !r.OK {
			t.Error(r)
		}
	}
	t.Logf("%d published rows", len(results))
}

func TestLimitMovesTheRightWay(t *testing.T) {
	base := UsualSpacingFacts(0.15)
	at := func(change func(f *SpacingFacts)) float64 {
		f := base
		change(&f)
		return SpacingLimit(f).Model
	}
	plain := at(func(*SpacingFacts) {})
	t.Logf("limits by the models at 100, 125, 150, 200, 250 mm: %.2f %.2f %.2f %.2f %.2f", SpacingLimit(UsualSpacingFacts(0.1)).Model,
		SpacingLimit(UsualSpacingFacts(0.125)).Model, plain, SpacingLimit(UsualSpacingFacts(0.2)).Model, SpacingLimit(UsualSpacingFacts(0.25)).Model)
	for _, c := range []struct {
		what   string
		got    float64
		longer bool
	}{
		{"more curl", at(func(f *SpacingFacts) { f.Difference = -30 }), false},
		{"weaker", at(func(f *SpacingFacts) { f.Flexural = 3e6 }), false},
		{"rougher base", at(func(f *SpacingFacts) { f.Friction = 2.2 }), false},
		{"less risk", at(func(f *SpacingFacts) { f.Risk = 0.01 }), false},
		{"softer ground", at(func(f *SpacingFacts) { f.Support = 20e6 }), true},
		{"less curl", at(func(f *SpacingFacts) { f.Difference = -18 }), true},
	} {
		// more curl than the slab's weight can hold down changes nothing
		if c.longer != (c.got > plain) || c.got == plain && c.what != "more curl" {
			t.Errorf("%s: %.2f m beside %.2f", c.what, c.got, plain)
		}
	}
}

// Each line of each sheet gives its value when worked again from its inputs.
func TestSheetsCanBeWorkedAgain(t *testing.T) {
	sheets := SpacingLimit(UsualSpacingFacts(0.15)).Sheets("a-")
	sheets = append(sheets, GivenLimit(5, UsualSpacingFacts(0.2)).Sheets("b-")...)
	strong := UsualSpacingFacts(0.2)
	strong.Flexural, strong.Difference = 6e6, -5
	sheets = append(sheets, SpacingLimit(strong).Sheets("c-")...)
	for _, a := range proposed(t, "pit in the middle") {
		sheets = append(sheets, a.Sheets...)
	}
	book := working.Book{}
	for _, s := range sheets {
		book.Add(s)
		for _, l := range s.Lines {
			got, err := l.Rework()
			if err != nil || math.Abs(got-l.Value) > 1e-9*math.Max(1e-9, math.Abs(l.Value)) {
				t.Errorf("%s %s: %q gives %.12g (%v), sheet says %.12g", s.ID, l.Symbol, l.Formula, got, err, l.Value)
			}
		}
	}
}

// Everything wrong with a brief is told at once, with its field and a mend.
func TestBadBrief(t *testing.T) {
	b := brief(plan.Slab{ID: "S", Outline: poly(0, 0, 10, 0, 10, 6, 0, 6), Thickness: thick(0.15),
		Fixtures: []plan.Fixture{{ID: "P", Kind: "hole", Shape: poly(1, 1, 2, 1, 2, 2), Opening: true}}})
	b.Slab.Thickness = thick(150)
	b.Spacing.Panel = 0.3
	b.Spacing.Facts.Friction = -1
	b.Strip.Widest = 0.4
	b.Steel.Mesh = "A999"
	b.Rates.Sawn = -2
	b.Weights.Aspect = math.NaN()
	_, err := Propose(context.Background(), b, nil)
	bad, ok := err.(Problems)
	if !ok {
		t.Fatalf("%v", err)
	}
	for _, field := range []string{"slab.thickness_m", "slab.fixtures[0].kind", "spacing.panel", "spacing.friction", "strip.widest", "steel.mesh", "rates.sawn", "weights"} {
		found := false
		for _, p := range bad {
			found = found || p.Field == field && p.Mend != "" && p.Want != ""
		}
		if !found {
			t.Errorf("nothing is said of %s: %v", field, err)
		}
	}
	if !strings.Contains(err.Error(), "did you mean 0.15") {
		t.Error(err)
	}
}

func TestProposalStopsWhenToldTo(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Propose(ctx, brief(named(t, "yard of the study").Slab), nil); err != context.Canceled {
		t.Error(err)
	}
}

// The caller's own chance is asked for each alternative, and the default lies between
// the worst panel alone and panels with nothing in common.
func TestChance(t *testing.T) {
	in := brief(named(t, "L").Slab)
	asked := 0
	in.Chance = func(_ context.Context, s plan.Slab) (Chance, error) {
		asked++
		return Chance{Unplanned: 0.25, How: "replay"}, nil
	}
	all, err := Propose(context.Background(), in, nil)
	if err != nil || asked != len(all) || all[0].Chance.Unplanned != 0.25 {
		t.Errorf("%v, asked %d times for %d", err, asked, len(all))
	}
	s := named(t, "L").Slab
	bare, err := in.Spacing.ChanceOf(context.Background(), s)
	if err != nil {
		t.Fatal(err)
	}
	jointed, err := in.Spacing.ChanceOf(context.Background(), all[0].Slab)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("without joints %.3f, with %.3f", bare.Unplanned, jointed.Unplanned)
	for _, c := range []Chance{bare, jointed} {
		if !(*c.Low <= c.Unplanned+1e-9 && c.Unplanned <= *c.High+1e-9) {
			t.Errorf("%g is not between %g and %g", c.Unplanned, *c.Low, *c.High)
		}
	}
	if bare.Unplanned <= jointed.Unplanned {
		t.Error("joints do not help")
	}
}
