package xlsx

import (
	"bytes"
	"fmt"
	"math"
	"time"

	"github.com/xuri/excelize/v2"

	"slabwright/checks"
)

// Names of the sheets.
const (
	titleSheet      = "Calculation"
	assumptionSheet = "Assumptions"
	workingSheet    = "Workings"
	checkSheet      = "Checks"
	moveSheet       = "If wrong"
)

// Calc returns a calculation as a workbook: title, assumptions, workings whose
// answers are formulas on the numbers beside them, checks on top of those, and what
// moves when an assumption is wrong.
func Calc(c *checks.Calc) ([]byte, error) {
	b, err := newBook()
	if err != nil {
		return nil, err
	}
	defer b.file.Close()
	for _, r := range c.Rows {
		b.loadOf[r.Sheet] = r.Load
	}
	for _, step := range []func(*checks.Calc){b.title, b.assumptions, b.workings, b.checks, b.moves} {
		step(c)
	}
	if b.err != nil {
		return nil, fmt.Errorf("xlsx: %w", b.err)
	}
	b.file.SetActiveSheet(0)
	var out bytes.Buffer
	if err := b.file.Write(&out); err != nil {
		return nil, fmt.Errorf("xlsx: %w", err)
	}
	return out.Bytes(), nil
}

// book is a workbook being written; the first error stays.
type book struct {
	file    *excelize.File
	err     error
	styles  map[string]int
	given   []givenCell           // where each assumption stands
	sheets  map[string][]lineCell // where each line of a working stands
	written []string              // sheets in the order they were written
	loadOf  map[string]string     // the load a sheet is about
}

func newBook() (*book, error) {
	b := &book{file: excelize.NewFile(), styles: map[string]int{}, sheets: map[string][]lineCell{}, loadOf: map[string]string{}}
	return b, b.file.SetSheetName("Sheet1", titleSheet)
}

func (b *book) do(err error) {
	if b.err == nil {
		b.err = err
	}
}

// column is one column of a table: its head with the unit, and its width in letters.
type column struct {
	head  string
	width float64
}

// table starts a sheet with its head row, which stands still and is repeated on each
// printed page.
func (b *book) table(name string, columns []column) {
	if name != titleSheet {
		_, err := b.file.NewSheet(name)
		b.do(err)
	}
	for i, c := range columns {
		col, err := excelize.ColumnNumberToName(i + 1)
		b.do(err)
		b.do(b.file.SetColWidth(name, col, col, c.width))
		b.text(name, i+1, 1, c.head, "head")
	}
	b.do(b.file.SetPanes(name, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}))
	orientation, fit, none := "landscape", 1, 0
	paper := 9 // A4
	b.do(b.file.SetPageLayout(name, &excelize.PageLayoutOptions{Size: &paper, Orientation: &orientation, FitToWidth: &fit, FitToHeight: &none}))
	yes := true
	b.do(b.file.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &yes}))
	b.do(b.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: fmt.Sprintf("'%s'!$1:$1", name), Scope: name}))
	b.do(b.file.SetHeaderFooter(name, &excelize.HeaderFooterOptions{OddFooter: "&L&A&Rpage &P of &N"}))
}

func at(col, row int) string {
	cell, err := excelize.CoordinatesToCellName(col, row)
	if err != nil {
		panic("xlsx: " + err.Error())
	}
	return cell
}

// ref is a cell as another sheet names it.
func ref(sheet, cell string) string { return "'" + sheet + "'!" + cell }

// text puts words in a cell. They are stored as text: what begins with = is no
// formula.
func (b *book) text(sheet string, col, row int, words, style string) {
	b.do(b.file.SetCellStr(sheet, at(col, row), words))
	b.dress(sheet, col, row, style)
}

// number puts a typed number in a cell, shown to four figures.
func (b *book) number(sheet string, col, row int, v float64) {
	b.do(b.file.SetCellFloat(sheet, at(col, row), v, -1, 64))
	b.dress(sheet, col, row, formatOf(v))
}

// formula puts a formula in a cell with the value it has, so that a reader that does
// not calculate shows it too.
func (b *book) formula(sheet string, col, row int, text string, v float64) {
	b.do(b.file.SetCellFloat(sheet, at(col, row), v, -1, 64))
	b.do(b.file.SetCellFormula(sheet, at(col, row), text))
	b.dress(sheet, col, row, formatOf(v))
}

func (b *book) date(sheet string, col, row int, t time.Time) {
	if t.IsZero() {
		return
	}
	b.do(b.file.SetCellValue(sheet, at(col, row), t.UTC()))
	b.dress(sheet, col, row, "date")
}

// formatOf is a number format that shows four figures.
func formatOf(v float64) string {
	a := math.Abs(v)
	switch {
	case a == 0:
		return "0"
	case a < 1e-3 || a >= 1e7:
		return "0.000E+00"
	}
	decimals := max(3-int(math.Floor(math.Log10(a))), 0)
	if decimals == 0 {
		return "0"
	}
	s := "0."
	for range decimals {
		s += "0"
	}
	return s
}

// dress gives a cell its style: one of the named ones, or a number format.
func (b *book) dress(sheet string, col, row int, style string) {
	if style == "" {
		return
	}
	id, ok := b.styles[style]
	if !ok {
		var err error
		id, err = b.file.NewStyle(styleOf(style))
		b.do(err)
		b.styles[style] = id
	}
	b.do(b.file.SetCellStyle(sheet, at(col, row), at(col, row), id))
}

func styleOf(style string) *excelize.Style {
	top := &excelize.Alignment{Vertical: "top", WrapText: true}
	switch style {
	case "head":
		return &excelize.Style{Font: &excelize.Font{Bold: true}, Alignment: &excelize.Alignment{Vertical: "bottom", WrapText: true},
			Border: []excelize.Border{{Type: "bottom", Color: "20262B", Style: 1}}, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"EEF0F1"}}}
	case "wrap":
		return &excelize.Style{Alignment: top}
	case "bold":
		return &excelize.Style{Font: &excelize.Font{Bold: true}, Alignment: top}
	case "date":
		return &excelize.Style{CustomNumFmt: pointer("d mmm yyyy"), Alignment: &excelize.Alignment{Vertical: "top", Horizontal: "left"}}
	}
	return &excelize.Style{CustomNumFmt: pointer(style), Alignment: &excelize.Alignment{Vertical: "top"}}
}

func pointer[T any](v T) *T { return &v }
