package page

import (
	"bytes"
	"fmt"
	"maps"
	"sort"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"slabwright/internal/draw"
	"slabwright/internal/page/fonts"
)

// Paper is a sheet, upright, in millimetres.
type Paper struct {
	Name          string
	Width, Height float64
}

// The sheets reports and drawings are printed on.
var (
	A4      = Paper{"A4", 210, 297}
	A3      = Paper{"A3", 297, 420}
	Letter  = Paper{"Letter", 215.9, 279.4}
	Tabloid = Paper{"Tabloid", 279.4, 431.8}
)

// Papers lists the sheets by size and kind.
var Papers = []Paper{A4, A3, Letter, Tabloid}

// Turned returns the sheet lying on its side.
func (p Paper) Turned() Paper { return Paper{p.Name, p.Height, p.Width} }

// Head is what every page carries.
type Head struct {
	Title, Author, Subject string
	Language               string // "en"
	Foot                   string // left of "page x of y"
	Draft                  bool   // DRAFT behind every page
	Created                time.Time
	Top                    *Masthead // on every page; nil: nothing
}

// Margins of a page, mm. Notes stand in the column left of the text.
const (
	marginLeft   = 20.0
	marginRight  = 18.0
	marginTop    = 15.0
	marginFoot   = 20.0
	noteWidth    = 30.0
	noteGap      = 5.0
	family       = "text"
	BodySize     = 9.5 // points
	SmallSize    = 8.0
	draftGrey    = 241
	mostPasses   = 6
	assumedPages = 88 // on the first pass, which finds how many there are
)

var (
	ink   = draw.RGB(0x20, 0x26, 0x2b)
	quiet = draw.RGB(0x5a, 0x63, 0x6a)
	blue  = draw.RGB(0x1d, 0x52, 0x86)
)

// Document is one being written.
type Document struct {
	Paper    Paper
	head     Head
	doc      *fpdf.Fpdf
	y        float64        // where the next thing stands
	top      float64        // where the first thing of a page stands
	noteFoot float64        // down to where the margin column is taken
	known    map[string]int // pages of anchors by the pass before
	anchors  map[string]int
	links    map[string]int // link ids, also for anchors to come
	total    int            // pages, by the pass before
	dressed  Run
	size     float64
}

// Build calls write until the page numbers it asked for with [Document.PageOf]
// are those of the result, and returns the PDF. A link to an anchor that is not
// in the document is an error.
func Build(paper Paper, head Head, write func(*Document)) ([]byte, error) {
	known, total := map[string]int{}, assumedPages
	for range mostPasses {
		d := start(paper, head, known, total)
		write(d)
		if err := d.doc.Error(); err != nil {
			return nil, fmt.Errorf("page: %w", err)
		}
		settled := maps.Equal(known, d.anchors) && total == d.doc.PageNo()
		known, total = d.anchors, d.doc.PageNo()
		if !settled {
			continue
		}
		if lost := d.lost(); len(lost) > 0 {
			return nil, fmt.Errorf("page: links to %s, which are not in the document", strings.Join(lost, ", "))
		}
		var out bytes.Buffer
		if err := d.doc.Output(&out); err != nil {
			return nil, fmt.Errorf("page: %w", err)
		}
		return out.Bytes(), nil
	}
	return nil, fmt.Errorf("page: the page numbers did not settle in %d passes", mostPasses)
}

func start(paper Paper, head Head, known map[string]int, total int) *Document {
	doc := fpdf.NewCustom(&fpdf.InitType{
		OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: paper.Width, Ht: paper.Height},
	})
	doc.SetCatalogSort(true)
	doc.SetCreationDate(head.Created.UTC())
	doc.SetModificationDate(head.Created.UTC())
	doc.SetTitle(head.Title, true)
	doc.SetAuthor(head.Author, true)
	doc.SetSubject(head.Subject, true)
	doc.SetLang(head.Language)
	doc.SetAutoPageBreak(false, 0)
	doc.SetMargins(0, 0, 0)
	doc.SetCellMargin(0)
	doc.AddUTF8FontFromBytes(family, "", fonts.Regular)
	doc.AddUTF8FontFromBytes(family, "B", fonts.Semibold)
	doc.AddUTF8FontFromBytes(family, "I", fonts.Italic)
	d := &Document{Paper: paper, head: head, doc: doc, known: known, total: total, anchors: map[string]int{}, links: map[string]int{}}
	d.Break()
	return d
}

// lost lists the anchors that were linked to and never set.
func (d *Document) lost() []string {
	var lost []string
	for name := range d.links {
		if _, ok := d.anchors[name]; !ok {
			lost = append(lost, name)
		}
	}
	sort.Strings(lost)
	return lost
}

// Break starts a new page.
func (d *Document) Break() {
	d.doc.AddPage()
	d.size = 0 // fpdf sets the font anew
	if d.head.Draft {
		d.draftMark()
	}
	d.masthead()
	d.foot()
}

func (d *Document) draftMark() {
	const size = 150.0
	d.doc.SetFont(family, "B", size)
	d.doc.SetTextColor(draftGrey, draftGrey, draftGrey)
	w := d.doc.GetStringWidth("DRAFT")
	x, y := d.Paper.Width/2, d.Paper.Height/2
	d.doc.TransformBegin()
	d.doc.TransformRotate(52, x, y)
	d.doc.Text(x-w/2, y+size*25.4/72*0.33, "DRAFT")
	d.doc.TransformEnd()
	d.size = 0
}

func (d *Document) foot() {
	y := d.Paper.Height - marginFoot + 6.5
	d.Rule(marginLeft, y, d.Paper.Width-marginRight, 0.12)
	d.PlaceLine(marginLeft, y+4.2, Run{Words: d.head.Foot, Quiet: true}, 7.5)
	number := fmt.Sprintf("page %d of %d", d.doc.PageNo(), d.total)
	r := Run{Words: number, Quiet: true}
	d.PlaceLine(d.Paper.Width-marginRight-d.width(r, 7.5), y+4.2, r, 7.5)
}

// Left and Right are the edges of the whole width, Body the left edge of the text
// column, Foot the lowest place text may reach; mm.
func (d *Document) Left() float64  { return marginLeft }
func (d *Document) Right() float64 { return d.Paper.Width - marginRight }
func (d *Document) Body() float64  { return marginLeft + noteWidth + noteGap }
func (d *Document) Foot() float64  { return d.Paper.Height - marginFoot + 4 }

// Y is where the next thing will stand; Page is the number of the current page.
func (d *Document) Y() float64       { return d.y }
func (d *Document) Page() int        { return d.doc.PageNo() }
func (d *Document) MoveTo(y float64) { d.y = y }
func (d *Document) Skip(mm float64)  { d.y += mm }
func (d *Document) Room() float64    { return d.Foot() - d.y }
func (d *Document) Keep(need float64) { // starts a new page unless so much room is left
	if d.Room() < need && d.y > d.top {
		d.Break()
	}
}

// Anchor names the place the next thing stands at.
func (d *Document) Anchor(name string) {
	if _, twice := d.anchors[name]; twice {
		panic("page: anchor " + name + " set twice")
	}
	d.anchors[name] = d.doc.PageNo()
	d.doc.SetLink(d.link(name), max(d.y-4, 0), d.doc.PageNo())
}

// PageOf returns the page an anchor is on, or a number of two digits while that
// is not known yet.
func (d *Document) PageOf(name string) int {
	if n, ok := d.known[name]; ok {
		return n
	}
	return assumedPages
}

// Bookmark puts an entry in the reader's contents list; level 0 is the highest.
func (d *Document) Bookmark(words string, level int) {
	d.doc.Bookmark(fonts.Printable(words), level, d.y)
}

func (d *Document) link(name string) int {
	id, ok := d.links[name]
	if !ok {
		id = d.doc.AddLink()
		d.links[name] = id
	}
	return id
}

// dress makes a run's font current.
func (d *Document) dress(r Run, size float64) {
	if d.size == size && d.dressed.Bold == r.Bold && d.dressed.Italic == r.Italic {
		return
	}
	style := ""
	switch {
	case r.Bold:
		style = "B"
	case r.Italic:
		style = "I"
	}
	d.doc.SetFont(family, style, size)
	d.dressed, d.size = Run{Bold: r.Bold, Italic: r.Italic}, size
}

// Sides and Ends are what the margins of a page take from its width and height, mm:
// a drawing that fills a page is as much smaller than the paper.
const (
	Sides = marginLeft + marginRight
	Ends  = marginTop + marginFoot - 3
)
