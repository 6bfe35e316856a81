package report

import (
	"fmt"
	"math"
	"strings"

	"slabwright/internal/page"
)

// causeBlocks sets each cause that is in question with its evidence; those without
// evidence of their own, and the unlikely ones, stand in a table.
func causeBlocks(rows []CauseRow, r *refs) []block {
	var b []block
	var unlikely, brief []CauseRow
	for _, row := range rows {
		if row.State == "unlikely" || row.State == "ruled out" {
			unlikely = append(unlikely, row)
			continue
		}
		if len(row.For)+len(row.Against)+len(row.Missing) == 0 {
			brief = append(brief, row)
			continue
		}
		head := page.Text{{Words: sentenceCase(row.Name), Bold: true}, {Words: ": " + or(row.State, "possible") + ", " + row.Chance.Words() + ". "}}
		text := append(head, page.Run{Words: sentence(row.Plain)})
		if row.Exact != "" {
			text = append(text, page.Run{Words: " " + sentence(row.Exact), Quiet: true})
		}
		note := page.Quiet(worksOf(row.Sources))
		if w := r.list("\n", row.Working); len(w) > 0 {
			note = append(note, w...)
		}
		b = append(b, para{text: text, note: note})
		b = append(b, evidenceTable(row, r))
	}
	if len(brief) > 0 {
		b = append(b, briefCauses(brief, r))
	}
	if len(unlikely) > 0 {
		t := table{columns: []page.Column{{Head: "Less likely", Share: 28}, {Head: "How sure", Share: 27}, {Head: "What speaks most against it", Share: 45}}}
		for _, row := range unlikely {
			why := or(row.RuledOut, row.Plain)
			if a := strongest(row.Against); row.RuledOut == "" && a != nil {
				why = a.Text
			}
			t.rows = append(t.rows, []page.Text{page.Plain(sentenceCase(row.Name)), page.Plain(row.Chance.Words()), page.Join(page.Plain(sentence(why)+" "), r.list("", row.Working))})
		}
		b = append(b, t)
	}
	return b
}

func briefCauses(rows []CauseRow, r *refs) table {
	t := table{whole: true, columns: []page.Column{{Head: "Cause", Share: 26}, {Head: "How sure", Share: 20}, {Head: "What that means", Share: 54}}}
	for _, row := range rows {
		sure := row.Chance.Words()
		if row.State != "" && row.State != "possible" {
			sure = row.State + ", " + sure
		}
		text := page.Text{{Words: sentence(row.Plain)}}
		if row.Exact != "" {
			text = append(text, page.Run{Words: " " + sentence(row.Exact), Quiet: true})
		}
		t.rows = append(t.rows, []page.Text{page.Bold(sentenceCase(row.Name)), page.Plain(sure), append(text, r.list(" ", row.Working)...)})
	}
	return t
}

func strongest(rows []ArgumentRow) *ArgumentRow {
	var best *ArgumentRow
	for i := range rows {
		if best == nil || math.Abs(rows[i].Shift) > math.Abs(best.Shift) {
			best = &rows[i]
		}
	}
	return best
}

// evidenceTable is for, against and missing of one cause.
func evidenceTable(row CauseRow, r *refs) table {
	t := table{columns: []page.Column{{Head: "", Share: 11}, {Head: "Evidence", Share: 51}, {Head: "From", Share: 20}, {Head: "Odds", Share: 9, Align: page.AlignRight}, {Head: "", Share: 13}}}
	add := func(side string, rows []ArgumentRow) {
		for _, a := range rows {
			from := a.From
			if a.Known != "" && a.Known != a.From {
				from += ", " + a.Known
			}
			t.rows = append(t.rows, []page.Text{page.Bold(side), page.Plain(sentence(a.Text)), page.Quiet(from), page.Plain(odds(a.Shift)), r.list("", a.Working)})
		}
	}
	add("for", row.For)
	add("against", row.Against)
	for _, m := range row.Missing {
		t.rows = append(t.rows, []page.Text{page.Bold("not known"), page.Plain(sentence(strings.TrimPrefix(m, "not known: "))), page.Plain(""), page.Plain(""), page.Plain("")})
	}
	return t
}

// odds writes a shift in decibans as the factor on the odds, two figures.
func odds(shift float64) string {
	factor, sign := math.Pow(10, math.Abs(shift)/10), "×"
	if shift < 0 {
		sign = "÷"
	}
	switch {
	case math.Abs(shift) < 0.05:
		return "×1"
	case factor < 9.95:
		return fmt.Sprintf("%s%.1f", sign, factor)
	case factor < 1000:
		return fmt.Sprintf("%s%.0f", sign, factor)
	}
	return sign + ">1000"
}

func ruledOutTable(rows []CauseRow, r *refs) table {
	t := table{columns: []page.Column{{Head: "Considered", Share: 28}, {Head: "and ruled out because", Share: 57}, {Head: "", Share: 15}}}
	for _, row := range rows {
		why := row.RuledOut
		if why == "" {
			if a := strongest(row.Against); a != nil {
				why = a.Text
			}
		}
		t.rows = append(t.rows, []page.Text{page.Plain(sentenceCase(row.Name)), page.Plain(sentence(why)), r.list("", row.Working)})
	}
	return t
}
