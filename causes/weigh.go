package causes

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"slabwright/internal/bayes"
	"slabwright/source"
)

// weighing is the evidence of one finding inside the discrete model, with every
// belief the answer's range is taken over.
type weighing struct {
	model     *bayes.Model
	evidence  []bayes.Evidence
	seen      [][]Observation // the observations behind each piece of evidence
	texts     []string
	says      []map[string]string // by cause, where a piece says something else of each
	opens     []map[string]string // by cause, the sheet behind it
	workings  []string
	excluded  []bool
	because   map[string]string // why a cause is excluded
	belief    []float64
	less      [][]float64 // the belief as if each piece had never been seen
	silent    [][]float64 // the belief with each piece struck out, the rest keeping its weight
	others    [][]float64 // the belief if pieces depended more or less on each other
	unused    []Unused
	lifted    int // pieces of evidence that fit none of the leading causes
	ageShares map[string]float64
	pointless []string // variables nobody need look for
	priors    string   // what the prior odds stand on
}

// weigh puts the evidence into the model and finds the belief and its range.
func weigh(e Evidence) *weighing {
	w := prepare(e)
	w.ageShares = ageShares(e)
	w.solve()
	return w
}

// prepare puts the evidence into the model.
func prepare(e Evidence) *weighing {
	priors := Priors(e.Exposure, e.Frost, e.Tally)
	w := &weighing{model: networkOn(priors), priors: priors[0].Basis, because: map[string]string{}, pointless: e.Pointless}
	w.observe(e)
	w.addPhysics(e.Physics)
	w.exclude(e)
	return w
}

// observe merges observations of the same variable into one piece of evidence, so
// that two people who wrote down the same thing do not count twice and two who
// disagree leave it open.
func (w *weighing) observe(e Evidence) {
	for _, v := range variables {
		weights, total, best := map[string]float64{}, 0.0, 0.0
		var seen []Observation
		for _, o := range e.Observations {
			if o.Variable != v.Name {
				continue
			}
			if why := o.fault(v); why != "" {
				w.unused = append(w.unused, Unused{o, why})
				continue
			}
			s := o.strength(e.Recorded)
			best, total = math.Max(best, s), total+s
			for state, share := range o.shares() {
				weights[state] += s * share
			}
			seen = append(seen, o)
		}
		if len(seen) == 0 {
			continue
		}
		ev, err := w.model.ObserveSoft(v.Name, weights)
		if err != nil {
			panic("causes: " + err.Error()) // fault has looked at every state and weight
		}
		if v.Name == "exposure" {
			w.withinPlace(&ev, e.Exposure)
		}
		ev.Strength = best
		w.add(ev, seen, joinTexts(seen), firstWorking(seen))
	}
	for _, o := range e.Observations {
		if FindVariable(o.Variable) == nil {
			w.unused = append(w.unused, Unused{o, fmt.Sprintf("%q is not a thing the ranking knows how to weigh", o.Variable)})
		}
	}
}

// withinPlace takes out of the exposure what the prior odds hold already: whether it
// lies indoors or outdoors. What is left is frost and salt among the outdoor states.
func (w *weighing) withinPlace(ev *bayes.Evidence, exposure string) {
	v := w.model.Variable("exposure")
	for h := range ev.LogLikelihood {
		p := 0.0
		for s, state := range v.States {
			if (state == Indoor) == (exposure == Indoor) {
				p += v.Likelihood[h][s]
			}
		}
		ev.LogLikelihood[h] = math.Min(0, ev.LogLikelihood[h]-math.Log(p))
	}
}

func (w *weighing) add(ev bayes.Evidence, seen []Observation, text, working string) {
	w.evidence = append(w.evidence, ev)
	w.seen = append(w.seen, seen)
	w.texts = append(w.texts, text)
	w.says, w.opens = append(w.says, nil), append(w.opens, nil)
	w.workings = append(w.workings, working)
}

// fault says why an observation cannot be weighed, or "".
func (o Observation) fault(v Variable) string {
	given, sum := o.shares(), 0.0
	for _, state := range states(given) {
		share, known := given[state], false
		sum += share
		for _, s := range v.States {
			known = known || s == state
		}
		if !known {
			return fmt.Sprintf("%s cannot be %q; it can be %s", v.Name, state, strings.Join(v.States, ", "))
		}
		if !(share >= 0) || math.IsInf(share, 0) {
			return fmt.Sprintf("%s: the share %g of %s must be 0 or more", v.Name, share, state)
		}
	}
	if _, ok := knownStrength[o.Known]; !ok {
		return fmt.Sprintf("%s: %q is not a way of knowing; use measured, recorded, assumed or default", v.Name, o.Known)
	}
	if sum == 0 {
		return v.Name + ": no state has a share above zero"
	}
	return ""
}

// shares returns the observation as shares of states that add up to one where
// they can.
func (o Observation) shares() map[string]float64 {
	if len(o.Weights) == 0 {
		return map[string]float64{o.State: 1}
	}
	sum := 0.0
	for _, state := range states(o.Weights) { // in order, so that the rounding is always the same
		sum += o.Weights[state]
	}
	if !(sum > 0) {
		return o.Weights
	}
	scaled := make(map[string]float64, len(o.Weights))
	for state, s := range o.Weights {
		scaled[state] = s / sum
	}
	return scaled
}

// states returns the keys of shares in alphabetical order.
func states(shares map[string]float64) []string {
	return slices.Sorted(maps.Keys(shares))
}

func (o Observation) strength(recorded map[string]bool) float64 {
	s := knownStrength[o.Known]
	if o.Variable == "age" && recorded[CoveredUntilSeen] {
		s *= coveredStrength
	}
	return s
}

func joinTexts(seen []Observation) string {
	var texts []string
	for _, o := range seen {
		texts = append(texts, o.text())
	}
	return strings.Join(texts, "; ")
}

// text returns the observation's sentence, or the one its state stands for.
func (o Observation) text() string {
	if o.Text != "" {
		return o.Text
	}
	return Says(o.Variable, o.State)
}

func firstWorking(seen []Observation) string {
	for _, o := range seen {
		if o.Working != "" {
			return o.Working
		}
	}
	return ""
}

// addPhysics adds what replays say; each stands alone beside the observations.
func (w *weighing) addPhysics(all []Physics) {
	for i, p := range all {
		ev := bayes.Evidence{Name: fmt.Sprintf("replay %d", i+1), Strength: 1, LogLikelihood: make([]float64, len(catalogue))}
		for h, c := range catalogue {
			ev.LogLikelihood[h] = p.Otherwise
			if l, ok := p.LogLikelihood[c.ID]; ok {
				ev.LogLikelihood[h] = l
			}
			if math.IsNaN(ev.LogLikelihood[h]) || math.IsInf(ev.LogLikelihood[h], 0) {
				panic(fmt.Sprintf("causes: %s: log likelihood of %s is %g", ev.Name, c.ID, ev.LogLikelihood[h]))
			}
		}
		seen := []Observation{{Variable: "replay", Text: p.Text, From: "pour", Known: source.Assumed, Working: p.Working}}
		w.add(ev, seen, p.Text, p.Working)
		w.says[len(w.says)-1], w.opens[len(w.opens)-1] = p.Says, p.Workings
	}
}

// believe finds the belief and lifts "something else" when evidence fits none of the
// leading causes.
func (w *weighing) believe() {
	w.belief = w.model.Posterior(w.evidence, w.excluded)
	if w.lifted = len(w.unexplained()); w.lifted > 0 {
		odds := append([]float64(nil), w.model.Odds...)
		odds[position[Other]] *= math.Pow(liftOther, float64(w.lifted))
		w.model = w.model.WithOdds(odds)
		w.belief = w.model.Posterior(w.evidence, w.excluded)
	}
}

// solve finds the belief and then the beliefs the range is taken over.
func (w *weighing) solve() {
	w.believe()
	for i := range w.evidence {
		w.less = append(w.less, w.model.Posterior(bayes.Without(w.evidence, i), w.excluded))
		w.silent = append(w.silent, w.model.Silent(w.evidence, w.excluded, i))
	}
	for _, d := range []float64{dependenceLow, dependenceHigh} {
		w.others = append(w.others, w.model.WithDependence(d).Posterior(w.evidence, w.excluded))
	}
}

// Evidence that fits none of the leading causes: our own judgement.
const (
	unexplainedChance = 0.02 // at most this under each of them
	leadingCauses     = 3
	liftOther         = 2.0 // what each such piece does to the odds of "something else"
)

// unexplained returns the pieces of evidence whose chance is small under every
// one of the leading causes. "Something else" fits everything and does not count.
func (w *weighing) unexplained() []int {
	var top []int
	for _, h := range order(w.belief) {
		if catalogue[h].ID != Other && len(top) < leadingCauses {
			top = append(top, h)
		}
	}
	var all []int
	for i, e := range w.evidence {
		if strings.HasPrefix(e.Name, "replay") {
			continue
		}
		fits := false
		for _, h := range top {
			fits = fits || math.Exp(e.LogLikelihood[h]) > unexplainedChance
		}
		if !fits {
			all = append(all, i)
		}
	}
	return all
}
