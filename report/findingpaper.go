package report

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"slabwright/internal/page"
)

// How much of a finding is printed; a screen shows all of it.
const (
	argued      = 0.05 // a cause at least as likely gets its evidence printed
	mostArgued  = 3    // causes with evidence in one layer
	mostWeighty = 4    // arguments on each side of a cause
	mostRuled   = 5
	mostTests   = 3
	denseSize   = 7.1 // points
)

// findingPaper is the rest of a finding as printed: what a checker needs on about
// two pages, the rest in a line each.
func findingPaper(c *Content, f *FindingSheet, r *refs) []block {
	b := []block{seenTable(c, f, r)}
	b = append(b, causesPaper(f, r)...)
	b = append(b, missingLine(f)...)
	if line := ruledOutLine(f.RuledOut); len(line) > 0 {
		b = append(b, para{text: line, wide: true})
	}
	if len(f.Unexplained) > 0 {
		b = append(b, para{text: lead("Not explained by any of these: ", f.Unexplained), wide: true})
	}
	if len(f.Prevented) > 0 {
		b = append(b, preventedTable(f.Prevented, r))
	}
	if len(f.NextTests) > 0 {
		b = append(b, testsPaper(f.NextTests))
	}
	b = append(b, optionsPaper(f.Options)...)
	return append(b, handsPaper(f.Hands)...)
}

// lead is bold words and a list behind them.
func lead(head string, items []string) page.Text {
	return page.Text{{Words: head, Bold: true}, {Words: sentence(strings.Join(items, "; "))}}
}

// seenTable sets what was seen and where it lies side by side.
func seenTable(c *Content, f *FindingSheet, r *refs) table {
	var seen, where page.Text
	put := func(t *page.Text, what, value string) {
		if len(*t) > 0 {
			*t = append(*t, page.Run{Words: "\n"})
		}
		if what != "" {
			*t = append(*t, page.Run{Words: what + ": ", Quiet: true})
		}
		*t = append(*t, page.Run{Words: value})
	}
	for _, row := range factsTable(c, f).rows {
		put(&seen, row[0].String(), row[1].String())
	}
	head := "Where it lies, from the plan"
	shared := len(f.Relations) > 0
	for _, rel := range f.Relations {
		shared = shared && rel.Working == f.Relations[0].Working
	}
	for _, rel := range f.Relations {
		text := strings.ReplaceAll(strings.TrimSuffix(rel.Text, " –"), " °", "°")
		if strings.Contains(text, " ") && len([]rune(text)) > 18 {
			put(&where, "", sentenceCase(text)) // says itself what it is about
		} else {
			put(&where, sentenceCase(rel.What), text)
		}
		if !shared {
			where = append(where, r.list(" ", rel.Working)...)
		}
	}
	if shared {
		where = append(where, r.list("\nWorked in ", f.Relations[0].Working)...)
	}
	t := table{whole: true, size: denseSize, columns: []page.Column{{Head: "Seen and measured", Share: 48}, {Head: head, Share: 52}}, rows: [][]page.Text{{seen, where}}}
	if len(where) == 0 {
		t.columns, t.rows = t.columns[:1], [][]page.Text{{seen}}
	}
	return t
}

// causesPaper sets the causes layer by layer: the likely ones with what speaks for
// and against, the rest in a line each.
func causesPaper(f *FindingSheet, r *refs) []block {
	t := table{whole: true, size: denseSize, columns: []page.Column{{Head: "Causes", Share: 31}, {Head: "Speaks for it (factor on the odds)", Share: 37}, {Head: "Speaks against it", Share: 32}}}
	var rest page.Text
	for _, layer := range []struct {
		title string
		rows  []CauseRow
	}{{"What pulled it apart", f.Mechanism}, {"Why here and then", f.Triggers}} {
		rows := append([]CauseRow(nil), without(layer.rows, f.RuledOut)...)
		sort.SliceStable(rows, func(i, j int) bool { return rows[i].Chance.P > rows[j].Chance.P })
		for i, row := range rows {
			if i > 0 && (i >= mostArgued || row.Chance.P < argued) {
				rest = append(rest, lessLikely(row)...)
				continue
			}
			cell := causeCell(row, r)
			if i == 0 {
				cell = page.Join(page.Text{{Words: layer.title + "\n", Italic: true}}, cell)
			}
			t.rows = append(t.rows, []page.Text{cell, argumentsCell(row.For), argumentsCell(row.Against)})
		}
	}
	var b []block
	if len(t.rows) > 0 {
		b = append(b, t)
	}
	if len(rest) > 0 {
		b = append(b, para{text: append(page.Bold("Less likely. "), rest...), wide: true})
	}
	return b
}

// causeCell is what a cause is and how sure it is.
func causeCell(row CauseRow, r *refs) page.Text {
	t := page.Text{{Words: sentenceCase(row.Name), Bold: true}, {Words: ": " + or(row.State, "possible") + ", " + row.Chance.Words() + ". " + sentence(row.Plain)}}
	if s := worksOf(row.Sources); s != "" {
		t = append(t, page.Run{Words: " " + s + ".", Quiet: true})
	}
	return append(t, r.list(" ", row.Working)...)
}

// argumentsCell is the weightiest arguments of one side, one a line.
func argumentsCell(rows []ArgumentRow) page.Text {
	rows = append([]ArgumentRow(nil), rows...)
	sort.SliceStable(rows, func(i, j int) bool { return math.Abs(rows[i].Shift) > math.Abs(rows[j].Shift) })
	var t page.Text
	for i, a := range rows {
		if i == mostWeighty {
			t = append(t, page.Run{Words: fmt.Sprintf("\nand %d of less weight", len(rows)-i), Quiet: true})
			break
		}
		if i > 0 {
			t = append(t, page.Run{Words: "\n"})
		}
		from := a.From
		if a.Known == "assumed" || a.Known == "default" {
			from += ", " + a.Known
		}
		t = append(t, page.Run{Words: odds(a.Shift) + " ", Bold: true}, page.Run{Words: sentenceCase(a.Text)})
		if from != "" {
			t = append(t, page.Run{Words: " (" + from + ")", Quiet: true})
		}
	}
	if len(t) == 0 {
		return page.Quiet("nothing seen")
	}
	return t
}

// lessLikely is one cause in a line with what speaks most against it.
func lessLikely(row CauseRow) page.Text {
	why := or(row.RuledOut, "")
	if a := strongest(row.Against); why == "" && a != nil {
		why = a.Text
	}
	words := sentenceCase(row.Name) + ", " + row.Chance.Words()
	if why != "" {
		words += ": " + strings.TrimSuffix(strings.TrimSpace(why), ".")
	}
	return page.Plain(words + ". ")
}

// missingLine is what is not known and bears on the causes that are argued, each
// once.
func missingLine(f *FindingSheet) []block {
	var all []string
	told := map[string]bool{}
	for _, rows := range [][]CauseRow{f.Mechanism, f.Triggers} {
		for _, row := range rows {
			for _, m := range row.Missing {
				if !told[m] {
					told[m] = true
					all = append(all, strings.TrimSuffix(strings.TrimPrefix(strings.TrimSpace(m), "not known: "), "."))
				}
			}
		}
	}
	if len(all) == 0 {
		return nil
	}
	return []block{para{text: lead("Not known, and it would tell: ", all), wide: true}}
}

// ruledOutLine lists the causes that were considered and ruled out.
func ruledOutLine(rows []CauseRow) page.Text {
	var parts []string
	for i, row := range rows {
		if i == mostRuled {
			parts = append(parts, fmt.Sprintf("and %d more", len(rows)-i))
			break
		}
		why := row.RuledOut
		if a := strongest(row.Against); why == "" && a != nil {
			why = a.Text
		}
		parts = append(parts, row.Name+", because "+strings.TrimSuffix(strings.TrimSpace(why), "."))
	}
	if len(parts) == 0 {
		return nil
	}
	return lead("Considered and ruled out: ", parts)
}

// testsPaper names the looks worth most, each with what it would tell apart.
func testsPaper(rows []TestRow) table {
	t := table{whole: true, tight: true, size: denseSize, columns: []page.Column{{Head: "What to look at next", Share: 34}, {Head: "Tells apart, and what its likeliest result would do", Share: 66}}}
	for i, row := range rows {
		if i == mostTests {
			break
		}
		name := page.Text{{Words: sentenceCase(row.Name), Bold: true}, {Words: ", " + or(row.Time, "time not given")}}
		if row.Caution != "" {
			name = append(name, page.Run{Words: "; take care: " + row.Caution, Quiet: true})
		}
		words := strings.Join(row.Splits, " / ")
		if len(row.Outcomes) > 0 {
			words = sentence(words) + " " + sentenceCase(row.Outcomes[0])
		}
		t.rows = append(t.rows, []page.Text{name, page.Plain(sentence(words))})
	}
	return t
}
