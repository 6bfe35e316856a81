package earlyage

import (
	"math"
	"testing"
	"time"
)

// With an eighth of the steps the error must be 64 times as great: heat, water and
// strength together are of second order in time where the surface stays wet. On an open
// slab the drying of the pores starts at one instant with an endless slope, which no
// scheme follows at second order; there the error is held below 5 mK and 1 kPa and must go
// on falling. The reference has 32 times the steps.
func TestSecondOrderInTime(t *testing.T) {
	smooth := func(c Column) Column { // no corners in the weather: sun that rises and sets softly
		c.Weather = func(at time.Time) Feel {
			clock := at.Sub(c.Placed).Hours() + 8
			s := math.Sin(math.Pi * clock / 24)
			return Feel{Air: 18 + 5*math.Sin(2*math.Pi*(clock-9)/24), Humidity: 0.6, Wind: 2, Sun: 700 * s * s * s * s, Longwave: 320}
		}
		return c
	}
	wet, _ := TypicalCover("hessian-wet")
	wetted := smooth(mild(t))
	wetted.Covers = []Cover{wet}
	for name, c := range map[string]struct {
		Column
		order, orderFc float64
	}{"open": {smooth(mild(t)), 1.1, 0.7}, "under wet hessian": {wetted, 1.8, 1.8}} {
		c.Until = 48
		run := func(shorter int) *History { c.shorter = shorter; return runOf(t, c.Column) }
		reference := run(32)
		off := func(shorter int) (temperature, strength float64) {
			h := run(shorter)
			n := 0.0
			for _, hours := range []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24, 28, 30, 32, 36, 40, 44, 48} { // times of every run
				a, b := h.At(hours), reference.At(hours)
				temperature += math.Pow(a.Surface-b.Surface, 2) + math.Pow(a.Mid-b.Mid, 2)
				strength += math.Pow(a.EdgeFc-b.EdgeFc, 2)
				n++
			}
			return math.Sqrt(temperature / n), math.Sqrt(strength / n)
		}
		coarse, coarseFc := off(1)
		fine, fineFc := off(8)
		order, orderFc := math.Log2(coarse/fine)/3, math.Log2(coarseFc/fineFc)/3
		if order < c.order || coarse > 0.005 || orderFc < c.orderFc || coarseFc > 1e-3 {
			t.Errorf("%s: temperatures of order %.2f (%.5f and %.5f K), strength of order %.2f (%.6f and %.6f MPa)", name, order, coarse, fine, orderFc, coarseFc, fineFc)
		}
		t.Logf("%s: temperatures %.5f and %.5f K, order %.2f; strength %.6f and %.6f MPa, order %.2f", name, coarse, fine, order, coarseFc, fineFc, orderFc)
	}
}

// Five years: few steps that grow, the seasons kept, the balance closed, and the same
// answer by four times as many steps; the gradient within 1 K, since a skin that crazes
// does so for whole steps.
func TestFiveYears(t *testing.T) {
	c := mild(t)
	inner := c.Weather
	c.Weather = func(at time.Time) Feel { // a year about the day
		f := inner(at)
		f.Air += 9*math.Cos(2*math.Pi*float64(at.YearDay()-200)/365) - 6
		return f
	}
	c.Until = 5 * 365 * 24
	h := runOf(t, c)
	c.shorter = 4
	fine := runOf(t, c)
	if n := len(h.Hours); n > 1100 || len(fine.Hours) < 3*n {
		t.Errorf("%d steps, %d finer", n, len(fine.Hours))
	}
	for k := 1; k < len(h.Hours); k++ {
		if step := h.Hours[k] - h.Hours[k-1]; step > 7*24+1e-6 {
			t.Fatalf("step of %.0f h at %.0f h", step, h.Hours[k])
		}
	}
	summer, winter := h.At((2*365+80)*24).Mid, h.At((2*365+80+182)*24).Mid
	if summer-winter < 14 {
		t.Errorf("third summer %.1f °C, third winter %.1f °C", summer, winter)
	}
	for day := 30.0; day <= 5*365; day += 30 {
		a, b := h.At(day*24), fine.At(day*24)
		if math.Abs(a.Mid-b.Mid) > 0.3 || math.Abs(a.PoreHumidity-b.PoreHumidity) > 0.005 ||
			math.Abs(h.seriesAt(h.Drying, day*24)-fine.seriesAt(fine.Drying, day*24)) > 3e-6 || math.Abs(a.Gradient-b.Gradient) > 1 {
			t.Errorf("day %.0f: middle %.2f and %.2f °C, pores %.3f and %.3f, gradient %.2f and %.2f K", day, a.Mid, b.Mid, a.PoreHumidity, b.PoreHumidity, a.Gradient, b.Gradient)
		}
	}
	if b := h.Balance; math.Abs(b.HeatError) > 1e-6 || math.Abs(b.WaterError) > 1e-6 || math.Abs(b.LatentError) > 1e-6 {
		t.Errorf("balance of five years: %+v", b)
	}
}
