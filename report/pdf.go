package report

import (
	"fmt"
	"math"
	"strings"
	"time"

	"slabwright/internal/draw"
	"slabwright/internal/page"
)

// PDF returns the report on A4. The same content gives the same bytes.
func PDF(c *Content) ([]byte, error) { return PDFOn(c, page.A4) }

// PDFOn returns the report on the given paper.
func PDFOn(c *Content, on page.Paper) ([]byte, error) {
	if bad := c.Check(); len(bad) > 0 {
		return nil, bad[0]
	}
	return page.Build(on, headOf(c), func(d *page.Document) {
		r := newRefs(c, d.PageOf)
		exactOverleaf := pageOne(d, c, r)
		if exactOverleaf {
			set(d, exactBlocks(c, r), r)
		}
		set(d, body(c, r), r)
	})
}

// headOf is what every page carries in its foot.
func headOf(c *Content) page.Head {
	h := c.Head
	hash := h.DataHash
	if len(hash) > 12 {
		hash = hash[:12] + "…"
	}
	foot := []string{or(h.Number, h.Job), or(h.SlabName, h.SlabID), "rev " + or(h.Revision, "DRAFT"), clockOf(h).write(h.Looked, "2 Jan 2006"),
		"slabwright " + or(h.Version, "–"), "data " + or(hash, "–")}
	made := h.Looked
	if made.IsZero() {
		made = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) // a date of its own, never the clock's
	}
	return page.Head{Title: titleOf(c), Author: h.Author, Subject: "Why the slab cracked, what it means, what to do", Language: "en",
		Foot: strings.Join(foot, " · "), Draft: isDraft(c), Created: made}
}

func titleOf(c *Content) string { return or(c.Head.Title, or(c.Head.SlabName, c.Head.Job)) }

func isDraft(c *Content) bool { return strings.EqualFold(or(c.Head.Revision, "DRAFT"), "DRAFT") }

// set puts blocks on pages.
func set(d *page.Document, blocks []block, r *refs) {
	for i, b := range blocks {
		switch b.(type) {
		case newPage, fold:
		default:
			d.Keep(together(d, blocks[i:]))
		}
		switch v := b.(type) {
		case fold: // for screens
		case room:
			d.ClearNotes()
			d.Keep(v.need)
		case newPage:
			if d.Y() > 20 {
				d.Break()
			}
		case heading:
			if v.level < 3 {
				d.ClearNotes()
			}
			if wideNext(blocks[i+1:]) {
				d.WideHeading(v.level, tidy(v.words), v.anchor)
			} else {
				d.Heading(v.level, tidy(v.words), v.anchor)
			}
		case para:
			if len(v.note) > 0 {
				d.Note(v.note)
			}
			switch text := tidyText(v.text); {
			case v.wide:
				d.WideSmall(text)
			case v.small:
				d.Small(text)
			default:
				d.Paragraph(text)
			}
		case bullets:
			for _, item := range v.items {
				d.Bullet(tidyText(item))
			}
			d.Skip(1.5)
		case table:
			setTable(d, v)
		case figure:
			d.Figure(v.scene, v.caption)
		case locator:
			d.NoteScene(v.scene)
		case sheet:
			setSheet(d, v)
		default:
			panic(fmt.Sprintf("report: no way to set block %d, %T", i, b))
		}
	}
}

// wideNext reports whether what comes next takes the whole width.
func wideNext(blocks []block) bool {
	if len(blocks) == 0 {
		return false
	}
	switch v := blocks[0].(type) {
	case table:
		return v.whole
	case para:
		return v.wide
	}
	return false
}

// together is the room the next block needs to stand with what must not be parted
// from it: a heading with what it is over, a paragraph with the table it leads in.
func together(d *page.Document, blocks []block) float64 {
	if len(blocks) == 0 {
		return 0
	}
	switch v := blocks[0].(type) {
	case heading:
		return 20 + together(d, blocks[1:])
	case para:
		h := d.Measure(v.text, d.Right()-d.Body(), page.BodySize)
		if len(blocks) > 1 && h < 40 {
			if t, ok := blocks[1].(table); ok {
				return h + 3 + together(d, []block{t})
			}
		}
		return min(h, 10)
	case table:
		h := d.TableStart(pageTable(v))
		if v.caption != "" {
			h += 6
		}
		return h
	case room:
		return 0
	case locator:
		return v.scene.Height
	case figure:
		return v.scene.Height + 8
	}
	return 10
}

func setTable(d *page.Document, t table) {
	if t.whole {
		d.ClearNotes()
	}
	p := pageTable(t)
	if t.caption != "" {
		d.Keep(d.TableStart(p) + 5)
		d.TableCaption(t.caption, t.whole)
	}
	d.Table(p)
}

func pageTable(t table) page.Table {
	bare := true
	for _, c := range t.columns {
		bare = bare && c.Head == ""
	}
	return page.Table{Columns: t.columns, Rows: tidyRows(t.rows), Whole: t.whole, Bare: bare, Tight: t.tight, Size: t.size}
}

// chanceBar is a chance on a line from 0 to 10 in 10: the range thick, the
// likeliest value a stroke.
func chanceBar(c Chance, width float64) *draw.Scene {
	s := draw.New(width, 4.4, "How sure", c.Words())
	g := s.Group("chance", "", draw.Paper)
	at := func(p float64) float64 { return 1 + math.Max(0, math.Min(1, p))*(width-2) }
	g.Add(draw.Line{Points: []draw.Point{{X: at(0), Y: 2.2}, {X: at(1), Y: 2.2}}, Pen: draw.Pen{Color: quiet, Width: 0.12}})
	for i := range 11 {
		x, long := at(float64(i)/10), 0.5
		if i%5 == 0 {
			long = 0.9
		}
		g.Add(draw.Line{Points: []draw.Point{{X: x, Y: 2.2 - long}, {X: x, Y: 2.2 + long}}, Pen: draw.Pen{Color: quiet, Width: 0.1}})
	}
	if c.High > c.Low {
		g.Add(draw.Line{Points: []draw.Point{{X: at(c.Low), Y: 2.2}, {X: at(c.High), Y: 2.2}}, Pen: draw.Pen{Color: faint, Width: 1.3}})
	}
	g.Add(draw.Line{Points: []draw.Point{{X: at(c.P), Y: 0.7}, {X: at(c.P), Y: 3.7}}, Pen: draw.Pen{Color: ink, Width: 0.6}})
	return s
}
