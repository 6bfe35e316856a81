package report

import (
	"fmt"
	"strings"

	"slabwright/internal/page"
)

// structuralMeans is said where the word is first used.
const structuralMeans = "Structural here means: the slab can no longer carry the loads it was made for with the margin it was made with, or its movement harms something that must."

// body returns everything behind page one, in order.
func body(c *Content, r *refs) []block {
	var b []block
	b = append(b, planChapter(c)...)
	b = append(b, slabChapter(c, r)...)
	for i := range c.Findings {
		b = append(b, findingSheet(c, &c.Findings[i], r, i == 0)...)
	}
	for i := range c.Pours {
		b = append(b, pourChapter(c, &c.Pours[i], r, i == 0)...)
	}
	b = append(b, movementChapter(c, r)...)
	b = append(b, handsChapter(c, r)...)
	b = append(b, basisChapter(c)...)
	b = append(b, workingChapter(c, r)...)
	return append(b, endChapter(c)...)
}

func planChapter(c *Content) []block {
	caption := fmt.Sprintf("%s: %s%sm², %d panels. What was seen on %s by %s.", or(c.Head.SlabName, c.Head.SlabID),
		fixed(c.Plan.Area, 0), thin, len(c.Plan.Panels), clockOf(c.Head).day(c.Head.Looked), or(c.Head.LookedBy, "a person not named"))
	b := []block{newPage{}, heading{1, "The slab as drawn", "plan"},
		figure{"plan-drawing", PlanFor(c, SheetA4, false), page.Plain(caption)}}
	if len(c.Plan.Unseen) > 0 {
		items := []page.Text{}
		for _, u := range c.Plan.Unseen {
			items = append(items, page.Plain(u.ID+": "+sentence(u.Why)))
		}
		b = append(b, heading{3, "Could not be seen; counted as not known, never as sound", ""}, bullets{items})
	}
	return b
}

func slabChapter(c *Content, r *refs) []block {
	b := []block{newPage{}, heading{1, "The slab as a whole", "slab"}}
	if c.Slab.Answer != "" {
		b = append(b, para{text: page.Plain(c.Slab.Answer)})
	}
	if len(c.Slab.Together) > 0 {
		b = append(b, heading{3, "How the findings explain each other", ""}, bulletsOf(c.Slab.Together))
	}
	b = append(b, findingsTable(c, r)...)
	if len(c.Slab.Causes) > 0 {
		b = append(b, heading{2, "Causes at work on this slab", "slab-causes"})
		if r.screen() {
			b = append(b, causeBlocks(c.Slab.Causes, r)...)
		} else {
			b = append(b, slabCausesPaper(c.Slab.Causes, r)...)
		}
	}
	if len(c.Slab.Options) > 0 {
		b = append(append(b, heading{2, "What can be done for the slab", "slab-options"}), slabOptions(c.Slab.Options, r)...)
	}
	return b
}

// slabCausesPaper sets the likely causes of the slab as rows, the others in a line.
func slabCausesPaper(rows []CauseRow, r *refs) []block {
	var likely []CauseRow
	var rest page.Text
	for _, row := range rows {
		if row.Chance.P >= argued {
			likely = append(likely, row)
		} else {
			rest = append(rest, lessLikely(row)...)
		}
	}
	var b []block
	if len(likely) > 0 {
		t := briefCauses(likely, r)
		t.size, t.tight = denseSize, true
		b = append(b, t)
	}
	if len(rest) > 0 {
		b = append(b, para{text: append(page.Bold("Less likely. "), rest...), wide: true})
	}
	return b
}

func slabOptions(rows []OptionRow, r *refs) []block {
	if r.screen() {
		return optionsBlocks(rows)
	}
	return optionsPaper(rows)
}

// findingsTable lists every finding with its answer, as the way into the sheets.
func findingsTable(c *Content, r *refs) []block {
	if len(c.Findings) == 0 {
		return []block{para{text: page.Plain("Nothing was found on this walk.")}}
	}
	t := table{caption: "The findings", whole: true, columns: []page.Column{
		{Head: "No.", Share: 5}, {Head: "What and where", Share: 30}, {Head: "Width mm", Share: 8, Align: page.AlignDecimal},
		{Head: "Why", Share: 38}, {Head: "How sure", Share: 19}}}
	for _, f := range c.Findings {
		width := "–"
		if f.Finding.Width != nil {
			width = millimetres(f.Finding.Width.Value)
		}
		sure := "cannot tell yet"
		if f.Decided {
			if lead := f.lead(); lead != nil {
				sure = lead.Chance.Words()
			}
		}
		t.rows = append(t.rows, []page.Text{
			{{Words: f.Finding.ID, Link: "f-" + f.Finding.ID, Bold: true}},
			page.Plain(f.Title + ". " + sentence(f.Place)), page.Plain(width), page.Plain(f.brief(r)), page.Plain(sure)})
	}
	return []block{t}
}

// brief is the answer as a table lists it: on paper the cause alone, where there is
// one; the sheet of the finding says the rest.
func (f *FindingSheet) brief(r *refs) string {
	if first, _, more := strings.Cut(f.Answer, ". "); more && !r.screen() {
		if lead := f.lead(); f.Decided && lead != nil {
			return sentenceCase(lead.Name)
		}
		return first
	}
	return f.Answer
}

// lead returns the cause the answer rests on: the one it names, else the weightiest
// of those that lead in either layer, or of all where none leads.
func (f *FindingSheet) lead() *CauseRow {
	var best, named *CauseRow
	first := len(f.Answer)
	for _, rows := range [][]CauseRow{f.Triggers, f.Mechanism} {
		for i := range rows {
			r := &rows[i]
			if at := strings.Index(f.Answer, r.Name); at >= 0 && r.Name != "" && at < first {
				named, first = r, at
			}
			switch ahead := r.State == "leading"; {
			case best == nil, ahead && best.State != "leading", ahead == (best.State == "leading") && r.Chance.P > best.Chance.P:
				best = r
			}
		}
	}
	if named != nil {
		return named
	}
	return best
}

func bulletsOf(lines []string) bullets {
	var b bullets
	for _, l := range lines {
		b.items = append(b.items, page.Plain(sentence(l)))
	}
	return b
}

func movementChapter(c *Content, r *refs) []block {
	m := c.Movement
	if m.Sentence == "" && m.ShrinkageNow == 0 && m.ShrinkageLater == 0 {
		return nil
	}
	t := table{columns: []page.Column{{Head: "Movement", Share: 60}, {Head: "Value", Share: 15, Align: page.AlignDecimal}, {Head: "Unit", Share: 20}}}
	row := func(what, value, unit string) {
		t.rows = append(t.rows, []page.Text{page.Plain(what), page.Plain(value), page.Plain(unit)})
	}
	row("Shrinkage so far", fixed(m.ShrinkageNow*1000, 2), "mm per m")
	row("Shrinkage still to come", fixed(m.ShrinkageLater*1000, 2), "mm per m")
	row("Yearly swing of the slab's mean temperature", fixed(m.Season, 0), "K")
	row("Opening of a joint still to come, at the mean panel length", millimetres(m.OpeningLater), "mm")
	return []block{room{70}, heading{1, "Movement still to come", "movement"},
		para{text: page.Plain(m.Sentence), note: r.list("Working ", m.Working)}, t}
}

func handsChapter(c *Content, r *refs) []block {
	if len(c.Hands) == 0 {
		return nil
	}
	b := []block{heading{1, "Who could have stopped it", "hands"}, para{text: page.Plain("By action and moment. Three questions are answered apart, because none of them follows from another: was something done other than planned; did that cause what was found; and who had it in hand. What follows from the answers is for others to say.")}}
	if !r.screen() {
		return append(b, handsPaper(c.Hands)...)
	}
	return append(b, handsBlocks(c.Hands, true)...)
}

func basisChapter(c *Content) []block {
	b := []block{room{70}, heading{1, "What this stands on", "basis"}}
	if len(c.Assumptions) > 0 {
		t := table{caption: "Put in without being measured or recorded", whole: true, tight: true, size: denseSize, columns: []page.Column{
			{Head: "What", Share: 24}, {Head: "Value", Share: 16}, {Head: "Known", Share: 10}, {Head: "Why this value", Share: 25}, {Head: "What changes if it is wrong", Share: 25}}}
		for _, a := range c.Assumptions {
			t.rows = append(t.rows, []page.Text{page.Plain(a.What), page.Plain(a.Value), page.Plain(a.Known), page.Plain(a.Why), page.Plain(a.Moves)})
		}
		b = append(b, t)
	}
	if len(c.Missing) > 0 {
		t := table{caption: "Facts nobody knows, and what is not answered without them", whole: true, tight: true, size: denseSize, columns: []page.Column{
			{Head: "What", Share: 40}, {Head: "So", Share: 40}, {Head: "Field of the job file", Share: 20}}}
		for _, m := range c.Missing {
			t.rows = append(t.rows, []page.Text{page.Plain(m.What), page.Plain(m.So), page.Quiet(m.Field)})
		}
		b = append(b, t)
	}
	return b
}

func workingChapter(c *Content, r *refs) []block {
	if len(c.Workings) == 0 {
		return nil
	}
	b := []block{room{100}, heading{1, "Workings", "workings"},
		para{wide: true, text: page.Plain("Left: where the formula comes from. Beside it: formula, numbers put in, answer, and an independent check with how far apart the two are; a flag stands where that is over 20 %. Values are carried at full precision and printed to three figures." + onScreen(r))}}
	told := map[string]*sheet{} // where a basis was said first
	for i := range c.Workings {
		s := sheet{number: fmt.Sprintf("W%d", r.number[c.Workings[i].ID]), sheet: &c.Workings[i]}
		if basis := sentences(s.sheet.Basis); basis != "" {
			if first := told[basis]; first != nil {
				s.basisAt, s.told = first.number, symbolsOf(first.sheet)
			} else {
				told[basis] = &s
			}
		}
		b = append(b, s)
	}
	return b
}

// onScreen says on paper where the long form is.
func onScreen(r *refs) string {
	if r.screen() {
		return ""
	}
	return " How causes were weighed is printed as one matrix a finding; line by line it stands in the HTML form of this report, with every cause, test and option."
}

func endChapter(c *Content) []block {
	b := []block{room{70}, heading{1, "Sources, cautions, limits", "end"}}
	if len(c.Sources) > 0 {
		t := table{caption: "Published works used, and how what was taken from them is known", whole: true, tight: true, size: denseSize,
			columns: []page.Column{{Head: "Work", Share: 70}, {Head: "How known", Share: 30}}}
		for _, s := range c.Sources {
			t.rows = append(t.rows, []page.Text{page.Plain(s.Title), page.Plain(s.How)})
		}
		b = append(b, t)
	}
	if len(c.Cautions) > 0 {
		b = append(b, heading{2, "Cautions", "cautions"}, bulletsOf(c.Cautions))
	}
	b = append(b, heading{2, "Limits", "limits"})
	for _, t := range endLines(c) {
		b = append(b, para{text: t})
	}
	record := fmt.Sprintf("Worked out by slabwright %s from data with SHA-256 %s, sampling seed %d. The same data and seed give the same report, byte for byte.",
		or(c.Head.Version, "(version not given)"), or(c.Head.DataHash, "not given"), c.Head.Seed)
	return append(b, para{text: page.Plain(record), small: true})
}
