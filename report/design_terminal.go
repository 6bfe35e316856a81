package report

import (
	"fmt"
	"strings"

	"slabwright/causes"
)

// DesignText sets joint plans side by side for a terminal: the spacing, a table, then
// each plan with the rules it does not keep.
func DesignText(d *Design, width int) string {
	w := newWriter(width)
	w.line(d.Head.Title)
	w.blank()
	w.line(fmt.Sprintf("Joints at most %.2f m apart: %s", d.Spacing.Limit, d.Spacing.Why))
	model := "any length"
	if d.Spacing.Model != nil {
		model = fmt.Sprintf("%.1f m", *d.Spacing.Model)
	}
	w.indented(2, fmt.Sprintf("Curl and base friction allow %s; rule of thumb %.1f m; usual cap %.1f m.", model, d.Spacing.Rule, d.Spacing.Cap))
	if d.Spacing.Note != "" {
		w.indented(2, d.Spacing.Note)
	}
	w.blank()
	all := append([]Layout{d.Drawn}, d.Proposed...)
	w.row(fmt.Sprintf("%-18s %6s %8s %8s %7s %6s %10s  %s", "joint plan", "panels", "sawn", "formed", "dowels", "rules", "cost", "a crack off the joints"))
	for _, l := range all {
		w.row(fmt.Sprintf("%-18s %6s %8s %8s %7s %6d %10s  %s", l.Name, l.amount("panels"), l.amount("sawn joint"), l.amount("formed joint"), l.amount("dowels"),
			l.Broken(), or(l.Cost, "-"), l.Chance.words()))
	}
	for _, l := range all {
		designPlan(w, l)
	}
	w.blank()
	w.line("Rules: how many must or should be kept and are not. A crack off the joints: in the first 90 days, every joint sawn within its window unless the job says when. Models, compared with published cases only: local codes and a licensed engineer decide.")
	return w.String()
}

// DesignSummary tells in a few lines what the joints as drawn promise and what the
// likeliest of the proposals to stay whole does.
func DesignSummary(d *Design, width int) string {
	w := newWriter(width)
	w.line(d.Head.Title)
	best := d.Best()
	if best == nil || d.Drawn.Chance == nil {
		w.line("No joint plan is proposed.")
		return w.String()
	}
	w.indented(2, fmt.Sprintf("With the joints as drawn (%s, rules not kept: %d) a crack away from the joints within 90 days: %s.", panelWords(d.Drawn), d.Drawn.Broken(), d.Drawn.Chance.words()))
	w.indented(2, fmt.Sprintf("With %q (%s, rules not kept: %d): %s.", best.Name, panelWords(*best), best.Broken(), best.Chance.words()))
	return w.String()
}

// Best is the proposal that is least likely to crack away from its joints, the first
// of several alike; nil without proposals.
func (d *Design) Best() *Layout {
	var best *Layout
	for i := range d.Proposed {
		l := &d.Proposed[i]
		if l.Chance != nil && (best == nil || l.Chance.Any.P < best.Chance.Any.P) {
			best = l
		}
	}
	return best
}

func designPlan(w *writer, l Layout) {
	w.blank()
	w.line(sentenceCase(l.Name) + strings.TrimSuffix(". "+l.Why, ". "))
	for _, g := range byRule(l.Warnings) {
		w.hanging("  "+g[0].Level+": ", strings.Join(g.said(), " ")+" "+sentence(g[0].Rule)+" ("+g[0].Source+")")
	}
	for _, t := range l.Trimmers {
		w.hanging("  bars: ", fmt.Sprintf("across the corner at %.2f, %.2f: %s", (t.From.X+t.To.X)/2, (t.From.Y+t.To.Y)/2, t.Words))
	}
	if l.Chance == nil {
		return
	}
	for _, p := range l.Chance.Panels {
		if p.P >= worthNaming {
			w.hanging("  likely: ", fmt.Sprintf("panel %s cracks away from its joints in %s", p.Panel, strings.TrimPrefix(causes.About(p.P), "about ")))
		}
	}
}

// sameRule are the warnings of one rule.
type sameRule []Warning

// byRule puts together what must or should be mended, rule by rule, in the order given.
func byRule(warnings []Warning) []sameRule {
	at := map[string]int{}
	var out []sameRule
	for _, x := range warnings {
		if x.Level == noteLevel {
			continue
		}
		if _, known := at[x.Code]; !known {
			at[x.Code] = len(out)
			out = append(out, nil)
		}
		out[at[x.Code]] = append(out[at[x.Code]], x)
	}
	return out
}

// mostSaid is how many places of one rule are said one by one.
const mostSaid = 4

// said tells the places, the same words once with how often.
func (g sameRule) said() []string {
	times := map[string]int{}
	var words []string
	for _, x := range g {
		if times[x.Words] == 0 {
			words = append(words, x.Words)
		}
		times[x.Words]++
	}
	var out []string
	for i, x := range words {
		if i == mostSaid {
			return append(out, fmt.Sprintf("And %d more like it.", len(words)-mostSaid))
		}
		if n := times[x]; n > 1 {
			x = fmt.Sprintf("%s (%d places).", strings.TrimSuffix(x, "."), n)
		}
		out = append(out, sentence(x))
	}
	return out
}

// noteLevel is the level of what is only to know.
const noteLevel = "note"

// worthNaming is the chance from which a panel that cracks is named.
const worthNaming = 0.2

// Broken is how many rules that must or should be kept are not.
func (l Layout) Broken() (n int) {
	for _, x := range l.Warnings {
		if x.Level != noteLevel {
			n++
		}
	}
	return n
}

// PanelCount is how many panels a layout has, block-outs not counted.
func (l Layout) PanelCount() int {
	for _, q := range l.Quantities {
		if q.What == "panels" {
			return int(q.Amount)
		}
	}
	return len(l.Panels)
}

func panelWords(l Layout) string { return fmt.Sprintf("%d panels", l.PanelCount()) }

func (l Layout) amount(what string) string {
	for _, q := range l.Quantities {
		if q.What == what {
			return strings.TrimSpace(fmt.Sprintf("%.0f %s", q.Amount, q.Unit))
		}
	}
	return "-"
}

func (c *LayoutChance) words() string {
	if c == nil {
		return "not worked out"
	}
	return c.Any.Words()
}
