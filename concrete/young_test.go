package concrete

import (
	"math"
	"testing"
)

// models are every strength model, for the battery; a new one joins with a line.
func models() []StrengthModel {
	return []StrengthModel{
		NewEN1992(30, Normal), NewEN1992(30, Slow), NewEN1992(50, Rapid), NewMC2010(30, "42.5N", 1),
		NewACI209(30, "I moist"), NewACI209(40, "III moist"), NewAS3600(32, Normal),
	}
}

func mixOf(t *testing.T, characteristic float64, cement string) Mix {
	t.Helper()
	m, err := DefaultMix(characteristic, cement)
	if err != nil {
		t.Fatal(err)
	}
	if err := m.Check(); err != nil {
		t.Fatal(err)
	}
	return m
}

func TestYoungRisesFromFinalSetWithoutJumps(t *testing.T) {
	for _, cement := range Cements() {
		for _, model := range models() {
			y := mixOf(t, 30, cement).Young(model)
			set := y.Hydration.FinalSet()
			if p := y.At(set * 0.999); p != (Properties{}) {
				t.Errorf("%s, %s: %+v MPa just before final set, want nothing", cement, model.Code(), p)
			}
			last := Properties{}
			for te := set; te < 24*400; te *= 1.01 {
				p := y.At(te)
				if p.Strength < last.Strength || p.Tensile < last.Tensile*(1-1e-12) || p.Modulus < last.Modulus {
					t.Fatalf("%s, %s: falls at te %.1f h from %+v to %+v", cement, model.Code(), te, last, p)
				}
				last = p
			}
			join := y.Hydration.EquivalentAgeAt20(y.Join)
			below, above := y.At(join*(1-1e-9)), y.At(join*(1+1e-9))
			if math.Abs(below.Strength-above.Strength) > 1e-6*above.Strength || math.Abs(below.Modulus-above.Modulus) > 1e-6*above.Modulus {
				t.Errorf("%s, %s: jumps at the join from %+v to %+v", cement, model.Code(), below, above)
			}
		}
	}
}

func TestYoungByDegreeIsYoungByAge(t *testing.T) {
	y := mixOf(t, 30, "I").Young(NewEN1992(30, Normal))
	for _, te := range []float64{5, 8, 24, 60, 72, 100, 700} {
		a, d := y.At(te), y.AtDegree(y.Hydration.Degree(te))
		if math.Abs(a.Strength-d.Strength) > 1e-9*(1+a.Strength) {
			t.Errorf("te %g h: by age %+v, by degree %+v", te, a, d)
		}
	}
	if p := y.AtDegree(y.Hydration.Ultimate); math.IsNaN(p.Strength) || p.Strength < y.At(24*28).Strength {
		t.Errorf("at the ultimate degree %+v", p)
	}
}

// The one-day strength must stay near the code's although the code's curve does
// not reach down to a day: the figure in the comment of Young.
func TestYoungAtOneDay(t *testing.T) {
	model := NewEN1992(30, Normal)
	y := mixOf(t, 30, "I").Young(model)
	te := y.Hydration.EquivalentAgeAt20(1)
	ratio := y.At(te).Strength / model.Strength(1)
	if math.Abs(ratio-1.085) > 0.02 {
		t.Errorf("one-day strength %.2f MPa is %.3f of the code's, the comment says 1.09", y.At(te).Strength, ratio)
	}
	early := y.At(y.Hydration.FinalSet() * 1.02)
	if early.Strength > 1 || model.Strength(y.Hydration.DaysAt20(y.Hydration.FinalSet())) < early.Strength {
		t.Errorf("just after final set %.2f MPa", early.Strength)
	}
}
