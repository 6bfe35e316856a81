package poursheet

import (
	_ "embed"
	"fmt"

	"slabwright/internal/page"
	"slabwright/internal/table"
)

//go:embed minimum.csv
var minimumText string

var minimumTable = table.Read("minimum.csv", minimumText)

// Minimum is one thing a specification has to state, and whether it does.
type Minimum struct {
	Group string `json:"group"`
	Item  string `json:"item"`
	Says  string `json:"says"`   // what is stated; empty: a gap
	Why   string `json:"why"`    // what hangs on it
	Place bool   `json:"in_job"` // the job has a place for it
}

// MinimumInformation holds what is given against the list of minimum information,
// modelled on ACI 360R-10 clause 1.5 (from memory).
func MinimumInformation(given Given) []Minimum {
	var all []Minimum
	for i := range minimumTable.Rows {
		key := minimumTable.Text(i, "key")
		m := Minimum{Group: minimumTable.Text(i, "group"), Item: minimumTable.Text(i, "item"), Why: minimumTable.Text(i, "why"), Place: key != "-"}
		if m.Place {
			m.Says = given[key]
		}
		all = append(all, m)
	}
	return all
}

// noteSize is the size of letters of the notes, points.
const noteSize = 8.2

// cautions stand on every notes sheet. The dangers are those of the trade, common
// practice; that codes decide is our own limit.
var cautions = []string{
	"Sawing and drilling raise silica dust: wet blade or extraction, and a mask, as local law asks.",
	"Wet concrete burns skin and eyes: gloves, boots and water at hand.",
	"Look for pipes, cables, heating and tendons before any cut or core; never cut a tendon.",
	"Open joints, steps and hoses trip; keep loads off young concrete until it is said to carry them.",
	"The local code and a licensed engineer decide; this sheet does not.",
}

// NotesSheet is the notes for the specification and what they leave open.
type NotesSheet struct {
	Title Title
	Paper page.Paper // zero: A4
	Given Given
	Notes []string
}

// PDF returns the notes, gaps first.
func (s NotesSheet) PDF() ([]byte, error) {
	list := MinimumInformation(s.Given)
	return page.Build(sheetPaper(s.Paper), s.Title.head("notes for the specification"), func(doc *page.Document) {
		var stated, gaps [][]page.Text
		for _, m := range list {
			if m.Says != "" {
				stated = append(stated, cells(m.Group, m.Item, m.Says))
				continue
			}
			where := "give it in the job"
			if !m.Place {
				where = "state it in the specification"
			}
			gaps = append(gaps, cells(m.Group, m.Item, m.Why, where))
		}
		crewHeading(doc, "NOTES · "+or(s.Title.Slab, "slab"), fmt.Sprintf("%d of %d things stated, %d open.", len(stated), len(list), len(gaps)))
		if len(gaps) > 0 {
			section(doc, "Open: not stated", page.Table{Whole: true, Size: noteSize, Rows: gaps, Columns: []page.Column{{Head: "About", Share: 14}, {Head: "What", Share: 46}, {Head: "Why it matters", Share: 40}, {Head: "Mend", Share: 30}}})
		}
		if len(stated) > 0 {
			section(doc, "Stated", page.Table{Whole: true, Size: noteSize, Rows: stated, Columns: []page.Column{{Head: "About", Share: 14}, {Head: "What", Share: 50}, {Head: "As stated", Share: 66}}})
		}
		for _, n := range append(append([]string(nil), s.Notes...), cautions...) {
			line(doc, page.Plain("– "+n), noteSize, 0.4)
		}
		line(doc, page.Quiet("The list is modelled on the minimum information of ACI 360R-10 clause 1.5, from memory."), 8, 0)
	})
}
