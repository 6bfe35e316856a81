package xlsx

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"slabwright/checks"
)

// title puts the title block and the basis on the first sheet.
func (b *book) title(c *checks.Calc) {
	b.table(titleSheet, []column{{"Field", 22}, {"Entry", 110}})
	row := 2
	put := func(field, words string) {
		b.text(titleSheet, 1, row, field, "bold")
		b.text(titleSheet, 2, row, words, "wrap")
		row++
	}
	h := c.Head
	put("Job", strings.TrimSpace(h.Job+"  "+h.Title))
	put("Calculation", h.Calc)
	put("Subject", h.Subject)
	revision := h.Revision
	if revision == "" {
		revision = "DRAFT"
	}
	put("Revision", revision)
	put("By", h.By)
	put("Date", "")
	b.date(titleSheet, 2, row-1, h.Date)
	put("Checked by", h.CheckedBy)
	put("Checked on", "")
	b.date(titleSheet, 2, row-1, h.CheckedOn)
	put("Program", "slabwright "+h.Version)
	put("Purpose", c.Purpose)
	put("Codes", c.Code)
	for _, s := range c.Basis {
		put("Basis", s)
	}
	put("How to use", "Change a value on the sheet “"+assumptionSheet+"”: workings and checks follow where the answer is a formula. Which branch of a rule applies (spacing of bars, depth of contact) was settled for the values as written; run the program again for values far off.")
	for _, s := range c.Cautions {
		put("Caution", s)
	}
}

// assumptions lists every number; the value column is what the workings read.
func (b *book) assumptions(c *checks.Calc) {
	b.table(assumptionSheet, []column{{"Symbol", 9}, {"Assumption", 44}, {"Value (in the unit beside it)", 14}, {"Unit", 10}, {"How known", 11}, {"By", 18}, {"Why, note", 50}})
	for i, a := range c.Assumptions {
		row := i + 2
		b.text(assumptionSheet, 1, row, a.Symbol, "wrap")
		b.text(assumptionSheet, 2, row, a.What, "wrap")
		b.number(assumptionSheet, 3, row, a.Value)
		b.text(assumptionSheet, 4, row, a.Unit, "wrap")
		b.text(assumptionSheet, 5, row, string(a.Known), "wrap")
		b.text(assumptionSheet, 6, row, a.By, "wrap")
		b.text(assumptionSheet, 7, row, a.Note, "wrap")
		b.keepGiven(a, ref(assumptionSheet, at(3, row)))
	}
}

// checks puts demand and capacity beside each other, read from the workings.
func (b *book) checks(c *checks.Calc) {
	b.table(checkSheet, []column{{"Sheet", 8}, {"Group", 12}, {"Check", 60}, {"Asked (in the unit beside it)", 13}, {"There is (in the unit beside it)", 13}, {"Unit", 9}, {"Used (asked over there is)", 11}, {"Met", 9}, {"Clause", 60}, {"Note", 50}})
	for i, r := range c.Rows {
		row := i + 2
		b.text(checkSheet, 1, row, c.Number(r.Sheet), "wrap")
		b.text(checkSheet, 2, row, r.Group, "wrap")
		b.text(checkSheet, 3, row, r.Check, "wrap")
		b.linked(checkSheet, 4, row, r.Demand, b.lineInput(r.Sheet, "D"))
		b.linked(checkSheet, 5, row, r.Capacity, b.lineInput(r.Sheet, "R"))
		b.text(checkSheet, 6, row, r.Unit, "wrap")
		b.formula(checkSheet, 7, row, fmt.Sprintf("%s/%s", at(4, row), at(5, row)), r.Utilisation)
		b.dress(checkSheet, 7, row, "0.00")
		b.met(row, r.Pass)
		b.text(checkSheet, 9, row, r.Clause.String(), "wrap")
		b.text(checkSheet, 10, row, r.Note, "wrap")
	}
	b.warn(len(c.Rows) + 1)
}

func (b *book) met(row int, pass bool) {
	words := "not met"
	if pass {
		words = "met"
	}
	b.do(b.file.SetCellStr(checkSheet, at(8, row), words))
	b.do(b.file.SetCellFormula(checkSheet, at(8, row), fmt.Sprintf(`IF(%s<=1,"met","not met")`, at(7, row)), excelize.FormulaOpts{Type: pointer("str")}))
}

// warn marks what is not met by weight and colour, beside the word.
func (b *book) warn(last int) {
	style, err := b.file.NewConditionalStyle(&excelize.Style{Font: &excelize.Font{Bold: true, Color: "C24300"}})
	b.do(err)
	b.do(b.file.SetConditionalFormat(checkSheet, fmt.Sprintf("H2:H%d", last), []excelize.ConditionalFormatOptions{{Type: "cell", Criteria: "==", Format: &style, Value: `"not met"`}}))
}

// linked puts a number that stands elsewhere, or types it where it does not.
func (b *book) linked(sheet string, col, row int, v float64, cell string) {
	if cell == "" {
		b.number(sheet, col, row, v)
		return
	}
	b.formula(sheet, col, row, cell, v)
}

// moves lists what moves by more than 5 % when an assumption is wrong.
func (b *book) moves(c *checks.Calc) {
	b.table(moveSheet, []column{{"Symbol", 9}, {"Assumption", 40}, {"Value (in the unit beside it)", 13}, {"Unit", 10}, {"If it were", 13}, {"Check that moves by more than 5 %", 60}, {"Used now (ratio)", 11}, {"Used then (ratio)", 11}, {"Turns", 16}})
	row := 2
	for _, a := range c.Assumptions {
		for _, trial := range []checks.Trial{a.Low, a.High} {
			for _, m := range trial.Moves {
				b.text(moveSheet, 1, row, a.Symbol, "wrap")
				b.text(moveSheet, 2, row, a.What, "wrap")
				b.number(moveSheet, 3, row, a.Value)
				b.text(moveSheet, 4, row, a.Unit, "wrap")
				b.number(moveSheet, 5, row, trial.Value)
				b.text(moveSheet, 6, row, m.Check, "wrap")
				b.number(moveSheet, 7, row, m.From)
				b.number(moveSheet, 8, row, m.To)
				b.text(moveSheet, 9, row, turnWords(m), "wrap")
				row++
			}
		}
	}
}

func turnWords(m checks.Move) string {
	switch {
	case !m.Flips:
		return ""
	case m.To > 1:
		return "no longer met"
	}
	return "becomes met"
}
