package plan

// Distances within which things count as related, metres. They are the bands the
// published inspection guides use or our own where the guides give none.
const (
	EndReach      = 0.30 // an end this near to an edge or joint has reached it
	BesideAngle   = 20.0 // degrees: a line this near to parallel runs beside another
	OverReach     = 0.05 // a line this near to a bar or duct runs over it
	sampleStep    = 0.025
	chainReach    = 0.05 // pieces whose ends are this near are one line
	touchDistance = 0.03 // an end this near touches, whichever way it points
)

// Relation is what the plan says of one finding: where it is, which way it runs,
// what it starts at, stops at and runs over. A nil field does not apply or cannot
// be known from the plan (no bars located, say); it never stands for zero.
type Relation struct {
	Panel       string   `json:"panel"`            // holding most of it, "" when none
	Panels      []string `json:"panels"`           // every panel it runs through
	PanelLength *float64 `json:"panel_length_m"`   // of that panel
	PanelWidth  *float64 `json:"panel_width_m"`    //
	PanelAspect *float64 `json:"panel_aspect"`     //
	AreaShare   *float64 `json:"area_share"`       // of the panel that a patch covers
	Area        *float64 `json:"area_m2"`          // of a patch
	Centre      Point    `json:"centre"`           // mean place of the finding
	FromCentre  *float64 `json:"from_centre_m"`    // to the panel's centre of area
	Along       *float64 `json:"along"`            // 0 to 1 of the panel's length, counted along its long direction
	Across      *float64 `json:"across"`           // the same of its width
	Pieces      int      `json:"pieces"`           // lines drawn, those that join counted as one
	Length      *float64 `json:"length_m"`         // of all lines
	Longest     *float64 `json:"longest_m"`        // of the longest one
	Straight    *float64 `json:"straightness"`     // of the longest one: end to end over length
	Direction   *float64 `json:"direction_deg"`    // mean, 0 to 180 anticlockwise from x
	Order       *float64 `json:"order"`            // 1: all run one way, 0: every way
	Angle       *float64 `json:"to_long_side_deg"` // 0 to 90, against the panel's long side

	Joint      *NearLine    `json:"joint"`       // nearest joint
	Beside     *NearLine    `json:"beside"`      // nearest joint it runs along
	Edge       *NearLine    `json:"edge"`        // nearest free or formed edge
	BesideEdge *NearLine    `json:"beside_edge"` // nearest such edge it runs along
	Ends       []End        `json:"ends"`        // of the longest line: start, end
	Reaching   *int         `json:"reaching"`    // ends of the longest line that reach something: 0, 1, 2
	AllReach   *float64     `json:"all_reach"`   // share of all ends that do
	Corner     *CornerStart `json:"corner"`      // nearest inside corner to any end
	InLine     *InLine      `json:"in_line"`     // joint or crack ending across the side it reaches
	Crossing   *NearCross   `json:"crossing"`    // nearest crossing of two joints
	DowelEnd   *DowelEnd    `json:"dowel_end"`   // nearest line of dowel ends it runs along
	Bars       *BarsUnder   `json:"bars"`        // located bars under it
	Spacing    *Spacing     `json:"spacing"`     // of three or more lines side by side
	Ducts      *Share       `json:"ducts"`       // embedded line it follows most
	Wheels     *Share       `json:"wheels"`      // wheel path it lies in most
	Fixture    *NearFixture `json:"fixture"`     // nearest thing that may hold the slab
	Cut        *CornerCut   `json:"corner_cut"`  // corner of the panel it cuts off
	SharpAt    *float64     `json:"sharp_m"`     // to the panel's nearest corner below SharpBelow
}

// NearLine is a joint or edge beside a finding.
type NearLine struct {
	ID       string   `json:"id"`
	Kind     string   `json:"kind"`         // sawn, formed, isolation, edge
	Distance float64  `json:"distance_m"`   // least
	Mean     float64  `json:"mean_m"`       // mean over the finding
	Angle    *float64 `json:"angle_deg"`    // between the two, 0 to 90
	Overlap  float64  `json:"overlap_m"`    // length of the finding that runs along it
	Share    *float64 `json:"length_share"` // Mean over the panel's length
}

// End is one end of a line and what it reaches within EndReach.
type End struct {
	At       Point    `json:"at"`
	Reaches  string   `json:"reaches"` // joint, edge, fixture, or "" for nothing
	ID       string   `json:"id"`      // of the joint or fixture
	Distance *float64 `json:"distance_m"`
	Corner   *float64 `json:"inside_corner_m"` // to the nearest inside corner
}

// CornerStart is the inside corner nearest to an end of a line.
type CornerStart struct {
	At       Point       `json:"at"`
	Fixture  string      `json:"fixture"`
	Distance float64     `json:"distance_m"`
	Starts   bool        `json:"starts"` // within CornerReach
	Angles   *[2]float64 `json:"to_sides_deg"`
	Joint    string      `json:"joint"` // a joint that meets the corner already
}

// InLine is a joint or crack that ends at the far side of the line a finding stops
// at, and points at it.
type InLine struct {
	ID       string  `json:"id"` // joint id, or "crack"
	Shared   string  `json:"shared"`
	Distance float64 `json:"distance_m"`
	Angle    float64 `json:"angle_deg"`
}

// NearCross is the nearest crossing of two joints.
type NearCross struct {
	At       Point     `json:"at"`
	Joints   [2]string `json:"joints"`
	Tee      bool      `json:"tee"`
	Distance float64   `json:"distance_m"`
	Dowelled *bool     `json:"both_dowelled"` // nil when not known of one
}

// DowelEnd is the line through the ends of a joint's dowels, for a finding that
// runs along the joint.
type DowelEnd struct {
	Joint    string  `json:"joint"`
	Half     float64 `json:"half_length_m"`
	Distance float64 `json:"distance_m"` // least, to the line of bar ends
	Mean     float64 `json:"mean_m"`     // mean over the finding
	Share    float64 `json:"share"`      // of length within OverReach of it
}

// BarsUnder is how far a finding follows located bars.
type BarsUnder struct {
	Zone  string   `json:"zone"`
	Share float64  `json:"share"`  // of length within OverReach of a bar that runs its way
	Mean  *float64 `json:"mean_m"` // mean distance to such bars, nil when none runs its way
}

// Spacing is how far apart lines lie that run side by side.
type Spacing struct {
	Lines    int      `json:"lines"`
	Mean     float64  `json:"mean_m"`
	CoV      *float64 `json:"cov"` // needs three lines
	BarPitch *float64 `json:"bar_pitch_m"`
	Zone     string   `json:"zone"`
	Ratio    *float64 `json:"ratio"` // Mean over BarPitch
}

// Share is how much of a finding lies over or in something.
type Share struct {
	ID       string  `json:"id"`
	Share    float64 `json:"share"`
	Distance float64 `json:"distance_m"` // least, to its centre-line
}

// NearFixture is the nearest thing that may hold the slab.
type NearFixture struct {
	ID       string      `json:"id"`
	Kind     FixtureKind `json:"kind"`
	Distance float64     `json:"distance_m"`
	Isolated string      `json:"isolated"` // yes, no, part, or "" when not known
}

// CornerCut is a corner of the panel cut off by a line that joins its two sides.
type CornerCut struct {
	At    Point      `json:"at"`
	Legs  [2]float64 `json:"legs_m"` // from the corner to the line's two ends
	Sides [2]string  `json:"sides"`  // what the two sides are on
	Area  float64    `json:"area_m2"`
}
