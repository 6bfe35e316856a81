package poursheet

import (
	_ "embed"

	"slabwright/internal/page"
	"slabwright/internal/table"
)

//go:embed duties.csv
var dutiesText string

var dutiesTable = table.Read("duties.csv", dutiesText)

// Duty is one thing that one person does.
type Duty struct {
	Key  string // of the list of duties: "load", "saw" ...; empty for one of the job's own
	What string
	Name string // empty: UNASSIGNED
	Ring string // number or channel
	Hint string // party that usually holds it; never taken for a name
}

// Duties returns the duties of every pour, none assigned. The hint is the role that
// usually holds each.
func Duties() []Duty {
	var all []Duty
	for i := range dutiesTable.Rows {
		all = append(all, Duty{Key: dutiesTable.Text(i, "key"), What: dutiesTable.Text(i, "duty"), Hint: dutiesTable.Text(i, "role")})
	}
	return all
}

// Holder returns the name of who holds a duty, empty where nobody does.
func Holder(all []Duty, key string) string {
	for _, d := range all {
		if d.Key == key {
			return d.Name
		}
	}
	return ""
}

// DutySheet is who does what on the day: one name each, agreed and signed before.
type DutySheet struct {
	Title  Title
	Paper  page.Paper // zero: A4
	Pour   string
	Duties []Duty
}

// Open returns how many duties nobody holds.
func (s DutySheet) Open() int {
	n := 0
	for _, d := range s.Duties {
		if d.Name == "" {
			n++
		}
	}
	return n
}

// PDF returns the sheet.
func (s DutySheet) PDF() ([]byte, error) {
	return page.Build(sheetPaper(s.Paper), s.Title.head("duty table"), func(doc *page.Document) {
		under := "One name each, agreed before the first load."
		if n := s.Open(); n > 0 {
			under = count(n, "duty") + " with nobody yet: see the word " + unassigned + "."
			if n > 1 {
				under = fixed(float64(n), 0) + " duties with nobody yet: see the word " + unassigned + "."
			}
		}
		crewHeading(doc, "WHO DOES WHAT · "+s.Pour, under)
		var rows [][]page.Text
		for _, d := range s.Duties {
			who := page.Bold(name(d.Name))
			if d.Name == "" && d.Hint != "" {
				who = page.Join(who, page.Quiet("\nusually "+d.Hint))
			}
			rows = append(rows, []page.Text{page.Plain(d.What), who, page.Plain(d.Ring), nil})
		}
		doc.Table(page.Table{Whole: true, Size: 12, Rows: rows, Columns: []page.Column{{Head: "Duty", Share: 42}, {Head: "Name", Share: 26}, {Head: "Ring", Share: 18}, {Head: "Signed, date", Share: 20}}})
	})
}
