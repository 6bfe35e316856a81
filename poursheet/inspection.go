package poursheet

import (
	_ "embed"
	"strings"

	"slabwright/internal/page"
	"slabwright/internal/table"
)

//go:embed inspection.csv
var inspectionText string

var inspectionTable = table.Read("inspection.csv", inspectionText)

// Given is the facts of a job in words, by key: "thickness" is "180 mm". A key that
// is not there is a fact nobody stated.
type Given map[string]string

// notStated is what stands where a fact is missing.
const notStated = "NOT STATED"

// fill puts facts in the place of words in braces.
func (g Given) fill(words string) string {
	for {
		open := strings.IndexByte(words, '{')
		if open < 0 {
			return words
		}
		end := open + strings.IndexByte(words[open:], '}')
		if end < open {
			return words
		}
		words = words[:open] + or(g[words[open+1:end]], notStated) + words[end+1:]
	}
}

// InspectionSheet is what is looked at and tested, with the points at which work
// holds until it is signed.
type InspectionSheet struct {
	Title Title
	Paper page.Paper // zero: A4
	Pour  string
	Given Given
}

// PDF returns the list.
func (s InspectionSheet) PDF() ([]byte, error) {
	return page.Build(sheetPaper(s.Paper), s.Title.head("inspection and tests"), func(doc *page.Document) {
		crewHeading(doc, "LOOK AND TEST · "+s.Pour, "HOLD: nothing goes on until it is signed.")
		var rows [][]page.Text
		stage := ""
		for i := range inspectionTable.Rows {
			text := func(column string) string { return inspectionTable.Text(i, column) }
			first := page.Text{}
			if text("stage") != stage {
				stage = text("stage")
				first = page.Bold(stage)
			}
			hold := page.Plain("")
			if text("hold") == "yes" {
				hold = page.Bold("HOLD")
			}
			limit := s.Given.fill(text("limit"))
			if source := text("source"); source != "" {
				limit += " (" + source + ")"
			}
			rows = append(rows, []page.Text{first, page.Plain(text("what")), marked(limit), hold, page.Plain(text("record")), nil})
		}
		doc.Table(page.Table{Whole: true, Size: 8.8, Rows: rows, Columns: []page.Column{{Head: "Stage", Share: 14}, {Head: "What", Share: 36}, {Head: "Limit", Share: 32},
			{Head: "", Share: 9}, {Head: "Record", Share: 17}, {Head: "Found, by, time", Share: 26}}})
	})
}

// marked sets the words of what nobody stated in bold.
func marked(words string) page.Text {
	var t page.Text
	for {
		before, after, found := strings.Cut(words, notStated)
		t = append(t, page.Run{Words: before})
		if !found {
			return t
		}
		t = append(t, page.Run{Words: notStated, Bold: true})
		words = after
	}
}
