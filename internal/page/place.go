package page

import (
	"slabwright/internal/draw"
	"slabwright/internal/page/fonts"
)

// PlaceLine sets one run with its foot line at y, whatever room there is.
func (d *Document) PlaceLine(x, y float64, r Run, size float64) {
	r.Words = fonts.Printable(r.Words)
	size, below := r.set(size)
	y += below * 25.4 / 72
	d.dress(r, size)
	c := ink
	switch {
	case r.Link != "":
		c = blue
	case r.Quiet:
		c = quiet
	}
	d.doc.SetTextColor(int(c.R), int(c.G), int(c.B))
	d.doc.Text(x, y, r.Words)
	if r.Link != "" {
		h := size * 25.4 / 72
		d.doc.Link(x, y-0.8*h, d.doc.GetStringWidth(r.Words), h, d.link(r.Link))
	}
}

// Measure returns the height of a text set in a column.
func (d *Document) Measure(t Text, width, size float64) float64 {
	return float64(len(d.rows(t, width, size))) * lead(size)
}

// Place sets a text with its top at y and returns its height; it does not break
// pages.
func (d *Document) Place(x, y, width float64, t Text, size float64, align Align) float64 {
	rows := d.rows(t, width, size)
	for i, r := range rows {
		d.placeRow(x, y+float64(i)*lead(size), width, r, size, align)
	}
	return float64(len(rows)) * lead(size)
}

func (d *Document) placeRow(x, y, width float64, r row, size float64, align Align) {
	switch align {
	case AlignRight, AlignDecimal:
		x += width - r.width
	case AlignMiddle:
		x += (width - r.width) / 2
	}
	base := y + size*25.4/72*1.0
	for _, p := range r.pieces {
		d.PlaceLine(x, base, p, size)
		x += d.width(p, size)
	}
}

// PlaceScene puts a drawing with its top left at x, y.
func (d *Document) PlaceScene(x, y float64, s *draw.Scene) {
	s.PDF(d.doc, x, y, family, fonts.Printable)
	d.size = 0 // the drawing changed the font
}

// Rule draws a level hair line.
func (d *Document) Rule(x0, y, x1, width float64) {
	d.doc.SetDrawColor(int(ink.R), int(ink.G), int(ink.B))
	d.doc.SetLineWidth(width)
	d.doc.SetDashPattern(nil, 0)
	d.doc.Line(x0, y, x1, y)
}
