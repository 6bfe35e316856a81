package job

import (
	"fmt"
	"math"

	"slabwright/causes"
	"slabwright/plan"
	"slabwright/walk"
)

// together are findings that stand for one thing that happened: cracks round one
// crossing of joints, and joints that never opened beside the crack that took their
// movement.
type together struct {
	runs []int // in d.sheets
	says string
}

// togethers finds them from the plan.
func (d *diagnosis) togethers() []together {
	return append(d.aroundCrossings(), d.besideIdleJoints()...)
}

// aroundCrossings groups cracks that lie round the same crossing of two joints.
func (d *diagnosis) aroundCrossings() (all []together) {
	at := map[plan.Point]int{}
	for i, run := range d.sheets {
		c := run.relation.Crossing
		if !throughCrack(run.finding) || c == nil || c.Distance > crossingReach {
			continue
		}
		k, ok := at[c.At]
		if !ok {
			k = len(all)
			at[c.At] = k
			all = append(all, together{says: fmt.Sprintf("lie round one crossing of joints %s and %s: what happened there happened once", c.Joints[0], c.Joints[1])})
		}
		all[k].runs = append(all[k].runs, i)
	}
	return several(all)
}

// several keeps groups of two or more.
func several(all []together) (kept []together) {
	for _, g := range all {
		if len(g.runs) > 1 {
			kept = append(kept, g)
		}
	}
	return kept
}

// besideIdleJoints groups joints that never opened with the crack nearest to each that
// runs their way: the movement of those panels went into it.
func (d *diagnosis) besideIdleJoints() (all []together) {
	fed := map[int][]int{}
	for k, idle := range d.sheets {
		if idle.finding.Kind != walk.JointNotOpen {
			continue
		}
		best, least := -1, math.Inf(1)
		for i, crack := range d.sheets {
			if away, ok := d.feeds(idle.finding.Joint, crack); ok && away < least {
				best, least = i, away
			}
		}
		if best >= 0 {
			fed[best] = append(fed[best], k)
		}
	}
	for i, crack := range d.sheets {
		if len(fed[i]) == 0 {
			continue
		}
		all = append(all, together{runs: append([]int{i}, fed[i]...),
			says: fmt.Sprintf("belong together: %s not open, and the movement of the panels beside went into crack %s, which runs the same way", didJoints(len(fed[i])), crack.finding.ID)})
	}
	return all
}

func didJoints(n int) string {
	if n == 1 {
		return "the joint did"
	}
	return fmt.Sprintf("the %d joints did", n)
}

// feedPanels is how many panel lengths of slab feed a crack where joints do not open;
// our own judgement, as for joints that have cracked within three panels.
const feedPanels = 3.0

// feeds reports whether a joint that did not open runs a crack's way, lies within a few
// panel lengths of it and in its line, and how far off it is.
func (d *diagnosis) feeds(joint string, crack *findingRun) (across float64, ok bool) {
	j := d.joint(joint)
	if !throughCrack(crack.finding) || crack.finding.Kind == walk.CornerBreak || crack.relation.Direction == nil || j == nil || len(j.Path) < 2 {
		return 0, false
	}
	way, ok := j.Path[len(j.Path)-1].Minus(j.Path[0]).Unit()
	if !ok {
		return 0, false
	}
	side := math.Atan2(way.Y, way.X) * 180 / math.Pi
	apart := math.Abs(math.Mod(side-*crack.relation.Direction+360, 180))
	if math.Min(apart, 180-apart) > alongWithin {
		return 0, false
	}
	to := crack.relation.Centre.Minus(middleOfPath(j.Path))
	across, along := math.Abs(to.Cross(way)), math.Abs(to.Dot(way))
	return across, across <= feedPanels*d.meanPanelLength() && along <= plan.Polyline(j.Path).Length()/2+1
}

// ids are the findings of a group.
func (d *diagnosis) ids(g together) (ids []string) {
	for _, i := range g.runs {
		ids = append(ids, d.sheets[i].finding.ID)
	}
	return ids
}

// findingsTogether says how findings explain each other and what that does to their
// causes; groups are what the ranking of the slab takes as having happened once.
func (d *diagnosis) findingsTogether() (sentences []string, groups [][]int) {
	for _, g := range d.togethers() {
		sentences = append(sentences, fmt.Sprintf("%s %s.", list(d.ids(g)), g.says))
		groups = append(groups, g.runs)
	}
	return sentences, groups
}

// besideSays tells where setting findings beside each other moves the cause in front.
func (d *diagnosis) besideSays(beside [][]float64) (sentences []string) {
	for i, run := range d.sheets {
		top := run.ranking.Top()
		now, best := 0.0, 0
		for h, c := range causes.Catalogue() {
			if c.ID == top.Cause {
				now = beside[i][h]
			}
			if beside[i][h] > beside[i][best] {
				best = h
			}
		}
		c := causes.Catalogue()[best]
		switch {
		case c.ID != top.Cause:
			sentences = append(sentences, fmt.Sprintf("Set beside the other findings %s comes in front at %s (%s); by itself it was %s (%s).", c.Name, run.finding.ID, causes.About(beside[i][best]), top.Name, causes.About(top.P)))
		case math.Abs(now-top.P) >= tellingBeside:
			sentences = append(sentences, fmt.Sprintf("Set beside the other findings the chance of %s at %s goes from %s to %s.", top.Name, run.finding.ID, causes.About(top.P), causes.About(now)))
		}
	}
	return sentences
}

// tellingBeside is a change of chance worth a sentence.
const tellingBeside = 0.10
