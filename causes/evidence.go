package causes

import (
	"slabwright/source"
)

// Observation is one thing known of a finding, as a state of a [Variable].
type Observation struct {
	Variable string             `json:"variable"`
	State    string             `json:"state"`
	Text     string             `json:"text"` // a sentence with the number: "the crack starts 40 mm from the inside corner"
	From     string             `json:"from"` // seen, measured, plan, pour, weather
	Known    source.Known       `json:"known"`
	Working  string             `json:"working,omitempty"` // sheet behind it
	Weights  map[string]float64 `json:"weights,omitempty"` // shares of several states when the observer is not sure
}

// Physics is what a replay of the pour says of the finding: the natural logarithm
// of how likely it makes a crack here under each cause. A cause that is not in
// the map gets Otherwise.
type Physics struct {
	Text          string             `json:"text"`
	LogLikelihood map[string]float64 `json:"log_likelihood"`
	Otherwise     float64            `json:"otherwise"`
	Working       string             `json:"working,omitempty"`
	Says          map[string]string  `json:"says,omitempty"`     // by cause, in place of Text
	Workings      map[string]string  `json:"workings,omitempty"` // by cause, in place of Working
}

// Evidence is all that is known of one finding.
type Evidence struct {
	Finding      string          `json:"finding"`
	Observations []Observation   `json:"observations"`
	Exposure     string          `json:"exposure"` // external or indoor
	Frost        bool            `json:"frost"`    // the place freezes
	Recorded     map[string]bool `json:"recorded,omitempty"`
	Physics      []Physics       `json:"physics,omitempty"`
	Pointless    []string        `json:"pointless,omitempty"` // variables nobody need look for here: the ends of a joint
	Tally        map[string]int  `json:"tally,omitempty"`     // the practice's own closed cases by cause; used from 30 on
}

// Recorded facts. The first five take causes off the list (tables/vetoes.csv); a
// fact that is not on record takes nothing off.
const (
	UncrackedAt7Days = "uncracked at 7 days" // dated photographs
	NoFrost          = "no frost"
	NoSteelLocated   = "no steel located"
	NoBarsAtJoint    = "no bars at joint"
	NoCutMade        = "no cut made"

	// CoveredUntilSeen: coverings or finishing works hid the surface, so the age
	// when the crack was first seen says little.
	CoveredUntilSeen = "covered until seen"
	// SeenInFirstWinter: the season then shares in what drives a trigger cause.
	SeenInFirstWinter = "seen in first winter"
)

// Strength of an observation by how it is known; our own judgement.
var knownStrength = map[source.Known]float64{
	source.Measured: 1, source.Recorded: 1, source.Assumed: 0.6, source.Default: 0.3,
}

// coveredStrength is the strength of the age when the surface was hidden.
const coveredStrength = 0.3

// Unused is an observation that could not be weighed, with the reason.
type Unused struct {
	Observation Observation `json:"observation"`
	Why         string      `json:"why"`
}
