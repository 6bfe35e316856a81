package causes

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sort"

	"slabwright/source"
)

// Drawn is an invented job whose causes are known, for [Calibrate].
type Drawn struct {
	Findings []Evidence
	Truth    []string // the cause planted at each finding
}

// How invented findings hang together; all our own judgement, set before the first
// run and not fitted to the answer.
const (
	alikeAll   = 0.40 // correlation of how odd a finding is from one observation to another
	alikeGroup = 0.70 // the same within a group of observations that tell one story
	sameCause  = 0.30 // chance that a further finding of a slab has the cause of an earlier one
	rowDoubt   = 1.0  // standard deviation of ln of a band's weight from one site to the next: about a digit
	misread    = 0.10 // share of observations written down as the look-alike would show them
	oddsDoubt  = 0.5  // the same of the prior odds
	brought    = 0.10 // chance that it has one which that brings about
	mostDrawn  = 4    // findings on a slab
	frostShare = 0.6  // of outdoor places
)

// knownShare is how often an observation is at hand, by the cost class of the cheapest
// test that shows it; the last for what no test shows. Our own judgement.
var knownShare = []float64{0.70, 0.35, 0.15, 0.07, 0.04, 0.60}

// drawer invents jobs from the tables alone: it reads the bands and the prior bands
// and has no part in how a ranking is made.
type drawer struct {
	random *rand.Rand
	dials  dials
	site   map[string][][]float64 // bands of this site: [variable][cause][state]
	odds   []float64              // prior odds of this site
}

// dials are the three correlations above, so that tests can turn them.
type dials struct{ all, group, same, brought, rows, odds, misread float64 }

var usualDials = dials{alikeAll, alikeGroup, sameCause, brought, rowDoubt, oddsDoubt, misread}

// job invents one slab.
//
// A cause is planted at each finding by the prior odds, or copied from an earlier
// finding. What is seen is drawn from the bands of the planted cause, each state as
// often as its band says. But observations are not independent: each finding has a
// cause that it could be taken for, and where it is odd it is odd in the direction
// of that one in several observations together (a Gaussian copula with one factor
// for the finding and one for each group).
func (d *drawer) job() Drawn {
	var j Drawn
	exposure := External
	if d.random.Float64() < 0.5 {
		exposure = Indoor
	}
	frost := exposure == External && d.random.Float64() < frostShare
	d.newSite(exposure, frost)
	for i := range 1 + d.random.IntN(mostDrawn) {
		truth := d.pick(d.odds)
		if i > 0 {
			truth = d.beside(truth, j.Truth[d.random.IntN(i)])
		}
		e := Evidence{Finding: fmt.Sprintf("F%d", i+1), Exposure: exposure, Frost: frost}
		e.Observations = d.observations(truth, exposure, frost)
		j.Findings, j.Truth = append(j.Findings, e), append(j.Truth, catalogue[truth].ID)
	}
	return j
}

// beside picks the cause of a further finding: that of another, one which that brings
// about, or its own.
func (d *drawer) beside(own int, other string) int {
	switch u := d.random.Float64(); {
	case other == Other:
		return own
	case u < d.dials.same:
		return position[other]
	case u < d.dials.same+d.dials.brought:
		var to []string
		for _, l := range links {
			if l.from == other {
				to = append(to, l.to)
			}
		}
		if len(to) > 0 {
			return position[to[d.random.IntN(len(to))]]
		}
	}
	return own
}

// newSite draws how often things are met at this site. Bands and prior odds are rules
// of the trade and not of the site: each weight may be somewhat more or less.
func (d *drawer) newSite(exposure string, frost bool) {
	scatter := func(sd float64) float64 { return math.Exp(sd * d.random.NormFloat64()) }
	d.odds = make([]float64, len(catalogue))
	for h, c := range catalogue {
		d.odds[h] = c.odds[exposure] * scatter(d.dials.odds)
		if !frost && (c.ID == "frost-scaling" || c.ID == "frost-aggregate") {
			d.odds[h] *= withoutFrost
		}
	}
	d.site = map[string][][]float64{}
	for _, v := range variables {
		b, rows := bands[v.Name], make([][]float64, len(catalogue))
		for h := range catalogue {
			sum := 0.0
			rows[h] = make([]float64, len(b.states))
			for s := range b.states {
				rows[h][s] = bandWeight(b, h, s) * scatter(d.dials.rows)
				sum += rows[h][s]
			}
			for s := range rows[h] {
				rows[h][s] /= sum
			}
		}
		d.site[v.Name] = rows
	}
}

// pick draws an index in proportion to weights.
func (d *drawer) pick(weights []float64) int {
	sum := 0.0
	for _, w := range weights {
		sum += w
	}
	at := d.random.Float64() * sum
	for i, w := range weights {
		if at -= w; at < 0 {
			return i
		}
	}
	return len(weights) - 1
}

// observations draws what is seen of a finding with a planted cause, and keeps back
// what nobody looked at.
func (d *drawer) observations(truth int, exposure string, frost bool) []Observation {
	similar := d.lookAlike(truth)
	odd := d.random.NormFloat64()
	groups := map[string]float64{}
	var all []Observation
	kind := ""
	for _, v := range variables { // pattern stands first
		if v.Applies != "any" && v.Applies != kind && kind != "" {
			continue
		}
		state := d.state(v, truth, similar, exposure, frost, odd, groups)
		if v.Name == "pattern" {
			kind = patternKind[state]
		}
		if d.random.Float64() < knownShare[costOf(v.Name)] {
			all = append(all, Observation{Variable: v.Name, State: state, From: "seen", Known: source.Recorded, Text: v.Name + " " + state})
		}
	}
	return all
}

// costOf is the cost class of the cheapest test that shows a variable.
func costOf(variable string) int {
	best := len(knownShare) - 1
	for _, t := range testTable {
		if slices.Contains(t.Reveals, variable) {
			best = min(best, t.Class)
		}
	}
	return best
}

// lookAlike picks a cause that this one could be taken for: likelier the more their
// patterns have in common and the commoner it is.
func (d *drawer) lookAlike(truth int) int {
	weights := make([]float64, len(catalogue))
	rows := d.site["pattern"]
	for h, c := range catalogue {
		if h == truth || c.ID == Other {
			continue
		}
		common := 0.0
		for s := range rows[h] {
			common += math.Sqrt(rows[truth][s] * rows[h][s])
		}
		weights[h] = d.odds[h] * common
	}
	return d.pick(weights)
}

// state draws one state of a variable. States are put in order from those that speak
// most for the planted cause against the look-alike to those that speak most against
// it; how odd the finding is says how far along that order it lies. Over many
// findings each state comes as often as the band of the planted cause says.
func (d *drawer) state(v Variable, truth, similar int, exposure string, frost bool, odd float64, groups map[string]float64) string {
	own, other := d.site[v.Name][truth], d.site[v.Name][similar]
	share, sum := d.possible(v, truth, truth, exposure, frost), 0.0
	for _, x := range share {
		sum += x
	}
	order := make([]int, len(share))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, k int) bool { return own[order[i]]*other[order[k]] > own[order[k]]*other[order[i]] })
	u := sum * d.along(v.Group, odd, groups)
	at := order[len(order)-1]
	for _, s := range order {
		if u -= share[s]; u < 0 {
			at = s
			break
		}
	}
	if d.random.Float64() < d.dials.misread {
		at = d.pick(d.possible(v, similar, truth, exposure, frost))
	}
	if v.Name == "age" && d.random.Float64() < seenLate && at+1 < len(v.States) {
		at++
	}
	return v.States[at]
}

// possible are the shares of the states under a cause, none for those that cannot be
// on record with the planted one.
func (d *drawer) possible(v Variable, cause, truth int, exposure string, frost bool) []float64 {
	share := make([]float64, len(v.States))
	for s, name := range v.States {
		if allowed(v.Name, name, truth, exposure, frost) {
			share[s] = d.site[v.Name][cause][s]
		}
	}
	return share
}

// along returns where in the order a variable lies, 0 to 1, evenly spread.
func (d *drawer) along(group string, odd float64, groups map[string]float64) float64 {
	own, all := 1-d.dials.all, d.dials.all
	z := math.Sqrt(all) * odd
	if group != "" {
		if _, ok := groups[group]; !ok {
			groups[group] = d.random.NormFloat64()
		}
		z += math.Sqrt(d.dials.group-all) * groups[group]
		own = 1 - d.dials.group
	}
	z += math.Sqrt(own) * d.random.NormFloat64()
	return 0.5 * math.Erfc(-z/math.Sqrt2)
}

// bandWeight is the weight of a state under cause h by the digit of its row.
func bandWeight(b band, h, s int) float64 {
	id := catalogue[h].ID
	if id == Other {
		return 1
	}
	digits, ok := b.digits[id]
	if !ok {
		digits = b.digits["*"]
	}
	return digitWeight[rune(digits[s])]
}

// allowed reports whether a state can be met at all: the place is what it is, and a
// fact that forbids the planted cause cannot be on record with it.
func allowed(variable, state string, truth int, exposure string, frost bool) bool {
	if variable == "exposure" {
		return (state == "indoor") == (exposure == Indoor) && (state == "outdoor-no-frost" == !frost || state == "indoor")
	}
	for _, v := range vetoes {
		if v.variable == variable && slices.Contains(v.states, state) && slices.Contains(v.Excludes, catalogue[truth].ID) {
			return false
		}
	}
	return true
}
