package job

import (
	"context"
	"fmt"
	"io/fs"
	"time"

	"slabwright/report"
	"slabwright/site"
	"slabwright/source"
)

// Change is one thing done otherwise at a pour. What is left zero stays as it was.
type Change struct {
	Name           string
	Shift          time.Duration // of the whole pour: placing, finishing, curing
	Concrete       *float64      // °C at placing
	Cure           string        // measure put on at the end of finishing in place of all others
	EarlyEntry     bool          // the window looked at is that of the early-entry saw
	SetShiftHours  *float64      // admixture: later +, earlier -
	WaterLess      float64       // kg/m³ taken out of the mix, cement as it is
	UncutLengthMax *float64      // m: the strip is divided by a formed joint or an early cut
}

// Words says what the change is.
func (c Change) words() string {
	var parts []string
	add := func(format string, args ...any) { parts = append(parts, fmt.Sprintf(format, args...)) }
	switch hours := c.Shift.Hours(); {
	case hours == 0:
	case c.Shift%(24*time.Hour) == 0:
		add("%+.0f d", hours/24)
	default:
		add("start %+.1f h", hours)
	}
	if c.Concrete != nil {
		add("concrete at %.0f °C", *c.Concrete)
	}
	if c.Cure != "" {
		add("%s at the end of finishing", c.Cure)
	}
	if c.EarlyEntry {
		add("early-entry saw")
	}
	if c.SetShiftHours != nil {
		add("set %+.1f h by admixture", *c.SetShiftHours)
	}
	if c.WaterLess != 0 {
		add("%.0f kg/m³ less water", c.WaterLess)
	}
	if c.UncutLengthMax != nil {
		add("at most %.1f m uncut", *c.UncutLengthMax)
	}
	if len(parts) == 0 {
		return "as it was"
	}
	return list(parts)
}

// UsualChanges are the alternatives an engineer weighs first: another start, cooler
// concrete, an earlier cover, another saw, another day.
func UsualChanges() []Change {
	cooler := 16.0
	return []Change{
		{Name: "three hours earlier", Shift: -3 * time.Hour},
		{Name: "in the cool of the evening", Shift: 9 * time.Hour},
		{Name: "cooler concrete", Concrete: &cooler},
		{Name: "plastic sheet at once", Cure: "plastic"},
		{Name: "early-entry saw", EarlyEntry: true},
		{Name: "the next day", Shift: 24 * time.Hour},
	}
}

// WhatIfs runs one pour as it was and with each change, at the same accepted risk
// and seed, and sets the cut windows side by side; the first row is the pour as it
// was. What was measured after placing belongs to the pour as it was and is left out
// of all of them, so that they stay comparable. A change that the weather record does
// not cover is told in its row.
func WhatIfs(ctx context.Context, j *Job, files fs.FS, pour string, changes []Change, say Progress) ([]report.WhatIf, error) {
	if say == nil {
		say = func(string, float64) {}
	}
	index := -1
	var names []string
	for i, p := range j.Pours {
		names = append(names, p.ID)
		if p.ID == pour || pour == "" && i == 0 {
			index = i
		}
	}
	if index < 0 {
		return nil, fmt.Errorf("no pour %q; there are: %s", pour, list(names))
	}
	changes = append([]Change{{Name: "as it was"}}, changes...)
	var rows []report.WhatIf
	for i, c := range changes {
		say(c.Name, float64(i)/float64(len(changes)))
		row, err := whatIf(ctx, j, files, index, c)
		if err != nil {
			return nil, err
		}
		rows = append(rows, row)
	}
	say("done", 1)
	return rows, nil
}

// besideMembers is how many samples each alternative is run with in a report; the
// command runs as many as the job asks for.
const besideMembers = 24

// alternatives sets the usual changes beside each pour that has a cut window.
func (d *diagnosis) alternatives() error {
	j := *d.job
	if j.Basis.Members == 0 || j.Basis.Members > besideMembers {
		j.Basis.Members = besideMembers
	}
	for i := range d.content.Pours {
		day := &d.content.Pours[i]
		if day.Window.Opens == nil {
			continue
		}
		d.say("alternatives to "+day.Name, 0.62+0.06*float64(i)/float64(len(d.content.Pours)))
		rows, err := WhatIfs(d.ctx, &j, d.files, day.ID, UsualChanges(), nil)
		if err != nil {
			return err
		}
		day.WhatIfs = rows
	}
	return nil
}

// whatIf runs one change.
func whatIf(ctx context.Context, j *Job, files fs.FS, index int, c Change) (report.WhatIf, error) {
	changed := c.apply(j, index)
	d, err := begin(ctx, changed, files, nil)
	if err != nil {
		return report.WhatIf{}, err
	}
	row := report.WhatIf{Name: c.Name, Changed: c.words()}
	p := changed.Pours[index]
	if p.Start == nil {
		return row, NotKnown{"pour " + p.ID + " has no start, so nothing can be set beside it"}
	}
	run := &pourRun{d: d, pour: p, placed: d.placing(p), centre: middleOf(p)}
	run.limit, run.brief = c.UncutLengthMax, true
	if err := run.follow(index); err != nil {
		if ctx.Err() != nil {
			return row, ctx.Err()
		}
		row.Text = err.Error()
		return row, nil
	}
	if run.wet == nil {
		return row, NotKnown{"pour " + p.ID + " lacks what a cut window needs: " + list(run.day.NotGiven)}
	}
	run.tell(&row, c)
	return row, nil
}

// tell fills the row from the run.
func (p *pourRun) tell(row *report.WhatIf, c Change) {
	row.Window = p.day.Window
	row.Early = p.day.Early
	looked := p.wet
	if c.EarlyEntry {
		looked = p.early
		row.Window, row.Early = *p.day.Early, nil
	}
	row.Peak = p.peakWhileFresh().Uno
	row.Plastic, _ = p.plasticChance()
	if !looked.Best.IsZero() {
		row.Cracked = looked.At(looked.Best).Cracked
		hour := looked.Best.In(p.d.zone).Hour()
		row.Night = hour >= nightFrom || hour < nightTo
	}
	row.Text = p.windowSentence()
}

// Hours of the night, in which a saw crew costs more and errs more; common practice.
const (
	nightFrom = 22
	nightTo   = 6
)

// apply returns the job with the change made to one pour.
func (c Change) apply(j *Job, index int) *Job {
	changed := *j
	changed.Pours = append([]site.Pour(nil), j.Pours...)
	p := shifted(changed.Pours[index], c.Shift)
	if c.Concrete != nil {
		p.Concrete = &source.Fact{Value: *c.Concrete, Known: source.Assumed, Note: "what if"}
	}
	if c.Cure != "" {
		p.Cure = nil
		if p.FinishEnd != nil {
			p.Cure = []site.Cover{{Kind: c.Cure, On: p.FinishEnd}}
		}
	}
	changed.Pours[index] = p
	if c.SetShiftHours != nil || c.WaterLess != 0 {
		changed.Mixes = append([]site.Mix(nil), j.Mixes...)
		for i := range changed.Mixes {
			if changed.Mixes[i].ID == p.Mix {
				c.mix(&changed.Mixes[i])
			}
		}
	}
	return &changed
}

func (c Change) mix(m *site.Mix) {
	if c.SetShiftHours != nil {
		m.SetShift = &source.Fact{Value: *c.SetShiftHours, Known: source.Assumed, Note: "what if"}
	}
	if c.WaterLess != 0 && m.Water != nil {
		m.Water = &source.Fact{Value: m.Water.Value - c.WaterLess, Known: source.Assumed, Note: "what if"}
	}
}

// shifted moves every clock time of a pour.
func shifted(p site.Pour, by time.Duration) site.Pour {
	move := func(t *time.Time) *time.Time {
		if t == nil {
			return nil
		}
		m := t.Add(by)
		return &m
	}
	p.Start, p.End, p.FinishStart, p.FinishEnd = move(p.Start), move(p.End), move(p.FinishStart), move(p.FinishEnd)
	p.Trucks = append([]site.Truck(nil), p.Trucks...)
	for i := range p.Trucks {
		t := &p.Trucks[i]
		t.Batched, t.Arrived, t.Started, t.Finished = move(t.Batched), move(t.Arrived), move(t.Started), move(t.Finished)
	}
	p.Cure = append([]site.Cover(nil), p.Cure...)
	for i := range p.Cure {
		p.Cure[i].On, p.Cure[i].Off = move(p.Cure[i].On), move(p.Cure[i].Off)
	}
	p.Saw = nil
	p.Temps, p.InitialSet, p.FinalSet, p.TrialCuts = nil, nil, nil, nil // read at the pour as it was
	return p
}
