package remedies

import (
	"fmt"
	"sort"

	"slabwright/source"
	"slabwright/working"
)

// Option is one remedy beside a finding.
type Option struct {
	ID          string            `json:"id"`
	Name        string            `json:"name"`
	Plain       string            `json:"plain"`
	Exact       string            `json:"exact"`
	Fits        bool              `json:"fits"`
	Needed      bool              `json:"needed"`  // part of what should be done now
	Refused     bool              `json:"refused"` // would do harm
	Recommended bool              `json:"recommended"`
	Why         string            `json:"why"` // why, or why not
	When        string            `json:"when,omitempty"`
	Quantity    *float64          `json:"quantity,omitempty"`
	Unit        string            `json:"unit,omitempty"`
	Amount      string            `json:"amount"` // "12 m" or "not known"
	Cost        *float64          `json:"cost,omitempty"`
	CostText    string            `json:"cost_text"`
	Life        string            `json:"life"`
	Disruption  string            `json:"disruption"`
	Residual    string            `json:"residual"` // what risk stays
	Cautions    []string          `json:"cautions,omitempty"`
	Sources     []source.Citation `json:"sources"`
}

// verdict is what a rule says of a remedy in a situation.
type verdict struct {
	fits, needed, refused bool
	why, when             string
}

func fits(why string, args ...any) verdict { return verdict{fits: true, why: say(why, args)} }
func needed(why string, args ...any) verdict {
	return verdict{fits: true, needed: true, why: say(why, args)}
}
func no(why string, args ...any) verdict     { return verdict{why: say(why, args)} }
func refuse(why string, args ...any) verdict { return verdict{refused: true, why: say(why, args)} }

func say(why string, args []any) string {
	if len(args) == 0 {
		return why
	}
	return fmt.Sprintf(why, args...)
}

func (v verdict) at(when string) verdict { v.when = when; return v }

// rules answers each remedy; a test holds that every remedy has its rule.
var rules = map[string]func(Situation) verdict{
	"keep-off": keepOff, "drain": drain, "support": support, "release": release, "cut-missed-joints": cutMissedJoints,
	"relief-joint": reliefJoint, "restore-dowels": restoreDowels, "stitch": stitch, "fill-semi-rigid": fillSemiRigid,
	"seal": seal, "gravity-resin": gravityResin, "inject": inject, "repair-steel": repairSteel, "patch-edge": patchEdge,
	"patch-full": patchFull, "replace": replace, "replace-all": replaceAll, "densify": densify, "grind": grind,
	"resurface": resurface, "watch": watch, "leave": leave,
}

// Options returns every remedy of the finding's kind, leave and watch always among
// them: what is recommended first, then what else is needed in its order, what
// fits, what does not, and what is refused.
func Options(in Situation) []Option {
	var all []Option
	for _, r := range catalogue {
		if !r.suits(in.kind()) {
			continue
		}
		all = append(all, r.option(in, rules[r.ID](in)))
	}
	recommend(all)
	sort.SliceStable(all, func(i, j int) bool { return all[i].rank() < all[j].rank() })
	return all
}

// Sequence returns the needed options in the order in which they must be done.
func Sequence(options []Option) []Option {
	var all []Option
	for _, o := range options {
		if o.Needed {
			all = append(all, o)
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return orderOf(all[i].ID) < orderOf(all[j].ID) })
	return all
}

func orderOf(id string) int {
	for _, r := range catalogue {
		if r.ID == id {
			return r.Order
		}
	}
	return len(catalogue)
}

func (r Remedy) suits(kind string) bool {
	for _, k := range r.Kinds {
		if k == "any" || k == kind {
			return true
		}
	}
	return false
}

// rank sorts options for the eye.
func (o Option) rank() int {
	switch {
	case o.Recommended:
		return 0
	case o.Needed:
		return 1
	case o.Fits:
		return 2
	case o.Refused:
		return 4
	}
	return 3
}

// recommend marks one option: the first that is needed, else leave where it fits,
// else watch.
func recommend(all []Option) {
	best := -1
	for i, o := range all { // in the table's order
		if o.Needed && o.ID != "keep-off" {
			best = i
			break
		}
	}
	for _, fallback := range []string{"leave", "watch"} {
		for i, o := range all {
			if best < 0 && o.ID == fallback && (o.Fits || fallback == "watch") {
				best = i
			}
		}
	}
	if best >= 0 {
		all[best].Recommended, all[best].Needed = true, true
	}
}

func (r Remedy) option(in Situation, v verdict) Option {
	o := Option{ID: r.ID, Name: r.Name, Plain: r.Plain, Exact: r.Exact, Fits: v.fits, Needed: v.needed, Refused: v.refused,
		Why: v.why, When: v.when, Quantity: quantity(r.ID, r.Unit, in), Unit: r.Unit, Life: r.Life, Disruption: r.Disruption,
		Residual: residual[r.ID], Cautions: cautionsOf(r.ID), Sources: r.Sources}
	o.Amount, o.CostText = "not known", "no rate given"
	if r.Unit == "" {
		o.Amount = "nothing to measure"
	}
	if o.Quantity != nil {
		o.Amount = amount(*o.Quantity, r.Unit)
	}
	for _, rate := range in.Rates {
		if rate.Remedy == r.ID {
			o.CostText = "a rate is given but the quantity is not known"
			if o.Quantity != nil {
				cost := *o.Quantity * rate.Rate
				o.Cost = &cost
				o.CostText = fmt.Sprintf("%s %s at your rate of %s a unit", working.Figure(cost, 2), in.Currency, working.Figure(rate.Rate, 3))
			}
		}
	}
	return o
}

func amount(q float64, unit string) string {
	if unit == "number" {
		return fmt.Sprintf("%.0f", q)
	}
	return working.Figure(q, 2) + " " + unit
}

// residual says which risk stays after each remedy.
var residual = map[string]string{
	"leave":             "it may widen unseen until the next look",
	"watch":             "nothing is mended while it is watched",
	"keep-off":          "nothing is mended",
	"drain":             "damage done stays; the ground may take seasons to rest",
	"support":           "voids may come back where fines still wash out",
	"release":           "the crack stays and still needs its own treatment",
	"cut-missed-joints": "a panel may already have cracked below the surface",
	"relief-joint":      "one more joint to look after",
	"restore-dowels":    "weak concrete around old slots",
	"stitch":            "a new crack beside it if it moves after all",
	"fill-semi-rigid":   "it parts from one side as the slab shrinks on and needs a refill",
	"seal":              "soft sealant ages and is cut by grit",
	"gravity-resin":     "it opens again or beside if movement comes back",
	"inject":            "a new crack beside it if movement comes back",
	"repair-steel":      "rust may start at the rim of the patch",
	"patch-edge":        "it breaks again if the joint rocks",
	"patch-full":        "the new joints around it",
	"replace":           "a new panel can crack for the same reason if that stays",
	"replace-all":       "a new slab can crack for the same reason if that stays",
	"densify":           "fine cracks stay visible",
	"grind":             "a step comes back if the slab still moves",
	"resurface":         "live cracks come through the topping",
}

// cautionsOf returns the kinds of work whose cautions go with a remedy.
func cautionsOf(id string) []string {
	work := map[string][]string{
		"release": {"cut"}, "cut-missed-joints": {"cut"}, "relief-joint": {"cut"}, "restore-dowels": {"cut", "resin"},
		"stitch": {"cut", "resin"}, "fill-semi-rigid": {"cut", "resin"}, "seal": {"cut", "resin"}, "gravity-resin": {"resin"},
		"inject": {"resin"}, "repair-steel": {"cut"}, "patch-edge": {"cut", "resin"}, "patch-full": {"cut", "lift", "cast"},
		"replace": {"cut", "lift", "cast"}, "replace-all": {"cut", "lift", "cast"}, "grind": {"cut"}, "resurface": {"cut", "resin"},
		"support": {"cut"}, "densify": {"resin"},
	}
	var all []string
	for _, w := range work[id] {
		for _, c := range cautions {
			if c.When == w {
				all = append(all, c.Text)
			}
		}
	}
	return all
}
