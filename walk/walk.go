// Package walk holds what was seen and measured on a visit to a slab: findings
// with their place on the plan, readings, what was looked for and not there, and
// what could not be seen.
//
// It draws no conclusion: distances and angles are worked out from the plan by
// others, never typed here.
package walk

import (
	"time"

	"slabwright/plan"
	"slabwright/source"
)

// Walk is one visit.
type Walk struct {
	ID       string       `json:"id"`
	Date     time.Time    `json:"date"`
	By       string       `json:"by"`
	Air      *source.Fact `json:"air_C,omitempty"`
	Surface  *source.Fact `json:"surface_C,omitempty"`
	Sky      string       `json:"sky,omitempty"`
	Findings []Finding    `json:"findings"`
	Unseen   []Unseen     `json:"could_not_see,omitempty"`
	None     []NoneSeen   `json:"none_seen,omitempty"`
	Note     string       `json:"note,omitempty"`
}

// Kind says what was seen.
type Kind string

// Kinds of finding.
const (
	Crack        Kind = "crack"           // one line
	ShortCracks  Kind = "short cracks"    // several pieces, not joined
	ParallelSet  Kind = "parallel cracks" // lines on a repeated pitch
	MapCracking  Kind = "map cracking"
	CornerBreak  Kind = "corner break"
	JointNotOpen Kind = "joint not opened"
	JointSpall   Kind = "joint spall"
	RavelledEdge Kind = "ravelled edge"
	Step         Kind = "step"
	Curl         Kind = "curled edge"
	Hollow       Kind = "hollow sound"
	Scaling      Kind = "scaling"
	Dusting      Kind = "dusting"
	Popouts      Kind = "popouts"
	Discoloured  Kind = "discolouration"
	Shattered    Kind = "shattered panel"
)

// Kinds lists every kind of finding.
var Kinds = []Kind{Crack, ShortCracks, ParallelSet, MapCracking, CornerBreak, JointNotOpen, JointSpall,
	RavelledEdge, Step, Curl, Hollow, Scaling, Dusting, Popouts, Discoloured, Shattered}

// Finding is one thing seen at a place. Give Lines for cracks and edges, Area for
// patches; Joint when it belongs to a joint.
type Finding struct {
	ID        string                   `json:"id"`
	Kind      Kind                     `json:"kind"`
	Lines     [][]plan.Point           `json:"lines_m,omitempty"`
	Area      []plan.Point             `json:"area_m,omitempty"`
	Joint     string                   `json:"joint,omitempty"`
	FirstSeen *time.Time               `json:"first_seen,omitempty"`
	SeenBy    string                   `json:"first_seen_by,omitempty"`
	Width     *source.Fact             `json:"width_m,omitempty"`
	Step      *source.Fact             `json:"step_m,omitempty"`
	Depth     *source.Fact             `json:"depth_m,omitempty"` // of crack or missing surface, by core or probe
	Cell      *source.Fact             `json:"cell_m,omitempty"`  // mean size of map cells
	Lift      *source.Fact             `json:"lift_m,omitempty"`  // edges above middle (+) or below (-) over 2 m
	Rebound   *source.Fact             `json:"rebound_ratio,omitempty"`
	Seen      map[string]source.Choice `json:"seen,omitempty"` // variable -> state, e.g. aggregate: through
	Photos    []string                 `json:"photos,omitempty"`
	Note      string                   `json:"note,omitempty"`
}

// Unseen is a place that could not be looked at. It counts as unknown, never as
// sound.
type Unseen struct {
	ID   string       `json:"id"`
	Area []plan.Point `json:"area_m"`
	Why  string       `json:"why"`
}

// NoneSeen is a place that was looked at for something that was not there.
type NoneSeen struct {
	Area   []plan.Point `json:"area_m,omitempty"` // absent: the whole slab
	Kinds  []Kind       `json:"kinds"`
	Joints []string     `json:"joints,omitempty"`
}
