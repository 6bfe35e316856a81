package xlsx

import (
	"math"
	"strconv"
	"testing"

	"github.com/xuri/excelize/v2"

	"slabwright/source"
	"slabwright/working"
)

// A spreadsheet works the written formula out to what the working's own reader
// gives: two readers, one of them not ours.
func TestFormulasComeOutAlike(t *testing.T) {
	for _, formula := range []string{
		"a + b · c", "−a² + b", "a / b / c", "(a + b)^(1/3)", "10^(−a)", "sqrt(a · b) − |a − c|", "max(a, b, −c) · min(a, 2)", "3 · (1 + a) · ln(b / c)",
		"e^a + π", "2a + 3(b + c)", "a · 10⁻³ · b⁴", "√(a) · exp(−b)", "sinh(a) / cosh(b) + sin(2 · c)", "1 / (1 / a + 1 / b)", "−1000 · a · (b² + c²) / 8", "log10(b)^−2",
	} {
		inputs := []working.Input{working.In("a", 0.7, "", ""), working.In("b", 2.3, "", ""), working.In("c", 1.9, "", "")}
		want, err := working.New("x", "", formula, 0, "", source.Citation{}, inputs...).Rework()
		if err != nil {
			t.Fatal(err)
		}
		text, err := cellFormula(formula, map[string]string{"a": "A1", "b": "B1", "c": "C1"})
		if err != nil {
			t.Error(err)
			continue
		}
		f := excelize.NewFile()
		for cell, v := range map[string]float64{"A1": 0.7, "B1": 2.3, "C1": 1.9} {
			if err := f.SetCellFloat("Sheet1", cell, v, -1, 64); err != nil {
				t.Fatal(err)
			}
		}
		if err := f.SetCellFormula("Sheet1", "D1", text); err != nil {
			t.Fatal(err)
		}
		got, err := f.CalcCellValue("Sheet1", "D1", excelize.Options{RawCellValue: true})
		v, bad := strconv.ParseFloat(got, 64)
		if err != nil || bad != nil || math.Abs(v-want) > 1e-12*math.Max(1, math.Abs(want)) {
			t.Errorf("%s written %s: the spreadsheet gives %s (%v), the working %.15g", formula, text, got, err, want)
		}
	}
}

func TestFormulaThatCannotBeWritten(t *testing.T) {
	for _, formula := range []string{"a + q", "a + ", "(a", "sum of all"} {
		if text, err := cellFormula(formula, map[string]string{"a": "A1"}); err == nil {
			t.Errorf("%q was written %q", formula, text)
		}
	}
}
