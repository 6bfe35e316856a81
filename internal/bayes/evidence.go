package bayes

import (
	"fmt"
	"maps"
	"math"
	"slices"
)

// Evidence is one observation turned into what the hypotheses say of it.
type Evidence struct {
	Name          string
	Group         string
	LogLikelihood []float64 // ln P(observed | hypothesis)
	Strength      float64   // 1 in full; below 1 when the observation is in doubt
}

// Observe returns the evidence of a variable found in one state.
func (m *Model) Observe(variable, state string) (Evidence, error) {
	return m.ObserveSoft(variable, map[string]float64{state: 1})
}

// ObserveSoft returns the evidence of an observer who is not sure which state was
// met. Weights are the shares given to the states; they need not add up to one.
// The likelihood is the weighted mean of the states' chances, so that a weight
// spread evenly over all states says nothing.
func (m *Model) ObserveSoft(variable string, weights map[string]float64) (Evidence, error) {
	v := m.Variable(variable)
	if v == nil {
		return Evidence{}, fmt.Errorf("no variable %q", variable)
	}
	share, total := make([]float64, len(v.States)), 0.0
	for _, state := range slices.Sorted(maps.Keys(weights)) {
		w, s := weights[state], v.State(state)
		if s < 0 {
			return Evidence{}, fmt.Errorf("variable %s has no state %q; it has %v", variable, state, v.States)
		}
		if !(w >= 0) || math.IsInf(w, 0) {
			return Evidence{}, fmt.Errorf("variable %s: weight %g of state %s; it must be 0 or more", variable, w, state)
		}
		share[s] = w
	}
	for _, w := range share {
		total += w
	}
	if total == 0 {
		return Evidence{}, fmt.Errorf("variable %s: the weights add up to zero", variable)
	}
	e := Evidence{Name: variable, Group: v.Group, Strength: 1, LogLikelihood: make([]float64, len(m.Hypotheses))}
	for h, row := range v.Likelihood {
		p := 0.0
		for s, w := range share {
			p += w / total * row[s]
		}
		e.LogLikelihood[h] = math.Log(p)
	}
	return e, nil
}
