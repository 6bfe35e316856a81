package bayes

import "math"

// Entropy returns how undecided a list of chances is, in bits:
//
//	H = -Σ p·log2 p
//
// Zero when one of them is certain, log2 n when all n are equal.
func Entropy(p []float64) float64 {
	h := 0.0
	for _, x := range p {
		if x > 0 {
			h -= x * math.Log2(x)
		}
	}
	return h
}

// Information returns how many bits the observation of further variables is
// expected to take off the entropy of the belief: the mutual information between
// hypothesis and outcome.
//
// Each variable is weakened the way the posterior would weaken it: its rows are
// raised to the tempering of the evidence at hand, times the companion weight when its group has been
// observed already, and scaled to add up to one. That keeps the answer between
// zero and the entropy of the belief. Several variables together, as one test
// may give, are taken as independent given the hypothesis. An unknown name
// panics.
func (m *Model) Information(belief []float64, evidence []Evidence, variables ...string) float64 {
	expected := 0.0
	m.outcomes(belief, evidence, variables, func(chance float64, after []float64) {
		expected += chance * Entropy(after)
	})
	return math.Max(0, Entropy(belief)-expected)
}

// InformationAbout is [Model.Information] about one question only: is it
// hypothesis h or another?
func (m *Model) InformationAbout(h int, belief []float64, evidence []Evidence, variables ...string) float64 {
	expected := 0.0
	m.outcomes(belief, evidence, variables, func(chance float64, after []float64) {
		expected += chance * Entropy([]float64{after[h], 1 - after[h]})
	})
	return math.Max(0, Entropy([]float64{belief[h], 1 - belief[h]})-expected)
}

// outcomes calls visit for every combination of states of the variables, with its
// chance under the belief and the belief after it.
func (m *Model) outcomes(belief []float64, evidence []Evidence, variables []string, visit func(chance float64, after []float64)) {
	channels := m.channels(evidence, variables)
	var walk func(depth int, joint []float64)
	walk = func(depth int, joint []float64) {
		if depth == len(channels) {
			chance := 0.0
			for _, p := range joint {
				chance += p
			}
			if chance == 0 {
				return
			}
			after := make([]float64, len(joint))
			for h, p := range joint {
				after[h] = p / chance
			}
			visit(chance, after)
			return
		}
		for s := range channels[depth][0] {
			next := make([]float64, len(joint))
			for h, p := range joint {
				next[h] = p * channels[depth][h][s]
			}
			walk(depth+1, next)
		}
	}
	walk(0, belief)
}

// channels returns the weakened rows of each variable, [variable][hypothesis][state].
func (m *Model) channels(evidence []Evidence, variables []string) [][][]float64 {
	seen := map[string]bool{}
	for _, e := range evidence {
		seen[e.Group] = true
	}
	temper := m.Power(evidence, m.Weights(evidence, nil), nil)
	var all [][][]float64
	for _, name := range variables {
		v := m.Variable(name)
		if v == nil {
			panic("bayes: no variable " + name)
		}
		power := temper
		if v.Group != "" && seen[v.Group] {
			power *= m.Companion
		}
		seen[v.Group] = true
		rows := make([][]float64, len(v.Likelihood))
		for h, row := range v.Likelihood {
			logs := make([]float64, len(row))
			for s, p := range row {
				logs[s] = power * math.Log(p)
			}
			rows[h] = normalise(logs)
		}
		all = append(all, rows)
	}
	return all
}

// Outcome is one possible result of observing a variable.
type Outcome struct {
	State  string
	Chance float64   // of meeting it, under the belief
	After  []float64 // the belief after it
}

// Outcomes returns what each state of a variable would do to the belief, weakened
// as in [Model.Information].
func (m *Model) Outcomes(belief []float64, evidence []Evidence, variable string) []Outcome {
	var all []Outcome
	m.outcomes(belief, evidence, []string{variable}, func(chance float64, after []float64) {
		all = append(all, Outcome{m.Variable(variable).States[len(all)], chance, after})
	})
	return all
}
