package job

import (
	"context"
	"fmt"
	"io/fs"
	"math"
	"sort"

	"slabwright/causes"
	"slabwright/report"
)

// LastFindings are the ids of the findings of the last walk, in its order.
func LastFindings(j *Job) []string { return j.lastFindings().names }

// SupposedFact is one observation of a finding changed: a state of the variable, a number
// in its unit, or "unknown" to take it away.
type SupposedFact struct {
	Variable string `json:"variable"`
	Value    string `json:"value"`
}

// CausesIf works out the causes of one finding of the last walk as they stand and with
// facts changed. Everything else, the replays among it, stays as it is.
func CausesIf(ctx context.Context, j *Job, files fs.FS, finding string, facts []SupposedFact, say Progress) (report.Shift, error) {
	d, err := begin(ctx, j, files, say)
	if err != nil {
		return report.Shift{}, err
	}
	d.head()
	d.drawing()
	d.basis()
	if err := d.followPours(); err != nil {
		return report.Shift{}, err
	}
	d.holds()
	d.movement()
	if err := d.explainFindings(); err != nil {
		return report.Shift{}, err
	}
	return (&Weighed{d.sheets}).Shift(finding, facts)
}

// shift ranks the finding's evidence with facts changed.
func (run *findingRun) shift(facts []SupposedFact) (report.Shift, error) {
	s := report.Shift{Finding: run.finding.ID}
	before := causes.Rank(run.evidence)
	e := run.evidence
	for _, f := range facts {
		changed, err := e.Suppose(f.Variable, f.Value)
		if err != nil {
			return s, err
		}
		s.Changed = append(s.Changed, fmt.Sprintf("%s is %s (it was %s)", f.Variable, stateIn(changed, f.Variable), stateIn(e, f.Variable)))
		e = changed
	}
	after := causes.Rank(e)
	s.Before, s.After = before.Answer, after.Answer
	for _, w := range before.All {
		now := after.Weight(w.Cause)
		if math.Max(w.P, now.P) < shownAbove {
			continue
		}
		s.Rows = append(s.Rows, report.ShiftRow{Cause: w.Cause, Name: w.Name, Before: chanceOf(w), After: chanceOf(*now)})
	}
	sort.SliceStable(s.Rows, func(a, b int) bool {
		moved := func(r report.ShiftRow) float64 { return math.Abs(r.After.P - r.Before.P) }
		return moved(s.Rows[a]) > moved(s.Rows[b])
	})
	return s, nil
}

func chanceOf(w causes.Weight) report.Chance {
	return report.Chance{P: w.P, Low: w.Low, High: w.High, About: causes.About(w.P)}
}

// stateIn is the state a variable is in, "not known" without one.
func stateIn(e causes.Evidence, variable string) string {
	for _, o := range e.Observations {
		if o.Variable == variable {
			return o.State
		}
	}
	return "not known"
}
