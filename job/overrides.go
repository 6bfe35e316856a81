package job

import (
	"fmt"
	"math"
	"strings"
	"time"

	"slabwright/causes"
	"slabwright/report"
)

// Override is a chance the engineer sets for a cause at a finding of the last walk, in
// place of the one worked out. The report shows both, the reason and who set it.
type Override struct {
	Finding string     `json:"finding"`
	Cause   string     `json:"cause"`  // id of the catalogue
	Chance  float64    `json:"chance"` // above 0 and below 1
	Reason  string     `json:"reason"`
	By      string     `json:"by"`
	At      *time.Time `json:"at,omitempty"`
}

// checkOverrides reports what no table can: a reason and a name that are missing, and
// chances of one finding that do not fit together.
func (j *Job) checkOverrides() []Problem {
	var problems []Problem
	sums, seen := map[string]float64{}, map[string]bool{}
	for i, o := range j.Overrides {
		field := fmt.Sprintf("overrides[%d].", i)
		wrong := func(name, found, want, mend string) {
			problems = append(problems, Problem{Level: Error, Code: "override", Field: field + name, Found: found, Want: want, Mend: mend})
		}
		if strings.TrimSpace(o.Reason) == "" {
			wrong("reason", "no reason", "why the chance was set", "Say what was seen or known that the weights do not hold.")
		}
		if strings.TrimSpace(o.By) == "" {
			wrong("by", "no name", "who set it", "Write the engineer's name.")
		}
		if key := o.Finding + " " + o.Cause; seen[key] {
			wrong("cause", fmt.Sprintf("%s at %s is set twice", o.Cause, o.Finding), "each cause once at a finding", "Keep one of the two.")
		} else {
			seen[key] = true
			sums[o.Finding] += o.Chance
		}
		if sums[o.Finding] > 1 && !math.IsInf(sums[o.Finding], 1) {
			wrong("chance", fmt.Sprintf("the chances set at %s add up to %.2f", o.Finding, sums[o.Finding]), "1 at most, for all causes of a finding", "Set smaller ones.")
			sums[o.Finding] = math.Inf(1)
		}
	}
	return problems
}

// override puts the engineer's chances in the place of those worked out.
func (d *diagnosis) override(run *findingRun) error {
	var set []causes.Override
	for _, o := range d.job.Overrides {
		if o.Finding != run.finding.ID {
			continue
		}
		set = append(set, causes.Override{Cause: o.Cause, Chance: o.Chance, Reason: o.Reason, By: o.By})
		row := report.OverrideRow{Cause: o.Cause, Name: causeName(o.Cause), Reason: o.Reason, By: o.By, At: o.At, Set: exactly(o.Chance)}
		if w := run.ranking.Weight(o.Cause); w != nil {
			row.Was = report.Chance{P: w.P, Low: w.Low, High: w.High, About: causes.About(w.P)}
		}
		run.sheet.Overrides = append(run.sheet.Overrides, row)
	}
	ranking, err := run.ranking.Overridden(set)
	if err != nil {
		return fmt.Errorf("overrides of finding %s: %w", run.finding.ID, err)
	}
	run.ranking = ranking
	return nil
}
