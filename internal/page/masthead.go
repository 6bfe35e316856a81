package page

// Masthead stands at the top of every page, above what is written.
type Masthead struct {
	Height float64           // mm it takes, room below it included
	Draw   func(d *Document) // from the top of the page; it knows Page and Pages
}

// Pages is the number of pages of the document.
func (d *Document) Pages() int { return d.total }

// Upright draws a hair line from one height to another.
func (d *Document) Upright(x, y0, y1, width float64) {
	d.doc.SetDrawColor(int(ink.R), int(ink.G), int(ink.B))
	d.doc.SetLineWidth(width)
	d.doc.SetDashPattern(nil, 0)
	d.doc.Line(x, y0, x, y1)
}

// masthead begins a page: it draws what stands on top and says where the rest
// starts.
func (d *Document) masthead() {
	d.top = marginTop
	if m := d.head.Top; m != nil {
		d.y = marginTop
		m.Draw(d)
		d.top += m.Height
	}
	d.y, d.noteFoot = d.top, d.top
}

// Width is how wide a run comes out, mm.
func (d *Document) Width(r Run, size float64) float64 { return d.width(r, size) }
