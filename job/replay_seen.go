package job

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/report"
	"slabwright/restraint"
	"slabwright/walk"
)

// sameCrack is how far apart on average an expected and a seen crack may lie to count as
// the same, m: some five times the depth, as cracks wander between stones and stress
// changes little over that. Our own judgement.
const sameCrack = 0.9

// seen says whether an event was seen on the last walk, and as which finding.
func (r *replayRun) seen(e restraint.Event) (words, finding string) {
	w := r.d.lastWalk()
	if w == nil {
		return "nobody has looked yet", ""
	}
	if e.Kind != restraint.CrackLine {
		return r.jointSeen(e.Line), r.findingOfJoint(w, e.Line)
	}
	for _, u := range w.Unseen {
		if len(u.Area) > 2 && plan.Ring(u.Area).Contains(e.At) {
			return "could not be seen: " + u.Why, ""
		}
	}
	best, least := "", sameCrack
	for _, f := range w.Findings {
		if !throughCrack(f) {
			continue
		}
		if away := meanAway(e.Path, f.Lines); away < least {
			best, least = f.ID, away
		}
	}
	if best == "" {
		return "not seen", ""
	}
	return fmt.Sprintf("seen: %s, %.1f m away on average", best, least), best
}

// throughCrack reports whether a finding is of the kind that a replay in plan tells of:
// it begins at set, so what comes in fresh concrete is not.
func throughCrack(f walk.Finding) bool {
	switch f.Kind {
	case walk.Crack, walk.CornerBreak, walk.Shattered:
		return len(f.Lines) > 0
	}
	return false
}

// meanAway is the mean distance of a path from the nearest of some lines.
func meanAway(path plan.Polyline, lines [][]plan.Point) float64 {
	const parts = 8
	sum, length := 0.0, path.Length()
	for i := range parts + 1 {
		p, _ := path.At(length * float64(i) / parts)
		least := math.Inf(1)
		for _, l := range lines {
			if len(l) > 1 {
				_, _, away := plan.Polyline(l).Nearest(p)
				least = math.Min(least, away)
			}
		}
		sum += least / (parts + 1)
	}
	return sum
}

// jointSeen says how a joint was found.
func (r *replayRun) jointSeen(id string) string {
	j := r.d.joint(id)
	if j == nil || j.Opened == nil {
		return "nobody has looked whether it opened"
	}
	switch j.Opened.Value {
	case "yes":
		return "seen: open"
	case "part":
		return "seen: open in part"
	case "no":
		return "not seen: found not opened"
	}
	return "found: " + j.Opened.Value
}

func (r *replayRun) findingOfJoint(w *walk.Walk, id string) string {
	for _, f := range w.Findings {
		if f.Joint == id {
			return f.ID
		}
	}
	return ""
}

// unmet lists the cracks seen that the expected course does not have, each with the
// chance that the samples give its place.
func (r *replayRun) unmet() {
	w := r.d.lastWalk()
	if w == nil {
		return
	}
	met := map[string]bool{}
	for _, e := range r.out.Events {
		met[e.Finding] = true
	}
	for _, f := range w.Findings {
		if !throughCrack(f) || met[f.ID] {
			continue
		}
		row := report.UnmetRow{Finding: f.ID}
		if r.chances == nil {
			row.Text = "Not in the expected course."
		} else {
			row.Chance = round(r.chanceAlong(f.Lines), 3)
			row.Text = fmt.Sprintf("Not in the expected course; at its likeliest metre a crack comes in %s of the samples.", nIn10(row.Chance))
		}
		r.out.Unmet = append(r.out.Unmet, row)
	}
}

// chanceAlong is the greatest chance of the cells that some lines run through.
func (r *replayRun) chanceAlong(lines [][]plan.Point) (most float64) {
	for _, l := range lines {
		path := plan.Polyline(l)
		n := math.Max(1, math.Ceil(path.Length()/(chanceCell/4)))
		for i := 0.0; i <= n; i++ {
			p, _ := path.At(path.Length() * i / n)
			chance, _ := r.chances.Grid.At(p)
			most = math.Max(most, chance)
		}
	}
	return most
}
