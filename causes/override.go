package causes

import (
	"fmt"
	"math"
)

// Override is a chance that the engineer sets in place of the one worked out, with the
// reason. What was worked out stays beside it.
type Override struct {
	Cause  string  `json:"cause"`
	Chance float64 `json:"chance"` // above 0 and below 1
	Reason string  `json:"reason"`
	By     string  `json:"by"`
}

// Overridden returns a ranking with chances set by hand. The other causes share what is
// left in the proportion they had; mechanisms follow from the causes; the answer is
// given anew by the same rule. A chance set for a cause that a recorded fact rules out
// lifts it back. It fails where the chances set leave nothing for the rest, name a cause
// twice or one that is not in the catalogue, or are not above 0 and below 1.
func (r Ranking) Overridden(all []Override) (Ranking, error) {
	if len(all) == 0 {
		return r, nil
	}
	set, sum := map[string]float64{}, 0.0
	for _, o := range all {
		if _, known := position[o.Cause]; !known {
			return r, fmt.Errorf("no cause %q", o.Cause)
		}
		if _, twice := set[o.Cause]; twice {
			return r, fmt.Errorf("the chance of %s is set twice", o.Cause)
		}
		if !(o.Chance > 0 && o.Chance < 1) {
			return r, fmt.Errorf("chance %g of %s: it must be above 0 and below 1", o.Chance, o.Cause)
		}
		set[o.Cause], sum = o.Chance, sum+o.Chance
	}
	rest := 0.0
	for _, w := range r.All {
		if _, ok := set[w.Cause]; !ok {
			rest += w.P
		}
	}
	if sum > 1+slack || sum < 1-slack && rest == 0 {
		return r, fmt.Errorf("the chances set add up to %.2f; they and the rest must make 1", sum)
	}
	factor := 0.0
	if rest > 0 {
		factor = math.Max(0, 1-sum) / rest
	}
	return r.rescaled(set, factor), nil
}

// rescaled is the ranking with some chances set and the others multiplied.
func (r Ranking) rescaled(set map[string]float64, factor float64) Ranking {
	out := r
	change := func(all []Weight) []Weight {
		changed := append([]Weight(nil), all...)
		for i := range changed {
			w := &changed[i]
			if p, ok := set[w.Cause]; ok {
				w.P, w.Low, w.High, w.State, w.RuledOut = p, math.Min(p, w.Low), math.Max(p, w.High), "", ""
			} else {
				w.P, w.Low, w.High = w.P*factor, math.Min(1, w.Low*factor), math.Min(1, w.High*factor)
			}
			w.About = AboutRange(w.P, w.Low, w.High)
		}
		return changed
	}
	out.All = sorted(change(r.All))
	out.Triggers = change(r.Triggers)
	out.Mechanisms = append([]Weight(nil), r.Mechanisms...)
	p := make([]float64, len(catalogue))
	triggers := 0.0
	for _, w := range out.All {
		p[position[w.Cause]] = w.P
		if w.Layer == "trigger" {
			triggers += w.P
		}
	}
	for i := range out.Triggers {
		if out.Triggers[i].Cause == NoTrigger {
			out.Triggers[i].setChance(1 - triggers)
		}
	}
	shares := weighing{ageShares: r.ageShares}
	for i := range out.Mechanisms {
		out.Mechanisms[i].setChance(shares.mechanismChance(p, out.Mechanisms[i].Cause))
	}
	out.Triggers, out.Mechanisms = sorted(out.Triggers), sorted(out.Mechanisms)
	out.Combined, out.Decided = decide(out.All)
	setStates(&out)
	out.Answer = answer(out, 1)
	return out
}

// setChance gives a row another chance and widens its range to hold it.
func (w *Weight) setChance(p float64) {
	p = math.Min(1, math.Max(0, p))
	w.P, w.Low, w.High = p, math.Min(p, w.Low), math.Max(p, w.High)
	w.About = AboutRange(w.P, w.Low, w.High)
}
