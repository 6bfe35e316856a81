package report

import (
	"strings"

	"slabwright/internal/page"
)

// costClasses says what a test takes, by class.
var costClasses = []string{"hand tool, minutes", "small tool or reading", "lift or core crew", "laboratory", "closure and plant"}

func testsTable(rows []TestRow) table {
	t := table{whole: true, columns: []page.Column{{Head: "Look or test", Share: 22}, {Head: "Tells apart", Share: 22}, {Head: "What each result would do", Share: 34}, {Head: "Takes", Share: 22}}}
	for _, row := range rows {
		takes := row.Time
		if row.CostClass >= 0 && row.CostClass < len(costClasses) {
			takes = or(takes, "time not given") + "; " + costClasses[row.CostClass]
		}
		name := page.Bold(sentenceCase(row.Name))
		if row.Caution != "" {
			name = append(name, page.Run{Words: "\nTake care: " + row.Caution})
		}
		t.rows = append(t.rows, []page.Text{name, page.Plain(strings.Join(row.Splits, "; ")), page.Plain(strings.Join(row.Outcomes, "\n")), page.Plain(takes)})
	}
	return t
}

// optionsBlocks sets the options that may be chosen, or were asked for and refused,
// in full, and those that do not fit with the reason alone.
func optionsBlocks(rows []OptionRow) []block {
	t := table{whole: true, columns: []page.Column{{Head: "Remedy", Share: 15}, {Head: "Verdict", Share: 14}, {Head: "Why, and why not", Share: 34},
		{Head: "Quantity", Share: 10}, {Head: "Lasts", Share: 10}, {Head: "Disruption", Share: 11}, {Head: "Cost", Share: 11}, {Head: "When", Share: 13}}}
	aside := table{whole: true, columns: []page.Column{{Head: "Set aside", Share: 24}, {Head: "because", Share: 76}}}
	for _, o := range rows {
		why := page.Plain(sentence(o.Why))
		if o.WhyNot != "" {
			not := " Not: "
			if o.Why == "" {
				not = "Not: "
			}
			why = append(why, page.Run{Words: not + sentence(o.WhyNot)})
		}
		if o.Verdict == "does not fit" {
			reason := page.Plain(sentence(or(o.WhyNot, o.Why)))
			aside.rows = append(aside.rows, []page.Text{page.Plain(sentenceCase(o.Remedy)), append(reason, page.Run{Words: " " + worksOf(o.Sources), Quiet: true})})
			continue
		}
		if len(o.Sources) > 0 {
			why = append(why, page.Run{Words: " " + worksOf(o.Sources), Quiet: true})
		}
		t.rows = append(t.rows, []page.Text{page.Bold(sentenceCase(o.Remedy)), page.Plain(o.Verdict), why, page.Plain(o.Quantity), page.Plain(o.Life),
			page.Plain(o.Disruption), page.Plain(or(o.Cost, "no rate given")), page.Plain(o.When)})
	}
	var b []block
	for _, one := range []table{t, aside} {
		if len(one.rows) > 0 {
			b = append(b, one)
		}
	}
	return b
}

// optionsPaper sets the options that fit, leaving and watching, and what was asked
// for and refused, as rows; what does not fit in one paragraph.
func optionsPaper(rows []OptionRow) []block {
	t := table{whole: true, tight: true, size: denseSize, columns: []page.Column{{Head: "What can be done", Share: 17}, {Head: "Verdict", Share: 14}, {Head: "Why, and why not", Share: 34},
		{Head: "Quantity; lasts; disruption", Share: 15}, {Head: "Cost", Share: 12}, {Head: "When", Share: 24}}}
	not := table{whole: true, tight: true, size: denseSize, columns: []page.Column{{Share: 17}, {Share: 14}, {Share: 85}}}
	var aside []string
	for _, o := range rows {
		if o.Verdict == "does not fit" && !always(o.Remedy) {
			aside = append(aside, o.Remedy+": "+strings.TrimSuffix(strings.TrimSpace(or(o.WhyNot, o.Why)), "."))
			continue
		}
		if o.Verdict == "does not fit" || o.Verdict == "refused" {
			not.rows = append(not.rows, []page.Text{page.Bold(sentenceCase(o.Remedy)), page.Plain(o.Verdict), whyText(o)})
			continue
		}
		t.rows = append(t.rows, []page.Text{page.Bold(sentenceCase(o.Remedy)), page.Plain(o.Verdict), whyText(o), page.Plain(joined(o.Quantity, o.Life, o.Disruption)),
			page.Plain(or(o.Cost, "no rate given")), page.Plain(o.When)})
	}
	var b []block
	for _, one := range []table{t, not} {
		if len(one.rows) > 0 {
			b = append(b, one)
		}
	}
	if len(aside) > 0 {
		b = append(b, para{text: lead("Does not fit here. ", aside), wide: true})
	}
	return b
}

// always reports whether an option is shown whatever its verdict.
func always(remedy string) bool {
	return strings.HasPrefix(remedy, "watch") || strings.HasPrefix(remedy, "leave")
}

// whyText is the reason for and against an option with the works behind it.
func whyText(o OptionRow) page.Text {
	var t page.Text
	if o.Why != "" {
		t = page.Plain(sentence(o.Why))
	}
	if o.WhyNot != "" {
		not := sentence(o.WhyNot)
		if o.Why != "" {
			not = " Not: " + not
		}
		t = append(t, page.Run{Words: not})
	}
	if len(o.Sources) > 0 {
		t = append(t, page.Run{Words: " " + worksOf(o.Sources), Quiet: true})
	}
	return t
}

// joined lists what is given.
func joined(parts ...string) string {
	var kept []string
	for _, p := range parts {
		if p = strings.TrimSpace(p); p != "" && p != "–" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, "; ")
}

// handsPaper sets who departed from plan, or could have stopped it first, as rows;
// the others in a line.
func handsPaper(rows []HandRow) []block {
	t := table{whole: true, tight: true, size: denseSize, columns: []page.Column{{Head: "Who could have stopped it", Share: 15}, {Head: "Departed from plan?", Share: 24}, {Head: "Did that cause this?", Share: 19},
		{Head: "Had control?", Share: 15}, {Head: "What could have stopped it, and when", Share: 32}}}
	var chain, elsewhere []string
	for i, h := range rows {
		if strings.HasPrefix(h.Caused, "not here") {
			elsewhere = append(elsewhere, h.Party+", "+strings.TrimSuffix(strings.TrimPrefix(h.Departed, "yes: "), "."))
			continue
		}
		if i > 0 && !strings.HasPrefix(h.Departed, "yes") && !strings.Contains(h.Control, "the first") && h.Departed != "not known" {
			chain = append(chain, h.Party+" ("+joined(h.Action, h.Moment)+")")
			continue
		}
		party := page.Bold(h.Party)
		if h.Cause != "" {
			party = append(party, page.Run{Words: "\n" + h.Cause, Quiet: true})
		}
		t.rows = append(t.rows, h.cells(party))
	}
	var b []block
	if len(t.rows) > 0 {
		b = append(b, t)
	}
	if len(chain) > 0 {
		b = append(b, para{text: lead("Also in the chain, no departure on record: ", chain), wide: true})
	}
	if len(elsewhere) > 0 {
		b = append(b, para{text: lead("Done other than planned, without bearing on this: ", elsewhere), wide: true})
	}
	return b
}

// worksOf lists works without how each is known, which the list of sources says.
func worksOf(sources []string) string {
	short := make([]string, len(sources))
	for i, s := range sources {
		short[i] = workOnly(s)
	}
	return strings.Join(short, "; ")
}

// workOnly takes "(from memory)" and its like off the end of a citation.
func workOnly(s string) string {
	for _, how := range []string{"(from memory)", "(seen in another code or excerpt)", "(read on the page)"} {
		s = strings.TrimSpace(strings.TrimSuffix(s, how))
	}
	return s
}

// handsBlocks keeps the three questions in three columns. What was done other than
// planned and did not cause this is listed under it in short.
func handsBlocks(rows []HandRow, causes bool) []block {
	t := table{whole: true, columns: []page.Column{{Head: "Party", Share: 16}, {Head: "Departed from plan?", Share: 18}, {Head: "Did that cause this?", Share: 18},
		{Head: "Had control?", Share: 16}, {Head: "What could have stopped it, and when", Share: 32}}}
	var others []page.Text
	for _, h := range rows {
		if strings.HasPrefix(h.Caused, "not here") {
			others = append(others, page.Text{{Words: h.Party + ": ", Bold: true}, {Words: sentence(strings.TrimPrefix(h.Departed, "yes: "))}})
			continue
		}
		party := page.Bold(h.Party)
		if h.Role != "" && !strings.EqualFold(h.Role, h.Party) {
			party = append(party, page.Run{Words: "\n" + h.Role})
		}
		if causes && h.Cause != "" {
			party = append(party, page.Run{Words: "\n" + h.Cause, Quiet: true})
		}
		t.rows = append(t.rows, h.cells(party))
	}
	var b []block
	if len(t.rows) > 0 {
		b = append(b, t)
	}
	if len(others) > 0 {
		b = append(b, heading{3, "Also done other than planned, without bearing on this", ""}, bullets{others})
	}
	return b
}

// cells is a row of a table of hands: the party, then was it done other than planned,
// did it cause this, who had control, and what would have stopped it when.
func (h HandRow) cells(party page.Text) []page.Text {
	stop := page.Plain(sentence(h.Action))
	if h.Moment != "" {
		stop = append(stop, page.Run{Words: " " + sentence(h.Moment), Quiet: true})
	}
	return []page.Text{party, page.Plain(h.Departed), page.Plain(h.Caused), page.Plain(h.Control), stop}
}
