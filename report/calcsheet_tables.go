package report

import (
	"fmt"
	"strings"

	"slabwright/checks"
	"slabwright/internal/page"
	"slabwright/working"
)

// calcAssumptions sets every number the calculation stands on, how it is known, and
// what moves by more than 5 % when it is wrong.
func calcAssumptions(d *page.Document, c *checks.Calc) {
	t := page.Table{Whole: true, Size: 7.6, Columns: []page.Column{{Head: "Symbol", Share: 8}, {Head: "Assumption", Share: 25}, {Head: "Value", Share: 15}, {Head: "How known", Share: 20},
		{Head: "If it were", Share: 40}}}
	for _, a := range c.Assumptions {
		known := page.Plain(string(a.Known))
		if a.Known == "default" {
			known = page.Bold("default")
		}
		if why := or(a.Note, a.By); why != "" {
			known = page.Join(known, page.Quiet(": "+why))
		}
		value := valued(plainZeros(working.Figure(a.Value, 4)), a.Unit)
		t.Rows = append(t.Rows, []page.Text{mathText(a.Symbol, page.Run{}), page.Plain(sentenceCase(a.What)), page.Plain(value), known, movesText(a)})
	}
	d.WideHeading(3, "Assumptions", "calc-assumptions")
	d.WideSmall(page.Quiet("Each number, how it is known, and how many checks move by more than 5 % when it is taken at the ends of its range; “turn” are those that become met or not met. A range not given with the number is a usual scatter. A default was put in by the program."))
	d.Table(t)
}

// movesText says what moves at both ends of a number's range.
func movesText(a checks.Assumption) page.Text {
	var t page.Text
	for _, trial := range []checks.Trial{a.Low, a.High} {
		if trial.Value == a.Value {
			continue
		}
		if len(t) > 0 {
			t = append(t, page.Run{Words: "\n"})
		}
		t = append(t, page.Run{Words: plainZeros(working.Figure(trial.Value, 3)) + ": "})
		t = append(t, trialText(trial)...)
	}
	if len(t) == 0 {
		return page.Quiet("–")
	}
	return t
}

func trialText(trial checks.Trial) page.Text {
	switch {
	case trial.Wrong != "":
		return page.Quiet("cannot be worked")
	case len(trial.Moves) == 0:
		return page.Quiet("nothing by 5 %")
	}
	turn := 0
	for _, m := range trial.Moves {
		if m.Flips {
			turn++
		}
	}
	m := trial.Moves[0]
	words := fmt.Sprintf("%d move", len(trial.Moves))
	t := page.Plain(words)
	if turn > 0 {
		t = page.Join(t, page.Plain(", "), page.Bold(fmt.Sprintf("%d turn", turn)))
	}
	return page.Join(t, page.Quiet(fmt.Sprintf("; %s %s → %s", m.Check, used(m.From), used(m.To))))
}

// calcSummary sets every check with what is used of it.
func calcSummary(d *page.Document, c *checks.Calc) {
	d.WideHeading(2, "Summary of results", "calc-summary")
	for _, g := range checks.Groups {
		t := page.Table{Whole: true, Size: 8, Columns: []page.Column{{Head: "Sheet", Share: 8}, {Head: "Check", Share: 52}, {Head: "Asked", Share: 12, Align: page.AlignRight}, {Head: "There is", Share: 12, Align: page.AlignRight},
			{Head: "Unit", Share: 11}, {Head: "Used", Share: 8, Align: page.AlignRight}, {Head: "", Share: 14}, {Head: "Clause", Share: 36}}}
		for _, r := range c.Rows {
			if r.Group == g {
				t.Rows = append(t.Rows, summaryRow(c, r))
			}
		}
		if len(t.Rows) == 0 {
			continue
		}
		d.Keep(d.TableStart(t) + 10)
		d.WideHeading(3, groupTitle(g), "calc-sum-"+g)
		d.Table(t)
	}
	if len(c.LeftOut) > 0 {
		d.WideHeading(3, "Not checked", "calc-left-out")
		var parts []string
		for _, l := range c.LeftOut {
			parts = append(parts, sentence(l.Check+": "+l.Why))
		}
		d.Wide(page.Plain(strings.Join(parts, " ")))
	}
}

func summaryRow(c *checks.Calc, r checks.Row) []page.Text {
	met := page.Plain("met")
	if !r.Pass {
		met = page.Bold("not met ▲")
	}
	check := page.Plain(r.Check)
	if r.Note != "" {
		check = page.Join(check, page.Quiet("\n"+r.Note))
	}
	return []page.Text{{{Words: c.Number(r.Sheet), Link: "calc-" + r.Sheet}}, check, page.Plain(working.Figure(r.Demand, 3)), page.Plain(working.Figure(r.Capacity, 3)),
		page.Plain(strings.ReplaceAll(r.Unit, "–", "")), page.Bold(used(r.Utilisation)), met, citeText(r.Clause)}
}

// groupTitle is a group of checks in words.
func groupTitle(g string) string {
	return map[string]string{checks.Thickness: "Thickness: bending, curl, folding, lines and aisles", checks.Fatigue: "Fatigue", checks.Punching: "Punching", checks.Joints: "Joints and dowels",
		checks.Reinforce: "Steel", checks.Subgrade: "Ground", checks.Surface: "Surface and exposure"}[g]
}
