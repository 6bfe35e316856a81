package report

import (
	"fmt"
	"math"
	"strings"

	"slabwright/internal/page"
	"slabwright/working"
)

// setSheet sets one working on pages: source, formula to answer, check. The column
// of checks is left out of a sheet that has none.
func setSheet(d *page.Document, s sheet) {
	d.ClearNotes()
	lines, checked := sheetRows(s.sheet)
	t := page.Table{Whole: true, Columns: []page.Column{{Head: "Source", Share: 22}, {Head: "Formula, numbers, answer", Share: 54}}}
	if checked {
		t.Columns = append(t.Columns, page.Column{Head: "Check", Share: 24})
	}
	for _, l := range lines {
		t.OnNewPage = append(t.OnNewPage, tidyText(page.Quiet(l.whole)))
		row := []page.Text{page.Quiet(l.source), l.text}
		if checked {
			row = append(row, l.check)
		}
		t.Rows = append(t.Rows, row)
	}
	t.Rows = tidyRows(t.Rows)
	d.Keep(d.TableStart(t) + 14 + 5*float64(len(s.sheet.Basis)))
	d.WideHeading(2, s.number+"  "+tidy(s.sheet.Title), "w-"+s.sheet.ID)
	for _, basis := range s.sheet.Basis {
		d.Small(tidyText(page.Plain(sentence(basis))))
	}
	d.Table(t)
}

// sheetRow is one line of a working as printed.
type sheetRow struct {
	source string // or a ditto mark
	whole  string // the source, whatever stands above
	text   page.Text
	check  page.Text
}

// longFormula is how many letters of formula and numbers stand on one line.
const longFormula = 64

// sheetRows returns the lines of a working. What stands in the line above is not
// said again: the same source becomes a ditto mark, the same formula is left to
// its numbers, and each symbol is explained where it first occurs.
func sheetRows(s *working.Sheet) (rows []sheetRow, checked bool) {
	told := map[string]bool{}
	var source, formula string
	for _, l := range s.Lines {
		row := sheetRow{source: l.Source.String(), whole: l.Source.String(), check: checkText(l)}
		if row.source == source && source != "" {
			row.source = "″"
		} else {
			source = row.source
		}
		row.text = lineText(l, l.Formula == formula, told)
		formula = l.Formula
		checked = checked || len(row.check) > 0
		rows = append(rows, row)
	}
	return rows, checked
}

// lineText is what a step is, its formula, the numbers put in, the answer.
func lineText(l working.Line, sameFormula bool, told map[string]bool) page.Text {
	t := page.Text{{Words: sentenceCase(l.What), Quiet: true}}
	shown := ""
	if l.Formula != "" && l.Formula != l.Symbol {
		if !sameFormula {
			shown = l.Formula
		}
		if l.Numbers != "" && l.Numbers != l.Formula {
			if shown != "" {
				shown += " = "
			}
			shown += l.Numbers
		}
	}
	between := "\n"
	if len([]rune(l.What))+len([]rune(shown)) < longFormula {
		between = ":  "
	}
	t = append(t, page.Run{Words: between + l.Symbol + " = "})
	if shown != "" {
		if len([]rune(shown)) > longFormula {
			shown = strings.Replace(shown, " = ", "\n= ", 1)
		}
		t = append(t, page.Run{Words: shown + " = "})
	}
	t = append(t, page.Run{Words: answerOf(l), Bold: true})
	if given := inputsText(l, told); given != "" {
		t = append(t, page.Run{Words: "\n" + given, Quiet: true})
	}
	return t
}

// answerOf is the value with its unit.
func answerOf(l working.Line) string { return valued(or(l.Text, working.Figure(l.Value, 3)), l.Unit) }

// valued puts a unit behind a figure; a number without dimension has none, and
// degrees stand close.
func valued(figure, unit string) string {
	switch unit {
	case "", "–", "-", "1":
		return figure
	case "°":
		return figure + unit
	}
	return with(figure, unit)
}

// inputsText says what each symbol put in means and how it is known, once.
func inputsText(l working.Line, told map[string]bool) string {
	var parts []string
	for _, in := range l.Inputs {
		if in.What == "" {
			continue
		}
		s := in.Symbol + " " + in.What
		if in.Unit != "" && in.Unit != "–" && in.Unit != "-" {
			s += " [" + in.Unit + "]"
		}
		if in.Known != "" {
			s += ", " + in.Known
		}
		if !told[s] {
			told[s] = true
			parts = append(parts, s)
		}
	}
	return strings.Join(parts, "; ")
}

// checkText is the independent check beside a step and its flag.
func checkText(l working.Line) page.Text {
	var t page.Text
	if l.Verdict != "" {
		t = append(t, page.Run{Words: l.Verdict, Bold: true})
	}
	k := l.Check
	if k == nil {
		return t
	}
	if len(t) > 0 {
		t = append(t, page.Run{Words: "\n"})
	}
	t = append(t, page.Run{Words: sentenceCase(k.What) + ": "}, page.Run{Words: valued(working.Figure(k.Value, 3), k.Unit)})
	t = append(t, page.Run{Words: fmt.Sprintf(", %.0f"+thin+"%% apart.", math.Round(k.Apart*100)), Bold: k.Flag})
	if k.Flag {
		t = append(t, page.Run{Words: " ▲ " + or(sentence(k.Reason), "No reason given."), Bold: true})
	} else if k.Reason != "" {
		t = append(t, page.Run{Words: " " + sentence(k.Reason)})
	}
	return append(t, page.Run{Words: "\n" + k.Source.String(), Quiet: true})
}
