package report

import (
	"slabwright/plan"
	"slabwright/working"
)

// Design is the next slab: the joints as drawn today, what is proposed instead,
// and what each promises. It is filled by job.Design and only read afterwards.
type Design struct {
	Head        Head            `json:"head"`
	Spacing     Spacing         `json:"spacing"`
	Drawn       Layout          `json:"drawn"`    // the joints that stand in the job
	Proposed    []Layout        `json:"proposed"` // best first
	Assumptions []Assumption    `json:"assumptions"`
	Missing     []Missing       `json:"missing"`
	Cautions    []string        `json:"cautions"`
	Workings    []working.Sheet `json:"workings"`
	Sources     []SourceRow     `json:"sources"`
}

// Spacing is how far apart joints may stand on this ground with this concrete, and
// the rule of thumb beside it.
type Spacing struct {
	Limit    float64  `json:"limit_m"`
	Model    *float64 `json:"model_m,omitempty"` // by curl and base friction; nil: they allow any
	Rule     float64  `json:"rule_m"`            // of thumb, by the thickness
	Cap      float64  `json:"cap_m"`             // whatever the thickness
	Why      string   `json:"why"`               // which of them is nearest
	Note     string   `json:"note,omitempty"`    // why curl and friction allow what they do
	Workings []string `json:"workings"`
}

// Layout is one way of jointing the slab, drawn and judged.
type Layout struct {
	Name       string        `json:"name"`
	Why        string        `json:"why"`
	Slab       plan.Slab     `json:"slab"`
	Panels     []plan.Panel  `json:"panels"`
	DowelBars  []DowelBar    `json:"dowel_bars"`
	Warnings   []Warning     `json:"warnings"`
	Quantities []QuantityRow `json:"quantities"`
	Cost       string        `json:"cost,omitempty"` // from the user's own rates; absent without them
	Chance     *LayoutChance `json:"chance,omitempty"`
	Strips     []Strip       `json:"strips,omitempty"` // in the order to pour
	Trimmers   []TrimmerBar  `json:"trimmers,omitempty"`
}

// Warning is one rule that a layout does not keep, at its place.
type Warning struct {
	Code    string     `json:"code"`
	Level   string     `json:"level"` // must, should, note
	Panel   string     `json:"panel,omitempty"`
	Joint   string     `json:"joint,omitempty"`
	Fixture string     `json:"fixture,omitempty"`
	At      plan.Point `json:"at_m"`
	Words   string     `json:"words"`
	Rule    string     `json:"rule"`
	Source  string     `json:"source"`
	Mend    *Mend      `json:"mend,omitempty"`
}

// Mend is a change that would lift a warning, and the slab after it.
type Mend struct {
	Words string    `json:"words"`
	Slab  plan.Slab `json:"slab"`
}

// QuantityRow is one line of the bill: "sawn joint", 84.2, "m".
type QuantityRow struct {
	What   string  `json:"what"`
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
}

// Strip is what is poured in one go.
type Strip struct {
	ID     string   `json:"id"`
	Panels []string `json:"panels"`
	Width  float64  `json:"width_m"`
	Length float64  `json:"length_m"`
	First  bool     `json:"first"` // in the first round; the others fill in between
}

// TrimmerBar is bars across an inside corner that no joint meets.
type TrimmerBar struct {
	From  plan.Point `json:"from_m"` // the middle bar
	To    plan.Point `json:"to_m"`
	Words string     `json:"words"`
	Why   string     `json:"why"`
}

// LayoutChance is how likely the slab is to crack away from its joints, from
// members of the slab followed in plan.
type LayoutChance struct {
	Any     Chance        `json:"any"`                           // somewhere off a joint
	InTime  *Chance       `json:"every_joint_in_time,omitempty"` // had every joint been sawn within its window; nil: the job gives no other times
	Panels  []PanelChance `json:"panels"`
	Members int           `json:"members"`
	Until   string        `json:"until"` // "90 days after placing"
	Note    string        `json:"note,omitempty"`
}

// PanelChance is how likely one panel is to crack away from its joints.
type PanelChance struct {
	Panel string  `json:"panel"`
	P     float64 `json:"p"`
}
