package report

import (
	"slabwright/internal/draw"
	"slabwright/internal/page"
	"slabwright/working"
)

// A report is written once as blocks, and each form (PDF, HTML) sets them in its
// own way, so that the two cannot say different things.
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
}

type bullets struct{ items []page.Text }

type table struct {
	caption string
	columns []page.Column
	rows    [][]page.Text
	whole   bool
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
	number string // W12
	sheet  *working.Sheet
}

// newPage starts a page in the PDF and is nothing on a screen.
type newPage struct{}

func (heading) block() {}
func (para) block()    {}
func (bullets) block() {}
func (table) block()   {}
func (figure) block()  {}
func (locator) block() {}
func (sheet) block()   {}
func (newPage) block() {}
