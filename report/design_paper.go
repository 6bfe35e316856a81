package report

import (
	"fmt"
	"strings"
	"time"

	"slabwright/internal/draw"
	"slabwright/internal/page"
)

// DesignPaper is what a set of joint plans is printed with.
type DesignPaper struct {
	Paper   page.Paper
	Drawing func(Layout) (*draw.Scene, error) // the joint drawing of a plan at true scale
}

// PDF returns the joint plans as pages: the joints as drawn beside the plan least
// likely to crack, a table of all plans, then a page for each plan with its drawing and
// the rules it does not keep, and what stands behind the spacing. The same content
// gives the same bytes.
func (p DesignPaper) PDF(d *Design) ([]byte, error) {
	scenes := make([]*draw.Scene, 0, 1+len(d.Proposed))
	for _, l := range d.layouts() {
		s, err := p.Drawing(l)
		if err != nil {
			return nil, fmt.Errorf("the drawing of %q: %w", l.Name, err)
		}
		scenes = append(scenes, s)
	}
	return page.Build(p.Paper, designHead(d), func(doc *page.Document) {
		designBeside(doc, d)
		for i, l := range d.layouts() {
			doc.Break()
			designDrawn(doc, l, scenes[i])
		}
		doc.Break()
		designBehind(doc, d)
	})
}

// layouts are the joints as drawn, then the plans proposed.
func (d *Design) layouts() []Layout { return append([]Layout{d.Drawn}, d.Proposed...) }

func designHead(d *Design) page.Head {
	foot := []string{or(d.Head.Number, "no job number"), "joint plans", "rev " + or(d.Head.Revision, "DRAFT"), "slabwright " + or(d.Head.Version, "–")}
	return page.Head{Title: "Joint plans, " + d.Head.Title, Author: d.Head.Author, Subject: "joint plans", Language: "en", Foot: strings.Join(foot, " · "),
		Draft: d.Head.Revision == "" || strings.EqualFold(d.Head.Revision, "draft"), Created: time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)}
}

// designBeside is page one: two plans side by side and all of them in a table.
func designBeside(doc *page.Document, d *Design) {
	doc.Bookmark("Side by side", 0)
	doc.WideHeading(1, d.Head.Title, "")
	doc.Wide(page.Plain(fmt.Sprintf("Joints at most %.2f m apart: %s", d.Spacing.Limit, d.Spacing.Why) + " " + d.Spacing.Note))
	width := doc.Right() - doc.Left()
	cell, height := (width-8)/2, doc.Room()-78
	pair := []Layout{d.Drawn}
	if best := d.Best(); best != nil {
		pair = append(pair, *best)
	}
	y := doc.Y()
	for i, l := range pair {
		x := doc.Left() + float64(i)*(cell+8)
		doc.PlaceLine(x, y+4, page.Run{Words: sentenceCase(l.Name), Bold: true}, 11)
		doc.PlaceScene(x, y+6, designSketch(l, cell, height))
	}
	doc.MoveTo(y + 8 + height)
	doc.Table(designTable(d))
	doc.WideSmall(page.Quiet(designLegend))
}

// designLegend says what the table counts.
const designLegend = "Long dashes: sawn; ticks: formed; double: isolation; short strokes at corners: bars; rings: a rule that must be kept is not. Rules: how many that must or should be kept are not. A crack off the joints: in the first 90 days; with the times of sawing that the job gives, and with every joint sawn within its window. Models, compared with published cases only: local codes and a licensed engineer decide."

func designTable(d *Design) page.Table {
	right := page.AlignRight
	t := page.Table{Whole: true, Size: 9, Columns: []page.Column{{Head: "Joint plan", Share: 17}, {Head: "Panels", Share: 7, Align: right}, {Head: "Sawn", Share: 8, Align: right}, {Head: "Formed", Share: 8, Align: right},
		{Head: "Dowels", Share: 8, Align: right}, {Head: "Corner bars", Share: 9, Align: right}, {Head: "Rules: must, should", Share: 13, Align: right}, {Head: "Cost", Share: 10, Align: right},
		{Head: "A crack off the joints, sawn as the job says", Share: 27}, {Head: "Every joint sawn in its window", Share: 27}}}
	for _, l := range d.layouts() {
		must, should := l.broken()
		asBuilt, inTime := l.Chance.both()
		cells := []string{sentenceCase(l.Name), l.amount("panels"), l.amount("sawn joint"), l.amount("formed joint"), l.amount("dowels"), fmt.Sprint(len(l.Trimmers)),
			fmt.Sprintf("%d, %d", must, should), or(l.Cost, "–"), asBuilt, inTime}
		row := make([]page.Text, len(cells))
		for i, c := range cells {
			row[i] = page.Plain(c)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// broken counts the rules that must and that should be kept and are not.
func (l Layout) broken() (must, should int) {
	for _, w := range l.Warnings {
		switch w.Level {
		case mustLevel:
			must++
		case noteLevel:
		default:
			should++
		}
	}
	return must, should
}

// both returns the chance with the sawing the job gives and with every joint in time.
func (c *LayoutChance) both() (asBuilt, inTime string) {
	switch {
	case c == nil:
		return "not worked out", "not worked out"
	case c.InTime == nil:
		return "no times given", c.Any.Words()
	}
	return c.Any.Words(), c.InTime.Words()
}

// designDrawn is the page of one plan: the drawing, then the rules not kept.
func designDrawn(doc *page.Document, l Layout, s *draw.Scene) {
	doc.Bookmark(sentenceCase(l.Name), 0)
	doc.PlaceScene(doc.Left(), doc.Y(), s)
	doc.Break()
	doc.WideHeading(1, sentenceCase(l.Name), "")
	if l.Why != "" {
		doc.Wide(page.Plain(l.Why))
	}
	designRules(doc, l)
	designBars(doc, l)
	designBill(doc, l)
}

// designRules lists the rules that are not kept, the notes with them, each with its
// source.
func designRules(doc *page.Document, l Layout) {
	at := map[string]int{}
	var groups []sameRule
	for _, w := range l.Warnings {
		if _, known := at[w.Code]; !known {
			at[w.Code] = len(groups)
			groups = append(groups, nil)
		}
		groups[at[w.Code]] = append(groups[at[w.Code]], w)
	}
	if len(groups) == 0 {
		doc.Wide(page.Plain("Every rule of layout is kept."))
		return
	}
	t := page.Table{Whole: true, Size: 9, Columns: []page.Column{{Head: "Level", Share: 8}, {Head: "What is there", Share: 46}, {Head: "The rule", Share: 36}, {Head: "Source", Share: 40}}}
	for _, g := range groups {
		t.Rows = append(t.Rows, []page.Text{page.Plain(g[0].Level), page.Plain(strings.Join(g.said(), " ")), page.Plain(sentence(g[0].Rule)), page.Quiet(g[0].Source)})
	}
	designSection(doc, "Rules not kept, and notes", t)
}

func designBars(doc *page.Document, l Layout) {
	if len(l.Trimmers) == 0 {
		return
	}
	t := page.Table{Whole: true, Size: 9, Columns: []page.Column{{Head: "Corner at (x, y), m", Share: 22}, {Head: "Bars", Share: 46}, {Head: "Why bars and no joint", Share: 62}}}
	for _, b := range l.Trimmers {
		t.Rows = append(t.Rows, []page.Text{page.Plain(fmt.Sprintf("%.2f, %.2f", (b.From.X+b.To.X)/2, (b.From.Y+b.To.Y)/2)), page.Plain(b.Words), page.Plain(sentence(b.Why))})
	}
	designSection(doc, "Bars across inside corners", t)
}

func designBill(doc *page.Document, l Layout) {
	t := page.Table{Whole: true, Size: 9, Bare: true, Columns: []page.Column{{Share: 40}, {Share: 15, Align: page.AlignRight}, {Share: 75}}}
	for _, q := range l.Quantities {
		digits := 0
		if q.Unit == "m" {
			digits = 1
		}
		t.Rows = append(t.Rows, []page.Text{page.Plain(q.What), page.Plain(fixed(q.Amount, digits)), page.Plain(q.Unit)})
	}
	if l.Cost != "" {
		t.Rows = append(t.Rows, []page.Text{page.Plain("cost by the job's own rates"), page.Plain(l.Cost), page.Plain("")})
	}
	designSection(doc, "Quantities", t)
}

func designSection(doc *page.Document, heading string, t page.Table) {
	const headingRoom = 18
	doc.Keep(headingRoom + doc.TableStart(t))
	doc.WideHeading(2, heading, "")
	doc.Table(t)
}

// designBehind is what stands behind the plans: how the spacing was worked, what was
// taken for granted, and the cautions.
func designBehind(doc *page.Document, d *Design) {
	doc.Bookmark("Spacing, assumptions, cautions", 0)
	doc.WideHeading(1, "What stands behind the plans", "")
	number := 0
	for i := range d.Workings {
		for _, id := range d.Spacing.Workings {
			if d.Workings[i].ID == id {
				number++
				setSheet(doc, sheet{number: fmt.Sprintf("W%d", number), sheet: &d.Workings[i]})
			}
		}
	}
	if len(d.Assumptions) > 0 {
		t := page.Table{Whole: true, Size: 9, Columns: []page.Column{{Head: "Taken for granted", Share: 40}, {Head: "Value", Share: 25}, {Head: "Why", Share: 40}, {Head: "Moves", Share: 25}}}
		for _, a := range d.Assumptions {
			t.Rows = append(t.Rows, []page.Text{page.Plain(a.What), page.Plain(a.Value), page.Plain(a.Why), page.Plain(a.Moves)})
		}
		designSection(doc, "Assumptions", t)
	}
	doc.Keep(40)
	doc.WideHeading(2, "Cautions", "")
	for _, c := range d.Cautions {
		doc.Bullet(page.Plain(c))
	}
}
