package ground

import (
	"math"
	"strings"
	"testing"

	"slabwright/source"
)

func TestEveryBaseAndSoilIsInOrder(t *testing.T) {
	for _, name := range Bases() {
		f, ok := FrictionOf(name)
		if !ok || !(f.Low <= f.Value && f.Value <= f.High && f.Low > 0) {
			t.Errorf("friction %+v: low, value and high must rise", f)
		}
		source.Cite(f.Source, "") // panics when the work is not listed
	}
	for _, name := range Soils() {
		s, ok := SoilOf(name)
		if !ok {
			t.Fatalf("soil %q of the list is not found", name)
		}
		for what, r := range map[string]Range{"conductivity": s.Conductivity, "density": s.Density, "specific heat": s.SpecificHeat} {
			if !(0 < r.Low && r.Low <= r.Value && r.Value <= r.High) {
				t.Errorf("%s %s: %+v does not rise", name, what, r)
			}
		}
		// solids and foams lie between these; an error of a thousand would show
		if d := s.Diffusivity(); d < 0.5e-7 || d > 20e-7 {
			t.Errorf("%s: diffusivity %.3g m²/s", name, d)
		}
	}
}

func TestBearingRatioThereAndBack(t *testing.T) {
	for cbr := 1.0; cbr < 30; cbr++ {
		if back := CBRFromSubgrade(SubgradeFromCBR(cbr)); math.Abs(back/cbr-1) > 1e-12 {
			t.Errorf("CBR %g comes back as %g", cbr, back)
		}
	}
}

// The two published ways from bearing ratio to modulus must agree where both hold.
func TestBearingRatioTwoWays(t *testing.T) {
	for _, cbr := range []float64{3, 5, 8, 10, 20} {
		chart, ok := SubgradeFromChart(cbr)
		if power := SubgradeFromCBR(cbr); !ok || math.Abs(power/chart-1) > 0.25 {
			t.Errorf("CBR %g: %.1f MN/m³ by the power law, %.1f by the chart", cbr, power, chart)
		}
	}
}

func TestSubbase(t *testing.T) {
	// halfway between 130 and 140 pci, and between 65..130 at 75 pci
	k, err := ModulusOnSubbase("untreated", 75*PoundsPerCubicInch, 5*0.0254)
	if want := (65 + 75 + 130 + 140) / 4.0 * PoundsPerCubicInch; err != nil || math.Abs(k-want) > 1e-9 {
		t.Errorf("between the rows %g MN/m³, %v; want %g", k, err, want)
	}
	for _, c := range []struct {
		kind            string
		modulus, height float64
		says            string
	}{
		{"sand", 30, 0.15, "choose"}, {"untreated", 200, 0.15, "outside"}, {"untreated", 30, 150, "is it in mm"},
		{"cement-treated", 200 * PoundsPerCubicInch, 0.25, "no value"},
	} {
		if _, err := ModulusOnSubbase(c.kind, c.modulus, c.height); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: error %v does not say %q", c, err, c.says)
		}
	}
}

func TestPlateDivisorFalls(t *testing.T) {
	last := math.Inf(1)
	for d := 160.0; d <= 762; d += 2 {
		v, ok := PlateDivisor(d)
		if !ok || v >= last {
			t.Fatalf("plate %g mm: divisor %g after %g", d, v, last)
		}
		last = v
	}
	if _, ok := PlateDivisor(100); ok {
		t.Error("a 100 mm plate is outside the table")
	}
}

func TestSupportCheck(t *testing.T) {
	if err := DefaultSupport().Check(); err != nil {
		t.Error(err)
	}
	s := DefaultSupport()
	s.Modulus, s.Friction.Low, s.Layers = 0.05, 9, nil
	err := s.Check()
	if err == nil {
		t.Fatal("a wrong support passes")
	}
	for _, says := range []string{"MN/m³", "friction", "layers"} {
		if !strings.Contains(err.Error(), says) {
			t.Errorf("%q does not speak of %s", err, says)
		}
	}
}
