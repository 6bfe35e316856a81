package report

import (
	"slabwright/internal/page"
)

// Prevented is what one thing done otherwise would have made of the chance of a
// finding, from replays of the slab or of the fresh concrete.
type Prevented struct {
	Cause   string `json:"cause"` // id of the cause it goes against
	Name    string `json:"name"`  // of the cause
	What    string `json:"what"`  // "each joint cut by Fri 19:30"
	Before  Chance `json:"before"`
	After   Chance `json:"after"`
	Text    string `json:"text"` // the sentence
	From    string `json:"from"` // slab in plan, cut window, fresh concrete
	By      string `json:"by"`   // whose hands it was in
	Working string `json:"working,omitempty"`
}

// preventedTable sets what would have prevented a finding side by side.
func preventedTable(rows []Prevented, r *refs) table {
	t := table{caption: "The same slab with one thing done otherwise", columns: []page.Column{{Head: "Against", Share: 20}, {Head: "Done otherwise", Share: 34}, {Head: "Chance as it was", Share: 14}, {Head: "and then", Share: 14}, {Head: "In whose hands", Share: 18}}}
	for _, p := range rows {
		t.rows = append(t.rows, []page.Text{page.Plain(sentenceCase(p.Name)), page.Join(page.Plain(sentence(p.What)+" "), page.Quiet(p.From+" "), r.list("", p.Working)),
			page.Plain(p.Before.About), page.Plain(p.After.About), page.Plain(p.By)})
	}
	return t
}

// preventedText is the same for a terminal.
func preventedText(w *writer, rows []Prevented) {
	if len(rows) == 0 {
		return
	}
	w.blank()
	w.line("What would have prevented it: the same slab with one thing done otherwise")
	for _, p := range rows {
		w.hanging("  - ", sentence(p.Text))
	}
}
