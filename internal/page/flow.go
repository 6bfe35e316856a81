package page

import "slabwright/internal/draw"

const wideSize = 7.3 // points, of small text over the whole width

// Heading sets a heading with room for what follows it, and a bookmark. Level 1
// is a chapter, 2 a section, 3 a small head inside one (no bookmark).
func (d *Document) Heading(level int, words, anchor string) {
	d.heading(level, words, anchor, level == 1)
}

// WideHeading is Heading from the left edge, for what takes the whole width.
func (d *Document) WideHeading(level int, words, anchor string) {
	d.ClearNotes()
	d.heading(level, words, anchor, true)
}

func (d *Document) heading(level int, words, anchor string, wide bool) {
	size, above, below, keep := 15.0, 7.0, 2.5, 30.0
	switch level {
	case 2:
		size, above, below, keep = 12, 5.5, 1.5, 22
	case 3:
		size, above, below, keep = 9.5, 3, 0.6, 14
	}
	width := d.Right() - d.Body()
	x := d.Body()
	if wide {
		x, width = d.Left(), d.Right()-d.Left()
	}
	t := Bold(words)
	d.Keep(d.Measure(t, width, size) + keep)
	if d.y > d.top {
		d.y += above
	}
	if anchor != "" {
		d.Anchor(anchor)
	}
	if level < 3 {
		d.Bookmark(words, level-1)
	}
	d.y += d.Place(x, d.y, width, t, size, AlignLeft) + below
}

// Paragraph sets a text in the text column, breaking pages between lines but
// never leaving one line alone.
func (d *Document) Paragraph(t Text) { d.set(t, d.Body(), d.Right()-d.Body(), BodySize, 1.8) }

// Small is Paragraph in small letters.
func (d *Document) Small(t Text) { d.set(t, d.Body(), d.Right()-d.Body(), SmallSize, 1.5) }

// WideSmall is Small from the left edge, a little smaller still.
func (d *Document) WideSmall(t Text) {
	d.ClearNotes()
	d.set(t, d.Left(), d.Right()-d.Left(), wideSize, 1.3)
}

// Bullet sets one item of a list.
func (d *Document) Bullet(t Text) {
	d.Keep(2 * lead(BodySize))
	d.PlaceLine(d.Body()+0.5, d.y+BodySize*25.4/72, Run{Words: "–"}, BodySize)
	d.set(t, d.Body()+4, d.Right()-d.Body()-4, BodySize, 0.9)
}

func (d *Document) set(t Text, x, width, size, below float64) {
	rows := d.rows(t, width, size)
	h := lead(size)
	for i := 0; i < len(rows); i++ {
		left := len(rows) - i
		need := h
		if (i == 0 && left > 1) || left == 2 {
			need = 2 * h // no single line at the foot or the head of a page
		}
		d.Keep(need)
		d.placeRow(x, d.y, width, rows[i], size, AlignLeft)
		d.y += h
	}
	d.y += below
}

// Note sets a small text in the margin column beside what comes next.
func (d *Document) Note(t Text) {
	const size = 7.5
	h := d.Measure(t, noteWidth, size)
	d.Keep(min(h, 40))
	y := max(d.y, d.noteFoot)
	if y+h > d.Foot() {
		y = max(d.noteFoot, d.Foot()-h)
	}
	d.noteFoot = y + d.Place(d.Left(), y+0.5, noteWidth, t, size, AlignLeft) + 1.5
}

// ClearNotes moves down past the notes in the margin, for what takes the whole
// width.
func (d *Document) ClearNotes() {
	if d.y < d.noteFoot {
		d.y = d.noteFoot
	}
}

// Figure sets a drawing and its caption, never parted. A drawing wider than the
// text column takes the whole width, one wider than that reaches into the margins.
func (d *Document) Figure(s *draw.Scene, caption Text) {
	x := d.Body()
	width := d.Right() - d.Body()
	if s.Width > width {
		x, width = d.Left(), d.Right()-d.Left()
		d.ClearNotes()
	}
	at := x
	if s.Width > width {
		at = (d.Paper.Width - s.Width) / 2 // reaches into the margins alike
	}
	h := d.Measure(caption, width, SmallSize)
	d.Keep(s.Height + 1.5 + h)
	d.PlaceScene(at, d.y, s)
	d.y += s.Height + 1.5
	d.y += d.Place(x, d.y, width, caption, SmallSize, AlignLeft) + 4
}

// TableCaption sets the words over a table; see to it with [Document.Keep] and
// [Document.TableStart] that they stay together.
func (d *Document) TableCaption(words string, whole bool) {
	x, width := d.Body(), d.Right()-d.Body()
	if whole {
		x, width = d.Left(), d.Right()-d.Left()
	}
	d.y += d.Place(x, d.y, width, Bold(words), SmallSize, AlignLeft) + 0.8
}

// NoteScene puts a drawing in the margin column beside what comes next. It must
// be no wider than the column.
func (d *Document) NoteScene(s *draw.Scene) {
	if s.Width > noteWidth+1e-9 {
		panic("page: a drawing in the margin is wider than the margin")
	}
	d.Keep(s.Height)
	y := max(d.y, d.noteFoot)
	d.PlaceScene(d.Left(), y, s)
	d.noteFoot = y + s.Height + 2
}

// Wide is Paragraph from the left edge, in small letters.
func (d *Document) Wide(t Text) {
	d.ClearNotes()
	d.set(t, d.Left(), d.Right()-d.Left(), SmallSize+0.5, 1.6)
}
