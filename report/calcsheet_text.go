package report

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"slabwright/checks"
	"slabwright/internal/page"
	"slabwright/working"
)

// ChecksText is the table of checks for a terminal: group by group, what is asked,
// what there is, how much of it is used; what is not met is marked by a word and a
// sign. What was put in as a default stands below. No colour, no control codes.
func ChecksText(c *checks.Calc, width int) string {
	w := newWriter(width)
	w.line(strings.TrimSpace(c.Head.Job + "  " + c.Head.Title))
	w.line(c.Code)
	w.line(calcOutcome(c).String())
	for _, g := range checks.Groups {
		rows := rowsOf(c, g)
		if len(rows) == 0 {
			continue
		}
		w.blank()
		w.line(groupTitle(g))
		for _, r := range rows {
			checkLines(w, c, r, width)
		}
	}
	w.notChecked(c)
	w.defaults(c)
	return w.String()
}

func rowsOf(c *checks.Calc, group string) (rows []checks.Row) {
	for _, r := range c.Rows {
		if r.Group == group {
			rows = append(rows, r)
		}
	}
	return rows
}

// checkLines is one check: its words, then the figures set to the right.
func checkLines(w *writer, c *checks.Calc, r checks.Row, width int) {
	const figures = 46 // letters of the figures at the right
	met := "met"
	if !r.Pass {
		met = "NOT MET !"
	}
	number := fmt.Sprintf("  %-5s", c.Number(r.Sheet))
	right := fmt.Sprintf("%9s of %9s %-6s %6s  %s", working.Figure(r.Demand, 3), working.Figure(r.Capacity, 3), noDash(r.Unit), used(r.Utilisation), met)
	words := r.Check
	room := width - figures - utf8.RuneCountInString(number)
	if utf8.RuneCountInString(words) > room {
		w.row(number + words)
		number, words = "", ""
		w.row(strings.Repeat(" ", width-figures) + right)
	} else {
		w.row(number + words + strings.Repeat(" ", room-utf8.RuneCountInString(words)) + right)
	}
	if r.Note != "" {
		w.indented(7, r.Note)
	}
}

func noDash(unit string) string { return strings.Trim(unit, "–") }

func (w *writer) notChecked(c *checks.Calc) {
	if len(c.LeftOut) == 0 {
		return
	}
	w.blank()
	w.line("Not checked")
	for _, l := range c.LeftOut {
		w.hanging("  ", sentence(l.Check+": "+l.Why))
	}
}

// defaults lists what the program put in, with what turns when it is wrong.
func (w *writer) defaults(c *checks.Calc) {
	head := false
	for _, a := range c.Assumptions {
		if a.Known != "default" {
			continue
		}
		if !head {
			w.blank()
			w.line("Put in by the program, because nobody has said")
			head = true
		}
		s := fmt.Sprintf("%s %s: %s.", a.What, valued(plainZeros(working.Figure(a.Value, 4)), a.Unit), a.Note)
		if turned := turnedWords(a); turned != "" {
			s += " " + turned
		}
		w.hanging("  ", sentenceCase(s)+".")
	}
}

// turnedWords counts the checks that turn at the ends of a number's range.
func turnedWords(a checks.Assumption) string {
	var parts []string
	for _, trial := range []checks.Trial{a.Low, a.High} {
		turn := 0
		for _, m := range trial.Moves {
			if m.Flips {
				turn++
			}
		}
		if turn > 0 {
			parts = append(parts, fmt.Sprintf("at %s %d of the checks turn", plainZeros(working.Figure(trial.Value, 3)), turn))
		}
	}
	return sentence(strings.Join(parts, ", "))
}

// WorkingText is the workings line by line for a terminal: all of them, or the one
// with this number or id; found is false when there is none.
func WorkingText(c *checks.Calc, which string, width int) (text string, found bool) {
	w := newWriter(width)
	for _, s := range c.Sheets {
		if which != "" && which != s.Number && which != s.ID {
			continue
		}
		if found {
			w.blank()
		}
		found = true
		w.line(s.Number + "  " + s.Title)
		for _, b := range s.Basis {
			w.indented(5, sentence(b))
		}
		told := map[string]bool{}
		for _, l := range s.Lines {
			workingLines(w, numberedSheets(c, l), told)
		}
	}
	return w.String(), found
}

func workingLines(w *writer, l working.Line, told map[string]bool) {
	answer := valued(l.Text, l.Unit)
	switch l.Verdict {
	case "pass":
		answer += "   met"
	case "fail":
		answer += "   NOT MET !"
	}
	w.hanging("     ", fmt.Sprintf("%s  [%s]", sentenceCase(l.What), l.Source))
	if l.Formula == l.Symbol {
		w.hanging("       ", l.Symbol+" = "+answer)
	} else {
		w.hanging("       ", l.Symbol+" = "+l.Formula)
		lead := strings.Repeat(" ", 7+utf8.RuneCountInString(l.Symbol)) + " = "
		if l.Numbers != l.Formula {
			w.hanging(lead, plainZeros(l.Numbers))
		}
		w.hanging(lead, answer)
	}
	if given := symbolWords(l, told); len(given) > 0 {
		w.hanging("       with ", wordsOf(given))
	}
	if k := l.Check; k != nil {
		s := fmt.Sprintf("%s: %s, %s apart [%s].", sentenceCase(k.What), valued(working.Figure(k.Value, 3), k.Unit), apartWords(k.Apart), k.Source)
		if k.Flag {
			s += " ! " + sentence(k.Reason)
		}
		w.hanging("       check ", s)
	}
}

// wordsOf is a text for a terminal, lowered letters behind _ again.
func wordsOf(t page.Text) string {
	var s strings.Builder
	for _, r := range t {
		if r.Shift < 0 {
			s.WriteString("_")
		}
		s.WriteString(r.Words)
	}
	return s.String()
}
