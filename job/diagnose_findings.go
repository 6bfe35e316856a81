package job

import (
	"fmt"
	"strings"

	"slabwright/causes"
	"slabwright/plan"
	"slabwright/remedies"
	"slabwright/report"
	"slabwright/site"
	"slabwright/source"
	"slabwright/walk"
	"slabwright/working"
)

// findingRun is one finding followed through: its relations, ranking and sheet.
type findingRun struct {
	finding  walk.Finding
	walk     string
	relation plan.Relation
	evidence causes.Evidence
	unused   []string       // what could not be weighed, as sentences
	bands    causes.Ranking // before the replays
	ranking  causes.Ranking
	options  []remedies.Option
	sheet    report.FindingSheet

	scores    []causes.Score // what replays say, cause by cause
	prevented []report.Prevented
	also      []working.Sheet // behind what would have prevented it, beside the scores
}

// explainFindings ranks the causes of every finding of the last walk: first from what
// was seen, the plan and the record of the pour, then once more with what replays of
// the slab say. When ctx ends during the replays the first answer stands and is told
// with the error.
func (d *diagnosis) explainFindings() error {
	w := d.lastWalk()
	if w == nil {
		d.lack("walks", "what was seen at the slab", "so no cause is ranked")
		return nil
	}
	d.say("causes from what was seen", 0.9)
	for _, f := range w.Findings {
		run := &findingRun{finding: f, walk: w.ID}
		run.relation = plan.Relate(d.slab, d.panels, d.linesOf(f), f.Area, d.otherCracks(w, f.ID)...)
		run.evidence, run.unused = d.evidence(f, run.relation, relationSheet(f))
		run.ranking = causes.Rank(run.evidence)
		d.sheets = append(d.sheets, run)
		if err := d.ctx.Err(); err != nil {
			return err
		}
	}
	var stopped error
	if !d.early {
		stopped = d.hypotheses(0.9, 0.98)
	}
	if stopped != nil && d.ctx.Err() == nil {
		return stopped
	}
	for _, run := range d.sheets {
		if err := d.override(run); err != nil {
			return err
		}
		d.explain(run)
		d.remedy(run)
		d.content.Findings = append(d.content.Findings, run.sheet)
	}
	return stopped
}

// relationSheet is the id of the working of where a finding lies.
func relationSheet(f walk.Finding) string { return "place-" + f.ID }

// linesOf returns the lines of a finding; one that belongs to a joint and was given
// no line lies along the joint.
func (d *diagnosis) linesOf(f walk.Finding) [][]plan.Point {
	if len(f.Lines) > 0 || f.Joint == "" {
		return f.Lines
	}
	if j := d.joint(f.Joint); j != nil {
		return [][]plan.Point{j.Path}
	}
	return nil
}

// otherCracks are the cracks of the same walk, for what lies in line across a joint.
func (d *diagnosis) otherCracks(w *walk.Walk, but string) [][]plan.Point {
	var lines [][]plan.Point
	for _, f := range w.Findings {
		if f.ID != but && f.Kind == walk.Crack {
			lines = append(lines, f.Lines...)
		}
	}
	return lines
}

// explain sets out what was found out of a finding: where it lies and its causes.
func (d *diagnosis) explain(run *findingRun) {
	f, r := run.finding, run.relation
	relationSheet := relationSheet(f)
	sheet := r.Working(relationSheet)
	sheet.Title = "Where finding " + f.ID + " lies, from the plan"
	d.book.Add(sheet)
	for _, s := range run.scores {
		d.book.Add(s.Working)
	}
	for _, sheet := range run.also {
		d.book.Add(sheet)
	}
	ranking := run.ranking.Working
	ranking.ID = "causes-" + f.ID
	ranking.Title = "How the causes of finding " + f.ID + " were weighed"
	d.book.Add(ranking)
	s := report.FindingSheet{Finding: f, Walk: run.walk, Title: d.title(f, r), Place: d.placeWords(f, r), At: r.Centre,
		Answer: run.ranking.Answer, Decided: run.ranking.Decided, Workings: []string{relationSheet, ranking.ID}}
	for _, o := range run.evidence.Observations {
		if o.From == "plan" {
			what := causes.FindVariable(o.Variable).Question
			s.Relations = append(s.Relations, report.RelationRow{What: what, Text: o.Text, Working: relationSheet})
		}
	}
	s.Causes = rowsAbove(shownAbove, run.ranking.All, ranking.ID)
	s.Mechanism, s.Triggers, s.RuledOut = d.causeRows(run.ranking, ranking.ID)
	for _, o := range run.ranking.Unexplained {
		s.Unexplained = append(s.Unexplained, o.Text)
	}
	s.Unexplained = append(s.Unexplained, run.unused...)
	s.NextTests = testRows(run.ranking)
	s.Prevented, s.Overrides = d.preventedRows(run), run.sheet.Overrides
	s.Hands = d.handRows(causes.Hands(run.ranking, d.departuresAt(run)))
	run.sheet = s
}

// title names a finding for a heading: what, how long, where.
func (d *diagnosis) title(f walk.Finding, r plan.Relation) string {
	t := capital(string(f.Kind))
	if r.Length != nil && lineLike(f.Kind) {
		t += fmt.Sprintf(", %.1f m", *r.Length)
	}
	if r.Area != nil {
		t += fmt.Sprintf(", %.1f m²", *r.Area)
	}
	switch {
	case f.Joint != "":
		t += ", joint " + f.Joint
	case r.Panel != "":
		t += ", panel " + r.Panel
	}
	return t
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// placeWords says where a finding lies, from the plan.
func (d *diagnosis) placeWords(f walk.Finding, r plan.Relation) string {
	s := fmt.Sprintf("at (%.1f, %.1f) m", r.Centre.X, r.Centre.Y)
	if r.Panel != "" {
		s = "in panel " + r.Panel + " " + s
	}
	switch {
	case f.Joint != "":
		s = fmt.Sprintf("along joint %s, middle at (%.1f, %.1f) m", f.Joint, r.Centre.X, r.Centre.Y)
	case r.Corner != nil && r.Corner.Starts:
		s += fmt.Sprintf("; starts %.0f mm from the inside corner %s", 1000*r.Corner.Distance, d.cornerName(r.Corner.Fixture))
	case r.Cut != nil:
		s += fmt.Sprintf("; cuts off the panel's corner at (%.1f, %.1f) with legs of %.2f m and %.2f m", r.Cut.At.X, r.Cut.At.Y, r.Cut.Legs[0], r.Cut.Legs[1])
	case r.Beside != nil && r.Beside.Mean <= besideReach:
		s += fmt.Sprintf("; runs along joint %s, %.0f mm from it on average", r.Beside.ID, 1000*r.Beside.Mean)
	case r.Fixture != nil && r.Fixture.Distance <= fixtureReach:
		s += fmt.Sprintf("; %.0f mm from the %s", 1000*r.Fixture.Distance, d.fixtureName(r.Fixture.ID))
	}
	return s
}

// causeRows sorts a ranking into the two layers and what was ruled out.
func (d *diagnosis) causeRows(r causes.Ranking, sheet string) (mechanisms, triggers, ruledOut []report.CauseRow) {
	mechanisms = rowsAbove(shownAbove, r.Mechanisms, sheet)
	triggers = rowsAbove(shownAbove, r.Triggers, sheet)
	for _, w := range r.All {
		if w.RuledOut != "" && len(ruledOut) < shownRuledOut {
			ruledOut = append(ruledOut, causeRow(w, sheet))
		}
	}
	return mechanisms, triggers, ruledOut
}

// rowsAbove sets out the causes with more than a least chance, in their order.
func rowsAbove(least float64, weights []causes.Weight, sheet string) (rows []report.CauseRow) {
	for _, w := range weights {
		if w.P >= least {
			rows = append(rows, causeRow(w, sheet))
		}
	}
	return rows
}

// What is set out in full: causes above one in fifty, and the likeliest of those
// that were ruled out.
const (
	shownAbove    = 0.02
	shownRuledOut = 6
)

func causeRow(w causes.Weight, sheet string) report.CauseRow {
	row := report.CauseRow{ID: w.Cause, Name: w.Name, Layer: w.Layer, Plain: w.Plain, Exact: w.Exact, State: w.State,
		Chance: report.Chance{P: w.P, Low: w.Low, High: w.High, About: causes.About(w.P)}, RuledOut: reason(w.RuledOut), Working: sheet}
	row.For, row.Against = arguments(w.For), arguments(w.Against)
	for _, m := range w.Missing {
		row.Missing = append(row.Missing, m.Question+" (to be had by "+m.Test+")")
	}
	for _, c := range w.Sources {
		row.Sources = append(row.Sources, c.String())
	}
	return row
}

// reason takes the opening words off what a cause was ruled out for; the table says
// them already.
func reason(text string) string {
	_, why, ok := strings.Cut(text, " because ")
	if !ok {
		return text
	}
	return why
}

func arguments(all []causes.Argument) []report.ArgumentRow {
	var rows []report.ArgumentRow
	for _, a := range all {
		rows = append(rows, report.ArgumentRow{Text: a.Text, From: a.Observation.From, Known: string(a.Observation.Known),
			Shift: 10 * a.Shift, Working: a.Working})
	}
	return rows
}

// testRows are the next tests, best first.
func testRows(r causes.Ranking) []report.TestRow {
	var rows []report.TestRow
	for _, t := range r.NextTests {
		row := report.TestRow{Name: t.Name, Gain: t.Bits, CostClass: t.Class, Time: t.OnSite, Caution: t.Limits}
		if t.Wait != "" {
			row.Time += "; " + t.Wait
		}
		seen := map[string]bool{}
		for _, o := range t.Outcomes {
			row.Outcomes = append(row.Outcomes, fmt.Sprintf("%s (%s): then %s leads, %s", causes.Says(o.Variable, o.State), causes.About(o.Chance), causeName(o.Leading), causes.About(o.P)))
			if name := causeName(o.Leading); !seen[name] {
				seen[name] = true
				row.Splits = append(row.Splits, name)
			}
		}
		rows = append(rows, row)
		if len(rows) == shownTests {
			break
		}
	}
	return rows
}

const shownTests = 5

func causeName(id string) string {
	if c := causes.Find(id); c != nil {
		return c.Name
	}
	return id
}

// departuresAt are what was done other than planned that reaches a finding: for the
// whole slab, or for its pour, its joints or its place.
func (d *diagnosis) departuresAt(run *findingRun) []causes.Departure {
	var all []causes.Departure
	for _, x := range d.job.Departures {
		if d.reaches(x, run) {
			all = append(all, d.departure(x))
		}
	}
	own := d.pourOf(middle(run.finding))
	for _, p := range d.job.Pours {
		for _, x := range p.Departures {
			local := len(x.Joints) > 0 || len(x.Area) > 0
			if d.reaches(x, run) && (local || own != nil && own.pour.ID == p.ID) {
				all = append(all, d.departure(x))
			}
		}
	}
	return all
}

// reaches reports whether a departure that names joints or an area names those of
// the finding; one that names neither reaches everything.
func (d *diagnosis) reaches(x site.Departure, run *findingRun) bool {
	if len(x.Area) >= 3 {
		return plan.Ring(x.Area).Contains(middle(run.finding))
	}
	if len(x.Joints) == 0 {
		return true
	}
	near := d.jointsNear(run)
	for _, id := range x.Joints {
		if near[id] {
			return true
		}
	}
	return false
}

// jointsNear are the joints whose cutting could have caused a finding: its own, the
// one it runs along, and those round its panel.
func (d *diagnosis) jointsNear(run *findingRun) map[string]bool {
	near := map[string]bool{run.finding.Joint: run.finding.Joint != ""}
	if run.finding.Joint != "" {
		return near
	}
	if b := run.relation.Beside; b != nil && b.Mean <= besideReach {
		near[b.ID] = true
		return near
	}
	for _, p := range d.panels {
		if p.ID == run.relation.Panel {
			for _, s := range p.Sides {
				near[s.Joint] = s.Joint != ""
			}
		}
	}
	return near
}

func (d *diagnosis) departure(x site.Departure) causes.Departure {
	dep := causes.Departure{ID: x.ID, Party: d.partyName(x.Party), What: strings.TrimSuffix(x.What, "."), Bears: x.Bears, Roles: d.roles(x.Party)}
	if x.At != nil {
		dep.At = x.At.In(d.zone)
	}
	return dep
}

// allDepartures are every departure of the job, in the order of the job.
func (d *diagnosis) allDepartures() []site.Departure {
	all := append([]site.Departure{}, d.job.Departures...)
	for _, p := range d.job.Pours {
		all = append(all, p.Departures...)
	}
	return all
}

func (d *diagnosis) roles(party string) []string {
	for _, p := range d.job.Parties {
		if p.ID == party {
			roles := make([]string, len(p.Does))
			for i, r := range p.Does {
				roles[i] = string(r)
			}
			return roles
		}
	}
	return nil
}

// handRows puts the parties of the job beside the parts of the chain.
func (d *diagnosis) handRows(hands []causes.Hand) []report.HandRow {
	var rows []report.HandRow
	for _, h := range hands {
		row := report.HandRow{Party: h.Party, Role: h.Role, Cause: h.CauseName, Departed: h.Departure, Caused: h.Causal,
			Control: h.Control, Action: h.Action, Moment: h.Moment}
		if !h.Departed {
			row.Party = d.whoDoes(site.Role(h.Role), h.Party)
		}
		rows = append(rows, row)
	}
	return rows
}

// whoDoes names the party that played a part, or the part itself when the job does
// not say.
func (d *diagnosis) whoDoes(role site.Role, part string) string {
	for _, p := range d.job.Parties {
		for _, r := range p.Does {
			if r == role {
				return p.Name
			}
		}
	}
	return part + " (not named in the job)"
}

// explainSlab lets the findings explain each other and sets the parties beside the
// causes of the slab as a whole.
func (d *diagnosis) explainSlab() {
	var rankings []causes.Ranking
	for _, run := range d.sheets {
		rankings = append(rankings, run.ranking)
	}
	told, groups := d.findingsTogether()
	slab := causes.RankSlab(rankings, groups...)
	a := report.SlabAnswer{Answer: d.slabAnswer(), Together: append(told, slab.Links...)}
	if len(rankings) > 1 {
		a.Together = append(a.Together, d.besideSays(causes.Beside(rankings, groups...))...)
	}
	for _, c := range slab.Causes {
		if c.AtAll < shownAbove {
			continue
		}
		a.Causes = append(a.Causes, report.CauseRow{ID: c.Cause, Name: c.Name, Layer: "slab", Plain: c.Plain,
			Chance: d.atAll(c),
			Exact:  fmt.Sprintf("expected to explain %s of the %d findings; leads %s", working.Figure(c.Expected, 2), len(rankings), list(c.Leads))})
	}
	d.content.Slab = a
	d.content.Hands = d.slabHands()
}

// atAll is the chance that a cause explains at least one finding, with the range that
// the findings' own ranges give it.
func (d *diagnosis) atAll(c causes.SlabCause) report.Chance {
	noneLow, noneHigh := 1.0, 1.0
	for _, run := range d.sheets {
		if w := run.ranking.Weight(c.Cause); w != nil {
			noneLow, noneHigh = noneLow*(1-w.Low), noneHigh*(1-w.High)
		}
	}
	return report.Chance{P: c.AtAll, Low: min(c.AtAll, 1-noneLow), High: max(c.AtAll, 1-noneHigh), About: causes.About(c.AtAll)}
}

// slabAnswer says, for the slab as a whole, what is settled and what is in front
// where it is not.
func (d *diagnosis) slabAnswer() string {
	groups, open := d.byLeadingCause(), map[string][]string{}
	var order []string
	for _, run := range d.sheets {
		if run.ranking.Decided {
			continue
		}
		name := run.ranking.Top().Name
		if open[name] == nil {
			order = append(order, name)
		}
		open[name] = append(open[name], run.finding.ID)
	}
	var settled, front []string
	n := 0
	for _, g := range groups {
		settled = append(settled, fmt.Sprintf("%s (%s)", g.name, list(g.findings)))
		n += len(g.findings)
	}
	for _, name := range order {
		front = append(front, fmt.Sprintf("%s (%s)", name, list(open[name])))
	}
	text := fmt.Sprintf("The cause is settled at %d of %s", n, plural(len(d.sheets), "finding"))
	if len(settled) > 0 {
		text += ": " + strings.Join(settled, "; ")
	}
	text += "."
	if len(front) > 0 {
		text += " Where it is not, in front are: " + strings.Join(front, "; ") + "."
	}
	return text
}

func list(ids []string) string {
	if len(ids) == 0 {
		return "none"
	}
	s := ids[0]
	for _, id := range ids[1:] {
		s += ", " + id
	}
	return s
}

// slabHands gathers the rows of the leading causes of all findings, one a party,
// cause and departure, and then every departure on record that caused none of them.
func (d *diagnosis) slabHands() []report.HandRow {
	var rows []report.HandRow
	seen := map[string]bool{}
	for _, run := range d.sheets {
		if !run.ranking.Decided {
			continue
		}
		for _, h := range run.sheet.Hands {
			key := h.Party + "|" + h.Cause + "|" + h.Departed
			if leads(run.ranking, h.Cause) && !seen[key] {
				seen[key] = true
				rows = append(rows, h)
			}
		}
	}
	for _, x := range d.allDepartures() {
		if !mentioned(rows, x.What) {
			rows = append(rows, d.withoutEffect(x))
		}
	}
	return rows
}

func leads(r causes.Ranking, name string) bool {
	for _, w := range r.All {
		if w.Name == name && w.State == causes.Leading {
			return true
		}
	}
	return false
}

func mentioned(rows []report.HandRow, what string) bool {
	for _, h := range rows {
		if strings.Contains(h.Departed, strings.TrimSuffix(what, ".")) {
			return true
		}
	}
	return false
}

// withoutEffect is the row of a departure that no settled cause came of. Where a
// cause that is not settled could still come of it, it says so.
func (d *diagnosis) withoutEffect(x site.Departure) report.HandRow {
	row := report.HandRow{Party: d.partyName(x.Party), Role: list(d.roles(x.Party)), Departed: "yes: " + x.What,
		Caused: "no: no finding in its reach has a cause it bears on", Control: "held this step"}
	if x.At != nil {
		row.Departed += " " + d.clock(*x.At)
	}
	var open []string
	for _, run := range d.sheets {
		if !run.ranking.Decided && d.mayHaveCaused(x, run) {
			open = append(open, run.finding.ID)
		}
	}
	if len(open) > 0 {
		row.Caused = "cannot tell yet: it bears on a cause that is possible at " + list(open)
	}
	return row
}

// mayHaveCaused reports whether a departure reaches a finding and bears on one of
// its possible causes.
func (d *diagnosis) mayHaveCaused(x site.Departure, run *findingRun) bool {
	for _, at := range d.departuresAt(run) {
		if at.ID != x.ID {
			continue
		}
		for _, id := range x.Bears {
			if w := run.ranking.Weight(id); w != nil && w.P >= possibleFrom {
				return true
			}
		}
	}
	return false
}

// possibleFrom is the chance from which a cause is possible rather than unlikely; as
// in the ranking.
const possibleFrom = 0.10

// sourcesUsed lists every published work that a working or a cause cites.
func (d *diagnosis) sourcesUsed() []report.SourceRow {
	titles := map[string]source.Citation{}
	for _, s := range d.book.Sheets {
		for _, l := range s.Lines {
			titles[l.Source.Title] = l.Source
			if l.Check != nil {
				titles[l.Check.Source.Title] = l.Check.Source
			}
		}
	}
	for _, run := range d.sheets {
		for _, w := range run.ranking.All {
			if w.P >= shownAbove {
				for _, c := range w.Sources {
					titles[c.Title] = c
				}
			}
		}
	}
	return sortedSources(titles)
}
