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
	b = append(b, replayChapter(c, r)...)
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

// lead returns the cause the answer rests on, the likeliest; nil where none was weighed.
func (f *FindingSheet) lead() *CauseRow {
	if len(f.Causes) == 0 {
		return nil
	}
	return &f.Causes[0]
}

func bulletsOf(lines []string) bullets {
	var b bullets
	for _, l := range lines {
		b.items = append(b.items, page.Plain(sentence(l)))
	}
	return b
}
