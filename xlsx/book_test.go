package xlsx

import (
	"bytes"
	"context"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"slabwright/checks"
	"slabwright/source"
)

func rec(v float64) source.Fact { return source.Fact{Value: v, Known: source.Recorded} }
func at2(v float64) *source.Fact {
	f := rec(v)
	return &f
}

func calc(t *testing.T, key string, change func(*checks.Input)) *checks.Calc {
	t.Helper()
	code, _ := checks.CodeOf(key)
	in := checks.Input{Code: code,
		Slab:     checks.Slab{Thickness: rec(0.175), Length: rec(5), Width: rec(4.5)},
		Concrete: checks.Concrete{Strength: rec(32), Poisson: rec(0.2), UnitWeight: rec(24), Expansion: rec(1e-5), Shrinkage: rec(400e-6)},
		Ground:   checks.Ground{Support: rec(50), CBR: at2(8), Friction: rec(1.5), Base: "granular"},
		Joint: checks.Joint{Transfer: checks.Dowelled, Spacing: rec(5), Cooling: rec(15), Filler: at2(0.25), FillWidth: at2(0.010),
			Dowels: &checks.Dowels{Diameter: rec(0.020), Length: rec(0.5), Spacing: rec(0.3), Support: rec(300), Yield: rec(250)}},
		Steel: &checks.Steel{Diameter: rec(0.008), Spacing: rec(0.2), Cover: rec(0.05), Yield: rec(500), Free: rec(25), Held: true},
		Use:   checks.Use{Class: "hard wheels"},
		Loads: []checks.Load{
			{ID: "L1", Name: "=1+1 Forklift", Kind: checks.Axle, Force: at2(60), Pressure: at2(1.0), Wheels: 2, Track: at2(0.9), Passes: at2(200000)},
			{ID: "L2", Name: "Rack", Kind: checks.Post, Force: at2(30), PlateX: at2(0.12), PlateY: at2(0.1), Pitch: at2(2.7), Back: at2(0.5)},
			{ID: "L3", Name: "Lorry", Kind: checks.Axle, Force: at2(100), Pressure: at2(0.8), Wheels: 4, Track: at2(1.8), Pair: at2(0.33), Passes: at2(50000)},
			{ID: "L4", Name: "Wall", Kind: checks.Line, PerMetre: at2(25)}, {ID: "L5", Name: "Goods", Kind: checks.Spread, PerArea: at2(30)},
		}}
	if change != nil {
		change(&in)
	}
	c, err := checks.NewCalc(context.Background(), checks.Head{Job: "2631", Calc: "C4", Title: "Yard", Subject: "Slab"}, in)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func open(t *testing.T, c *checks.Calc) *excelize.File {
	t.Helper()
	data, err := Calc(c)
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func worked(t *testing.T, f *excelize.File, sheet, cell string) float64 {
	t.Helper()
	text, err := f.CalcCellValue(sheet, cell, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatalf("%s %s: %v", sheet, cell, err)
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatalf("%s %s: %q is not a number", sheet, cell, text)
	}
	return v
}

// Read back and calculated anew by the spreadsheet library, every answer is that of
// the working, and nearly all of them are live.
func TestAnswersAreWorkedOutAnew(t *testing.T) {
	for _, key := range []string{"EN", "ACI", "AS"} {
		c := calc(t, key, func(in *checks.Input) {
			if key == "EN" { // curl once: it brings the plate with it
				in.Use.Hot, in.Use.Cold = at2(8), at2(12)
			}
		})
		f := open(t, c)
		row, live, typed := 2, 0, 0
		for _, s := range c.Sheets {
			for _, l := range s.Lines {
				cell := at(colAnswer, row)
				text, err := f.GetCellFormula(workingSheet, cell)
				if err != nil {
					t.Fatal(err)
				}
				if text == "" {
					typed++
					if l.Formula != l.Symbol {
						t.Errorf("%s %s: %s = %s is typed in, though it has a formula", key, s.ID, l.Symbol, l.Formula)
					}
				} else {
					live++
				}
				if v := worked(t, f, workingSheet, cell); math.Abs(v-l.Value) > 1e-9*math.Max(1, math.Abs(l.Value)) {
					t.Errorf("%s %s: %s = %s: the sheet gives %.9g, the working %.9g", key, s.ID, l.Symbol, text, v, l.Value)
				}
				row++
			}
		}
		for i, r := range c.Rows {
			if v := worked(t, f, checkSheet, at(7, i+2)); math.Abs(v-r.Utilisation) > 1e-9*math.Max(1, r.Utilisation) {
				t.Errorf("%s: used of %s is %.9g in the sheet, %.9g worked out", key, r.ID, v, r.Utilisation)
			}
		}
		if live < 150 || typed > live/10 {
			t.Errorf("%s: %d answers are live, %d typed in", key, live, typed)
		}
	}
}

// A value changed on the sheet of assumptions moves the checks to where the program
// itself comes out with that value.
func TestChangedAssumptionMovesTheChecks(t *testing.T) {
	before := calc(t, "EN", nil)
	for name, c := range map[string]struct { // each stands for a way a number reaches the checks
		what   string
		value  float64 // as printed
		change func(*checks.Input)
	}{
		"thickness":     {"slab thickness", 185, func(in *checks.Input) { in.Slab.Thickness.Value = 0.185 }},
		"support":       {"modulus of subgrade reaction", 0.04, func(in *checks.Input) { in.Ground.Support.Value = 40 }},
		"rack load":     {"Rack: load", 34, func(in *checks.Input) { in.Loads[1].Force.Value = 34 }},
		"forklift load": {"=1+1 Forklift: load", 66, func(in *checks.Input) { in.Loads[0].Force.Value = 66 }},
		"shrinkage":     {"drying shrinkage to come", 500, func(in *checks.Input) { in.Concrete.Shrinkage.Value = 500e-6 }},
	} {
		f := open(t, before)
		found := false
		for i, a := range before.Assumptions {
			if a.What == c.what {
				found = true
				if err := f.SetCellFloat(assumptionSheet, at(3, i+2), c.value, -1, 64); err != nil {
					t.Fatal(err)
				}
			}
		}
		if !found {
			t.Fatalf("%s: no assumption %q", name, c.what)
		}
		after := calc(t, "EN", c.change)
		moved := 0
		for i, r := range before.Rows {
			if r.Group == checks.Surface || r.Place == checks.Corner { // the same kinds again
				continue
			}
			got := worked(t, f, checkSheet, at(7, i+2))
			var want float64
			for _, n := range after.Rows {
				if n.ID == r.ID {
					want = n.Utilisation
				}
			}
			if math.Abs(got-r.Utilisation) > 1e-9 {
				moved++
			}
			if table[r.ID] || strings.HasPrefix(r.ID, "fatigue") {
				continue
			}
			// What the sheet holds typed in stays: Kelvin functions of the distance of
			// neighbours and the table of stress carried over a joint. They move the
			// stress by less than a hundredth for these changes.
			if math.Abs(got-want) > 0.012*want {
				t.Errorf("%s: %s is used %.4f by the sheet and %.4f by the program (before %.4f)", name, r.ID, got, want, r.Utilisation)
			}
		}
		if moved < 2 {
			t.Errorf("%s moves only %d checks", name, moved)
		}
	}
}

// table holds the checks against a table that is read anew for another thickness.
var table = map[string]bool{"dowel-diameter": true, "dowel-length": true, "dowel-spacing": true}

func TestSheetsAreTables(t *testing.T) {
	c := calc(t, "EN", nil)
	f := open(t, c)
	for _, sheet := range f.GetSheetList() {
		panes, err := f.GetPanes(sheet)
		if err != nil || !panes.Freeze || panes.YSplit != 1 {
			t.Errorf("%s: the head does not stand still (%+v, %v)", sheet, panes, err)
		}
		rows, err := f.GetRows(sheet)
		if err != nil || len(rows) < 5 {
			t.Fatalf("%s: %d rows, %v", sheet, len(rows), err)
		}
		seen := map[string]bool{}
		for _, head := range rows[0] {
			if head == "" || seen[head] {
				t.Errorf("%s: head %q is empty or stands twice", sheet, head)
			}
			seen[head] = true
		}
	}
}

// Words from the job never run: a name that begins with = is stored as words.
func TestWordsAreNoFormulas(t *testing.T) {
	f := open(t, calc(t, "EN", nil))
	words := 0
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		if err != nil {
			t.Fatal(err)
		}
		for r := range rows {
			for col, value := range rows[r] {
				if !strings.HasPrefix(value, "=1+1") {
					continue
				}
				words++
				cell := at(col+1, r+1)
				if text, err := f.GetCellFormula(sheet, cell); err != nil || text != "" {
					t.Errorf("%s %s: %q runs as %q (%v)", sheet, cell, value, text, err)
				}
				if kind, err := f.GetCellType(sheet, cell); err != nil || kind != excelize.CellTypeSharedString {
					t.Errorf("%s %s: %q is stored as type %d", sheet, cell, value, kind)
				}
			}
		}
	}
	if words < 10 {
		t.Errorf("only %d cells were looked at", words)
	}
}

func TestSameCalculationSameBytes(t *testing.T) {
	c := calc(t, "AS", nil)
	one, err := Calc(c)
	if err != nil {
		t.Fatal(err)
	}
	two, err := Calc(c)
	if err != nil || !bytes.Equal(one, two) {
		t.Errorf("the same calculation gives other bytes (%v)", err)
	}
}
