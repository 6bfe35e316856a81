package report

import (
	"fmt"
	"strings"
)

// Shift is what changing facts of one finding does to its causes.
type Shift struct {
	Finding string     `json:"finding"`
	Changed []string   `json:"changed"` // "aggregate: around, was through"
	Before  string     `json:"before"`  // the answer
	After   string     `json:"after"`
	Rows    []ShiftRow `json:"rows"` // largest change first
}

// ShiftRow is one cause before and after.
type ShiftRow struct {
	Cause  string `json:"cause"`
	Name   string `json:"name"`
	Before Chance `json:"before"`
	After  Chance `json:"after"`
}

// ShiftText sets the causes before and after a changed fact side by side for a terminal.
func ShiftText(s Shift, width int) string {
	w := newWriter(width)
	w.line("Finding " + s.Finding + ", if " + strings.Join(s.Changed, " and "))
	w.blank()
	longest := 0
	for _, r := range s.Rows {
		longest = max(longest, len([]rune(r.Name)))
	}
	for _, r := range s.Rows {
		w.row(fmt.Sprintf("  %-*s  %-20s then %s", longest, sentenceCase(r.Name), r.Before.About, r.After.About))
	}
	w.blank()
	w.line("As it stands: " + sentence(s.Before))
	w.line("With that changed: " + sentence(s.After))
	return w.String()
}
