package report

import (
	"fmt"
	"strings"
	"time"

	"slabwright/internal/page"
)

func hoursLong(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }

// replayChapter is the slab in plan through time: the dated list, expected beside seen,
// and the chances metre by metre.
func replayChapter(c *Content, r *refs) []block {
	re := c.Replay
	if re == nil {
		return nil
	}
	clk := clockOf(c.Head)
	b := []block{newPage{}, heading{1, "What opened and cracked, hour by hour", "replay"},
		para{text: page.Plain(fmt.Sprintf("The slab in plan, followed from the first truck on %s to %s after it: its concrete as it was placed, cured and cut, on its base, held by what it was cast against.", clk.hour(re.Start), ageWords(re.Hours))), note: r.list("Working ", re.Workings...)}}
	if re.Partial != "" {
		b = append(b, para{text: append(page.Bold("Partial. "), page.Plain(sentence(re.Partial))...)})
	}
	b = append(b, bulletsOf(re.Summary),
		figure{"replay-plan", ReplayDrawing(c, 182), page.Plain("Expected beside seen. The expected course has every fact at its value and mean strength everywhere; the squares come from replays with the facts spread over their ranges.")},
		replayEventsTable(c, clk))
	if len(re.Unmet) > 0 {
		items := []page.Text{}
		for _, u := range re.Unmet {
			items = append(items, append(page.Text{{Words: u.Finding + ": ", Link: "f-" + u.Finding, Bold: true}}, page.Plain(sentence(u.Text))...))
		}
		b = append(b, heading{3, "Seen, and not in the expected course", ""}, bullets{items})
	}
	b = append(b, replayOpeningsTable(re))
	return append(b, replayChanceTables(re)...)
}

func replayEventsTable(c *Content, clk clock) table {
	t := table{caption: "What opens and cracks, in the expected course (" + clk.name + "). By hand: what the base alone can bring across the place; where the two are over 20 % apart the row says why", whole: true, tight: true, size: denseSize,
		columns: []page.Column{{Head: "When", Share: 15}, {Head: "Age", Share: 8}, {Head: "What and where", Share: 31}, {Head: "Share of strength", Share: 8, Align: page.AlignDecimal},
			{Head: "Tension MPa", Share: 7, Align: page.AlignDecimal}, {Head: "By hand MPa", Share: 7, Align: page.AlignDecimal}, {Head: "Why they differ", Share: 18}, {Head: "Seen?", Share: 14}}}
	for i := range c.Replay.Events {
		e := &c.Replay.Events[i]
		what := e.What + " " + e.Where
		seen := page.Plain(sentenceCase(e.Seen))
		if e.Finding != "" {
			seen = page.Text{{Words: sentenceCase(e.Seen), Link: "f-" + e.Finding}}
		}
		t.rows = append(t.rows, []page.Text{page.Plain(e.when(clk)), page.Plain(ageWords(e.Placed)), page.Plain(sentence(what)), page.Plain(fixed(e.Share, 2)),
			page.Plain(fixed(e.Stress, 2)), page.Plain(fixed(e.Hand, 2)), page.Plain(sentenceCase(e.Held)), seen})
	}
	return t
}

func replayOpeningsTable(re *Replay) table {
	t := table{caption: "How wide it stands at the end", tight: true, size: denseSize, columns: []page.Column{{Head: "Line", Share: 30}, {Head: "Open m", Share: 15, Align: page.AlignDecimal},
		{Head: "of m", Share: 15, Align: page.AlignDecimal}, {Head: "Mean mm", Share: 20, Align: page.AlignDecimal}, {Head: "Widest mm", Share: 20, Align: page.AlignDecimal}}}
	for _, o := range re.Openings {
		name := "Joint " + o.Line
		if o.Crack {
			name = "Crack " + o.Line
		}
		t.rows = append(t.rows, []page.Text{page.Plain(name), page.Plain(fixed(o.Open, 1)), page.Plain(fixed(o.Length, 1)), page.Plain(fixed(1000*o.Mean, 2)), page.Plain(fixed(1000*o.Widest, 2))})
	}
	return t
}

// replayChanceTables are the chances along the joints and by panel.
func replayChanceTables(re *Replay) []block {
	c := re.Chances
	if c == nil {
		return nil
	}
	joints := table{caption: fmt.Sprintf("Chance that a joint has opened, per cent, metre by metre from its start; %d samples", c.Members), whole: true, tight: true, size: denseSize,
		columns: []page.Column{{Head: "Joint", Share: 10}, {Head: "Metre by metre", Share: 55}, {Head: "Mean", Share: 10, Align: page.AlignDecimal}, {Head: "Found", Share: 25}}}
	for _, j := range c.Joints {
		joints.rows = append(joints.rows, []page.Text{page.Bold(j.Joint), page.Plain(perMetreWords(j)), page.Plain(fixed(100*j.Mean, 0)), page.Plain(sentenceCase(j.Found))})
	}
	panels := table{caption: "Cracks outside the joints, by panel", whole: true, tight: true, size: denseSize,
		columns: []page.Column{{Head: "Panel", Share: 10}, {Head: "Likeliest square metre, per cent", Share: 16, Align: page.AlignDecimal}, {Head: "Where", Share: 38},
			{Head: "Metres of crack expected", Share: 16, Align: page.AlignDecimal}, {Head: "Cracks seen", Share: 20}}}
	for _, p := range c.Panels {
		panels.rows = append(panels.rows, []page.Text{page.Bold(p.Panel), page.Plain(fixed(100*p.Worst, 0)), page.Plain(sentenceCase(p.Where)), page.Plain(fixed(p.Metres, 1)), page.Plain(or(strings.Join(p.Found, ", "), "none"))})
	}
	return []block{joints, panels, para{text: page.Plain("A crack or groove opens where strength is passed and the work that this sets free is what tearing takes. Steel and how a crack softens while it opens are left out, so widths across bars come out too wide."), small: true}}
}
