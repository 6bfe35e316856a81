package report

import (
	"strings"

	"slabwright/internal/page"
)

// relationsTable sets the relations two to a row; where they share a working it is
// named once, over them.
func relationsTable(rows []RelationRow, r *refs) []block {
	shared := rows[0].Working
	for _, rel := range rows {
		if rel.Working != shared {
			shared = ""
		}
	}
	t := table{caption: "Where it lies, from the plan", columns: []page.Column{{Head: "", Share: 29}, {Head: "", Share: 21}, {Head: "", Share: 29}, {Head: "", Share: 21}}}
	if long(rows) {
		t.columns = []page.Column{{Head: "", Share: 30}, {Head: "", Share: 70}}
	}
	var row []page.Text
	for _, rel := range rows {
		text := strings.ReplaceAll(strings.TrimSuffix(rel.Text, " –"), " °", "°")
		cell := page.Plain(text)
		if shared == "" {
			cell = append(cell, r.list(" ", rel.Working)...)
		}
		row = append(row, page.Quiet(sentenceCase(rel.What)), cell)
		if len(row) == len(t.columns) {
			t.rows, row = append(t.rows, row), nil
		}
	}
	if len(row) > 0 {
		t.rows = append(t.rows, row)
	}
	b := []block{t}
	if shared != "" {
		b = append(b, para{text: r.list("Worked in ", shared), small: true})
	}
	return b
}

// long reports whether relations need a row each.
func long(rows []RelationRow) bool {
	for _, rel := range rows {
		if len([]rune(rel.Text)) > 24 {
			return true
		}
	}
	return false
}
