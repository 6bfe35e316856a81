package job

import (
	"fmt"
	"math"

	"slabwright/causes"
	"slabwright/plan"
	"slabwright/walk"
)

// scoreFinding sets a finding against the replays and ranks its causes anew.
func (d *diagnosis) scoreFinding(run *findingRun, r *replaysOfCauses) {
	if !replayable(run.finding) {
		return
	}
	seen := d.seenLines(run.finding)
	anywhere := r.asWas.Anywhere(seen, d.elsewhere(run))
	var scores []causes.Score
	words := map[string]string{}
	for _, h := range r.others {
		s := causes.ScoreCause(h.cause, r.asWas, h.replays, seen, anywhere)
		if h.also {
			s.Working.ID, s.Working.Title = "replay-also-"+run.finding.ID, "Replays with "+h.words+", at finding "+run.finding.ID
			row := replayed(h, s)
			row.Working = s.Working.ID
			run.prevented, run.also = append(run.prevented, row), append(run.also, s.Working)
			continue
		}
		scores, words[h.cause] = append(scores, s), h.words
		run.prevented = append(run.prevented, replayed(h, s))
	}
	if run.finding.Kind != walk.JointNotOpen {
		early, later := parted(r.well, earlyHours)
		scores = append(scores, causes.ScorePlain("early-thermal", early, seen, anywhere), causes.ScorePlain("drying-mid-panel", later, seen, anywhere))
	}
	for i := range scores {
		scores[i].Working.ID += "-" + run.finding.ID
		scores[i].Working.Title += " at finding " + run.finding.ID
	}
	run.scores = scores
	what := "a crack comes here"
	if run.finding.Kind == walk.JointNotOpen {
		what = "this joint stays shut"
	}
	run.evidence.Physics = []causes.Physics{causes.PhysicsOf(scores, func(s causes.Score) string { return scoreSays(s, words[s.Cause], what) })}
	run.bands = run.ranking
	run.ranking = causes.Rank(run.evidence)
}

// earlyHours parts what cools from what dries in a replay: three weeks, the end of the
// age given for early thermal cracks.
const earlyHours = 21 * 24.0

// parted is what cracked in the first weeks and what cracked later.
func parted(r causes.Replays, hours float64) (early, later causes.Replays) {
	early, later = make(causes.Replays, len(r)), make(causes.Replays, len(r))
	for m, lines := range r {
		for _, l := range lines {
			if l.Hour < hours {
				early[m] = append(early[m], l)
			} else {
				later[m] = append(later[m], l)
			}
		}
	}
	return early, later
}

// seenLines is a finding as replays are set beside it.
func (d *diagnosis) seenLines(f walk.Finding) causes.SeenLines {
	s := causes.SeenLines{Lines: f.Lines, Until: math.Inf(1)}
	if f.FirstSeen != nil {
		s.Until = math.Max(0, f.FirstSeen.Sub(d.replayStart()).Hours())
	}
	if f.Kind == walk.JointNotOpen {
		if j := d.joint(f.Joint); j != nil {
			s.Lines, s.Joint, s.JointOf = nil, j.ID, j.Path
		}
	}
	return s
}

// elsewhere are places of the same kind: the crack moved to the middle of each panel, or
// the other sawn joints.
func (d *diagnosis) elsewhere(run *findingRun) (all []causes.SeenLines) {
	if run.finding.Kind == walk.JointNotOpen {
		for _, j := range d.slab.Joints {
			if j.Kind == plan.Sawn {
				all = append(all, causes.SeenLines{Joint: j.ID, JointOf: j.Path})
			}
		}
		return all
	}
	from := middle(run.finding)
	for _, p := range d.panels {
		by := p.Ring.Centroid().Minus(from)
		var moved [][]plan.Point
		for _, l := range run.finding.Lines {
			var line []plan.Point
			for _, at := range l {
				line = append(line, at.Plus(by))
			}
			moved = append(moved, line)
		}
		all = append(all, causes.SeenLines{Lines: moved})
	}
	return all
}

// scoreSays is the sentence of one score among the arguments.
func scoreSays(s causes.Score, words, what string) string {
	if words == "" {
		return fmt.Sprintf("replays with everything done well: %s in %s of %d", what, causes.About(s.With), s.Members)
	}
	return fmt.Sprintf("replays: %s in %s as it was, in %s with %s", what, causes.About(s.With), causes.About(s.Without), words)
}
