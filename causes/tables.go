package causes

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strings"

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

func parseTable(name, text string) []record {
	c := csv.NewReader(strings.NewReader(text))
	c.Comment = '#'
	rows, err := c.ReadAll()
	if err != nil || len(rows) < 2 {
		panic(fmt.Sprintf("causes: table %s: %v", name, err))
	}
	var records []record
	for _, row := range rows[1:] {
		r := record{}
		for i, column := range rows[0] {
			r[column] = row[i]
		}
		records = append(records, r)
	}
	return records
}
