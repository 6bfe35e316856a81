package report

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"slabwright/internal/page"
)

// workedOut reports whether an alternative could be run; where it could not its
// text says why.
func (w WhatIf) workedOut() bool { return w.Window.Why != "" || w.Window.Opens != nil || w.Text == "" }

// nightWords answers whether the best time lies in the night.
func (w WhatIf) nightWords() string {
	switch {
	case w.Window.Best == nil:
		return "–"
	case w.Night:
		return "yes"
	}
	return "no"
}

// whatIfCells is one alternative as cells, in the order of whatIfHeads.
func whatIfCells(clk clock, w WhatIf) []string {
	return []string{clk.shortOr(w.Window.Opens, "–"), clk.shortOr(w.Window.Best, "–"), clk.shortOr(w.Window.Closes, "–"), w.nightWords(), fixed(w.Peak, 2), chanceFigure(w.Plastic), chanceFigure(w.Cracked)}
}

var whatIfHeads = []string{"Opens", "Best", "Closes", "Night?", "Peak drying", "Plastic cracks", "Cracked by best"}

// whatIfTable sets the alternatives of a pour side by side.
func whatIfTable(c *Content, p *PourDay) table {
	clk := clockOf(c.Head)
	t := table{caption: "The same pour with one thing changed", whole: true, tight: true, size: denseSize, columns: []page.Column{{Head: "Alternative", Share: 19}, {Head: "Changed", Share: 19}, {Head: "Opens (range)", Share: 19}, {Head: "Best", Share: 9}, {Head: "Closes (range)", Share: 19}, {Head: "Night work?", Share: 7},
		{Head: "Peak drying kg/m²h", Share: 9, Align: page.AlignDecimal}, {Head: "Plastic cracks", Share: 11}, {Head: "Cracked before the best time", Share: 12}}}
	for _, w := range p.WhatIfs {
		if !w.workedOut() {
			t.rows = append(t.rows, []page.Text{page.Bold(sentenceCase(w.Name)), page.Plain("not worked out: " + w.Text)})
			continue
		}
		changed := w.Changed
		if changed == w.Name {
			changed = ""
		}
		cells := whatIfCells(clk, w)
		opens := clk.spanShort(w.Window.Opens, w.Window.OpensLow, w.Window.OpensHigh, "not found")
		closes := clk.spanShort(w.Window.Closes, w.Window.ClosesLow, w.Window.ClosesHigh, "not in the time looked at")
		t.rows = append(t.rows, []page.Text{page.Bold(sentenceCase(w.Name)), page.Plain(changed), page.Plain(opens), page.Plain(cells[1]), page.Plain(closes), page.Plain(cells[3]), page.Plain(cells[4]), page.Plain(cells[5]), page.Plain(cells[6])})
	}
	return t
}

// WhatIfText sets the alternatives of one pour side by side for a terminal, the pour
// as it was first. An empty id takes the first pour that has any; an id that is not
// there is told with those that are.
func WhatIfText(c *Content, pour string, width int) string {
	w := newWriter(width)
	var ids []string
	for i := range c.Pours {
		p := &c.Pours[i]
		ids = append(ids, p.ID)
		if pour == "" && len(p.WhatIfs) > 0 || pour != "" && (strings.EqualFold(p.ID, pour) || strings.EqualFold(p.Name, pour)) {
			whatIfText(w, c, p)
			return w.String()
		}
	}
	if pour == "" {
		w.line("No alternatives were worked out for any pour.")
	} else {
		w.line(fmt.Sprintf("There is no pour %q. There are: %s.", pour, or(strings.Join(ids, ", "), "none")))
	}
	return w.String()
}

func whatIfText(w *writer, c *Content, p *PourDay) {
	clk := clockOf(c.Head)
	w.line(or(p.Name, p.ID) + ", placed " + clk.hour(p.Start) + ", with one thing changed at a time (" + clk.name + ")")
	if len(p.WhatIfs) == 0 {
		w.line("No alternatives were worked out for this pour.")
		return
	}
	w.blank()
	beside := whatIfColumns(clk, p.WhatIfs, w.width)
	for _, line := range beside {
		w.row(line)
	}
	if len(beside) > 0 {
		w.blank()
	}
	for _, one := range p.WhatIfs {
		name := sentenceCase(one.Name)
		switch {
		case !one.workedOut():
			w.hanging("  ", name+": not worked out: "+sentence(one.Text))
			continue
		case len(beside) == 0:
			cells := whatIfCells(clk, one)
			w.hanging("  ", fmt.Sprintf("%s: opens %s, best %s, closes %s; night work: %s; peak drying %s kg/m²h; plastic cracks %s; cracked before the best time %s.",
				name, cells[0], cells[1], cells[2], cells[3], cells[4], cells[5], cells[6]))
		}
		if one.Changed != "" && one.Changed != one.Name {
			w.hanging("  ", name+" means: "+sentence(one.Changed))
		}
	}
	w.line("A dash: not in the time looked at.")
}

// whatIfColumns returns the alternatives in columns as wide as what stands in them,
// or nothing where they do not fit the width.
func whatIfColumns(clk clock, rows []WhatIf, width int) []string {
	all := [][]string{append([]string{""}, whatIfHeads...)}
	for _, one := range rows {
		if one.workedOut() {
			all = append(all, append([]string{cut(sentenceCase(one.Name), 26)}, whatIfCells(clk, one)...))
		}
	}
	widths := make([]int, len(all[0]))
	total := 2 * (len(widths) - 1)
	for i := range widths {
		for _, cells := range all {
			widths[i] = max(widths[i], utf8.RuneCountInString(cells[i]))
		}
		total += widths[i]
	}
	if total > width {
		return nil
	}
	var lines []string
	for _, cells := range all {
		line := ""
		for i, cell := range cells {
			line += cell + strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)+2)
		}
		lines = append(lines, line)
	}
	return lines
}
