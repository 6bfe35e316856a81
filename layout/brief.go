package layout

import (
	"context"

	"slabwright/plan"
	"slabwright/working"
)

// Brief is what a layout is asked for.
type Brief struct {
	// Slab gives the outline, the fixtures and the thickness. Joints already in it
	// are left out of account by [Propose], which draws its own.
	Slab    plan.Slab
	Spacing Limit
	Strip   Strip
	Wheels  Wheels
	Steel   Steel
	Rates   Rates
	Weights Weights    // the zero value takes those of each alternative
	Chance  ChanceFunc // nil takes [Limit.ChanceOf]
	Seed    uint64     // of the search; the same brief and seed give the same plan
}

// Strip says how the slab can be placed.
type Strip struct {
	Widest    float64  // one strip between forms, m; 0 for any: it can be placed in one go
	Area      float64  // most that one day's pour can be, m²; 0 for any
	Direction *float64 // of the strips, degrees anticlockwise from x; nil: the longer way
}

// Wheels says what must pass over the joints.
type Wheels struct {
	Cross    bool    // wheels of lift trucks or lorries cross the joints
	Opening  float64 // above which interlock of the stones is gone, m; 0 for 0.9 mm
	Movement float64 // shortening the joints must take up (drying and cooling), –; 0 takes the limit's
}

// Steel says what is laid in the slab.
type Steel struct {
	Mesh    string  // a name of steel.Meshes, such as "A193"; "" for none
	Across  string  // at sawn joints: "cut", "half" or "continuous"; "" for cut
	Lap     float64 // of mesh sheets, m; 0 for 0.4
	Trimmer string  // bar across inside corners, a name of steel.Bars; "" for "12"
}

// Rates are what things cost, in the user's own money; 0 leaves one out.
type Rates struct {
	Currency   string  // only for showing
	Sawn       float64 // a metre of sawn joint, with its filler
	Formed     float64 // a metre of formed joint
	Isolation  float64 // a metre of isolation joint
	Dowel      float64 // one
	Steel      float64 // a kilogram of mesh and bars, laid
	StripStart float64 // setting up for one pour
}

// Given reports whether any rate was given.
func (r Rates) Given() bool {
	return r.Sawn+r.Formed+r.Isolation+r.Dowel+r.Steel+r.StripStart > 0
}

// Weights say what counts in a layout that meets the hard rules; each multiplies a
// plain number of [Measure].
type Weights struct {
	Length float64 // of joint, over that of joints at the limit both ways
	Aspect float64 // excess of aspect over 1.3, more over 1.5, a full panel
	Square float64 // mean aspect over 1
	Shape  float64 // mean share of its least rectangle that a panel does not fill
	Even   float64 // scatter of panel areas, standard deviation over mean
	Over   float64 // mean excess of panel length over the limit, and a fifth of the greatest
	Strips float64 // number of pours, a full panel
	Kinks  float64 // bends of joints away from straight, a full panel
	Corner float64 // inside corners that bars cross instead of a joint, a full panel; 0 for 1
	Widths float64 // scatter of the widths of strips, standard deviation over mean
}

// Chance is how likely a crack away from the joints is.
type Chance struct {
	Unplanned float64  // 0 to 1
	Low, High *float64 // where the caller knows the spread
	How       string   // what was run, for the page
	Sheets    []working.Sheet
}

// ChanceFunc tells the chance of an unplanned crack of a slab with joints. A caller
// that can replay the pour passes that; see [Limit.ChanceOf] for the default.
type ChanceFunc func(ctx context.Context, s plan.Slab) (Chance, error)

// Say is told how far a proposal has come; nil for silence.
type Say func(done, of int, what string)

// Alternative is one layout with what it takes and what it costs.
type Alternative struct {
	Name       string          `json:"name"` // fewest joints, squarest panels, easiest strips
	Why        string          `json:"why"`  // two plain sentences
	Slab       plan.Slab       `json:"slab"` // joints and dowels filled in
	Strips     []PourStrip     `json:"strips"`
	Trimmers   []Trimmer       `json:"trimmers,omitempty"`
	MeshCuts   []MeshCut       `json:"mesh_cuts,omitempty"`
	Quantities Quantities      `json:"quantities"`
	Cost       *float64        `json:"cost"` // nil without rates
	Measure    Measure         `json:"measure"`
	Chance     *Chance         `json:"chance,omitempty"`
	Warnings   []Warning       `json:"warnings,omitempty"`
	Score      float64         `json:"score"` // by the alternative's weights; less is better
	Sheets     []working.Sheet `json:"sheets,omitempty"`
}

// PourStrip is what is placed in one go.
type PourStrip struct {
	ID     string   `json:"id"`     // S1, S2 ... in the order of the panels
	Panels []string `json:"panels"` // their numbers
	Area   float64  `json:"area_m2"`
	Width  float64  `json:"width_m"`  // across the strip
	Length float64  `json:"length_m"` // along it
	First  bool     `json:"first"`    // placed in the first round; the others fill in between
}

// Trimmer is steel across an inside corner that no joint meets: it keeps the crack
// there narrow, it does not prevent it.
type Trimmer struct {
	At       plan.Point `json:"at"`
	From     plan.Point `json:"from"` // of the middle bar
	To       plan.Point `json:"to"`
	Fixture  string     `json:"fixture,omitempty"`
	Bars     int        `json:"bars"`
	Bar      string     `json:"bar"`
	Spacing  float64    `json:"spacing_m"`
	Length   float64    `json:"length_m"`
	Why      string     `json:"why"` // no joint meets the corner because ...
	Diameter float64    `json:"diameter_m"`
}

// MeshCut is what is done to the mesh at one joint.
type MeshCut struct {
	Joint string `json:"joint"`
	Do    string `json:"do"` // stop, cut, cut half, run through
	Note  string `json:"note"`
}

// Quantities are what the layout takes.
type Quantities struct {
	Sawn      float64 `json:"sawn_m"`
	Formed    float64 `json:"formed_m"`
	Isolation float64 `json:"isolation_m"` // joints and the sides of isolated fixtures
	Dowels    int     `json:"dowels"`
	DowelMass float64 `json:"dowel_steel_kg"`
	Mesh      float64 `json:"mesh_kg"`
	Trimmer   float64 `json:"trimmer_kg"`
	Pours     int     `json:"pours"`
	Panels    int     `json:"panels"`
}
