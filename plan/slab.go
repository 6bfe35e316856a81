package plan

import "slabwright/source"

// Slab is one placed area with everything that holds, cuts or stiffens it, in
// local axes: x along the baseline, y to its left, metres.
type Slab struct {
	ID        string       `json:"id"`
	Name      string       `json:"name"`
	Outline   []Point      `json:"outline_m"` // simple ring, either way round, not closed
	Thickness *source.Fact `json:"thickness_m,omitempty"`
	Bearing   *source.Fact `json:"bearing_deg,omitempty"` // of the +y axis, clockwise from true north
	Fixtures  []Fixture    `json:"fixtures,omitempty"`
	Joints    []Joint      `json:"joints,omitempty"`
	Steel     []BarZone    `json:"steel,omitempty"`
	Wheels    []WheelPath  `json:"wheel_paths,omitempty"`

	CornerBars []CornerBars `json:"corner_bars,omitempty"`
}

// FixtureKind says what may hold the slab.
type FixtureKind string

// Kinds of fixture.
const (
	Pit      FixtureKind = "pit"
	Drain    FixtureKind = "drain"
	Column   FixtureKind = "column"
	Wall     FixtureKind = "wall"
	Building FixtureKind = "building"
	OldSlab  FixtureKind = "old slab"
	Duct     FixtureKind = "duct" // embedded in the depth: pipe, sleeve, thickness step
)

// Fixture is something in or beside the slab that may hold it. A ring shape with
// Opening true is a hole in the slab; a building or wall is an open line along
// the edge it touches.
type Fixture struct {
	ID       string         `json:"id"`
	Name     string         `json:"name"`
	Kind     FixtureKind    `json:"kind"`
	Shape    []Point        `json:"shape_m"`
	Opening  bool           `json:"opening,omitempty"`
	Isolated *source.Choice `json:"isolated,omitempty"` // yes, no, part
	Trimmers *source.Choice `json:"trimmers,omitempty"` // yes, no: bars across its inside corners
}

// JointKind says how a joint was made.
type JointKind string

// Kinds of joint.
const (
	Sawn      JointKind = "sawn"
	Formed    JointKind = "formed"
	Isolation JointKind = "isolation"
)

// Joint is one line where the slab may open. Path ends on an edge, a fixture or
// another joint.
type Joint struct {
	ID       string         `json:"id"`
	Name     string         `json:"name,omitempty"`
	Kind     JointKind      `json:"kind"`
	Path     []Point        `json:"path_m"`
	Transfer *source.Choice `json:"transfer,omitempty"`  // none, interlock, dowelled, tied, keyed
	Groove   *source.Fact   `json:"groove_m,omitempty"`  // measured depth of cut, median
	Opened   *source.Choice `json:"opened,omitempty"`    // yes, no, part: is there a crack below the groove?
	Opening  *source.Fact   `json:"opening_m,omitempty"` // measured width of opening
	Dowels   *Dowels        `json:"dowels,omitempty"`
}

// Dowels are the bars across one joint.
type Dowels struct {
	Diameter  *source.Fact   `json:"diameter_m,omitempty"`
	Length    *source.Fact   `json:"length_m,omitempty"`
	Spacing   *source.Fact   `json:"spacing_m,omitempty"`
	Clear     *source.Fact   `json:"clear_of_crossing_m,omitempty"` // first bar to the crossing joint
	Skew      *source.Fact   `json:"skew,omitempty"`                // out of line per length, m/m
	FreeAlong *source.Choice `json:"free_along,omitempty"`          // yes, no: one half unbonded
	FreeSide  *source.Choice `json:"free_sideways,omitempty"`       // yes, no: soft sides or plates
}

// BarZone is mesh or bars laid parallel to the axes turned by Angle.
type BarZone struct {
	ID       string         `json:"id"`
	Name     string         `json:"name,omitempty"`      // "A252"
	Area     []Point        `json:"area_m,omitempty"`    // absent: the whole slab
	Angle    float64        `json:"angle_deg"`           // of the x-bars to the x axis, anticlockwise
	PitchX   *source.Fact   `json:"pitch_x_m,omitempty"` // between bars running along x
	PitchY   *source.Fact   `json:"pitch_y_m,omitempty"` // between bars running along y
	First    *Point         `json:"first_m,omitempty"`   // a point where two bars cross
	Diameter *source.Fact   `json:"diameter_m,omitempty"`
	Cover    *source.Fact   `json:"cover_m,omitempty"`   // to the top bar
	AtJoints *source.Choice `json:"at_joints,omitempty"` // cut, half, continuous
}

// WheelPath is the line along which wheels run.
type WheelPath struct {
	ID    string  `json:"id"`
	Path  []Point `json:"path_m"`
	Width float64 `json:"width_m"` // the band the wheels keep to
}
