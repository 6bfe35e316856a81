package concrete

import (
	"math"
	"testing"
)

func TestDegreeRateIsTheSlope(t *testing.T) {
	for _, key := range Cements() {
		for _, shift := range []float64{0, 3, -1} {
			m := mixOf(t, 35, key)
			m.SetShift = shift
			h := m.Hydration()
			for _, te := range []float64{3.5, 6, 12, 24, 100, 1000} {
				d := 1e-4 * te
				slope := (h.Degree(te+d) - h.Degree(te-d)) / (2 * d)
				if got := h.DegreeRate(te); math.Abs(got-slope) > 1e-5*slope+1e-12 {
					t.Errorf("%s, shift %g h, te %g h: rate %g, by differences %g", key, shift, te, got, slope)
				}
			}
		}
	}
}

func TestHydrationStartsAtNothingAndEndsAtUltimate(t *testing.T) {
	for _, key := range Cements() {
		h := mixOf(t, 30, key).Hydration()
		if h.Degree(0) != 0 || h.DegreeRate(0) != 0 || h.Degree(-1) != 0 {
			t.Errorf("%s: α(0) %g, rate %g", key, h.Degree(0), h.DegreeRate(0))
		}
		if got := h.Degree(1e12); math.Abs(got/h.Ultimate-1) > 1e-4 {
			t.Errorf("%s: in the end %g, ultimate %g", key, got, h.Ultimate)
		}
		for _, a := range []float64{0.01, 0.2, 0.9 * h.Ultimate} {
			if back := h.Degree(h.EquivalentAge(a)); math.Abs(back/a-1) > 1e-9 {
				t.Errorf("%s: degree %g comes back as %g", key, a, back)
			}
		}
		if !math.IsInf(h.EquivalentAge(h.Ultimate), 1) || h.EquivalentAge(0) != h.Delay {
			t.Errorf("%s: ages at the ends %g, %g", key, h.EquivalentAge(0), h.EquivalentAge(h.Ultimate))
		}
		if i, f := h.ClockHours(h.InitialSet(), 20), h.ClockHours(h.FinalSet(), 20); !(i > 1.5 && f > i && f < 30) {
			t.Errorf("%s: sets from %.1f to %.1f h at 20 °C", key, i, f)
		}
	}
}

func TestSetShiftShiftsFinalSet(t *testing.T) {
	m := mixOf(t, 30, "I")
	plain := m.Hydration().FinalSet()
	for _, shift := range []float64{-3, -1, 0.5, 2, 6} {
		m.SetShift = shift
		if got := m.Hydration().FinalSet() - plain; math.Abs(got-shift) > 1e-9 {
			t.Errorf("shift %g h moves final set by %g h", shift, got)
		}
	}
	m.SetShift = -50
	if got := m.Hydration().FinalSet(); math.Abs(got-0.3*plain) > 1e-9 {
		t.Errorf("a wild accelerator sets at %g h, want 0.3 of %g h", got, plain)
	}
}

// Heat given off by rate must add up to the heat content.
func TestHeatRateAddsUp(t *testing.T) {
	h := mixOf(t, 30, "CEM II/B-S").Hydration()
	const step, temperature = 0.01, 28.0
	sum := 0.0
	for te := step / 2; te < 200; te += step {
		sum += h.HeatRate(te, temperature) * 3600 * step / h.AgeRate(temperature)
	}
	if want := h.HeatContent(h.Degree(200)); math.Abs(sum/want-1) > 1e-4 {
		t.Errorf("the rates add to %.6g J/m³, the content is %.6g", sum, want)
	}
}

func TestAccumulateOrder(t *testing.T) {
	exact := 0.0 // by far finer steps
	value := func(n int) float64 {
		var hours, temperatures []float64
		for i := range n + 1 {
			x := 24 * float64(i) / float64(n)
			hours, temperatures = append(hours, x), append(temperatures, 10+0.04*x*x)
		}
		return Accumulate(hours, temperatures, func(c float64) float64 { return AgeRate(40000, c, 20) })
	}
	exact = value(100000)
	if rate := math.Log2(math.Abs(value(20)-exact) / math.Abs(value(40)-exact)); math.Abs(rate-2) > 0.05 {
		t.Errorf("observed order %.2f, want 2", rate)
	}
}

func TestAdiabaticKeepsItsHeat(t *testing.T) {
	h := mixOf(t, 30, "I").Hydration()
	te, warm := Adiabatic(h, 25, 2.4e6, 30)
	if want := 25 + AdiabaticRise(h.Heat, h.Degree(te), h.Binder, 2400, 1000); math.Abs(warm-want) > 1e-9 {
		t.Errorf("adiabatic temperature %g °C, by the heat %g", warm, want)
	}
}

func TestBogueRefusesIronRich(t *testing.T) {
	if _, _, _, _, ok := Bogue(63, 21, 2, 4, 2); ok {
		t.Error("Al2O3/Fe2O3 of 0.5 passed")
	}
}

func TestSettlementCracking(t *testing.T) {
	// more cover is better; more slump and thicker bars are worse
	base := SettlementCracking(38, 76, 15.9)
	if SettlementCracking(45, 76, 15.9) > base || SettlementCracking(38, 100, 15.9) < base || SettlementCracking(38, 76, 19) < base {
		t.Error("the chance of settlement cracking goes the wrong way")
	}
	// level beyond the table
	if a, b := SettlementCracking(100, 20, 6), SettlementCracking(50.8, 50.8, 12.7); math.Abs(a-b) > 1e-12 {
		t.Errorf("beyond the table %g, at its edge %g", a, b)
	}
}
