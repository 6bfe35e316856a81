package report

import (
	"fmt"

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
	b = append(b, handsChapter(c)...)
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
	b = append(b, findingsTable(c)...)
	if len(c.Slab.Causes) > 0 {
		b = append(b, heading{2, "Causes at work on this slab", "slab-causes"})
		b = append(b, causeBlocks(c.Slab.Causes, r)...)
	}
	if len(c.Slab.Options) > 0 {
		b = append(append(b, heading{2, "What can be done for the slab", "slab-options"}), optionsBlocks(c.Slab.Options)...)
	}
	return b
}

// findingsTable lists every finding with its answer, as the way into the sheets.
func findingsTable(c *Content) []block {
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
			page.Plain(f.Title + ". " + sentence(f.Place)), page.Plain(width), page.Plain(f.Answer), page.Plain(sure)})
	}
	return []block{t}
}

// lead returns the cause the answer rests on: the weightiest of those that lead in
// either layer, or of all where none leads.
func (f *FindingSheet) lead() *CauseRow {
	var best *CauseRow
	for _, rows := range [][]CauseRow{f.Triggers, f.Mechanism} {
		for i := range rows {
			r := &rows[i]
			switch ahead := r.State == "leading"; {
			case best == nil, ahead && best.State != "leading", ahead == (best.State == "leading") && r.Chance.P > best.Chance.P:
				best = r
			}
		}
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
	return []block{newPage{}, heading{1, "Movement still to come", "movement"},
		para{text: page.Plain(m.Sentence), note: r.list("Working ", m.Working)}, t}
}

func handsChapter(c *Content) []block {
	if len(c.Hands) == 0 {
		return nil
	}
	b := []block{heading{1, "Who could have stopped it", "hands"}, para{text: page.Plain("By action and moment. Three questions are answered apart, because none of them follows from another: was something done other than planned; did that cause what was found; and who had it in hand. What follows from the answers is for others to say.")}}
	return append(b, handsBlocks(c.Hands, true)...)
}

func basisChapter(c *Content) []block {
	b := []block{newPage{}, heading{1, "What this stands on", "basis"}}
	if len(c.Assumptions) > 0 {
		t := table{caption: "Put in without being measured or recorded", whole: true, columns: []page.Column{
			{Head: "What", Share: 24}, {Head: "Value", Share: 16}, {Head: "Known", Share: 10}, {Head: "Why this value", Share: 25}, {Head: "What changes if it is wrong", Share: 25}}}
		for _, a := range c.Assumptions {
			t.rows = append(t.rows, []page.Text{page.Plain(a.What), page.Plain(a.Value), page.Plain(a.Known), page.Plain(a.Why), page.Plain(a.Moves)})
		}
		b = append(b, t)
	}
	if len(c.Missing) > 0 {
		t := table{caption: "Facts nobody knows, and what is not answered without them", whole: true, columns: []page.Column{
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
	b := []block{newPage{}, heading{1, "Workings", "workings"},
		para{text: page.Plain("Left: where the formula comes from. Middle: formula, numbers put in, answer. Right: an independent check and how far apart the two are; a flag stands where that is over 20 %. Values are carried at full precision and printed to three figures.")}}
	for i := range c.Workings {
		b = append(b, sheet{fmt.Sprintf("W%d", r.number[c.Workings[i].ID]), &c.Workings[i]})
	}
	return b
}

func endChapter(c *Content) []block {
	b := []block{newPage{}, heading{1, "Sources, cautions, limits", "end"}}
	if len(c.Sources) > 0 {
		t := table{caption: "Published works used, and how what was taken from them is known", whole: true,
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
