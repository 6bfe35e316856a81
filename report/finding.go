package report

import (
	"sort"
	"strings"

	"slabwright/internal/page"
	"slabwright/walk"
)

// findingSheet is all that is said of one finding.
func findingSheet(c *Content, f *FindingSheet, r *refs, first bool) []block {
	b := []block{room{62}}
	if first {
		b = []block{room{150}, heading{1, "The findings one by one", "findings"}}
	}
	b = append(b, heading{2, f.Finding.ID + "  " + f.Title, "f-" + f.Finding.ID},
		locator{"where-" + f.Finding.ID, PlanSmall(c, 30, 45, f.Finding.ID)},
		para{text: page.Bold(sentence(f.Answer)), note: r.list("Workings ", f.Workings...)},
		para{text: page.Plain(sentence(f.Place))})
	for _, t := range overrideTexts(f.Overrides) {
		b = append(b, para{text: page.Plain(sentence(t))})
	}
	b = append(b, answersTable(f, r)...)
	if r.screen() {
		return append(b, findingFolds(c, f, r)...)
	}
	return append(b, findingPaper(c, f, r)...)
}

// findingFolds is the rest of a finding for a screen: all of it, folded by question.
func findingFolds(c *Content, f *FindingSheet, r *refs) []block {
	var b []block
	add := func(summary string, blocks ...block) {
		if len(blocks) > 0 {
			b = append(b, fold{summary, blocks})
		}
	}
	facts := []block{factsTable(c, f)}
	if len(f.Relations) > 0 {
		facts = append(facts, relationsTable(f.Relations, r)...)
	}
	add("Seen and measured, and where it lies", facts...)
	if rows := without(f.Mechanism, f.RuledOut); len(rows) > 0 {
		add("What pulled it apart", causeBlocks(rows, r)...)
	}
	if rows := without(f.Triggers, f.RuledOut); len(rows) > 0 {
		add("Why here and then", causeBlocks(rows, r)...)
	}
	if len(f.RuledOut) > 0 {
		add("Considered and ruled out", ruledOutTable(f.RuledOut, r))
	}
	if len(f.Unexplained) > 0 {
		add("Not explained by any of these", bulletsOf(f.Unexplained))
	}
	if len(f.Prevented) > 0 {
		add("What would have prevented it", preventedTable(f.Prevented, r))
	}
	if len(f.NextTests) > 0 {
		add("What to look at next", testsTable(f.NextTests))
	}
	if len(f.Options) > 0 {
		add("What can be done", optionsBlocks(f.Options)...)
	}
	if len(f.Hands) > 0 {
		add("Who could have stopped it", handsBlocks(f.Hands, false)...)
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

// answersTable gives the three answers about one finding.
func answersTable(f *FindingSheet, r *refs) []block {
	t := table{tight: true, columns: []page.Column{{Share: 20}, {Share: 56}, {Share: 24}}}
	for _, q := range []struct {
		ask    string
		answer Answer
	}{{"Is it structural?", f.Structural}, {"Will it get worse?", f.Worse}, {"Does it matter?", f.Matters}} {
		if q.answer.Plain == "" && q.answer.Exact == "" {
			continue
		}
		text := page.Plain(sentence(q.answer.Plain))
		if more := beyond(q.answer.Exact, q.answer.Plain); more != "" && (r.screen() || !defines(more)) {
			text = append(text, page.Run{Words: " " + more, Quiet: true})
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
	if bare(t.rows, 2) {
		t.columns = []page.Column{{Share: 22}, {Share: 78}}
	}
	return []block{t}
}

// bare reports whether a column has nothing in it.
func bare(rows [][]page.Text, column int) bool {
	for _, row := range rows {
		if column < len(row) && row[column].String() != "" {
			return false
		}
	}
	return true
}

// beyond is what the exact wording says that the plain one has not said already.
func beyond(exact, plain string) string {
	var kept []string
	for _, s := range strings.SplitAfter(sentence(exact), ". ") {
		if s = strings.TrimSpace(s); s != "" && !strings.Contains(plain, strings.TrimSuffix(s, ".")) {
			kept = append(kept, s)
		}
	}
	return strings.Join(kept, " ")
}

// defines reports whether a text only says what a word means, which page one and
// the head of the findings say once for all.
func defines(s string) bool {
	for _, opening := range []string{"Structural means here", "Structural here means", "Worse means here", "It matters here when"} {
		if strings.HasPrefix(s, opening) && strings.Count(s, ". ") == 0 {
			return true
		}
	}
	return false
}
