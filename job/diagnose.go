package job

import (
	"context"
	"fmt"
	"io/fs"
	"time"

	"slabwright/plan"
	"slabwright/report"
	"slabwright/source"
	"slabwright/walk"
	"slabwright/working"
)

// Progress says what is being worked out and how much of the whole is done, 0-1.
type Progress func(what string, done float64)

// NotKnown is the error of a job that is sound but lacks what every answer needs.
type NotKnown struct{ What string }

func (e NotKnown) Error() string { return e.What }

// Diagnose works out everything that the job's facts allow about its first slab:
// what happened on the pour days, why each finding is there, what to do now and
// who could have stopped it. What a missing fact keeps from being answered is
// listed in Content.Missing, never guessed.
//
// The files are those of the job's folder. The answer depends on nothing but the
// job, its files and the program's version. It stops when ctx does; when that is while
// causes are set against replays, the answer without those is returned with the error.
func Diagnose(ctx context.Context, j *Job, files fs.FS, say Progress) (*report.Content, error) {
	return DiagnoseInStages(ctx, j, files, say, nil)
}

// DiagnoseInStages is Diagnose that hands over each answer as soon as it stands: the first
// before the slab is replayed, then the whole one. No stage is changed afterwards.
func DiagnoseInStages(ctx context.Context, j *Job, files fs.FS, say Progress, stage func(Stage)) (*report.Content, error) {
	d, err := begin(ctx, j, files, say)
	if err != nil {
		return nil, err
	}
	d.head()
	d.drawing()
	d.basis()
	if err := d.followPours(); err != nil {
		return nil, err
	}
	if err := d.alternatives(); err != nil {
		return nil, err
	}
	d.holds()
	d.movement()
	if err := d.firstAnswer(stage); err != nil {
		return nil, err
	}
	if err := d.replay(d.replayBeside(), 0.7, 0.9); err != nil {
		return nil, err
	}
	stopped := d.explainFindings()
	if stopped != nil && len(d.content.Findings) == 0 {
		return nil, stopped
	}
	d.explainSlab()
	d.pageOne()
	c := d.finish()
	if stage != nil && stopped == nil {
		stage(Stage{Content: c, Weighed: &Weighed{d.sheets}})
	}
	return c, stopped
}

// PourDays works out the pours alone: weather, set, cut windows and cuts, without
// findings, alternatives or report. It answers within seconds on a phone call.
func PourDays(ctx context.Context, j *Job, files fs.FS, say Progress) (*report.Content, error) {
	d, err := begin(ctx, j, files, say)
	if err != nil {
		return nil, err
	}
	d.head()
	d.basis()
	if err := d.followPours(); err != nil {
		return nil, err
	}
	return d.finish(), nil
}

// diagnosis is one run of the chain: the job, what is derived from it, and the
// content as it fills.
type diagnosis struct {
	ctx     context.Context
	say     Progress
	job     *Job
	files   fs.FS
	zone    *time.Location
	slab    plan.Slab
	panels  []plan.Panel
	pours   []*pourRun
	sheets  []*findingRun
	hold    holding
	content *report.Content
	book    working.Book
	early   bool // the first answer, before the replays

	loadRatio *source.Fact
	loadSheet string
}

// begin checks what every answer needs: a slab with a usable outline.
func begin(ctx context.Context, j *Job, files fs.FS, say Progress) (*diagnosis, error) {
	if len(j.Slabs) == 0 {
		return nil, NotKnown{"the job has no slab yet: give its outline in slabs[0].outline_m, or start again with \"slabwright new\""}
	}
	if say == nil {
		say = func(string, float64) {}
	}
	d := &diagnosis{ctx: ctx, say: say, job: j, files: files, slab: j.Slabs[0], content: &report.Content{}}
	zone, err := time.LoadLocation(j.Place.Zone)
	if err != nil {
		return nil, fmt.Errorf("place.zone: %q is not the name of a time zone; write it as Area/City, for instance Europe/London", j.Place.Zone)
	}
	d.zone = zone
	say("panels", 0.02)
	if d.panels, err = d.slab.Panels(); err != nil {
		return nil, fmt.Errorf("the slab cannot be divided into panels: %w", err)
	}
	return d, nil
}

// lack records a fact nobody knows and the answers that are not given for it.
func (d *diagnosis) lack(field, what, so string) {
	for _, m := range d.content.Missing {
		if m.Field == field && m.So == so {
			return
		}
	}
	d.content.Missing = append(d.content.Missing, report.Missing{Field: field, What: what, So: so})
}

// assume records something put in that was not measured or recorded.
func (d *diagnosis) assume(what, value, known, why, moves string) {
	for _, a := range d.content.Assumptions {
		if a.What == what && a.Value == value {
			return
		}
	}
	d.content.Assumptions = append(d.content.Assumptions, report.Assumption{What: what, Value: value, Known: known, Why: why, Moves: moves})
}

// use returns a fact's value, or a default that is put among the assumptions.
func (d *diagnosis) use(f *source.Fact, fallback float64, what, unit, why, moves string) float64 {
	if f != nil {
		if f.Known == source.Assumed || f.Known == source.Default {
			low, high := f.Bounds()
			value := working.Figure(f.Value, 3) + unit
			if low != high {
				value += fmt.Sprintf(" (%s to %s)", working.Figure(low, 3), working.Figure(high, 3))
			}
			d.assume(what, value, string(f.Known), because(f), moves)
		}
		return f.Value
	}
	d.assume(what, working.Figure(fallback, 3)+unit, string(source.Default), why, moves)
	return fallback
}

func because(f *source.Fact) string {
	switch {
	case f.Note != "":
		return f.Note
	case f.By != "":
		return "by " + f.By
	}
	return "no reason given"
}

// lastWalk returns the newest walk, or nil.
func (d *diagnosis) lastWalk() *walk.Walk {
	var last *walk.Walk
	for i := range d.job.Walks {
		if w := &d.job.Walks[i]; last == nil || w.Date.After(last.Date) {
			last = w
		}
	}
	return last
}
