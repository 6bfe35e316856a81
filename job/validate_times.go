package job

import (
	"fmt"
	"time"

	"slabwright/site"
	"slabwright/unit"
)

// clock checks the order of the times of one job and speaks in the site's time.
type clock struct {
	zone     *time.Location
	problems []Problem
}

// instant is one time of the job with the words for it.
type instant struct {
	field, what string
	at          *time.Time
}

// sameDay is how far a date typed without its hour may lie on the wrong side.
const sameDay = 24 * time.Hour

func (j *Job) checkTimes() []Problem {
	zone, err := time.LoadLocation(j.Place.Zone)
	if err != nil {
		zone = time.UTC
	}
	c := &clock{zone: zone}
	for i, p := range j.Pours {
		c.pour(fmt.Sprintf("pours[%d]", i), p)
	}
	c.walks(j)
	return c.problems
}

// before reports two times in the wrong order; slack lets them overlap.
func (c *clock) before(first, then instant, slack time.Duration) {
	if first.at == nil || then.at == nil || !then.at.Add(slack).Before(*first.at) {
		return
	}
	c.problems = append(c.problems, Problem{Level: Error, Code: "time-order", Field: then.field,
		Found: fmt.Sprintf("%s on %s comes before %s on %s", then.what, c.text(*then.at), first.what, c.text(*first.at)),
		Want:  first.what + " first", Mend: c.mend(*first.at, *then.at)})
}

func (c *clock) text(t time.Time) string {
	return t.In(c.zone).Format("2 Jan 2006") + ", " + unit.ClockTime(t, c.zone)
}

// mend guesses the slip: the day after midnight, or twelve hours.
func (c *clock) mend(first, then time.Time) string {
	switch gap := first.Sub(then); {
	case gap > 12*time.Hour && gap <= 24*time.Hour:
		return fmt.Sprintf("Did you mean the day after, %s?", then.AddDate(0, 0, 1).UTC().Format(time.RFC3339))
	case gap <= 12*time.Hour && gap > 6*time.Hour:
		return fmt.Sprintf("Did you mean the afternoon, %s? Times in the file are UTC.", then.Add(12*time.Hour).UTC().Format(time.RFC3339))
	case gap <= 3*time.Hour:
		return "Times in the file are UTC (Z) or carry their offset; one of the two may be in site time."
	}
	return "Look the date up again."
}

// within warns of a span that is longer than any seen in practice.
func (c *clock) within(first, then instant, limit time.Duration) {
	if first.at == nil || then.at == nil || then.at.Sub(*first.at) <= limit {
		return
	}
	c.problems = append(c.problems, Problem{Level: Warning, Code: "time-span", Field: then.field,
		Found: fmt.Sprintf("%s comes %.3g h after %s", then.what, then.at.Sub(*first.at).Hours(), first.what),
		Want:  fmt.Sprintf("at most %g h is usual", limit.Hours()), Mend: "Look the date up again."})
}

func (c *clock) pour(field string, p site.Pour) {
	start, end := instant{field + ".start", "the start of pour " + p.ID, p.Start}, instant{field + ".end", "the end of pour " + p.ID, p.End}
	fin, finEnd := instant{field + ".finish_start", "the start of finishing of pour " + p.ID, p.FinishStart}, instant{field + ".finish_end", "the end of finishing of pour " + p.ID, p.FinishEnd}
	c.before(start, end, 0)
	c.before(start, fin, 0)
	c.before(fin, finEnd, 0)
	c.before(end, finEnd, 0)
	c.before(start, finEnd, 0)
	c.within(start, end, 36*time.Hour)
	c.within(start, finEnd, 60*time.Hour)
	for i, t := range p.Trucks {
		c.truck(fmt.Sprintf("%s.trucks[%d]", field, i), t, start, end)
	}
	for i, d := range p.Departures { // may come before the pour: a drawing, a base left thin
		c.within(start, instant{fmt.Sprintf("%s.departures[%d].at", field, i), "departure " + d.ID, d.At}, 60*sameDay)
	}
	c.saw(field, p, start)
	c.cure(field, p, start, fin)
	for i, t := range p.Temps {
		if t.At.IsZero() {
			c.problems = append(c.problems, Problem{Level: Error, Code: "required", Field: fmt.Sprintf("%s.concrete_temperatures[%d].at", field, i),
				Found: "a concrete temperature without its time", Want: "the instant it was read"})
			continue
		}
		c.before(start, instant{fmt.Sprintf("%s.concrete_temperatures[%d].at", field, i), "a concrete temperature", &t.At}, 0)
	}
}

func (c *clock) saw(field string, p site.Pour, start instant) {
	for i, s := range p.Saw {
		at := fmt.Sprintf("%s.saw[%d]", field, i)
		cut, done := instant{at + ".start", "the cut of joint " + s.Joint, s.Start}, instant{at + ".end", "the end of the cut of joint " + s.Joint, s.End}
		c.before(start, cut, 0)
		c.before(start, done, 0)
		c.before(cut, done, 0)
		c.within(start, cut, 14*sameDay)
		c.within(cut, done, 12*time.Hour)
	}
}

func (c *clock) cure(field string, p site.Pour, start, fin instant) {
	for i, m := range p.Cure {
		at := fmt.Sprintf("%s.cure[%d]", field, i)
		on, off := instant{at + ".on", m.Kind + " going on", m.On}, instant{at + ".off", m.Kind + " coming off", m.Off}
		c.before(start, on, 0)
		if m.Kind != "fog" { // fog is there to bridge the time until finishing
			c.before(fin, on, 0)
		}
		c.before(on, off, 0)
		c.within(start, on, 7*sameDay)
	}
}

func (c *clock) truck(field string, t site.Truck, start, end instant) {
	name := " of truck " + t.Ticket
	steps := []instant{{field + ".batched", "batching" + name, t.Batched}, {field + ".arrived", "arrival" + name, t.Arrived},
		{field + ".started", "start of unloading" + name, t.Started}, {field + ".finished", "end of unloading" + name, t.Finished}}
	for i := range steps { // each against the nearest known one before it
		for k := i - 1; k >= 0; k-- {
			if steps[k].at != nil {
				c.before(steps[k], steps[i], 0)
				break
			}
		}
	}
	const clockDrift = 15 * time.Minute // the plant's clock against the site's
	c.before(start, steps[2], clockDrift)
	c.before(steps[2], end, clockDrift)
	c.within(steps[0], steps[3], 6*time.Hour)
}

// walks checks that visits come after the pours, and what was seen before the
// visit that tells of it.
func (c *clock) walks(j *Job) {
	first, last := instant{}, instant{}
	for i, p := range j.Pours {
		at := instant{fmt.Sprintf("pours[%d].start", i), "the start of pour " + p.ID, p.Start}
		if p.Start != nil && (first.at == nil || p.Start.Before(*first.at)) {
			first = at
		}
		if p.Start != nil && (last.at == nil || p.Start.After(*last.at)) {
			last = at
		}
	}
	for i, w := range j.Walks {
		field := fmt.Sprintf("walks[%d]", i)
		visit := instant{field + ".date", "walk " + w.ID, &w.Date}
		if w.Date.IsZero() {
			c.problems = append(c.problems, Problem{Level: Error, Code: "required", Field: visit.field, Found: "walk " + w.ID + " has no date", Want: "the day of the visit", Mend: "Write it as 2026-10-13T07:00:00Z."})
			continue
		}
		c.before(first, visit, 0)
		if last.at != nil && first.at != nil && w.Date.Before(*last.at) && !w.Date.Before(*first.at) {
			c.problems = append(c.problems, Problem{Level: Warning, Code: "time-order", Field: visit.field,
				Found: fmt.Sprintf("walk %s on %s comes before %s", w.ID, c.text(w.Date), last.what), Want: "a walk over what is placed", Mend: "Look the date up again."})
		}
		for k, f := range w.Findings {
			seen := instant{fmt.Sprintf("%s.findings[%d].first_seen", field, k), "first sight of finding " + f.ID, f.FirstSeen}
			c.before(first, seen, 0)
			c.before(seen, visit, sameDay)
		}
	}
}
