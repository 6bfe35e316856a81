package restraint

import (
	"math"
	"strings"
	"testing"
)

func panelInput() FrictionInput {
	return FrictionInput{ID: "friction-P1", Title: "Base friction, panel P1", Length: 5, Thickness: 0.15, Friction: 1.5, UnitWeight: 24000,
		ShearStiffness: 5e7, Modulus: 25e9, Strain: 200e-6, Ageing: 0.8, Creep: 0.5, Strength: 1.8e6, CutDepth: 0.0375}
}

// Every line of the sheet by hand: Ec = 25000/1.4 = 17857; full 3.571; drag
// 1.5·24·5/2 = 90 kPa; b = √(50/(17857·0.15)) = 0.13663; elastic 3.571·(1 −
// 1/cosh(0.34157)) = 0.19842; ratio 0.09/(1.8·0.75) = 0.0667; x = 1.8e6/36000 = 50 m.
func TestFrictionWorkingByHand(t *testing.T) {
	want := map[string]float64{"E_c": 17857.14, "σ_full": 3.57143, "σ_drag": 0.09, "b": 0.136626, "σ_el": 0.198515, "σ": 0.09, "σ/f": 0.0666667, "x": 50}
	s := FrictionWorking(panelInput())
	for _, l := range s.Lines {
		w, ok := want[l.Symbol]
		if !ok || math.Abs(l.Value-w) > 2e-3*w {
			t.Errorf("%s = %s: got %.6g, want %.6g", l.Symbol, l.Numbers, l.Value, w)
		}
		delete(want, l.Symbol)
		for _, i := range l.Inputs {
			if !strings.Contains(l.Formula, i.Symbol) {
				t.Errorf("%s: input %s is not in %q", l.Symbol, i.Symbol, l.Formula)
			}
		}
	}
	if len(want) > 0 {
		t.Errorf("no lines for %v", want)
	}
	if c := s.Lines[2].Check; c == nil || !c.Flag || c.Reason == "" {
		t.Errorf("drag and elastic are 2.2 apart and must be flagged with a reason: %+v", c)
	}
}

// What the base can do is never above any of its three bounds.
func TestBaseFrictionIsTheLeast(t *testing.T) {
	in := panelInput()
	in.Strain = 1e-6
	f := BaseFriction(in)
	if f.Stress != f.Elastic || f.Stress > f.Drag || f.Stress > f.Full {
		t.Errorf("tiny strain: %+v, want the elastic value", f)
	}
}

func TestFrictionInputIsChecked(t *testing.T) {
	in := panelInput()
	in.Length, in.Strength = math.NaN(), 0
	if bad := in.Check(); len(bad) != 2 || !strings.Contains(bad[0].Error(), "length") {
		t.Errorf("got %v, want length and strength named", bad)
	}
}
