package earlyage

import (
	"context"
	"strings"
	"testing"
)

// The members spread about the expected course, and more doubt of the wind spreads
// the chance.
func TestPlasticRanges(t *testing.T) {
	spread := func(wind float64) PlasticRange {
		p := Pour{Column: windy(t), Restraint: usualRestraint(), Seed: 4, Count: 12, Doubt: DefaultDoubt}
		p.Doubt.Wind = wind
		p.Column.Until = 12
		chance, drawn, set, err := PlasticRanges(context.Background(), p, PlasticInput{})
		if err != nil {
			t.Fatal(err)
		}
		for name, r := range map[string]PlasticRange{"chance": chance, "drawn": drawn, "set": set} {
			if !(r.Low <= r.Expected && r.Expected <= r.High && r.Low < r.High) {
				t.Errorf("%s %+v", name, r)
			}
		}
		if last := lastHour(runOf(t, p.Column), PlasticInput{}); chance.Expected != last.ShrinkageChance || drawn.Expected != last.Deficit {
			t.Errorf("expected %+v, by the hour %+v", chance, last)
		}
		return drawn
	}
	if a, b := spread(0.05), spread(0.4); !(b.High-b.Low > a.High-a.Low) {
		t.Errorf("water drawn out %+v with little doubt of the wind, %+v with much", a, b)
	}
}

// Every measure saves something on a hot windy day; one that comes after set saves
// nothing; a wrong one is named.
func TestMeasures(t *testing.T) {
	var covers []Cover
	for _, key := range []string{"windbreak", "fog", "evaporation-retarder", "plastic"} {
		cover, _ := TypicalCover(key)
		cover.On = 0.5
		covers = append(covers, cover)
	}
	late, _ := TypicalCover("hessian-wet")
	late.On = 8
	covers = append(covers, late)
	got, err := Measures(context.Background(), windy(t), PlasticInput{}, covers...)
	if err != nil || len(got) != 6 {
		t.Fatalf("%d measures, %v", len(got), err)
	}
	open := got[0]
	for _, m := range got[1:5] {
		if !(m.Saved > 0.1 && m.Drawn < open.Drawn && m.ShrinkageChance < open.ShrinkageChance) {
			t.Errorf("%s: %+v, open %+v", m.Cover.Name, m, open)
		}
	}
	if got[5].Saved != 0 {
		t.Errorf("hessian after set saves %.3f", got[5].Saved)
	}
	if got[1].Worst >= open.Worst {
		t.Errorf("behind a windbreak %.2f kg/m2/h at worst, open %.2f", got[1].Worst, open.Worst)
	}
	bad := covers[0]
	bad.On, bad.Off = 5, 4
	if _, err := Measures(context.Background(), windy(t), PlasticInput{}, bad); err == nil || !strings.Contains(err.Error(), "windbreak") {
		t.Errorf("wrong measure: %v", err)
	}
	if _, err := Measures(context.Background(), windy(t), PlasticInput{Limit: 50}); err == nil {
		t.Error("limit of 50 kg/m2/h passed")
	}
}
