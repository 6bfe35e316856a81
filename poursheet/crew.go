package poursheet

import (
	"slabwright/internal/draw"
	"slabwright/internal/page"
)

// Sizes of letters on sheets read at arm's length by a torch, points. Need 46 asks
// for 14 at least.
const (
	crewSize  = 14.0
	crewHead  = 26.0
	crewLarge = 17.0
)

// crewHeading sets the name of a sheet and one line under it, with a heavy rule.
func crewHeading(doc *page.Document, words, under string) {
	doc.Bookmark(words, 0)
	width := doc.Right() - doc.Left()
	doc.MoveTo(doc.Y() + doc.Place(doc.Left(), doc.Y()-3, width, page.Bold(words), crewHead, page.AlignLeft) - 2)
	if under != "" {
		doc.MoveTo(doc.Y() + doc.Place(doc.Left(), doc.Y(), width, page.Plain(under), crewSize, page.AlignLeft) + 1)
	}
	doc.Rule(doc.Left(), doc.Y(), doc.Right(), 0.8)
	doc.Skip(3)
}

// line sets a text over the whole width in crew letters.
func line(doc *page.Document, t page.Text, size, below float64) {
	width := doc.Right() - doc.Left()
	doc.Keep(doc.Measure(t, width, size))
	doc.MoveTo(doc.Y() + doc.Place(doc.Left(), doc.Y(), width, t, size, page.AlignLeft) + below)
}

// boxed sets a text in a frame, so that it is seen first.
func boxed(doc *page.Document, t page.Text, size float64) {
	const pad = 2.5
	width := doc.Right() - doc.Left()
	h := doc.Measure(t, width-2*pad, size) + 2*pad
	doc.Keep(h)
	s := draw.New(width, h, "frame", "")
	s.Group("frame", "", draw.Paper).Add(draw.Area{Ring: []draw.Point{{X: 0.4, Y: 0.4}, {X: width - 0.4, Y: 0.4}, {X: width - 0.4, Y: h - 0.4}, {X: 0.4, Y: h - 0.4}},
		Pen: draw.Pen{Color: draw.Ink, Width: 0.8}})
	doc.PlaceScene(doc.Left(), doc.Y(), s)
	doc.Place(doc.Left()+pad, doc.Y()+pad-0.6, width-2*pad, t, size, page.AlignLeft)
	doc.MoveTo(doc.Y() + h + 2.5)
}

// sheetPaper is the paper of a crew sheet, A4 where none is named.
func sheetPaper(p page.Paper) page.Paper {
	if p.Width == 0 {
		return page.A4
	}
	return p
}

// unassigned is the word for a duty nobody holds: never colour alone.
const unassigned = "UNASSIGNED"

// name returns a person's name, or the word that there is none.
func name(s string) string { return or(s, unassigned) }

// written is a person's name, or the word that there is none with room to write one.
func written(s string) page.Text {
	if s == "" {
		return page.Join(page.Bold(unassigned), page.Plain("  ____________________"))
	}
	return page.Plain(s)
}
