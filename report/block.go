package report

import (
	"slabwright/internal/draw"
	"slabwright/internal/page"
	"slabwright/working"
)

// A report is written once as blocks, and each form (PDF, HTML) sets them in its
// own way, so that the two cannot say different things. On paper the rows that
// weigh little are drawn together; on a screen they are folded away in full.
type block interface{ block() }

type heading struct {
	level  int
	words  string
	anchor string
}

// para is a paragraph with, where wanted, a note in the margin beside it.
type para struct {
	text  page.Text
	note  page.Text
	small bool
	wide  bool // small, over the whole width
}

type bullets struct{ items []page.Text }

type table struct {
	caption string
	columns []page.Column
	rows    [][]page.Text
	whole   bool
	tight   bool    // rows close together
	size    float64 // points; 0: the usual
}

type figure struct {
	id      string
	scene   *draw.Scene
	caption page.Text
}

// locator is a small drawing that stands in the margin.
type locator struct {
	id    string
	scene *draw.Scene
}

// sheet is one working.
type sheet struct {
	number  string // W12
	sheet   *working.Sheet
	basisAt string          // the sheet that says the same basis first
	told    map[string]bool // the symbols it explains

}

// fold is what a screen keeps closed until it is asked for. It is not printed.
type fold struct {
	summary string
	blocks  []block
}

// room starts a page in the PDF unless so much is left of the one at hand, mm.
type room struct{ need float64 }

// newPage starts a page in the PDF and is nothing on a screen.
type newPage struct{}

func (heading) block() {}
func (para) block()    {}
func (bullets) block() {}
func (table) block()   {}
func (figure) block()  {}
func (locator) block() {}
func (sheet) block()   {}
func (fold) block()    {}
func (room) block()    {}
func (newPage) block() {}
