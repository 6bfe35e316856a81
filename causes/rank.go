package causes

import (
	"fmt"
	"math"
	"sort"
	"strings"
)

// When an answer may be given; our own judgement.
const (
	decidedChance = 0.60 // the leading cause has at least this chance
	decidedRatio  = 2.0  // and at least this many times that of the second
	combinedAbove = 0.25 // two causes of different layers above this act together
	possibleAbove = 0.10
)

// Rank weighs the evidence of one finding and ranks the causes.
//
// The chance of a cause is prior odds times the tempered likelihood of what was
// observed (see package bayes); its range runs over temperings of 0.35-0.7 and
// over leaving out each piece of evidence in turn. It is decided when the leading
// cause has 0.60 and twice the second, or when two causes of different layers
// each above 0.25 make up 0.60 between them and so act together. Otherwise the answer is
// that it cannot be told yet.
func Rank(e Evidence) Ranking {
	w := weigh(e)
	r := Ranking{Finding: e.Finding, Unused: w.unused, prior: priorShares(e), ageShares: w.ageShares}
	for _, h := range order(w.belief) {
		r.All = append(r.All, w.causeWeight(h))
	}
	for _, i := range w.unexplained() {
		r.Unexplained = append(r.Unexplained, w.seen[i]...)
	}
	r.Mechanisms = w.mechanismWeights()
	r.Triggers = w.triggerWeights()
	r.NextTests = w.nextTests()
	r.Combined, r.Decided = decide(r.All)
	setStates(&r)
	if len(w.evidence) == 0 {
		r.Decided = false
	}
	r.Answer = answer(r, len(w.evidence))
	r.Working = w.sheet(e, r)
	return r
}

// order returns the indices of chances, largest first; ties keep the table's order.
func order(p []float64) []int {
	at := make([]int, len(p))
	for i := range at {
		at[i] = i
	}
	sort.SliceStable(at, func(i, j int) bool { return p[at[i]] > p[at[j]] })
	return at
}

// decide applies the rule of [Rank] to the ranked causes.
func decide(all []Weight) (combined []string, decided bool) {
	belief := make([]float64, len(catalogue))
	for _, w := range all {
		belief[position[w.Cause]] = w.P
	}
	top := order(belief)
	both, decided := decideBelief(belief, top)
	if both {
		combined = []string{catalogue[top[0]].ID, catalogue[top[1]].ID}
	}
	return combined, decided
}

// decideBelief is the rule on bare chances; top is their order.
func decideBelief(p []float64, top []int) (combined, decided bool) {
	first, second := catalogue[top[0]].ID, catalogue[top[1]].ID
	p1, p2, p3 := p[top[0]], p[top[1]], p[top[2]]
	if first == Other {
		return false, false
	}
	if p2 > combinedAbove && second != Other && apart(first, second) {
		return true, p1+p2 >= decidedChance && p2 >= decidedRatio*p3
	}
	return false, p1 >= decidedChance && p1 >= decidedRatio*p2
}

// apart reports whether two causes share no layer.
func apart(a, b string) bool {
	for _, x := range catalogue[position[a]].Layers {
		for _, y := range catalogue[position[b]].Layers {
			if x == y {
				return false
			}
		}
	}
	return true
}

// setStates gives each cause its word.
func setStates(r *Ranking) {
	for i := range r.All {
		w := &r.All[i]
		switch {
		case w.State == RuledOut:
		case r.Decided && (i == 0 || i == 1 && len(r.Combined) == 2):
			w.State = Leading
		case !r.Decided && w.P*decidedRatio > r.All[0].P:
			w.State = CannotTell
		case w.P >= possibleAbove:
			w.State = Possible
		default:
			w.State = Unlikely
		}
		if w.State == Unlikely && len(w.Against) > 0 {
			w.RuledOut = "considered and set aside because " + w.Against[0].Text
		}
	}
	for _, layer := range [][]Weight{r.Mechanisms, r.Triggers} {
		for i := range layer {
			layer[i].State = layerState(layer[i], layer)
		}
	}
}

// layerState is the word of a mechanism or trigger within its own layer.
func layerState(w Weight, layer []Weight) string {
	top := layer[0]
	decided := top.P >= decidedChance && (len(layer) < 2 || top.P >= decidedRatio*layer[1].P)
	switch {
	case w.P == 0:
		return RuledOut
	case decided && w.Cause == top.Cause:
		return Leading
	case !decided && w.P*decidedRatio > top.P:
		return CannotTell
	case w.P >= possibleAbove:
		return Possible
	}
	return Unlikely
}

// answer is the plain sentence on top of the finding.
func answer(r Ranking, pieces int) string {
	first, second := r.All[0], r.All[1]
	switch {
	case pieces == 0:
		return "Cannot tell yet: nothing has been observed that could be weighed."
	case r.Decided && len(r.Combined) == 2:
		return fmt.Sprintf("Two causes probably act together: %s (%s) and %s (%s).", first.Name, About(first.P), second.Name, About(second.P))
	case r.Decided:
		return fmt.Sprintf("The likeliest cause is %s: %s. %s", first.Name, first.About, first.Plain)
	}
	var names []string
	for _, w := range r.All {
		if w.State == CannotTell && len(names) < 4 {
			names = append(names, fmt.Sprintf("%s (%s)", w.Name, About(w.P)))
		}
	}
	text := "Cannot tell yet: " + list(names)
	switch len(names) {
	case 1:
		text += " fits best, but not well enough to be told from the rest."
	case 2:
		text += " both fit what was seen."
	default:
		text += " all fit what was seen."
	}
	if len(r.NextTests) > 0 {
		text += " What would tell most for its cost: " + r.NextTests[0].Name + "."
	}
	return text
}

// span returns the chance that a reading of the belief gives, with its range.
func (w *weighing) span(read func(belief []float64) float64) (p, low, high float64) {
	p = read(w.belief)
	low, high = p, p
	for _, set := range [][][]float64{w.less, w.others} {
		for _, b := range set {
			low, high = math.Min(low, read(b)), math.Max(high, read(b))
		}
	}
	return p, low, high
}

// arguments returns what each piece of evidence does to a reading of the belief,
// as log10 of odds, strongest first.
func (w *weighing) arguments(cause string, read func(belief []float64) float64) (pro, against []Argument) {
	all := log10Odds(read(w.belief))
	for i := range w.evidence {
		shift := all - log10Odds(read(w.silent[i]))
		a := Argument{Text: w.texts[i], Observation: w.seen[i][0], Shift: shift, Working: w.workings[i]}
		if text := w.says[i][cause]; text != "" {
			a.Text = text
		}
		if sheet := w.opens[i][cause]; sheet != "" {
			a.Working = sheet
		}
		switch {
		case shift > saysNothing:
			pro = append(pro, a)
		case shift < -saysNothing:
			against = append(against, a)
		}
	}
	sort.SliceStable(pro, func(i, j int) bool { return pro[i].Shift > pro[j].Shift })
	sort.SliceStable(against, func(i, j int) bool { return against[i].Shift < against[j].Shift })
	return pro, against
}

// saysNothing is the shift below which a piece of evidence is not listed: a
// change of the odds by less than about a tenth.
const saysNothing = 0.04

func log10Odds(p float64) float64 {
	p = math.Min(math.Max(p, 1e-12), 1-1e-12)
	return math.Log10(p / (1 - p))
}

// list joins names with commas and an "and".
func list(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}
