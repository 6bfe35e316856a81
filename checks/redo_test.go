package checks

import (
	"math"
	"strings"
	"testing"

	"slabwright/working"
)

// Every formula worked again from its inputs gives its value, to rounding of the
// machine: what is printed is what was done.
func TestLinesCanBeWorkedAgain(t *testing.T) {
	worked := 0
	for _, code := range []string{"EN", "ACI", "AS"} {
		for _, in := range variants(code) {
			for _, s := range run(t, in).Sheets {
				for _, l := range s.Lines {
					if l.Formula == l.Symbol { // read off a table
						continue
					}
					worked++
					v, err := l.Rework()
					if err != nil {
						t.Errorf("%s %s %s: %v", code, s.ID, l.Symbol, err)
					} else if math.Abs(v-l.Value) > 1e-9*math.Max(1, math.Abs(l.Value)) {
						t.Errorf("%s %s: %s = %s gives %.8g, the line says %.8g", code, s.ID, l.Symbol, l.Formula, v, l.Value)
					}
				}
			}
		}
	}
	if worked < 1000 {
		t.Errorf("only %d lines were worked", worked)
	}
}

// A checker types the printed numbers into a pocket calculator. The result may be
// off only by what the rounding of those numbers to four figures can do: each number
// moved by half its last figure, the effects added.
func TestPrintedNumbersGiveTheAnswer(t *testing.T) {
	for _, code := range []string{"EN", "ACI", "AS"} {
		for _, in := range variants(code) {
			for _, s := range run(t, in).Sheets {
				for _, l := range s.Lines {
					if l.Formula == l.Symbol {
						continue
					}
					v, err := (working.Line{Formula: l.Numbers}).Rework()
					if err != nil {
						t.Errorf("%s %s: the printed numbers %q cannot be worked: %v", code, s.ID, l.Numbers, err)
						continue
					}
					if slack := roundingOf(t, l); math.Abs(v-l.Value) > slack {
						t.Errorf("%s %s: %s = %s = %.6g by the printed numbers, the line says %.6g; rounding explains %.2g", code, s.ID, l.Symbol, l.Numbers, v, l.Value, slack)
					}
				}
			}
		}
	}
}

// roundingOf is how far the value may move when each input moves by half the last
// of its four figures.
func roundingOf(t *testing.T, l working.Line) float64 {
	sum := 1e-9 * math.Abs(l.Value)
	for i := range l.Inputs {
		moved := l
		moved.Inputs = append([]working.Input(nil), l.Inputs...)
		moved.Inputs[i].Value *= 1 + 5e-4
		v, err := moved.Rework()
		if err != nil {
			t.Fatal(err)
		}
		sum += math.Abs(v - l.Value)
	}
	return 1.1*sum + 1e-12 // a tenth for what is not straight
}

// Nothing on a sheet is left without a source, a unit or a meaning.
func TestLinesAreWhole(t *testing.T) {
	for _, code := range []string{"EN", "ACI", "AS"} {
		r := run(t, warehouse(code))
		ids := map[string]bool{}
		for _, s := range r.Sheets {
			if ids[s.ID] {
				t.Errorf("%s: two sheets %s", code, s.ID)
			}
			ids[s.ID] = true
			for _, l := range s.Lines {
				if l.Source.Title == "" || l.Unit == "" || l.What == "" || l.Symbol == "" || !finite(l.Value) {
					t.Errorf("%s %s: line %+v is not whole", code, s.ID, l)
				}
				if l.Check != nil && l.Check.Flag && l.Check.Reason == "" {
					t.Errorf("%s %s %s: %s is %.0f %% apart and no reason is given", code, s.ID, l.Symbol, l.Check.What, 100*l.Check.Apart)
				}
				for _, i := range l.Inputs {
					if i.What == "" || i.Unit == "" || strings.Contains(i.What, "%!") {
						t.Errorf("%s %s %s: input %+v is not whole", code, s.ID, l.Symbol, i)
					}
				}
			}
		}
		for _, row := range r.Rows {
			if !ids[row.Sheet] || row.Clause.Title == "" || !finite(row.Utilisation) {
				t.Errorf("%s: row %+v is not whole", code, row)
			}
		}
	}
}

// variants are slabs that take the other branch of each form.
func variants(code string) []Input {
	plain := warehouse(code)
	thin := warehouse(code)
	thin.Slab.Thickness.Value, thin.Joint.Dowels, thin.Joint.Transfer = 0.13, nil, Interlock
	thin.Joint.Spacing.Value = 2
	thin.Loads[1].Back = at(0.2)
	thin.Loads[2].Pair = at(0.35)
	thin.Loads[0].Pressure = at(0.3)
	thin.Steel.Diameter.Value, thin.Steel.Spacing.Value = 0.012, 0.1
	thin.Use.Residual = at(4)
	stiff := warehouse(code)
	stiff.Slab.Thickness.Value, stiff.Ground.Support.Value, stiff.Concrete.Strength.Value = 0.35, 150, 55
	stiff.Concrete.Modulus, stiff.Joint.Share = at(30000), at(0.2)
	stiff.Steel.Held = false
	return []Input{plain, thin, stiff}
}
