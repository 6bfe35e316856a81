package job

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"slabwright/causes"
	"slabwright/remedies"
	"slabwright/report"
	"slabwright/working"
)

// pageOne answers the five questions for the slab as a whole, from the findings.
func (d *diagnosis) pageOne() {
	one := report.PageOne{NotDone: d.job.Limits.NotDone, Reliance: d.job.Limits.Reliance}
	if len(d.sheets) == 0 {
		one.Answers = d.answersWithoutFindings()
		one.Doubt = "Nothing has been looked at yet."
		d.content.PageOne = one
		return
	}
	one.Answers = []report.Answer{d.structuralAnswer(), d.worseAnswer(), d.whyAnswer(), d.nowAnswer(), d.whoAnswer()}
	one.Doubt = d.doubt()
	if one.NotDone == "" {
		one.NotDone = "Not stated by the engineer yet."
	}
	if one.Reliance == "" {
		one.Reliance = "Not stated by the engineer yet."
	}
	d.content.PageOne = one
}

// questions of page one, always the same and in this order.
var questions = []struct{ key, text string }{
	{"structural", "Is it structural?"}, {"worse", "Will it get worse?"}, {"why", "Why did it crack?"},
	{"now", "What now?"}, {"who", "Who could have stopped it?"},
}

func (d *diagnosis) answersWithoutFindings() []report.Answer {
	var all []report.Answer
	for _, q := range questions {
		all = append(all, report.Answer{Key: q.key, Question: q.text, Plain: "Cannot tell yet: nothing has been seen of this slab.", Exact: "No walk with findings is in the job."})
	}
	return all
}

// verdicts sorts the findings by how a question of theirs was answered.
func (d *diagnosis) verdicts(of func(report.FindingSheet) report.Answer) (yes, untold, no []string) {
	for _, run := range d.sheets {
		text := of(run.sheet).Plain
		switch {
		case strings.HasPrefix(text, "Yes"), strings.HasPrefix(text, "Perhaps"):
			yes = append(yes, run.finding.ID)
		case strings.HasPrefix(text, "Cannot"):
			untold = append(untold, run.finding.ID)
		default:
			no = append(no, run.finding.ID)
		}
	}
	return yes, untold, no
}

func (d *diagnosis) structuralAnswer() report.Answer {
	yes, untold, no := d.verdicts(func(s report.FindingSheet) report.Answer { return s.Structural })
	a := report.Answer{Key: questions[0].key, Question: questions[0].text, Exact: remedies.StructuralMeans}
	switch {
	case len(yes) > 0:
		a.Plain = fmt.Sprintf("Yes, at %s: the slab may not carry its loads there. Keep heavy loads off until it is checked.", list(yes))
	case len(untold) > 0:
		a.Plain = fmt.Sprintf("No sign of it at %s. It cannot be told yet at %s.", plural(len(no), "finding"), list(untold))
	default:
		a.Plain = fmt.Sprintf("No: at none of the %d findings has the slab stopped bringing its loads to the ground.", len(no))
	}
	a.Exact += d.carries(&a)
	a.Chance = d.structuralChance()
	return a
}

// carries adds the wheel load against what the slab carries.
func (d *diagnosis) carries(a *report.Answer) string {
	if d.loadRatio == nil {
		return " The wheel load was not compared with what the slab carries, because a fact is missing."
	}
	a.Workings = append(a.Workings, d.loadSheet)
	low, high := d.loadRatio.Bounds()
	return fmt.Sprintf(" The wheel uses %.2f of the edge's bending strength (%.2f to %.2f).", d.loadRatio.Value, low, high)
}

// structuralChance is the chance that no finding is one in which load or ground
// broke the slab: the product over the findings of the chance that it is another
// cause.
func (d *diagnosis) structuralChance() *report.Chance {
	p, low, high := 1.0, 1.0, 1.0
	for _, run := range d.sheets {
		worst, worstLow, worstHigh := 0.0, 0.0, 0.0
		for _, id := range []string{"overload", "corner-break", "ground-settlement", "ground-heave"} {
			if w := run.ranking.Weight(id); w != nil {
				worst, worstLow, worstHigh = worst+w.P, worstLow+w.Low, worstHigh+w.High
			}
		}
		p = min(p, 1-min(worst, 1))
		low, high = min(low, 1-min(worstHigh, 1)), min(high, 1-min(worstLow, 1))
	}
	return &report.Chance{P: p, Low: low, High: high, About: causes.About(p)}
}

// worseAnswer parts what wheels or ground work on from what only shrinks and
// follows the seasons.
func (d *diagnosis) worseAnswer() report.Answer {
	a := report.Answer{Key: questions[1].key, Question: questions[1].text, Exact: remedies.WorseMeans}
	var worked, untold []string
	for _, run := range d.sheets {
		switch f := run.finding; {
		case stateSeen(f, "movement") == "growing" || stateSeen(f, "rocking") == "slight" || stateSeen(f, "rocking") == "strong":
			worked = append(worked, f.ID)
		case strings.HasPrefix(run.sheet.Worse.Plain, "Cannot"):
			untold = append(untold, f.ID)
		}
	}
	if len(worked) > 0 {
		a.Plain = fmt.Sprintf("Yes where wheels move it (%s), until that is mended.", list(worked))
	} else {
		a.Plain = "Nothing seen moves under wheels."
	}
	if m := d.content.Movement; m.Working != "" {
		a.Plain += fmt.Sprintf(" Elsewhere about %.0f %% of the shrinkage is done: cracks and joints still open each winter, by up to about %s mm, and close again in summer.",
			100*m.ShrinkageNow/(m.ShrinkageNow+m.ShrinkageLater), working.Figure(1000*m.OpeningLater, 2))
		a.Exact += " " + m.Sentence
		a.Workings = append(a.Workings, m.Working)
	} else {
		a.Plain += " Elsewhere it takes readings over a year to know."
	}
	if len(untold) > 0 {
		a.Exact += " Cannot tell yet at " + list(untold) + "."
	}
	return a
}

// shownCauses is how many leading causes page one names; the rest stand in the
// exact text.
const shownCauses = 4

// whyAnswer names the settled causes, most findings first, and then what is not
// settled.
func (d *diagnosis) whyAnswer() report.Answer {
	a := report.Answer{Key: questions[2].key, Question: questions[2].text, Exact: d.content.Slab.Answer}
	groups := d.byLeadingCause()
	open := d.undecided()
	if len(groups) == 0 {
		a.Plain = "Cannot tell yet. The next test stands on each finding's sheet."
		return a
	}
	var told []string
	for i, g := range groups {
		if i == shownCauses {
			break
		}
		told = append(told, fmt.Sprintf("%s (%s)", g.name, list(g.findings)))
	}
	switch {
	case len(groups) == 1 && len(open) == 0:
		a.Plain = capital(told[0]) + "."
	case len(groups) == 1:
		a.Plain = "Settled so far: " + told[0] + "."
	default:
		a.Plain = "Several things, not one: " + strings.Join(told, "; ") + "."
	}
	if n := len(groups) - len(told); n > 0 {
		a.Plain += fmt.Sprintf(" %s more on the sheets.", capital(plural(n, "cause")))
	}
	if len(open) > 0 {
		a.Plain += fmt.Sprintf(" Not settled: %s.", list(open))
	}
	if p, low, high, ok := d.meanLead(); ok {
		a.Chance = &report.Chance{P: p, Low: low, High: high, About: causes.About(p)}
	}
	return a
}

// causeGroup is a cause and the findings it leads.
type causeGroup struct {
	id, name string
	findings []string
}

// byLeadingCause groups the decided findings by their leading cause, largest group
// first, ties in the order of the walk.
func (d *diagnosis) byLeadingCause() []causeGroup {
	var groups []causeGroup
	at := map[string]int{}
	for _, run := range d.sheets {
		if !run.ranking.Decided {
			continue
		}
		top := run.ranking.Top()
		i, ok := at[top.Cause]
		if !ok {
			i = len(groups)
			at[top.Cause] = i
			groups = append(groups, causeGroup{id: top.Cause, name: top.Name})
		}
		groups[i].findings = append(groups[i].findings, run.finding.ID)
	}
	sort.SliceStable(groups, func(a, b int) bool { return len(groups[a].findings) > len(groups[b].findings) })
	return groups
}

func (d *diagnosis) undecided() []string {
	var all []string
	for _, run := range d.sheets {
		if !run.ranking.Decided {
			all = append(all, run.finding.ID)
		}
	}
	return all
}

// meanLead is the mean chance of the leading causes of the decided findings: how
// often, on the whole, such an answer is right.
func (d *diagnosis) meanLead() (p, low, high float64, ok bool) {
	n := 0.0
	for _, run := range d.sheets {
		if run.ranking.Decided {
			top := run.ranking.Top()
			p, low, high, n = p+top.P, low+top.Low, high+top.High, n+1
		}
	}
	if n == 0 {
		return 0, 0, 0, false
	}
	return p / n, low / n, high / n, true
}

// remedyStep is one remedy with the findings it is recommended at.
type remedyStep struct {
	name, when string
	order      int
	findings   []string
}

// steps gathers what is recommended, in the order in which it must be done, and
// what it costs where a rate was given.
func (d *diagnosis) steps() (steps []remedyStep, cost float64, currency string) {
	at := map[string]int{}
	for _, run := range d.sheets {
		for _, o := range run.options {
			if !o.Recommended {
				continue
			}
			i, ok := at[o.ID]
			if !ok {
				i = len(steps)
				at[o.ID] = i
				steps = append(steps, remedyStep{name: o.Name, when: o.When, order: remedyOrder(o.ID)})
			}
			steps[i].findings = append(steps[i].findings, run.finding.ID)
			if o.Cost != nil {
				cost += *o.Cost
			}
		}
	}
	sort.SliceStable(steps, func(i, j int) bool { return steps[i].order < steps[j].order })
	for _, r := range d.job.Rates {
		currency = r.Currency
	}
	return steps, cost, currency
}

func remedyOrder(id string) int {
	for _, r := range remedies.Catalogue() {
		if r.ID == id {
			return r.Order
		}
	}
	return math.MaxInt
}

// nowAnswer says what is recommended, in order, when and at what cost.
func (d *diagnosis) nowAnswer() report.Answer {
	a := report.Answer{Key: questions[3].key, Question: questions[3].text}
	steps, cost, currency := d.steps()
	var told, dates []string
	for _, s := range steps {
		told = append(told, fmt.Sprintf("%s (%s)", s.name, list(s.findings)))
		if s.when != "" {
			dates = append(dates, capital(s.name)+": "+s.when+".")
		}
	}
	a.Plain = "In this order: " + strings.Join(told, "; ") + "."
	if cost > 0 {
		a.Plain += fmt.Sprintf(" What you gave rates for comes to about %s %s.", working.Figure(cost, 2), currency)
	}
	a.Exact = strings.TrimSpace(strings.Join(dates, " ") + " Each sheet lists the other options, leaving and watching among them, and why each was set aside.")
	return a
}

// whoAnswer says, by action and moment, what could have stopped the settled causes,
// where a departure is on record.
func (d *diagnosis) whoAnswer() report.Answer {
	a := report.Answer{Key: questions[4].key, Question: questions[4].text}
	var parts []string
	at := map[string]int{}
	for _, h := range d.content.Hands {
		if !strings.HasPrefix(h.Departed, "yes") || !strings.HasPrefix(h.Caused, "it bears on the leading") {
			continue
		}
		if _, ok := at[h.Party]; !ok {
			at[h.Party] = len(parts)
			parts = append(parts, h.Party+": ")
		} else {
			parts[at[h.Party]] += ", "
		}
		parts[at[h.Party]] += h.Cause
	}
	if len(parts) == 0 {
		a.Plain = "No departure on record bears on a settled cause. The sheets list, cause by cause, whose hands it was in and at which moment."
	} else {
		a.Plain = "Where something was done other than planned and it bears on a settled cause, it was in the hands of: " + strings.Join(parts, "; ") + "."
	}
	a.Exact = "Three things are kept apart on each sheet: was it done other than planned, did that cause this, and who had control of it. It is a ranking of causes, not a verdict on people."
	return a
}

// doubt is the most important one: what could not be seen, what is not decided, what
// is assumed.
func (d *diagnosis) doubt() string {
	undecided, unseen := d.undecided(), len(d.content.Plan.Unseen)
	var parts []string
	if len(undecided) > 0 {
		best := d.bestTest(undecided)
		text := "The cause of " + list(undecided) + " is not settled"
		if best != "" {
			text += "; the look that would tell most is: " + best
		}
		parts = append(parts, text+".")
	}
	if unseen > 0 {
		parts = append(parts, fmt.Sprintf("%s could not be seen and count as unknown, not as sound.", capital(plural(unseen, "area"))))
	}
	if len(parts) == 0 {
		parts = append(parts, "The weights rest on judged bands, not on counted cases.")
	}
	return strings.Join(parts, " ")
}

// bestTest is the next test worth most over the undecided findings.
func (d *diagnosis) bestTest(ids []string) string {
	open := map[string]bool{}
	for _, id := range ids {
		open[id] = true
	}
	best, worth := "", 0.0
	for _, run := range d.sheets {
		if !open[run.finding.ID] {
			continue
		}
		for _, t := range run.ranking.NextTests {
			if t.Worth > worth {
				best, worth = t.Name, t.Worth
			}
		}
	}
	return best
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
