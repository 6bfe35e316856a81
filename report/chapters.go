package report

import (
	"fmt"

	"slabwright/internal/page"
)

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
