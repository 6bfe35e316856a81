package report

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"slabwright/internal/page"
	"slabwright/walk"
)

// findingSheet is all that is said of one finding.
func findingSheet(c *Content, f *FindingSheet, r *refs, first bool) []block {
	b := []block{newPage{}}
	if first {
		b = append(b, heading{1, "The findings one by one", "findings"})
	}
	b = append(b, heading{2, f.Finding.ID + "  " + f.Title, "f-" + f.Finding.ID},
		locator{"where-" + f.Finding.ID, PlanSmall(c, 30, 45, f.Finding.ID)},
		para{text: page.Bold(sentence(f.Answer)), note: r.list("Workings ", f.Workings...)},
		para{text: page.Plain(sentence(f.Place))},
		factsTable(c, f))
	if len(f.Relations) > 0 {
		b = append(b, relationsTable(f.Relations, r)...)
	}
	b = append(b, answersTable(f, r)...)
	if rows := without(f.Mechanism, f.RuledOut); len(rows) > 0 {
		b = append(b, heading{3, "What pulled it apart", ""})
		b = append(b, causeBlocks(rows, r)...)
	}
	if rows := without(f.Triggers, f.RuledOut); len(rows) > 0 {
		b = append(b, heading{3, "Why here and then", ""})
		b = append(b, causeBlocks(rows, r)...)
	}
	if len(f.RuledOut) > 0 {
		b = append(b, ruledOutTable(f.RuledOut, r))
	}
	if len(f.Unexplained) > 0 {
		b = append(b, heading{3, "Not explained by any of these", ""}, bulletsOf(f.Unexplained))
	}
	if len(f.NextTests) > 0 {
		b = append(b, heading{3, "What to look at next", ""}, testsTable(f.NextTests))
	}
	if len(f.Options) > 0 {
		b = append(append(b, heading{3, "What can be done", ""}), optionsBlocks(f.Options)...)
	}
	if len(f.Hands) > 0 {
		b = append(append(b, heading{3, "Who could have stopped it", ""}), handsBlocks(f.Hands, false)...)
	}
	return b
}

// without leaves out the causes that are told among the ruled out.
func without(rows, out []CauseRow) []CauseRow {
	var kept []CauseRow
	for _, row := range rows {
		told := false
		for _, o := range out {
			told = told || o.ID == row.ID
		}
		if !told {
			kept = append(kept, row)
		}
	}
	return kept
}

// factsTable lists what was seen and measured, with how it is known.
func factsTable(c *Content, sheet *FindingSheet) table {
	f := &sheet.Finding
	t := table{caption: "Seen and measured", columns: []page.Column{{Head: "", Share: 30}, {Head: "", Share: 70}}}
	row := func(what, value string) {
		t.rows = append(t.rows, []page.Text{page.Quiet(what), page.Plain(value)})
	}
	row("Kind", string(f.Kind))
	if length := lengthOf(f); length > 0 {
		row("Length on the plan", with(fixed(length, 2), "m"))
	}
	if f.Width != nil {
		row("Width", ranged(f.Width, millimetres, "mm"))
	}
	if f.Step != nil {
		row("Step across it", ranged(f.Step, millimetres, "mm"))
	}
	if f.Depth != nil {
		row("Depth", ranged(f.Depth, millimetres, "mm"))
	}
	if f.Cell != nil {
		row("Mean cell", ranged(f.Cell, millimetres, "mm"))
	}
	if f.Lift != nil {
		row("Edges above the middle over 2 m", ranged(f.Lift, millimetres, "mm"))
	}
	if f.Rebound != nil {
		row("Rebound beside sound concrete", ranged(f.Rebound, func(v float64) string { return fixed(v, 2) }, "of it"))
	}
	if f.FirstSeen != nil {
		row("First seen", clockOf(c.Head).day(*f.FirstSeen)+by(f.SeenBy))
	}
	for _, name := range sortedKeys(f.Seen) {
		choice := f.Seen[name]
		row(sentenceCase(strings.ReplaceAll(name, "_", " ")), choice.Value+", "+string(choice.Known)+by(choice.By))
	}
	if len(f.Photos) > 0 {
		row("Photographs", strings.Join(f.Photos, ", "))
	}
	if f.Note != "" {
		row("Note", f.Note)
	}
	return t
}

func by(name string) string {
	if name == "" {
		return ""
	}
	return ", by " + name
}

func sentenceCase(s string) string { return strings.TrimSuffix(sentence(s), ".") }

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

func lengthOf(f *walk.Finding) float64 {
	total := 0.0
	for _, line := range f.Lines {
		for i := 0; i+1 < len(line); i++ {
			total += line[i].To(line[i+1])
		}
	}
	return total
}

// relationsTable sets the relations two to a row; where they share a working it is
// named once, over them.
func relationsTable(rows []RelationRow, r *refs) []block {
	shared := rows[0].Working
	for _, rel := range rows {
		if rel.Working != shared {
			shared = ""
		}
	}
	t := table{caption: "Where it lies, from the plan", columns: []page.Column{{Head: "", Share: 29}, {Head: "", Share: 21}, {Head: "", Share: 29}, {Head: "", Share: 21}}}
	if long(rows) {
		t.columns = []page.Column{{Head: "", Share: 30}, {Head: "", Share: 70}}
	}
	var row []page.Text
	for _, rel := range rows {
		text := strings.ReplaceAll(strings.TrimSuffix(rel.Text, " –"), " °", "°")
		cell := page.Plain(text)
		if shared == "" {
			cell = append(cell, r.list(" ", rel.Working)...)
		}
		row = append(row, page.Quiet(sentenceCase(rel.What)), cell)
		if len(row) == len(t.columns) {
			t.rows, row = append(t.rows, row), nil
		}
	}
	if len(row) > 0 {
		t.rows = append(t.rows, row)
	}
	b := []block{t}
	if shared != "" {
		b = append(b, para{text: r.list("Worked in ", shared), small: true})
	}
	return b
}

// long reports whether relations need a row each.
func long(rows []RelationRow) bool {
	for _, rel := range rows {
		if len([]rune(rel.Text)) > 24 {
			return true
		}
	}
	return false
}

// answersTable gives the three answers about one finding.
func answersTable(f *FindingSheet, r *refs) []block {
	t := table{columns: []page.Column{{Head: "Question", Share: 18}, {Head: "Answer", Share: 58}, {Head: "How sure", Share: 24}}}
	for _, q := range []struct {
		ask    string
		answer Answer
	}{{"Is it structural?", f.Structural}, {"Will it get worse?", f.Worse}, {"Does it matter?", f.Matters}} {
		if q.answer.Plain == "" && q.answer.Exact == "" {
			continue
		}
		text := page.Plain(sentence(q.answer.Plain))
		if q.answer.Exact != "" {
			text = append(text, page.Run{Words: " " + sentence(q.answer.Exact), Quiet: true})
		}
		var sure page.Text
		if q.answer.Chance != nil {
			sure = page.Plain(q.answer.Chance.Words() + "\n")
		}
		t.rows = append(t.rows, []page.Text{page.Bold(or(q.answer.Question, q.ask)), text, page.Join(sure, r.list("", q.answer.Workings...))})
	}
	if len(t.rows) == 0 {
		return nil
	}
	return []block{t}
}

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
		t.rows = append(t.rows, []page.Text{page.Bold("missing"), page.Plain(sentence(m)), page.Quiet("not known"), page.Plain(""), page.Plain("")})
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

// costClasses says what a test takes, by class.
var costClasses = []string{"hand tool, minutes", "small tool or reading", "lift or core crew", "laboratory", "closure and plant"}

func testsTable(rows []TestRow) table {
	t := table{whole: true, columns: []page.Column{{Head: "Look or test", Share: 22}, {Head: "Tells apart", Share: 22}, {Head: "What each result would do", Share: 34}, {Head: "Takes", Share: 22}}}
	for _, row := range rows {
		takes := row.Time
		if row.CostClass >= 0 && row.CostClass < len(costClasses) {
			takes = or(takes, "time not given") + "; " + costClasses[row.CostClass]
		}
		name := page.Bold(sentenceCase(row.Name))
		if row.Caution != "" {
			name = append(name, page.Run{Words: "\nTake care: " + row.Caution})
		}
		t.rows = append(t.rows, []page.Text{name, page.Plain(strings.Join(row.Splits, "; ")), page.Plain(strings.Join(row.Outcomes, "\n")), page.Plain(takes)})
	}
	return t
}

// optionsBlocks sets the options that may be chosen, or were asked for and refused,
// in full, and those that do not fit with the reason alone.
func optionsBlocks(rows []OptionRow) []block {
	t := table{whole: true, columns: []page.Column{{Head: "Remedy", Share: 15}, {Head: "Verdict", Share: 14}, {Head: "Why, and why not", Share: 34},
		{Head: "Quantity", Share: 10}, {Head: "Lasts", Share: 10}, {Head: "Disruption", Share: 11}, {Head: "Cost", Share: 11}, {Head: "When", Share: 13}}}
	aside := table{whole: true, columns: []page.Column{{Head: "Set aside", Share: 24}, {Head: "because", Share: 76}}}
	for _, o := range rows {
		why := page.Plain(sentence(o.Why))
		if o.WhyNot != "" {
			not := " Not: "
			if o.Why == "" {
				not = "Not: "
			}
			why = append(why, page.Run{Words: not + sentence(o.WhyNot)})
		}
		if o.Verdict == "does not fit" {
			reason := page.Plain(sentence(or(o.WhyNot, o.Why)))
			aside.rows = append(aside.rows, []page.Text{page.Plain(sentenceCase(o.Remedy)), append(reason, page.Run{Words: " " + worksOf(o.Sources), Quiet: true})})
			continue
		}
		if len(o.Sources) > 0 {
			why = append(why, page.Run{Words: " " + worksOf(o.Sources), Quiet: true})
		}
		t.rows = append(t.rows, []page.Text{page.Bold(sentenceCase(o.Remedy)), page.Plain(o.Verdict), why, page.Plain(o.Quantity), page.Plain(o.Life),
			page.Plain(o.Disruption), page.Plain(or(o.Cost, "no rate given")), page.Plain(o.When)})
	}
	var b []block
	for _, one := range []table{t, aside} {
		if len(one.rows) > 0 {
			b = append(b, one)
		}
	}
	return b
}

// worksOf lists works without how each is known, which the list of sources says.
func worksOf(sources []string) string {
	short := make([]string, len(sources))
	for i, s := range sources {
		short[i] = workOnly(s)
	}
	return strings.Join(short, "; ")
}

// workOnly takes "(from memory)" and its like off the end of a citation.
func workOnly(s string) string {
	for _, how := range []string{"(from memory)", "(seen in another code or excerpt)", "(read on the page)"} {
		s = strings.TrimSpace(strings.TrimSuffix(s, how))
	}
	return s
}

// handsBlocks keeps the three questions in three columns. What was done other than
// planned and did not cause this is listed under it in short.
func handsBlocks(rows []HandRow, causes bool) []block {
	t := table{whole: true, columns: []page.Column{{Head: "Party", Share: 16}, {Head: "Departed from plan?", Share: 18}, {Head: "Did that cause this?", Share: 18},
		{Head: "Had control?", Share: 16}, {Head: "What could have stopped it, and when", Share: 32}}}
	var others []page.Text
	for _, h := range rows {
		if strings.HasPrefix(h.Caused, "not here") {
			others = append(others, page.Text{{Words: h.Party + ": ", Bold: true}, {Words: sentence(strings.TrimPrefix(h.Departed, "yes: "))}})
			continue
		}
		party := page.Bold(h.Party)
		if h.Role != "" && !strings.EqualFold(h.Role, h.Party) {
			party = append(party, page.Run{Words: "\n" + h.Role})
		}
		if causes && h.Cause != "" {
			party = append(party, page.Run{Words: "\n" + h.Cause, Quiet: true})
		}
		stop := page.Plain(sentence(h.Action))
		if h.Moment != "" {
			stop = append(stop, page.Run{Words: " " + sentence(h.Moment), Quiet: true})
		}
		t.rows = append(t.rows, []page.Text{party, page.Plain(h.Departed), page.Plain(h.Caused), page.Plain(h.Control), stop})
	}
	var b []block
	if len(t.rows) > 0 {
		b = append(b, t)
	}
	if len(others) > 0 {
		b = append(b, heading{3, "Also done other than planned, without bearing on this", ""}, bullets{others})
	}
	return b
}
