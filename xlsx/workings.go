package xlsx

import (
	"fmt"
	"math"

	"slabwright/checks"
	"slabwright/working"
)

// lineCell is the answer of one line, with the cells of its inputs.
type lineCell struct {
	symbol, unit string
	value        float64
	cell         string
	inputs       map[string]string
}

// mostInputs is how many numbers a line may stand on; the widest has twelve.
const mostInputs = 14

// Columns of the sheet of workings before the inputs.
const (
	colSheet = iota + 1
	colTitle
	colSymbol
	colWhat
	colAnswer
	colUnit
	colFormula
	colLive
	colSource
	colKnown
	colCheck
	colApart
	colFirst // of the inputs: symbol, value, unit
)

// workings puts every line in a row: its answer a formula on its inputs, each input
// read from the assumption or the line it comes from.
func (b *book) workings(c *checks.Calc) {
	columns := []column{{"Sheet", 7}, {"Title", 34}, {"Symbol", 9}, {"What", 44}, {"Answer (in the unit beside it)", 14}, {"Unit", 10}, {"Formula", 60}, {"Live", 11}, {"Source", 50}, {"Source known", 16},
		{"Independent check (in the same unit)", 14}, {"Apart (ratio)", 9}}
	for i := range mostInputs {
		columns = append(columns, column{fmt.Sprintf("Symbol %d", i+1), 8}, column{fmt.Sprintf("Number %d (in the unit beside it)", i+1), 12}, column{fmt.Sprintf("Unit %d", i+1), 8})
	}
	b.table(workingSheet, columns)
	row := 2
	for _, s := range c.Sheets {
		b.written = append(b.written, s.ID)
		for _, l := range s.Lines {
			b.line(row, s, l)
			row++
		}
	}
}

func (b *book) line(row int, s checks.Sheet, l working.Line) {
	b.text(workingSheet, colSheet, row, s.Number, "wrap")
	b.text(workingSheet, colTitle, row, s.Title, "wrap")
	b.text(workingSheet, colSymbol, row, l.Symbol, "wrap")
	b.text(workingSheet, colWhat, row, l.What, "wrap")
	b.text(workingSheet, colUnit, row, l.Unit, "wrap")
	b.text(workingSheet, colSource, row, l.Source.String(), "wrap")
	b.text(workingSheet, colKnown, row, string(l.Source.How), "wrap")
	if l.Check != nil {
		b.number(workingSheet, colCheck, row, l.Check.Value)
		b.formula(workingSheet, colApart, row, fmt.Sprintf("ABS(%s/%s-1)", at(colCheck, row), at(colAnswer, row)), l.Check.Apart)
	}
	cells := b.inputs(row, s.ID, l)
	answer := at(colAnswer, row)
	formula, err := cellFormula(l.Formula, cells)
	if l.Formula == l.Symbol || err != nil {
		b.number(workingSheet, colAnswer, row, l.Value)
		b.text(workingSheet, colLive, row, "typed in", "wrap")
	} else {
		b.formula(workingSheet, colAnswer, row, formula, l.Value)
		b.text(workingSheet, colFormula, row, l.Formula, "wrap")
		b.text(workingSheet, colLive, row, "live", "wrap")
	}
	b.sheets[s.ID] = append(b.sheets[s.ID], lineCell{l.Symbol, l.Unit, l.Value, ref(workingSheet, answer), cells})
}

// inputs writes the numbers a line stands on and returns their cells by symbol.
func (b *book) inputs(row int, sheet string, l working.Line) map[string]string {
	cells := map[string]string{}
	if len(l.Inputs) > mostInputs {
		panic(fmt.Sprintf("xlsx: %s of %s has %d inputs", l.Symbol, sheet, len(l.Inputs)))
	}
	for i, in := range l.Inputs {
		col := colFirst + 3*i
		b.text(workingSheet, col, row, in.Symbol, "wrap")
		b.linked(workingSheet, col+1, row, in.Value, b.origin(sheet, in))
		b.text(workingSheet, col+2, row, in.Unit, "wrap")
		cells[in.Symbol] = at(col+1, row)
	}
	return cells
}

// lineOf finds the last line with this value and unit, of the same symbol if asked.
func lineOf(lines []lineCell, in working.Input, symbol bool) string {
	for i := len(lines) - 1; i >= 0; i-- {
		l := lines[i]
		if same(l.value, in.Value) && l.unit == in.Unit && (!symbol || l.symbol == in.Symbol) {
			return l.cell
		}
	}
	return ""
}

func same(a, b float64) bool { return math.Abs(a-b) <= 1e-12*math.Max(math.Abs(a), math.Abs(b)) }
