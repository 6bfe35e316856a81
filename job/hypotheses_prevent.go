package job

import (
	"fmt"
	"math"
	"sort"
	"time"

	"slabwright/causes"
	"slabwright/report"
	"slabwright/site"
	"slabwright/walk"
)

// replayed is a thing done otherwise in replays of the slab, as a row.
func replayed(h hypothesis, s causes.Score) report.Prevented {
	return report.Prevented{Cause: h.cause, Name: causeName(h.cause), What: h.words, From: "replays of the slab in plan",
		Before: sampled(s.With, s.Members), After: sampled(s.Without, s.Members)}
}

// sampled is a share of so many members as a chance, with the range in which the true
// share lies two times in three (Wilson score interval with z = 1, textbook statistics).
func sampled(p float64, members int) report.Chance {
	n := float64(max(members, 1))
	middle, half := (p+1/(2*n))/(1+1/n), math.Sqrt(p*(1-p)/n+1/(4*n*n))/(1+1/n)
	return report.Chance{P: p, Low: math.Max(0, math.Min(p, middle-half)), High: math.Min(1, math.Max(p, middle+half)), About: causes.About(p)}
}

// exactly is a chance told without a range of its own.
func exactly(p float64) report.Chance {
	return report.Chance{P: p, Low: p, High: p, About: causes.About(p)}
}

// When a row is worth showing: it goes against a cause that is at least possible, or it
// takes away a good part of the chance.
const tellingDrop = 0.20

// preventedRows are what would have prevented a finding, the largest drop first: replays
// of the slab, the cut window and the fresh concrete.
func (d *diagnosis) preventedRows(run *findingRun) []report.Prevented {
	all := append([]report.Prevented(nil), run.prevented...)
	for i := range all {
		if s := run.score(all[i].Cause); s != nil && all[i].Working == "" {
			all[i].Working = s.Working.ID
		}
	}
	all = append(all, d.cutOtherwise(run)...)
	all = append(all, d.freshOtherwise(run)...)
	var rows []report.Prevented
	for _, p := range all {
		w := run.ranking.Weight(p.Cause)
		possible := w != nil && w.P >= possibleFrom
		if p.Before.P == 0 && p.After.P == 0 || !possible && p.Before.P-p.After.P < tellingDrop {
			continue
		}
		p.By = d.handOf(p.Cause)
		p.Text = fmt.Sprintf("%s: the chance of this was %s and would have been %s (%s)", p.What, p.Before.About, p.After.About, p.From)
		rows = append(rows, p)
	}
	sort.SliceStable(rows, func(a, b int) bool { return rows[a].Before.P-rows[a].After.P > rows[b].Before.P-rows[b].After.P })
	return rows
}

func (run *findingRun) score(cause string) *causes.Score {
	for i := range run.scores {
		if run.scores[i].Cause == cause {
			return &run.scores[i]
		}
	}
	return nil
}

// handOf names who could first have done it otherwise.
func (d *diagnosis) handOf(cause string) string {
	c := causes.Find(cause)
	if c == nil || len(c.Who) == 0 {
		return ""
	}
	return d.whoDoes(site.Role(c.Who[0]), causes.PartyName(c.Who[0]))
}

// cutOtherwise is the joint beside a finding cut at the best time of its window.
func (d *diagnosis) cutOtherwise(run *findingRun) []report.Prevented {
	if surface(run.finding) {
		return nil
	}
	joint := run.finding.Joint
	if b := run.relation.Beside; joint == "" && b != nil && b.Mean <= besideReach {
		joint = b.ID
	}
	cut := d.cutOf(joint)
	if cut == nil && joint == "" {
		cut = d.latestCut(run.relation.Panel)
	}
	if cut == nil || cut.Start == nil {
		return nil
	}
	p := d.pourOf(d.jointMiddle(cut.Joint))
	if p == nil || p.wet == nil || p.wet.Best.IsZero() || !cut.Start.After(p.wet.Best) {
		return nil
	}
	w := p.windowOfJoint(cut.Joint)
	placed := p.placedBeside(d.jointMiddle(cut.Joint))
	best := placed.Add(p.wet.Best.Sub(p.centre)).Round(10 * time.Minute)
	return []report.Prevented{{Cause: "late-cut", Name: causeName("late-cut"), What: fmt.Sprintf("joint %s cut by %s in place of %s", cut.Joint, d.clock(best), d.clock(*cut.Start)),
		Before: exactly(w.cracked(*cut.Start)), After: exactly(w.cracked(best)), From: "chance that the panel had cracked before the cut, by the early-age model", Working: p.windowSheet}}
}

// freshOtherwise is what the alternatives of the pour make of cracks in fresh concrete.
func (d *diagnosis) freshOtherwise(run *findingRun) []report.Prevented {
	if run.finding.Kind != walk.ShortCracks {
		return nil
	}
	p := d.pourOf(middle(run.finding))
	if p == nil {
		return nil
	}
	var rows []report.Prevented
	for _, day := range d.content.Pours {
		if day.ID != p.pour.ID || len(day.WhatIfs) < 2 {
			continue
		}
		before := day.WhatIfs[0].Plastic
		for _, w := range day.WhatIfs[1:] {
			if before-w.Plastic >= tellingDrop {
				rows = append(rows, report.Prevented{Cause: "plastic-shrinkage", Name: causeName("plastic-shrinkage"), What: w.Name + " (" + w.Changed + ")",
					Before: exactly(before), After: exactly(w.Plastic), From: "fresh concrete, by its drying and bleeding", Working: p.dryingSheet})
			}
		}
	}
	return rows
}
