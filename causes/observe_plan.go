package causes

import (
	"fmt"
	"math"

	"slabwright/source"
	"slabwright/working"
)

// PlanFacts are the relations of one finding to the plan, worked out by whoever
// holds the plan. Lengths in metres, angles in degrees from 0 to 90; nil is not
// known. Names are printed in the sentences ("pit P1") and may be empty.
type PlanFacts struct {
	LineLength            *float64 `json:"line_length_m,omitempty"`
	AngleToLongSide       *float64 `json:"angle_to_long_side_deg,omitempty"`
	PositionAlong         *float64 `json:"position_along,omitempty"` // middle of the line as a share of the panel length, 0-1
	EndsReaching          *int     `json:"ends_reaching,omitempty"`  // ends within 300 mm of an edge or joint, 0-2
	DistanceToEdge        *float64 `json:"distance_to_edge_m,omitempty"`
	DistanceToJoint       *float64 `json:"distance_to_joint_m,omitempty"` // mean distance of the line from the nearest joint or free edge
	AngleToNearestJoint   *float64 `json:"angle_to_nearest_joint_deg,omitempty"`
	Joint                 string   `json:"joint,omitempty"`                     // "joint J3", "the free edge"
	StartsAtInsideCorner  *float64 `json:"starts_at_inside_corner_m,omitempty"` // distance from the nearest end to the corner
	InsideCorner          string   `json:"inside_corner,omitempty"`
	JoinsSidesThatMeet    *bool    `json:"joins_sides_that_meet,omitempty"` // both ends on sides of one panel corner
	NearestBarLine        *float64 `json:"nearest_bar_line_m,omitempty"`    // largest distance of the line from the located bar it follows
	ShareOnEmbeddedLine   *float64 `json:"share_on_embedded_line,omitempty"`
	EmbeddedLine          string   `json:"embedded_line,omitempty"`
	Lines                 *int     `json:"lines,omitempty"` // lines that belong together
	LineSpacing           *float64 `json:"line_spacing_m,omitempty"`
	SpacingVariation      *float64 `json:"spacing_cov,omitempty"` // standard deviation over mean
	BarPitch              *float64 `json:"bar_pitch_m,omitempty"`
	PanelLength           *float64 `json:"panel_length_m,omitempty"` // longer side between working joints
	PanelWidth            *float64 `json:"panel_width_m,omitempty"`
	Thickness             *float64 `json:"thickness_m,omitempty"`
	DistanceToFixture     *float64 `json:"distance_to_fixture_m,omitempty"`
	Fixture               string   `json:"fixture,omitempty"`
	FixtureIsolated       *string  `json:"fixture_isolated,omitempty"`             // present or absent
	InLineWithJointAcross *float64 `json:"in_line_with_joint_across_m,omitempty"`  // distance from the line of a joint across a shared edge
	DistanceToDowelledOne *float64 `json:"distance_to_dowelled_joint_m,omitempty"` // to the nearest dowelled or tied joint
	DistanceToDowelEnd    *float64 `json:"distance_to_dowel_end_m,omitempty"`      // to the line of the bars' ends
	JointsCrackedShare    *float64 `json:"joints_cracked_share,omitempty"`         // of those within three panels
	DistanceToWheelPath   *float64 `json:"distance_to_wheel_path_m,omitempty"`
	NoTraffic             *bool    `json:"no_traffic,omitempty"`
	WholePanel            *bool    `json:"whole_panel,omitempty"` // the finding covers the panel

	Known   source.Known `json:"known,omitempty"` // how the plan is known; measured when empty
	Working string       `json:"working,omitempty"`
}

// Distances and angles that sort a line into its place. Sources: ACI 302.1R and
// trade questions for the joint, NRC Update 44 for the lifted strip, CCAA for the
// clear ends; figures without a source are our own judgement.
const (
	acrossWithin    = 20.0 // deg from square or parallel
	diagonalFrom    = 30.0 // deg
	diagonalTo      = 60.0
	barWithin       = 0.050 // m
	cornerWithin    = 0.150 // m from an inside corner
	inLineWithin    = 0.150 // m from the line of the neighbour's joint
	dowelNearest    = 0.150 // m from the joint
	dowelFarthest   = 0.450
	dowelEndWithin  = 0.100 // m from the line of bar ends
	jointWithin     = 0.300 // m
	fixtureWithin   = 1.0   // m
	bandFrom        = 0.05  // of the panel length
	bandTo          = 0.25
	middleFrom      = 0.33 // of the panel length
	middleTo        = 0.67
	clearOfEdge     = 0.300 // m, ends that stop short
	wheelPathWithin = 0.4   // m
	barPitchWithin  = 0.15  // share
	barPitchMaxCoV  = 0.2
	regularMaxCoV   = 0.3
	embeddedAtLeast = 0.7 // share of the line's length
)

// FromPlan turns the relations of a finding to the plan into observations. A
// relation that is not known gives none.
func FromPlan(f PlanFacts) []Observation {
	if f.Known == "" {
		f.Known = source.Measured
	}
	var all []Observation
	for _, rule := range []func(PlanFacts) *Observation{
		orientation, location, ends, spacing, embedded, isolation, wheelPath,
	} {
		if o := rule(f); o != nil {
			all = append(all, *o)
		}
	}
	return append(all, f.proportions()...)
}

// observed builds one observation of the plan.
func (f PlanFacts) observed(variable, state, format string, args ...any) *Observation {
	return &Observation{Variable: variable, State: state, Text: fmt.Sprintf(format, args...), From: "plan", Known: f.Known, Working: f.Working}
}

func orientation(f PlanFacts) *Observation {
	if f.AngleToLongSide == nil {
		return nil
	}
	a := *f.AngleToLongSide
	state := "other"
	switch {
	case a >= 90-acrossWithin:
		state = "across"
	case a <= acrossWithin:
		state = "along"
	case a >= diagonalFrom && a <= diagonalTo:
		state = "diagonal"
	}
	return f.observed("orientation", state, "the line runs at %s° to the panel's long side", working.Figure(a, 2))
}

func ends(f PlanFacts) *Observation {
	if f.EndsReaching == nil {
		return nil
	}
	switch n := *f.EndsReaching; {
	case n >= 2:
		return f.observed("ends", "both", "both ends reach an edge or a joint")
	case n == 1:
		return f.observed("ends", "one", "one end reaches an edge or a joint and the other stops inside the panel")
	case f.DistanceToEdge != nil:
		return f.observed("ends", "neither", "neither end reaches an edge or a joint; the nearer stops %s short", length(*f.DistanceToEdge))
	}
	return f.observed("ends", "neither", "neither end reaches an edge or a joint")
}

func spacing(f PlanFacts) *Observation {
	if f.Lines != nil && *f.Lines <= 1 {
		return f.observed("spacing", "single", "there is a single line")
	}
	if f.LineSpacing == nil || f.SpacingVariation == nil {
		return nil
	}
	mean, cov := *f.LineSpacing, *f.SpacingVariation
	scatter := working.Figure(100*cov, 2)
	switch {
	case f.BarPitch != nil && math.Abs(mean / *f.BarPitch - 1) <= barPitchWithin && cov < barPitchMaxCoV:
		return f.observed("spacing", "bar-pitch", "the lines repeat every %s (scatter %s %%) and the bars every %s", length(mean), scatter, length(*f.BarPitch))
	case cov < regularMaxCoV:
		return f.observed("spacing", "regular", "the lines repeat every %s with a scatter of %s %%", length(mean), scatter)
	}
	return f.observed("spacing", "irregular", "the lines are %s apart on average with a scatter of %s %%", length(mean), scatter)
}

func embedded(f PlanFacts) *Observation {
	if f.ShareOnEmbeddedLine == nil {
		return nil
	}
	share := working.Figure(100**f.ShareOnEmbeddedLine, 2)
	what := named("embedded line", f.EmbeddedLine)
	if *f.ShareOnEmbeddedLine >= embeddedAtLeast {
		return f.observed("embedded", "coincident", "%s %% of the line lies within 50 mm of the %s", share, what)
	}
	return f.observed("embedded", "none", "only %s %% of the line lies within 50 mm of an embedded line", share)
}

func isolation(f PlanFacts) *Observation {
	if f.FixtureIsolated == nil || f.DistanceToFixture == nil || *f.DistanceToFixture > fixtureWithin {
		return nil
	}
	what := named("fixture", f.Fixture)
	if *f.FixtureIsolated == "present" {
		return f.observed("isolation", "present", "a soft strip parts the slab from the %s", what)
	}
	return f.observed("isolation", "absent", "no soft strip parts the slab from the %s", what)
}

func wheelPath(f PlanFacts) *Observation {
	switch {
	case f.NoTraffic != nil && *f.NoTraffic:
		return f.observed("wheelpath", "no-traffic", "nothing drives here")
	case f.DistanceToWheelPath == nil:
		return nil
	case *f.DistanceToWheelPath <= wheelPathWithin:
		return f.observed("wheelpath", "coincides", "it lies %s from the line of the wheels", length(*f.DistanceToWheelPath))
	}
	return f.observed("wheelpath", "elsewhere", "the wheels pass %s away", length(*f.DistanceToWheelPath))
}

// proportions are the plain ratios of the panel and its joints.
func (f PlanFacts) proportions() []Observation {
	var all []Observation
	add := func(variable string, value float64) {
		o, err := measured(variable, &source.Fact{Value: value, Known: f.Known}, "plan", f.Working)
		if err != nil {
			return // a panel without size says nothing
		}
		all = append(all, o)
	}
	if f.PanelLength != nil && f.PanelWidth != nil && *f.PanelWidth > 0 {
		long, short := math.Max(*f.PanelLength, *f.PanelWidth), math.Min(*f.PanelLength, *f.PanelWidth)
		add("aspect", long/short)
	}
	if f.PanelLength != nil && f.Thickness != nil && *f.Thickness > 0 {
		add("slenderness", *f.PanelLength / *f.Thickness)
	}
	if f.JointsCrackedShare != nil {
		add("activation", *f.JointsCrackedShare)
	}
	return all
}

// named puts the name after the word: "pit P1" stays, "" becomes the word.
func named(word, name string) string {
	if name == "" {
		return word
	}
	return name
}
