package job

import (
	"fmt"
	"slices"
	"strings"

	"slabwright/causes"
	"slabwright/report"
	"slabwright/source"
	"slabwright/walk"
)

// Stage is an answer that stands while the rest is worked out, and what its findings were
// weighed from.
type Stage struct {
	Content *report.Content
	Weighed *Weighed
	First   bool // before the replays of the slab
}

// notReplayed is the caution that a first answer carries.
const notReplayed = "This is the first answer: causes are weighed from what was seen, the plan and the record of the pours. The slab was not replayed."

// firstAnswer hands over what stands before the slab is replayed, made from copies so that
// what follows leaves it as it is.
func (d *diagnosis) firstAnswer(stage func(Stage)) error {
	if stage == nil {
		return nil
	}
	first := *d
	first.early = true
	first.say = func(string, float64) {}
	first.book.Sheets = slices.Clone(d.book.Sheets)
	c := *d.content
	c.Assumptions, c.Missing = slices.Clone(c.Assumptions), slices.Clone(c.Missing)
	c.Pours = slices.Clone(c.Pours)
	first.content = &c
	if err := first.explainFindings(); err != nil {
		return err
	}
	first.explainSlab()
	first.pageOne()
	first.finish()
	c.Cautions = append(c.Cautions, notReplayed)
	stage(Stage{Content: &c, Weighed: &Weighed{first.sheets}, First: true})
	return nil
}

// Weighed is what the findings of an answer were weighed from; what-ifs on their facts are
// answered from it at once. It may be asked from several goroutines.
type Weighed struct{ sheets []*findingRun }

// FindingFact is one thing that can be seen or measured of a finding, and its state now.
type FindingFact struct {
	Variable string       `json:"variable"`
	Question string       `json:"question"`
	Unit     string       `json:"unit,omitempty"` // of a number that may be given in place of a state
	States   []FactChoice `json:"states"`
	Now      string       `json:"now"` // state, or "unknown"
	Text     string       `json:"text,omitempty"`
	From     string       `json:"from,omitempty"`
	Known    source.Known `json:"known,omitempty"`
}

// FactChoice is one state a fact can have, with its sentence.
type FactChoice struct {
	State string `json:"state"`
	Says  string `json:"says"`
}

// Facts lists what can be changed at a finding: what is known of it first.
func (w *Weighed) Facts(finding string) ([]FindingFact, error) {
	run, err := w.run(finding)
	if err != nil {
		return nil, err
	}
	var known, open []FindingFact
	for _, v := range causes.Variables() {
		f := FindingFact{Variable: v.Name, Question: v.Question, Unit: v.Unit, Now: causes.Unknown}
		for _, s := range v.States {
			f.States = append(f.States, FactChoice{s, causes.Says(v.Name, s)})
		}
		for _, o := range run.evidence.Observations {
			if o.Variable == v.Name {
				f.Now, f.Text, f.From, f.Known = o.State, o.Text, o.From, o.Known
			}
		}
		switch {
		case f.Now != causes.Unknown:
			known = append(known, f)
		case askedOf(v.Applies, run.finding):
			open = append(open, f)
		}
	}
	return append(known, open...), nil
}

// askedOf reports whether a question is one that a finding of its kind answers.
func askedOf(applies string, f walk.Finding) bool {
	switch applies {
	case "line":
		return lineLike(f.Kind)
	case "map":
		return f.Kind == walk.MapCracking
	}
	return true
}

// Shift is what changed facts do to all causes of a finding; see [CausesIf].
func (w *Weighed) Shift(finding string, facts []SupposedFact) (report.Shift, error) {
	run, err := w.run(finding)
	if err != nil {
		return report.Shift{}, err
	}
	return run.shift(facts)
}

func (w *Weighed) run(finding string) (*findingRun, error) {
	var ids []string
	for _, run := range w.sheets {
		if run.finding.ID == finding {
			return run, nil
		}
		ids = append(ids, run.finding.ID)
	}
	return nil, fmt.Errorf("no finding %q; there are: %s", finding, list(ids))
}

// SetOverride puts a chance set by the engineer into the job in place of one set before
// for the same cause and finding, and returns that one or nil; Validate tells whether it fits.
func (j *Job) SetOverride(o Override) *Override {
	before := j.RemoveOverride(o.Finding, o.Cause)
	o.Reason, o.By = strings.TrimSpace(o.Reason), strings.TrimSpace(o.By)
	j.Overrides = append(j.Overrides, o)
	return before
}

// RemoveOverride takes back a chance set by the engineer and returns it; nil if none was.
func (j *Job) RemoveOverride(finding, cause string) *Override {
	for i, o := range j.Overrides {
		if o.Finding == finding && o.Cause == cause {
			j.Overrides = slices.Delete(slices.Clone(j.Overrides), i, i+1)
			return &o
		}
	}
	return nil
}
