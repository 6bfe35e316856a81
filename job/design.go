package job

import (
	"context"
	"fmt"
	"io/fs"

	"slabwright/layout"
	"slabwright/plan"
	"slabwright/remedies"
	"slabwright/report"
	"slabwright/working"
)

// Design works out the joints of the next slab: how far apart they may stand, what the
// joints drawn in the job promise, and what is proposed instead, each with what it
// takes and how likely the slab is to crack away from its joints.
//
// The answer depends on nothing but the job, its files and the program's version. It
// stops when ctx does.
func Design(ctx context.Context, j *Job, files fs.FS, say Progress) (*report.Design, error) {
	g, err := NewDesigner(ctx, j, files, say)
	if err != nil {
		return nil, err
	}
	return g.Propose(ctx, j.Slabs[0], say)
}

// Propose works out joint plans for a slab and sets them beside the joints it has.
func (g *Designer) Propose(ctx context.Context, slab plan.Slab, say Progress) (*report.Design, error) {
	if say == nil {
		say = func(string, float64) {}
	}
	d, err := g.on(ctx, slab)
	if err != nil {
		return nil, err
	}
	out := &report.Design{Head: d.content.Head, Spacing: spacingView(g.limit), Workings: append([]working.Sheet(nil), g.base.book.Sheets...)}
	out.Workings = append(out.Workings, g.limit.Sheets(spacingSheets)...)
	say("the joints as drawn", 0.65)
	if out.Drawn, err = g.judged(ctx, "as drawn", slab); err != nil {
		return nil, err
	}
	if out.Drawn.Chance != nil {
		own := *out.Drawn.Chance
		if own.InTime, err = g.inTime(ctx, slab); err != nil {
			return nil, err
		}
		out.Drawn.Chance = &own
	}
	brief := d.brief(g.limit)
	brief.Chance = g.chanceFor
	alternatives, err := layout.Propose(ctx, brief, func(done, of int, what string) {
		say("joint plan: "+what, 0.7+0.3*float64(done)/float64(of))
	})
	if err != nil {
		return nil, err
	}
	for _, a := range alternatives {
		one, err := g.proposed(ctx, a)
		if err != nil {
			return nil, err
		}
		out.Proposed = append(out.Proposed, one)
		out.Workings = append(out.Workings, a.Sheets...)
	}
	out.Assumptions, out.Missing = g.base.content.Assumptions, g.base.content.Missing
	for _, c := range remedies.Cautions() {
		out.Cautions = append(out.Cautions, c.Text)
	}
	out.Sources = g.base.sourcesUsed()
	return out, nil
}

// judged is a slab with its joints, held against the rules and followed through its
// first months.
func (g *Designer) judged(ctx context.Context, name string, slab plan.Slab) (report.Layout, error) {
	v, err := g.Look(ctx, slab)
	if err != nil {
		return report.Layout{}, err
	}
	v.Name = name
	v.Chance, err = g.Chance(ctx, slab)
	return v, err
}

func (g *Designer) proposed(ctx context.Context, a layout.Alternative) (report.Layout, error) {
	v, err := g.judged(ctx, a.Name, a.Slab)
	if err != nil {
		return v, err
	}
	v.Why = a.Why
	v.Quantities = quantityRows(a.Quantities)
	v.Cost = costWords(a.Cost, g.base.job.Rates)
	for _, s := range a.Strips {
		v.Strips = append(v.Strips, report.Strip{ID: s.ID, Panels: s.Panels, Width: s.Width, Length: s.Length, First: s.First})
	}
	return v, nil
}

// chanceFor is the chance by the replay, in the form that a proposal takes.
func (g *Designer) chanceFor(ctx context.Context, slab plan.Slab) (layout.Chance, error) {
	c, err := g.Chance(ctx, slab)
	if err != nil {
		return layout.Chance{}, err
	}
	return layout.Chance{Unplanned: c.Any.P, Low: &c.Any.Low, High: &c.Any.High,
		How: fmt.Sprintf("%d members of the slab followed in plan until %s", c.Members, c.Until)}, nil
}
