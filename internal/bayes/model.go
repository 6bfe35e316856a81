package bayes

import (
	"fmt"
	"math"
)

// Variable is something that can be observed, with the chance of each of its
// states under each hypothesis.
type Variable struct {
	Name       string
	States     []string
	Likelihood [][]float64 // [hypothesis][state], each row sums to 1
	Group      string      // variables with the same group tell the same story; "" stands alone
}

// Model is the list of hypotheses and all that is known of them beforehand.
type Model struct {
	Hypotheses []string
	Odds       []float64 // prior odds, any scale, all above zero
	Variables  []Variable
	Companion  float64 // weight of the members of a group beside its strongest, 0..1
	Temper     float64 // power of the likelihood of a single piece, 0 < Temper <= 1
	Dependence float64 // correlation left between pieces of evidence, 0..1 (see [Model.Power])

	index map[string]int
}

// rowSum is how far a row may be from adding up to one: the rounding of a sum of
// some dozen floats, with a thousandfold margin.
const rowSum = 1e-12

// New returns the model ready for use. It reports the first table that does not
// fit: a row too few, a state too many, a row that does not add up to one or that
// holds a chance of zero (nothing observed may forbid a hypothesis by likelihood
// alone; use the exclusions of [Model.Posterior] for that).
func New(m Model) (*Model, error) {
	if len(m.Odds) != len(m.Hypotheses) || len(m.Odds) == 0 {
		return nil, fmt.Errorf("%d prior odds for %d hypotheses", len(m.Odds), len(m.Hypotheses))
	}
	for i, o := range m.Odds {
		if !(o > 0) || math.IsInf(o, 0) {
			return nil, fmt.Errorf("prior odds of %s are %g; they must be above zero", m.Hypotheses[i], o)
		}
	}
	if !(m.Temper > 0 && m.Temper <= 1) {
		return nil, fmt.Errorf("tempering %g is outside 0 < t <= 1", m.Temper)
	}
	if !(m.Dependence >= 0 && m.Dependence <= 1) {
		return nil, fmt.Errorf("dependence %g is outside 0..1", m.Dependence)
	}
	if !(m.Companion >= 0 && m.Companion <= 1) {
		return nil, fmt.Errorf("companion weight %g is outside 0..1", m.Companion)
	}
	m.index = map[string]int{}
	for i, v := range m.Variables {
		if _, twice := m.index[v.Name]; twice {
			return nil, fmt.Errorf("variable %s is given twice", v.Name)
		}
		m.index[v.Name] = i
		if err := v.check(m.Hypotheses); err != nil {
			return nil, fmt.Errorf("variable %s: %w", v.Name, err)
		}
	}
	return &m, nil
}

func (v Variable) check(hypotheses []string) error {
	if len(v.Likelihood) != len(hypotheses) {
		return fmt.Errorf("%d rows for %d hypotheses", len(v.Likelihood), len(hypotheses))
	}
	for h, row := range v.Likelihood {
		if len(row) != len(v.States) {
			return fmt.Errorf("row %s has %d chances for %d states", hypotheses[h], len(row), len(v.States))
		}
		sum := 0.0
		for s, p := range row {
			if !(p > 0) {
				return fmt.Errorf("row %s gives %s the chance %g; it must be above zero", hypotheses[h], v.States[s], p)
			}
			sum += p
		}
		if math.Abs(sum-1) > rowSum {
			return fmt.Errorf("row %s adds up to %g", hypotheses[h], sum)
		}
	}
	return nil
}

// Variable returns the variable of this name, or nil.
func (m *Model) Variable(name string) *Variable {
	i, ok := m.index[name]
	if !ok {
		return nil
	}
	return &m.Variables[i]
}

// State returns the place of a state in the variable's list, or -1.
func (v *Variable) State(name string) int {
	for i, s := range v.States {
		if s == name {
			return i
		}
	}
	return -1
}

// Tempered returns a copy of the model with another tempering.
func (m *Model) Tempered(t float64) *Model {
	c := *m
	c.Temper = t
	return &c
}

// WithDependence returns a copy of the model with another correlation between pieces
// of evidence, for the range of an answer.
func (m *Model) WithDependence(correlation float64) *Model {
	c := *m
	c.Dependence = correlation
	return &c
}

// WithOdds returns a copy of the model with other prior odds.
func (m *Model) WithOdds(odds []float64) *Model {
	c := *m
	c.Odds = append([]float64(nil), odds...)
	return &c
}

// WithCompanion returns a copy of the model with another weight for the members of a
// group beside its strongest, 0 to 1.
func (m *Model) WithCompanion(weight float64) *Model {
	c := *m
	c.Companion = weight
	return &c
}
