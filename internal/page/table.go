package page

import "strings"

// Align says how a column stands.
type Align int

// Alignments.
const (
	AlignLeft Align = iota
	AlignRight
	AlignMiddle
	AlignDecimal // on the decimal point
)

// Column is one column of a table.
type Column struct {
	Head  string
	Share float64 // of the width, relative to the others
	Align Align
}

// Table is rows under a head that is repeated on each page. Only hair rules.
type Table struct {
	Columns []Column
	Rows    [][]Text
	Whole   bool    // the whole width, margin column included
	Size    float64 // points; 0: SmallSize
	Bare    bool    // no head
	Tight   bool    // rows close together, ruled only above and below
	Gap     float64 // mm more between the rows of a tight table
	// OnNewPage replaces the first cell of a row that begins a page, where a ditto
	// mark would point at nothing. Nil leaves them.
	OnNewPage []Text
}

const (
	cellGap  = 3.0 // mm between columns
	tightGap = 0.3
)

// Table sets a table. Rows stay in one piece unless taller than half a page.
func (d *Document) Table(t Table) {
	if t.Size == 0 {
		t.Size = SmallSize
	}
	x, width := d.Body(), d.Right()-d.Body()
	if t.Whole {
		x, width = d.Left(), d.Right()-d.Left()
		d.ClearNotes()
	}
	widths := t.widths(width)
	g := grid{d: d, t: t, x: x, width: width, widths: widths, decimals: d.decimals(t)}
	d.Keep(min(d.TableStart(t), d.Foot()-d.top))
	g.head()
	for i, cells := range t.Rows {
		var first Text
		if i < len(t.OnNewPage) {
			first = t.OnNewPage[i]
		}
		g.row(cells, first, i == len(t.Rows)-1)
	}
	d.y += 3.5
	if t.Size < SmallSize {
		d.y -= 1.2
	}
}

// TableStart is the room a table needs to begin: its head and first row.
func (d *Document) TableStart(t Table) float64 {
	if t.Size == 0 {
		t.Size = SmallSize
	}
	width := d.Right() - d.Body()
	if t.Whole {
		width = d.Right() - d.Left()
	}
	most := 1
	if !t.Bare {
		for i, w := range t.widths(width) {
			most = max(most, len(d.rows(Bold(t.Columns[i].Head), w, t.Size)))
		}
	}
	first := 0
	if len(t.Rows) > 0 {
		for i, w := range t.widths(width) {
			if i < len(t.Rows[0]) {
				first = max(first, len(d.rows(t.Rows[0][i], w, t.Size)))
			}
		}
	}
	return float64(most+max(3, min(first, 12)))*lead(t.Size) + 5
}

func (t Table) widths(total float64) []float64 {
	var shares float64
	for _, c := range t.Columns {
		shares += c.Share
	}
	if !(shares > 0) {
		panic("page: a table needs columns with shares above zero")
	}
	total -= cellGap * float64(len(t.Columns)-1)
	widths := make([]float64, len(t.Columns))
	for i, c := range t.Columns {
		widths[i] = total * c.Share / shares
	}
	return widths
}

// decimals returns, for each decimal column, the widest part behind the point.
func (d *Document) decimals(t Table) []float64 {
	widest := make([]float64, len(t.Columns))
	for _, cells := range t.Rows {
		for i := range t.Columns {
			if t.Columns[i].Align == AlignDecimal && i < len(cells) {
				widest[i] = max(widest[i], d.width(Run{Words: behindPoint(cells[i].String())}, t.Size))
			}
		}
	}
	return widest
}

func behindPoint(s string) string {
	if i := strings.IndexByte(s, '.'); i >= 0 {
		return s[i:]
	}
	return ""
}

type grid struct {
	d        *Document
	t        Table
	x, width float64
	widths   []float64
	decimals []float64
}

func (g *grid) head() {
	d := g.d
	if g.t.Bare {
		d.Keep(lead(g.t.Size) + 3)
		d.Rule(g.x, d.y, g.x+g.width, 0.25)
		d.y += 0.9
		return
	}
	var rows [][]row
	most := 1
	for i, c := range g.t.Columns {
		r := d.rows(Bold(c.Head), g.widths[i], g.t.Size)
		rows = append(rows, r)
		most = max(most, len(r))
	}
	h := float64(most) * lead(g.t.Size)
	d.Keep(h + 3*lead(g.t.Size) + 3)
	d.Rule(g.x, d.y, g.x+g.width, 0.25)
	d.y += 0.7
	x := g.x
	for i, c := range g.t.Columns {
		y := d.y + float64(most-len(rows[i]))*lead(g.t.Size)
		for k, r := range rows[i] {
			d.placeRow(x, y+float64(k)*lead(g.t.Size), g.widths[i], r, g.t.Size, c.Align)
		}
		x += g.widths[i] + cellGap
	}
	d.y += h + 0.8
	d.Rule(g.x, d.y, g.x+g.width, 0.15)
	d.y += 0.9
}

func (g *grid) row(cells []Text, onNewPage Text, last bool) {
	d := g.d
	lines, most := g.lines(cells)
	h := lead(g.t.Size)
	whole := float64(most)*h + 2
	if d.Room() < whole && (whole < (d.Foot()-d.top)/2 || d.Room() < 4*h) {
		g.carryOn()
		if onNewPage != nil {
			cells = append([]Text{onNewPage}, cells[1:]...)
			lines, most = g.lines(cells)
		}
	}
	for from := 0; from < most; {
		fit := max(int((d.Room()-1)/h), 1)
		to := min(most, from+fit)
		g.cells(lines, from, to, cells)
		d.y += float64(to-from) * h
		from = to
		if from < most {
			g.carryOn()
		}
	}
	if g.t.Tight && !last {
		d.y += tightGap + g.t.Gap
		return
	}
	d.y += 0.7
	weight := 0.06
	if last {
		weight = 0.25
	}
	d.Rule(g.x, d.y, g.x+g.width, weight)
	d.y += 0.9
}

// lines breaks the cells of a row and returns how many lines the tallest takes.
func (g *grid) lines(cells []Text) (lines [][]row, most int) {
	lines, most = make([][]row, len(g.t.Columns)), 1
	for i := range g.t.Columns {
		if i < len(cells) {
			lines[i] = g.d.rows(cells[i], g.widths[i], g.t.Size)
			most = max(most, len(lines[i]))
		}
	}
	return lines, most
}

// carryOn starts the next page with the table's head.
func (g *grid) carryOn() {
	g.d.Break()
	g.head()
}

func (g *grid) cells(lines [][]row, from, to int, cells []Text) {
	d := g.d
	x := g.x
	for i, c := range g.t.Columns {
		for k := from; k < to && k < len(lines[i]); k++ {
			r, y := lines[i][k], d.y+float64(k-from)*lead(g.t.Size)
			if c.Align == AlignDecimal && len(lines[i]) == 1 {
				behind := d.width(Run{Words: behindPoint(cells[i].String())}, g.t.Size)
				d.placeRow(x-(g.decimals[i]-behind), y, g.widths[i], r, g.t.Size, AlignRight)
				continue
			}
			d.placeRow(x, y, g.widths[i], r, g.t.Size, c.Align)
		}
		x += g.widths[i] + cellGap
	}
}
