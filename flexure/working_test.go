package flexure

import (
	"math"
	"strings"
	"testing"

	"slabwright/working"
)

func wheelInput() WheelInput {
	return WheelInput{ID: "wheel-1", Title: "Wheel", Load: 40e3, Radius: 0.113, Thickness: 0.15, Modulus: 30e9, Poisson: 0.2, Support: 50e6, Strength: 4.5e6}
}

func lineOf(t *testing.T, s working.Sheet, symbol string) working.Line {
	t.Helper()
	for _, l := range s.Lines {
		if l.Symbol == symbol {
			return l
		}
	}
	t.Fatalf("no line %s", symbol)
	return working.Line{}
}

func wantLine(t *testing.T, s working.Sheet, symbol string, want, tol float64) {
	t.Helper()
	if l := lineOf(t, s, symbol); math.Abs(l.Value-want) > tol*math.Abs(want) {
		t.Errorf("%s = %s: got %.6g %s, want %.6g", symbol, l.Numbers, l.Value, l.Unit, want)
	}
}

// The lines in the sheet's own units against the case of the published tables.
func TestWheelWorkingOfTableCase(t *testing.T) {
	s := WheelWorking(wheelInput())
	for symbol, want := range map[string]float64{"l": 0.647505, "b": 0.105947, "σ_i": 2.4712, "σ_e": 4.5095, "σ_c": 3.02972,
		"x_1": 0.643351, "w_i": 0.234916, "w_e": 0.718055, "w_c": 1.89213, "σ/f": 4.5095 / 4.5} {
		wantLine(t, s, symbol, want, 1e-4)
	}
	if v := lineOf(t, s, "σ/f").Verdict; v != "fail" {
		t.Errorf("edge stress above the strength: verdict %q", v)
	}
	in := wheelInput()
	in.Transfer = 0.25
	wantLine(t, WheelWorking(in), "σ_e", 0.75*4.5095, 1e-4)
	checkSheet(t, s)
}

func checkSheet(t *testing.T, s working.Sheet) {
	t.Helper()
	for _, l := range s.Lines {
		for _, i := range l.Inputs {
			if !strings.Contains(l.Formula, i.Symbol) {
				t.Errorf("line %s: input %s is not in its formula %q", l.Symbol, i.Symbol, l.Formula)
			}
		}
		if l.Numbers == l.Formula {
			t.Errorf("line %s: no numbers put in: %q", l.Symbol, l.Numbers)
		}
		if l.Check != nil && l.Check.Flag && l.Check.Reason == "" {
			t.Errorf("line %s: flagged without a reason", l.Symbol)
		}
	}
}

func curlInput() CurlInput {
	return CurlInput{ID: "curl-1", Title: "Curl", Length: 4.5, Width: 3.6, Thickness: 0.2, Modulus: 33e9, Poisson: 0.2, Support: 30e6,
		Expansion: 1e-5, Difference: -12, UnitWeight: 24000, Strength: 4e6}
}

// By the table case with the sign turned: a colder top.
func TestCurlWorkingOfTableCase(t *testing.T) {
	s := CurlWorking(curlInput())
	for symbol, want := range map[string]float64{"C_x": 0.6663, "C_y": 0.3958, "σ_x": -1.5376, "σ_y": -1.0912, "σ_e": -1.3193,
		"σ_∞": -33000e-5 * 12 / 1.6, "σ/f": 1.5376 / 4,
		// by hand: κ = 1e-5·12/0.2 = 6e-4; (4.5² + 3.6²)/8·6e-4 = 2.4908 mm
		"w_0": 2.4908,
		// by hand: 200·0.2·√(33000·1e-5·0.06) = 40·0.140712 = 5.6285
		"L_crit": 5.6285, "σ_g": 6 * 0.024 * 20.25 / 1.6} {
		wantLine(t, s, symbol, want, 3e-4)
	}
	checkSheet(t, s)
	still := curlInput()
	still.Difference = 0
	for _, l := range CurlWorking(still).Lines {
		if math.IsNaN(l.Value) || math.IsInf(l.Value, 0) {
			t.Errorf("without a difference %s is %v", l.Symbol, l.Value)
		}
	}
}

func TestInputsAreChecked(t *testing.T) {
	w := wheelInput()
	w.Thickness, w.Support = 150, math.NaN()
	if bad := w.Check(); len(bad) < 2 || !strings.Contains(bad[0].Error(), "thickness is 150 m") {
		t.Errorf("got %v", bad)
	}
	w = wheelInput()
	w.Radius = 0.5
	if bad := w.Check(); len(bad) != 1 || !strings.Contains(bad[0].Error(), "spread load") {
		t.Errorf("got %v, want the large contact named", bad)
	}
	c := curlInput()
	c.Difference = math.Inf(1)
	if bad := c.Check(); len(bad) != 1 {
		t.Errorf("got %v", bad)
	}
}
