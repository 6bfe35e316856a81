package report

import (
	"fmt"
	"maps"
	"math"
	"strings"

	"slabwright/internal/page"
	"slabwright/working"
)

// setSheet sets one working on pages: the causes as a matrix, what was only
// measured on the plan in two columns, all else line by line.
func setSheet(d *page.Document, s sheet) {
	t, sources := paperSheet(s.sheet, s.told)
	head, title := append([]string(nil), s.sheet.Basis...), s.number+"  "+titled(s.sheet.Title)
	if s.basisAt != "" {
		head, title = nil, title+" (basis and symbols as "+s.basisAt+")"
		t.Bare = len(t.Columns) == 2 // the head of the sheet it follows
	}
	if sources != "" {
		head = append(head, sources)
	}
	note := tidyText(page.Quiet(sentences(head)))
	d.ClearNotes()
	d.Keep(min(d.TableStart(t)+14+d.Measure(note, d.Right()-d.Left(), page.SmallSize), 80))
	d.WideHeading(3, title, "w-"+s.sheet.ID)
	if len(head) > 0 {
		d.WideSmall(note)
	}
	d.Table(t)
}

func sentences(parts []string) string {
	all := make([]string, len(parts))
	for i, p := range parts {
		all[i] = sentence(p)
	}
	return strings.Join(all, " ")
}

// symbolsOf is what sheetRows explains of the symbols of a sheet.
func symbolsOf(s *working.Sheet) map[string]bool {
	told := map[string]bool{}
	sheetRows(s, true, told)
	return told
}

// paperSheet is a working as printed, and what is to be said of its sources where
// they do not stand beside the lines.
func paperSheet(s *working.Sheet, told map[string]bool) (t page.Table, sources string) {
	if m, ok := weighingOf(s); ok {
		t = m.table()
		t.Rows = tidyRows(t.Rows)
		return t, joined("Source of the chances: "+workOnly(s.Lines[0].Source.String()), "v is the weight of an observation in its group", m.aside())
	}
	if told == nil {
		told = map[string]bool{}
	}
	lines, checked := sheetRows(s, true, maps.Clone(told))
	if !checked && measuredOnly(s) {
		return pairedSheet(s, lines)
	}
	t = page.Table{Whole: true, Tight: true, Size: denseSize, Columns: []page.Column{{Head: "Source", Share: 29}, {Head: "Formula, numbers, answer; independent check", Share: 71}}}
	for _, l := range lines {
		t.OnNewPage = append(t.OnNewPage, tidyText(page.Quiet(workOnly(l.whole))))
		text := l.text
		if len(l.check) > 0 {
			text = page.Join(text, page.Text{{Words: "\nCheck. ", Italic: true}}, l.check)
		}
		t.Rows = append(t.Rows, []page.Text{page.Quiet(workOnly(l.source)), text})
	}
	t.Rows = tidyRows(t.Rows)
	return t, ""
}

// measuredOnly reports whether a sheet is mostly values read off, not worked.
func measuredOnly(s *working.Sheet) bool {
	worked := 0
	for _, l := range s.Lines {
		if l.Formula != "" && l.Formula != l.Symbol {
			worked++
		}
	}
	return len(s.Lines) > 6 && 2*worked < len(s.Lines)
}

// pairedSheet sets the lines of a sheet in two columns, a letter for each source.
func pairedSheet(s *working.Sheet, lines []sheetRow) (page.Table, string) {
	letters := map[string]string{}
	var named []string
	half := (len(lines) + 1) / 2
	var cell [2]page.Text
	for i, l := range lines {
		if letters[l.whole] == "" {
			letters[l.whole] = string(rune('a' + len(letters)%26))
			named = append(named, letters[l.whole]+" "+workOnly(l.whole))
		}
		side := &cell[min(i/half, 1)]
		if len(*side) > 0 {
			*side = append(*side, page.Run{Words: "\n"})
		}
		*side = append(append(*side, l.text...), page.Run{Words: "  (" + letters[l.whole] + ")", Quiet: true})
	}
	t := page.Table{Whole: true, Size: denseSize, Bare: true, Columns: []page.Column{{Share: 50}, {Share: 50}}, Rows: tidyRows([][]page.Text{{cell[0], cell[1]}})}
	return t, "Sources: " + strings.Join(named, "; ")
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
func sheetRows(s *working.Sheet, dense bool, told map[string]bool) (rows []sheetRow, checked bool) {
	var source, formula string
	for _, l := range s.Lines {
		row := sheetRow{source: l.Source.String(), whole: l.Source.String(), check: checkText(l, dense)}
		if row.source == source && source != "" {
			row.source = "″"
		} else {
			source = row.source
		}
		row.text = lineText(l, l.Formula == formula, dense, told)
		formula = l.Formula
		checked = checked || len(row.check) > 0
		rows = append(rows, row)
	}
	return rows, checked
}

// lineText is what a step is, its formula, the numbers put in, the answer.
func lineText(l working.Line, sameFormula, dense bool, told map[string]bool) page.Text {
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
	between, behind := "\n", "\n"
	if dense {
		behind = "; "
	}
	if dense || len([]rune(l.What))+len([]rune(shown)) < longFormula {
		between = ":  "
	}
	t = append(t, page.Run{Words: between + l.Symbol + " = "})
	if shown != "" {
		if len([]rune(shown)) > longFormula && !dense {
			shown = strings.Replace(shown, " = ", "\n= ", 1)
		}
		t = append(t, page.Run{Words: shown + " = "})
	}
	t = append(t, page.Run{Words: answerOf(l), Bold: true})
	switch l.Verdict {
	case "pass":
		t = append(t, page.Run{Words: ", met", Bold: true})
	case "fail":
		t = append(t, page.Run{Words: ", not met ▲", Bold: true})
	}
	if given := inputsText(l, told); given != "" {
		t = append(t, page.Run{Words: behind + given, Quiet: true})
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

// checkText is the independent check beside a step and its flag; the verdict of a
// step stands behind its answer.
func checkText(l working.Line, dense bool) page.Text {
	behind := "\n"
	if dense {
		behind = " "
	}
	var t page.Text
	k := l.Check
	if k == nil {
		return t
	}
	t = append(t, page.Run{Words: sentenceCase(k.What) + ": "}, page.Run{Words: valued(working.Figure(k.Value, 3), k.Unit)})
	t = append(t, page.Run{Words: fmt.Sprintf(", %.0f"+thin+"%% apart.", math.Round(k.Apart*100)), Bold: k.Flag})
	if k.Flag {
		t = append(t, page.Run{Words: " ▲ " + or(sentence(k.Reason), "No reason given."), Bold: true})
	} else if k.Reason != "" {
		t = append(t, page.Run{Words: " " + sentence(k.Reason)})
	}
	return append(t, page.Run{Words: behind + workOnly(k.Source.String()), Quiet: true})
}
