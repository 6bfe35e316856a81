package job

import (
	"fmt"
	"math"
	"strings"

	"slabwright/causes"
	"slabwright/plan"
	"slabwright/remedies"
	"slabwright/report"
	"slabwright/walk"
	"slabwright/working"
)

// remedy answers the owner's three questions for a finding and sets out the
// options.
func (d *diagnosis) remedy(run *findingRun) {
	in := d.situation(run)
	s := &run.sheet
	s.Structural = d.answer("structural", remedies.Structural(in))
	s.Worse = d.answer("worse", remedies.Worse(in))
	s.Matters = d.answer("matters", remedies.Matters(in))
	if text, sheet, ok := remedies.Across(in); ok {
		d.book.Add(sheet)
		s.Workings = append(s.Workings, sheet.ID)
		s.Matters.Exact += " " + text
		s.Matters.Workings = append(s.Matters.Workings, sheet.ID)
	}
	if to, _ := remedies.MovementToCome(in); to != nil {
		sheet := to.Working
		sheet.ID = "to-come-" + run.finding.ID
		sheet.Title = "Movement still to come at finding " + run.finding.ID
		d.book.Add(sheet)
		s.Workings = append(s.Workings, sheet.ID)
		s.Worse.Workings = append(s.Worse.Workings, sheet.ID)
	}
	run.options = remedies.Options(in)
	for _, o := range run.options {
		s.Options = append(s.Options, optionRow(o))
	}
}

func (d *diagnosis) answer(key string, a remedies.Answer) report.Answer {
	exact := a.Meaning
	if len(a.Missing) > 0 {
		exact += " Missing: " + strings.Join(a.Missing, "; ") + "."
	}
	return report.Answer{Key: key, Question: a.Question, Plain: a.Text, Exact: exact}
}

func optionRow(o remedies.Option) report.OptionRow {
	row := report.OptionRow{Remedy: o.Name, Quantity: o.Amount, Life: o.Life, Disruption: o.Disruption, Cost: o.CostText, When: o.When}
	switch {
	case o.Recommended:
		row.Verdict = "recommended"
	case o.Refused:
		row.Verdict = "refused"
	case o.Needed:
		row.Verdict = "also needed"
	case o.Fits:
		row.Verdict = "fits"
	default:
		row.Verdict = "does not fit"
	}
	if row.Verdict == "refused" || row.Verdict == "does not fit" {
		row.WhyNot = o.Why
	} else {
		row.Why = o.Why
	}
	for _, c := range o.Sources {
		row.Sources = append(row.Sources, c.String())
	}
	return row
}

// situation is all that the choice of a remedy needs of a finding.
func (d *diagnosis) situation(run *findingRun) remedies.Situation {
	f, r := run.finding, run.relation
	in := remedies.Situation{
		Finding: f.ID, Pattern: patternOf(f), Ranking: run.ranking,
		Width: known(f.Width), Step: known(f.Step), Depth: known(f.Depth), Length: r.Length, Area: r.Area,
		Thickness: known(d.slab.Thickness), Movement: stateSeen(f, "movement"), Rocking: stateSeen(f, "rocking"), Hollow: stateSeen(f, "hollow"),
		LoadRatio: known(d.loadRatio), Traffic: d.job.Place.Traffic.Or(""), Exposure: d.exposure(),
		Salt: d.job.Place.Frost.Is("frost and salt"),
	}
	for i := range d.panels {
		if p := &d.panels[i]; p.ID == r.Panel {
			in.PanelArea, in.FeedLength = &p.Area, &p.Length
		}
	}
	in.SlabArea = &d.content.Plan.Area
	if r.Fixture != nil && r.Fixture.Distance <= fixtureReach {
		in.FixtureLength = d.perimeterOf(r.Fixture.ID)
	}
	steel := len(d.slab.Steel) > 0
	in.Steel = &steel
	if w := d.lastWalk(); w != nil {
		in.Now = known(w.Surface)
		if p := d.pourOf(r.Centre); p != nil && p.pour.Start != nil {
			age := w.Date.Sub(*p.pour.Start).Hours() / 24
			in.AgeDays = &age
		}
	}
	if f.Kind == walk.ShortCracks || f.Kind == walk.ParallelSet || surface(f) {
		in.FeedLength = nil // torn in the skin or over bars: the panel does not move into it
	} else {
		d.movementFacts(&in)
	}
	for _, rate := range d.job.Rates {
		in.Rates = append(in.Rates, remedies.UnitRate{Remedy: rate.Remedy, Rate: rate.Cost})
		in.Currency = rate.Currency
	}
	return in
}

// movementFacts adds shrinkage left and the year's temperatures.
func (d *diagnosis) movementFacts(in *remedies.Situation) {
	m := d.content.Movement
	if m.Working == "" {
		return
	}
	in.ShrinkageLeft = &m.ShrinkageLater
	in.Left = d.hold.left
	in.Expansion = &d.hold.expansion
	in.Coldest, in.Hottest = &d.hold.coldest, &d.hold.hottest
	in.Working = remedies.WorkingRefs{Shrinkage: m.Working, Load: d.loadSheet}
}

func patternOf(f walk.Finding) string {
	if o := causes.FromKind(string(f.Kind), f.Cell); o != nil {
		return o.State
	}
	return ""
}

func stateSeen(f walk.Finding, name string) string { return f.Seen[name].Value }

// perimeterOf is the length along which a fixture would be cut free.
func (d *diagnosis) perimeterOf(id string) *float64 {
	for _, f := range d.slab.Fixtures {
		if f.ID != id {
			continue
		}
		length := plan.Polyline(f.Shape).Length()
		if f.Opening {
			length = plan.Ring(f.Shape).Perimeter()
		}
		return &length
	}
	return nil
}

// movement works out what the slab has still to do: shrinkage left and season.
func (d *diagnosis) movement() {
	run := d.firstRun()
	w := d.lastWalk()
	if run == nil || w == nil {
		return
	}
	long := d.longTerm(run.mix)
	age := math.Round(w.Date.Sub(*run.pour.Start).Hours() / 24)
	move := long.Movement(age)
	d.hold.expansion = run.mix.Expansion
	d.hold.coldest, d.hold.hottest = d.year()
	for _, days := range []float64{30, 90, 180, 365, 730} {
		d.hold.left = append(d.hold.left, remedies.LeftAt{Days: days, Strain: long.Movement(age + days).ToCome})
	}
	season := d.hold.hottest - d.hold.coldest
	length := d.meanPanelLength()
	now := w.Surface.Or((d.hold.coldest + d.hold.hottest) / 2)
	opening := remedies.Opening(length, move.ToCome, d.hold.expansion, now, d.hold.coldest)
	sheet := d.movementSheet(long.Shrinkage, age, move.Past, move.ToCome, length, now, opening)
	d.book.Add(sheet)
	d.content.Movement = report.Movement{ShrinkageNow: move.Past, ShrinkageLater: move.ToCome, Season: season, OpeningLater: opening, Working: sheet.ID,
		Sentence: fmt.Sprintf("At %.0f days the slab has done about %.0f %% of its shrinkage; %s mm/m are still to come. With the cold of winter a joint of a %.1f m panel can open about %s mm more than on the day of the walk.",
			age, 100*move.Past/move.Final, working.Figure(1000*move.ToCome, 2), length, working.Figure(1000*opening, 2))}
}

func (d *diagnosis) firstRun() *pourRun {
	for _, p := range d.pours {
		if p.history != nil {
			return p
		}
	}
	return nil
}

// meanPanelLength is the mean of the panels' long sides, metres.
func (d *diagnosis) meanPanelLength() float64 {
	sum := 0.0
	for _, p := range d.panels {
		sum += p.Length
	}
	return sum / float64(len(d.panels))
}

// year is the range of a slab's mean temperature over the year, put in from the
// latitude: some 27 K between the coldest and the hottest week in the middle
// latitudes, little in the tropics or indoors. Our own judgement, always among the
// assumptions.
func (d *diagnosis) year() (coldest, hottest float64) {
	latitude := math.Abs(d.job.Place.Latitude.Or(50))
	mean := 28 - 0.35*latitude
	half := math.Min(16, 3+0.2*latitude)
	if d.exposure() == "indoor" {
		mean, half = 18, 4
	}
	coldest, hottest = mean-half, mean+half
	d.assume("slab temperature over the year", fmt.Sprintf("%.0f to %.0f °C", coldest, hottest), "default", "put in from the latitude; local records are better", "seasonal opening in proportion")
	return coldest, hottest
}
