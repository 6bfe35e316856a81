package concrete

import (
	"math"
	"strings"
	"testing"
)

func TestDefaultMixesAreSound(t *testing.T) {
	for _, key := range Cements() {
		for fck := 12.0; fck <= 60; fck += 4 {
			m := mixOf(t, fck, key)
			want := MeanStrengthEN(fck)
			if got := m.MeanStrength(); got < 0.95*math.Min(want, 61) || (fck > 16 && got > 1.05*want) {
				t.Errorf("%s, fck %g: the mix reaches %.1f MPa, the mean asked for is %.1f", key, fck, got, want)
			}
			if d := m.Density(); d < 2250 || d > 2500 {
				t.Errorf("%s, fck %g: density %.0f kg/m³", key, fck, d)
			}
			if c := m.SpecificHeat(0.5, 20); c < 850 || c > 1200 {
				t.Errorf("%s, fck %g: specific heat %.0f J/(kg K)", key, fck, c)
			}
		}
	}
}

func TestDefaultMixRefuses(t *testing.T) {
	if _, err := DefaultMix(4000, "I"); err == nil || !strings.Contains(err.Error(), "psi") {
		t.Errorf("4000 MPa: %v", err)
	}
	if _, err := DefaultMix(30, "CEM IX"); err == nil || !strings.Contains(err.Error(), "CEM I 42.5N") {
		t.Errorf("unknown cement: %v", err)
	}
	if _, err := (Mix{}).WithAggregate("cheese"); err == nil || !strings.Contains(err.Error(), "limestone") {
		t.Errorf("unknown aggregate: %v", err)
	}
}

func TestCheckTellsEverythingAtOnce(t *testing.T) {
	m := mixOf(t, 30, "I")
	m.BinderContent, m.Slump, m.PlacingTemperature, m.Binder.Blaine, m.Binder.C3S = 700, 4000, 75, 3700, 60
	err := m.Check()
	if err == nil {
		t.Fatal("a wrong mix passes")
	}
	for _, says := range []string{"lb/yd³", "slump", "°F", "cm²/g", "0.60 for 60 %"} {
		if !strings.Contains(err.Error(), says) {
			t.Errorf("%q does not say %q", err, says)
		}
	}
	m = mixOf(t, 30, "I")
	m.Water = math.NaN()
	if m.Check() == nil {
		t.Error("water of NaN passes")
	}
}

func TestTypicalCementsAreInOrder(t *testing.T) {
	for _, key := range Cements() {
		c, ok := TypicalCement(key)
		if !ok {
			t.Fatal(key)
		}
		b := c.Binder
		if sum := b.Cement + b.Slag + b.Ash + b.Filler; math.Abs(sum-1) > 1e-9 {
			t.Errorf("%s: shares make %g", key, sum)
		}
		if sum := b.C3S + b.C2S + b.C3A + b.C4AF + b.SO3; sum < 0.88 || sum > 1 {
			t.Errorf("%s: compounds and sulfate make %g", key, sum)
		}
		for what, r := range c.Ranges {
			if !(r.Low <= r.Value && r.Value <= r.High && r.Low > 0) {
				t.Errorf("%s %s: %+v does not rise", key, what, r)
			}
		}
		if _, ok := DevelopmentCoefficientEN(c.Class); !ok {
			t.Errorf("%s: class %q", key, c.Class)
		}
		if _, ok := DevelopmentCoefficientMC(c.Strength, 38); !ok {
			t.Errorf("%s: strength class %q", key, c.Strength)
		}
	}
}

func TestWithSCM(t *testing.T) {
	c, _ := TypicalCement("CEM II/B-V")
	b := c.Binder.WithSCM(0.2, 0.1, 0.25, 0.05)
	if sum := b.Cement + b.Slag + b.Ash + b.SilicaFume + b.Filler; math.Abs(sum-1) > 1e-12 {
		t.Errorf("shares make %g", sum)
	}
	// lime of both ashes is kept: 0.27·0.65·0.05 + 0.1·0.25
	if got, want := b.Ash*b.AshCaO, 0.27*0.65*0.05+0.1*0.25; math.Abs(got-want) > 1e-12 {
		t.Errorf("lime of the ash %g of the binder, want %g", got, want)
	}
	plain, _ := TypicalCement("I")
	if cooler := plain.Binder.WithSCM(0, 0.3, 0.05, 0); BinderHeat(400, cooler) >= 400 {
		t.Error("ash does not lower the heat")
	}
}

func TestCylindersReplaceTheNominalMean(t *testing.T) {
	for _, model := range mixOf(t, 32, "I").StrengthModels() {
		for _, age := range []float64{7, 28, 56} {
			measured, err := WithCylinders(model, 30, age)
			if err != nil {
				t.Fatal(err)
			}
			want := 30.0
			if _, ok := model.(AS3600); ok {
				want *= inSituOverCylinder
			}
			if got := measured.Strength(age); math.Abs(got-want) > 1e-9 {
				t.Errorf("%s: 30 MPa at %g d comes out as %g MPa", model.Code(), age, got)
			}
			if measured.Tensile(28) >= model.Tensile(28) && age >= 28 {
				t.Errorf("%s: weaker cylinders, but tension %g MPa after %g", model.Code(), measured.Tensile(28), model.Tensile(28))
			}
		}
		for _, bad := range []struct{ mean, age float64 }{{4000, 28}, {30, 0.5}, {math.NaN(), 28}} {
			if _, err := WithCylinders(model, bad.mean, bad.age); err == nil {
				t.Errorf("%s: took %+v", model.Code(), bad)
			}
		}
	}
	if _, err := WithCylinders(NewEN1992(30, Normal), 8, 28); err == nil {
		t.Error("8 MPa passes for a tensile strength that stands on the mean less 8")
	}
}

func TestFittedSlopeFollowsTheMix(t *testing.T) {
	slope := func(key string) float64 { return *mixOf(t, 30, key).FittedEN1992().Slope }
	if !(slope("III") < slope("I") && slope("I") < slope("CEM II/B-S") && slope("CEM II/B-S") < slope("CEM III/B")) {
		t.Errorf("slopes III %.2f, I %.2f, CEM II/B-S %.2f, CEM III/B %.2f do not rise", slope("III"), slope("I"), slope("CEM II/B-S"), slope("CEM III/B"))
	}
	if strong, weak := mixOf(t, 50, "I").FittedEN1992(), mixOf(t, 20, "I").FittedEN1992(); *strong.Slope >= *weak.Slope {
		t.Errorf("a richer mix must come sooner: s %.2f at fck 50, %.2f at 20", *strong.Slope, *weak.Slope)
	}
}
