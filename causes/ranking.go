package causes

import (
	"slabwright/source"
	"slabwright/working"
)

// States of a cause in a ranking.
const (
	Leading    = "leading"
	Possible   = "possible"
	Unlikely   = "unlikely"
	RuledOut   = "ruled out"
	CannotTell = "cannot tell"
)

// Weight is one cause, mechanism or trigger in a ranking.
type Weight struct {
	Cause    string            `json:"cause"` // id
	Name     string            `json:"name"`
	Plain    string            `json:"plain"`
	Exact    string            `json:"exact"`
	Layer    string            `json:"layer"` // mechanism or trigger
	P        float64           `json:"p"`
	Low      float64           `json:"low"`
	High     float64           `json:"high"`
	About    string            `json:"about"` // "about 7 in 10 (5 to 9 in 10)"
	State    string            `json:"state"`
	For      []Argument        `json:"for,omitempty"`     // strongest first
	Against  []Argument        `json:"against,omitempty"` // strongest first
	Missing  []MissingEvidence `json:"missing,omitempty"`
	RuledOut string            `json:"ruled_out,omitempty"` // "considered and ruled out because ..."
	Confirm  string            `json:"confirm,omitempty"`
	DoNot    string            `json:"do_not,omitempty"`
	Sources  []source.Citation `json:"sources,omitempty"`
}

// Argument is one piece of evidence for or against.
type Argument struct {
	Text        string      `json:"text"`
	Observation Observation `json:"observation"`
	Shift       float64     `json:"shift"` // log10 of the odds with it over the odds with it struck out
	Working     string      `json:"working,omitempty"`
}

// MissingEvidence is something nobody has looked at that bears on a cause.
type MissingEvidence struct {
	Variable string  `json:"variable"`
	Question string  `json:"question"`
	Test     string  `json:"test"` // the cheapest test that shows it
	Bits     float64 `json:"bits"` // what it is expected to tell of this cause
}

// Ranking is the answer to why one finding is there.
type Ranking struct {
	Finding     string        `json:"finding"`
	Mechanisms  []Weight      `json:"mechanisms"` // what pulled it apart
	Triggers    []Weight      `json:"triggers"`   // why here and then
	All         []Weight      `json:"all"`        // every cause, likeliest first
	Decided     bool          `json:"decided"`
	Answer      string        `json:"answer"`
	Combined    []string      `json:"combined,omitempty"` // ids of causes that act together
	Unexplained []Observation `json:"unexplained,omitempty"`
	Unused      []Unused      `json:"unused,omitempty"`
	NextTests   []Test        `json:"next_tests,omitempty"`
	Working     working.Sheet `json:"working"`

	prior     []float64          // chances before anything of the finding was known
	ageShares map[string]float64 // of the mechanisms in a trigger cause
}

// Top returns the likeliest cause.
func (r Ranking) Top() Weight { return r.All[0] }

// Weight returns the weight of a cause by its id, or nil.
func (r Ranking) Weight(cause string) *Weight {
	for i := range r.All {
		if r.All[i].Cause == cause {
			return &r.All[i]
		}
	}
	return nil
}
