package layout

import "slabwright/plan"

// Warning is one place where a slab does not meet a rule, with the way to mend it.
type Warning struct {
	Code     string     `json:"code"` // key of the rule, for looking it up
	Severity Severity   `json:"severity"`
	Panel    string     `json:"panel,omitempty"`
	Joint    string     `json:"joint,omitempty"`
	Fixture  string     `json:"fixture,omitempty"`
	At       plan.Point `json:"at"`
	Found    string     `json:"found"`  // one sentence: what is there, with its size
	Rule     string     `json:"rule"`   // what the rule says
	Source   string     `json:"source"` // where the rule stands and how it is known
	Mend     *Mend      `json:"mend,omitempty"`
}

// Mend is a change that makes a warning go away, for one tap.
type Mend struct {
	Words string    `json:"words"`
	Slab  plan.Slab `json:"slab"` // with the change made
}
