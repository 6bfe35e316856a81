package remedies

import "slabwright/causes"

// Situation is all that the choice of a remedy needs of one finding. Lengths in
// metres, temperatures in °C; nil or "" is not known.
type Situation struct {
	Finding       string         `json:"finding"`
	Pattern       string         `json:"pattern"` // a state of the variable pattern of package causes
	Ranking       causes.Ranking `json:"ranking"`
	Width         *float64       `json:"width_m,omitempty"`
	Step          *float64       `json:"step_m,omitempty"`
	Depth         *float64       `json:"depth_m,omitempty"`
	Length        *float64       `json:"length_m,omitempty"` // of the line or joint
	Area          *float64       `json:"area_m2,omitempty"`  // of the patch or panel
	PanelArea     *float64       `json:"panel_area_m2,omitempty"`
	SlabArea      *float64       `json:"slab_area_m2,omitempty"`
	FixtureLength *float64       `json:"fixture_length_m,omitempty"` // perimeter to cut free
	UncutLength   *float64       `json:"uncut_length_m,omitempty"`   // planned joints not cut or idle, in panels that have not cracked
	UncutCracked  *float64       `json:"uncut_cracked,omitempty"`    // chance that such a panel has cracked unseen
	Thickness     *float64       `json:"thickness_m,omitempty"`
	Movement      string         `json:"movement"`                // stable, cyclic, growing
	Rocking       string         `json:"rocking"`                 // none, slight, strong
	Hollow        string         `json:"hollow"`                  // a state of the variable hollow
	LoadTransfer  *float64       `json:"load_transfer,omitempty"` // 0-1
	LoadRatio     *float64       `json:"load_over_capacity,omitempty"`
	Traffic       string         `json:"traffic"`         // none, foot, cars, lorries, hard wheels
	Exposure      string         `json:"exposure"`        // external or indoor
	Salt          bool           `json:"salt"`            // de-icing salt or chloride reaches it
	Clean         bool           `json:"clean"`           // hygiene or chemical floor
	Wet           *bool          `json:"wet,omitempty"`   // the crack is wet or dirty now
	Steel         *bool          `json:"steel,omitempty"` // there is steel to protect
	Carries       bool           `json:"carries"`         // the slab also carries walls, columns or ties of the building
	AgeDays       *float64       `json:"age_d,omitempty"`
	PullOff       *float64       `json:"pull_off_MPa,omitempty"`

	ShrinkageLeft *float64    `json:"shrinkage_left,omitempty"` // strain still to come, above zero
	Left          []LeftAt    `json:"shrinkage_left_over_time,omitempty"`
	FeedLength    *float64    `json:"feed_length_m,omitempty"` // length of slab that moves into this crack or joint
	Expansion     *float64    `json:"expansion_per_K,omitempty"`
	Now           *float64    `json:"now_C,omitempty"` // of the concrete
	Coldest       *float64    `json:"coldest_C,omitempty"`
	Hottest       *float64    `json:"hottest_C,omitempty"`
	Rates         []UnitRate  `json:"rates,omitempty"`
	Currency      string      `json:"currency,omitempty"`
	Working       WorkingRefs `json:"working,omitzero"`
}

// LeftAt is the shrinkage still to come so many days from now.
type LeftAt struct {
	Days   float64 `json:"days"`
	Strain float64 `json:"strain"`
}

// UnitRate is what the user pays for a unit of a remedy.
type UnitRate struct {
	Remedy string  `json:"remedy"`
	Rate   float64 `json:"rate"`
}

// WorkingRefs names the sheets behind figures handed in.
type WorkingRefs struct {
	Shrinkage string `json:"shrinkage,omitempty"`
	Load      string `json:"load,omitempty"`
}

// chance returns the chance of a cause; zero without a ranking.
func (in Situation) chance(cause string) float64 {
	if w := in.Ranking.Weight(cause); w != nil {
		return w.P
	}
	return 0
}

// any reports whether one of the causes has at least this chance, and names the
// likeliest of them.
func (in Situation) any(least float64, ids ...string) (causes.Weight, bool) {
	var top causes.Weight
	for _, id := range ids {
		if w := in.Ranking.Weight(id); w != nil && w.P > top.P {
			top = *w
		}
	}
	return top, top.P >= least && top.P > 0
}

// kind is what sort of remedy the pattern calls for: line, surface or joint.
func (in Situation) kind() string {
	switch in.Pattern {
	case "finemap", "coarsemap", "surface-loss", "pits", "bump-or-sheet", "colour":
		return "surface"
	case "edge-chips", "step", "crescents":
		return "joint"
	}
	return "line"
}

// slack keeps a value read on a limit on it, in spite of the rounding of its
// conversion to metres: a millionth of a millimetre.
const slack = 1e-9

// more, less and atLeast compare a number that may not be known; all are false
// then.
func more(x *float64, than float64) bool    { return x != nil && *x > than+slack }
func less(x *float64, than float64) bool    { return x != nil && *x < than-slack }
func atLeast(x *float64, than float64) bool { return x != nil && *x >= than-slack }

func yes(b *bool) bool { return b != nil && *b }

// live reports whether the finding still moves on its own, which is not the same
// as swinging with the season.
func (in Situation) live() bool { return in.Movement == "growing" || in.Rocking == "strong" }

// moves reports whether it opens and closes for whatever reason, or is not known
// to be at rest.
func (in Situation) moves() bool { return in.live() || in.Movement == "cyclic" }

func (in Situation) hardWheels() bool { return in.Traffic == "hard wheels" }
func (in Situation) wheels() bool     { return in.Traffic == "hard wheels" || in.Traffic == "lorries" }
