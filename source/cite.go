package source

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"
)

// How tells how a published value or equation came to us.
type How string

// How a published thing is known, strongest first.
const (
	Read     How = "read on the page"
	Seen     How = "seen in another code or excerpt"
	Memory   How = "from memory"
	Practice How = "common practice, no source"
	Own      How = "our own"
)

// Citation names a published work and the place in it that a value comes from.
type Citation struct {
	Work  string `json:"work"`            // key of works.csv
	Title string `json:"title"`           // as printed in a report
	Place string `json:"place,omitempty"` // clause, equation, table or page
	How   How    `json:"how"`
}

// String returns the citation as it is printed in a working.
func (c Citation) String() string {
	s := c.Title
	if c.Place != "" {
		s += ", " + c.Place
	}
	if c.How != "" && c.How != Read && c.How != Practice && c.How != Own {
		s += " (" + string(c.How) + ")"
	}
	return s
}

//go:embed works.csv
var worksCSV string

var works = readWorks(worksCSV)

func readWorks(text string) map[string]Citation {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		panic("source: works.csv: " + err.Error())
	}
	table := map[string]Citation{}
	for _, row := range rows[1:] {
		if _, twice := table[row[0]]; twice {
			panic("source: works.csv names " + row[0] + " twice")
		}
		table[row[0]] = Citation{Work: row[0], Title: row[1], How: How(row[2])}
	}
	return table
}

// Cite returns the citation of a place in a work of works.csv. It panics when
// the work is not in the table: that is a programmer's mistake.
func Cite(work, place string) Citation {
	c, ok := works[work]
	if !ok {
		panic(fmt.Sprintf("source: no work %q in works.csv", work))
	}
	c.Place = place
	return c
}

// As returns the citation with another state of knowledge, for a place that was
// seen better or worse than the rest of its work.
func (c Citation) As(how How) Citation {
	c.How = how
	return c
}

// Works returns every work of the table, for the list at the end of a report.
func Works() map[string]Citation {
	all := make(map[string]Citation, len(works))
	for k, v := range works {
		all[k] = v
	}
	return all
}
