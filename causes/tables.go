package causes

import (
	"embed"
	"strings"

	"slabwright/internal/table"
	"slabwright/source"
)

//go:embed tables
var tables embed.FS

//go:embed testdata/cases.csv
var casesCSV string

// record is one row of a table, by column.
type record map[string]string

// list splits a cell that holds several words.
func (r record) list(column string) []string {
	if r[column] == "" {
		return nil
	}
	return strings.Split(r[column], ";")
}

// citations returns the works named in the sources column.
func (r record) citations() []source.Citation {
	var all []source.Citation
	for _, key := range r.list("sources") {
		all = append(all, source.Cite(key, ""))
	}
	return all
}

// readTable reads an embedded table with a head row. A table that cannot be read
// is a programmer's mistake and panics.
func readTable(name string) []record {
	text, err := tables.ReadFile("tables/" + name)
	if err != nil {
		panic("causes: " + err.Error())
	}
	return parseTable(name, string(text))
}

func parseTable(name, text string) (records []record) {
	for _, row := range table.Read(name, text).Records() {
		records = append(records, row)
	}
	return records
}
