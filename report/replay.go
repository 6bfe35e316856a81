package report

import (
	"time"

	"slabwright/plan"
)

// Replay is the slab in plan followed from its first truck on: what opened, what
// cracked where and when, as expected; how likely that is, metre by metre; and the
// state of the slab at a set of hours for drawing.
type Replay struct {
	Start    time.Time       `json:"start"`   // of the first pour: hour 0
	Hours    float64         `json:"hours"`   // followed to
	Partial  string          `json:"partial"` // why it stops short; empty where it does not
	Summary  []string        `json:"summary"`
	Events   []ReplayEvent   `json:"events"`
	Openings []ReplayOpening `json:"openings"` // at the end
	Unmet    []UnmetRow      `json:"unmet"`    // cracks seen that the expected course does not have
	Chances  *ReplayChances  `json:"chances,omitempty"`
	Field    ReplayField     `json:"field"`
	Workings []string        `json:"workings"`
}

// ReplayEvent is something that opened or cracked.
type ReplayEvent struct {
	At      time.Time    `json:"at"`
	Hours   float64      `json:"hours"`  // after the first truck
	Since   float64      `json:"since"`  // it opened after this hour: that of the step before
	Placed  float64      `json:"placed"` // hours after the concrete of this place was placed
	Line    string       `json:"line"`   // joint, or C1, C2 ... for a crack
	Crack   bool         `json:"crack"`
	Further bool         `json:"further"` // the line has opened in part before
	Path    []plan.Point `json:"path_m"`  // the stretch
	Length  float64      `json:"length_m"`
	Panel   string       `json:"panel,omitempty"`
	What    string       `json:"what"`  // "Joint SA1 opens"
	Where   string       `json:"where"` // in words
	Why     string       `json:"why"`
	Share   float64      `json:"share"` // of the strength, in the state found
	Stress  float64      `json:"stress_MPa"`
	Hand    float64      `json:"hand_MPa"`          // what the base alone can bring there
	Held    string       `json:"hand_why"`          // what the hand figure leaves out, where they are over 20 % apart
	Freed   float64      `json:"freed_J"`           // work in plan that it set free
	Needed  float64      `json:"needed_J"`          // that tearing takes at once, less what curl gives
	Seen    string       `json:"seen"`              // in words
	Finding string       `json:"finding,omitempty"` // where it was seen
}

// ReplayOpening is how wide a line stands.
type ReplayOpening struct {
	Line   string  `json:"line"`
	Crack  bool    `json:"crack"`
	Open   float64 `json:"open_m"` // length that has opened
	Length float64 `json:"length_m"`
	Mean   float64 `json:"mean_m"` // width over what has opened
	Widest float64 `json:"widest_m"`
}

// UnmetRow is a crack that was seen and is not in the expected course.
type UnmetRow struct {
	Finding string  `json:"finding"`
	Chance  float64 `json:"chance"` // share of the samples with a crack within a metre of its likeliest place
	Text    string  `json:"text"`
}

// ReplayChances are what came of many replays with the uncertain facts spread.
type ReplayChances struct {
	Members int           `json:"members"`
	Cracked float64       `json:"cracked"` // share with a crack outside the joints
	First   [3]float64    `json:"first_h"` // hour of the first: 1 in 10, middle, 9 in 10 of those that crack
	Joints  []JointOpens  `json:"joints"`
	Panels  []PanelCracks `json:"panels"`
	Low     plan.Point    `json:"low_m"`  // corner of the first cell
	Cell    float64       `json:"cell_m"` // side of a cell
	Across  int           `json:"across"` // cells in a row
	Cells   []byte        `json:"cells"`  // chance of a crack through each, per cent; rows from the corner
}

// JointOpens is the chance that a joint has opened, stretch by stretch.
type JointOpens struct {
	Joint  string    `json:"joint"`
	Step   float64   `json:"step_m"`
	Opened []float64 `json:"opened"` // from the start of its path
	Mean   float64   `json:"mean"`   // over its length
	Found  string    `json:"found,omitempty"`
}

// PanelCracks is the chance of cracks in a panel.
type PanelCracks struct {
	Panel  string     `json:"panel"`
	Worst  float64    `json:"worst"`   // chance at its likeliest square metre
	At     plan.Point `json:"at_m"`    // where that is
	Metres float64    `json:"metres"`  // of crack to be expected
	PerM2  float64    `json:"per_m2"`  // the same over its area
	Found  []string   `json:"found"`   // cracks seen in it
	Where  string     `json:"where"`   // the likeliest place in words
	AreaM2 float64    `json:"area_m2"` // of the panel
}

// ReplayField is the state of the slab over the plan at a set of hours. Numbers are
// packed to keep it small: in JSON each is base64 of little-endian values.
type ReplayField struct {
	Points    []byte        `json:"points"`    // x, y of each point as 16-bit unsigned centimetres from Low
	Low       plan.Point    `json:"low_m"`     // least x and y
	Triangles []byte        `json:"triangles"` // three 16-bit unsigned numbers of points each
	Frames    []ReplayFrame `json:"frames"`
	Most      float64       `json:"most_MPa"`     // greatest stress of all frames
	Lift      float64       `json:"most_lift_mm"` // greatest lift of all frames
	LiftFrom  string        `json:"lift_from"`    // how the lift was worked out
}

// ReplayFrame is one hour of it.
type ReplayFrame struct {
	At     time.Time       `json:"at"`
	Hours  float64         `json:"hours"`
	Share  []byte          `json:"share"`  // of each triangle: per cent of the strength, 8-bit
	Stress []byte          `json:"stress"` // of each triangle: largest tension in units of 0.02 MPa, 8-bit
	Lift   []byte          `json:"lift"`   // of each point: 16-bit signed, units of 0.01 mm, up positive
	Lines  []ReplayOpening `json:"lines"`
	Panels []PanelPeak     `json:"panels"`
	Gap    float64         `json:"difference_K"` // top less bottom that curls, mean of the pours
	Model  float64         `json:"peak_MPa"`     // greatest tension in plan
	Hand   float64         `json:"peak_hand_MPa"`
	Held   string          `json:"peak_hand_why,omitempty"`
	At2    plan.Point      `json:"peak_at_m"`
}

// PanelPeak is the most that one panel feels.
type PanelPeak struct {
	Panel  string  `json:"panel"`
	Share  float64 `json:"share"`
	Stress float64 `json:"stress_MPa"`
	Lift   float64 `json:"lift_mm"`
}
