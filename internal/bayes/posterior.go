package bayes

import "math"

// Prior returns the chances before any evidence, with the excluded hypotheses
// taken out. A nil list excludes nothing.
func (m *Model) Prior(excluded []bool) []float64 {
	return m.Posterior(nil, excluded)
}

// Weights returns how much each piece of evidence counts.
//
// In a group of variables that tell the same story the strongest member counts
// with its own strength and the others with the companion weight on top.
// Strongest is the one whose log-likelihood, times its strength, spreads most over
// the hypotheses (standard deviation under the prior). Ties go to the name that
// comes first in the alphabet, so that the order of evidence does not matter.
func (m *Model) Weights(evidence []Evidence, excluded []bool) []float64 {
	prior := m.Prior(excluded)
	strongest := map[string]int{}
	spread := make([]float64, len(evidence))
	for i, e := range evidence {
		spread[i] = e.Strength * deviation(prior, e.LogLikelihood)
		if e.Group == "" {
			continue
		}
		j, ok := strongest[e.Group]
		if !ok || spread[i] > spread[j] || (spread[i] == spread[j] && e.Name < evidence[j].Name) {
			strongest[e.Group] = i
		}
	}
	weights := make([]float64, len(evidence))
	for i, e := range evidence {
		weights[i] = e.Strength
		if e.Group != "" && strongest[e.Group] != i {
			weights[i] *= m.Companion
		}
	}
	return weights
}

// deviation is the standard deviation of x under the chances p.
func deviation(p, x []float64) float64 {
	mean, square := 0.0, 0.0
	for i := range p {
		mean += p[i] * x[i]
	}
	for i := range p {
		square += p[i] * (x[i] - mean) * (x[i] - mean)
	}
	return math.Sqrt(square)
}

// Power returns the tempering t of the whole likelihood. Pieces whose scores are all
// correlated by ρ count together as fewer than they are (the design effect of Kish,
// Survey Sampling, 1965, here for sums of unequal parts; from memory):
//
//	t = T/(1 + ρ·(n - 1)),  n = (Σ s_i)²/Σ s_i²
//
// with s_i the spread of the weighted log-likelihood of piece i over the hypotheses
// (standard deviation under the prior). A piece that says nothing has no spread and
// weakens no other; one piece alone counts in full.
func (m *Model) Power(evidence []Evidence, weights []float64, excluded []bool) float64 {
	prior := m.Prior(excluded)
	sum, square := 0.0, 0.0
	for i, e := range evidence {
		s := weights[i] * deviation(prior, e.LogLikelihood)
		sum, square = sum+s, square+s*s
	}
	if square == 0 {
		return m.Temper
	}
	return m.Temper / (1 + m.Dependence*math.Max(0, sum*sum/square-1))
}

// Posterior returns the chance of each hypothesis:
//
//	p(h) ∝ odds(h) · exp(t · Σ w_i · ln P(e_i | h))
//
// with the weights w of [Model.Weights] and the tempering t of [Model.Power]. An
// excluded hypothesis gets zero. It panics when all are excluded.
func (m *Model) Posterior(evidence []Evidence, excluded []bool) []float64 {
	if len(evidence) == 0 {
		return m.Weighted(nil, nil, 0, excluded)
	}
	weights := m.Weights(evidence, excluded)
	return m.Weighted(evidence, weights, m.Power(evidence, weights, excluded), excluded)
}

// Weighted is [Model.Posterior] with the weights and the tempering given.
func (m *Model) Weighted(evidence []Evidence, weights []float64, power float64, excluded []bool) []float64 {
	logp := make([]float64, len(m.Hypotheses))
	for h := range logp {
		logp[h] = math.Log(m.Odds[h])
		if excluded != nil && excluded[h] {
			logp[h] = math.Inf(-1)
			continue
		}
		for i, w := range weights {
			logp[h] += power * w * evidence[i].LogLikelihood[h]
		}
	}
	return normalise(logp)
}

// normalise turns logarithms of unscaled chances into chances.
func normalise(logp []float64) []float64 {
	top := math.Inf(-1)
	for _, l := range logp {
		top = math.Max(top, l)
	}
	if math.IsInf(top, -1) {
		panic("bayes: every hypothesis is excluded")
	}
	p, sum := make([]float64, len(logp)), 0.0
	for i, l := range logp {
		p[i] = math.Exp(l - top)
		sum += p[i]
	}
	for i := range p {
		p[i] /= sum
	}
	return p
}

// LogOdds returns ln(p/(1-p)).
func LogOdds(p float64) float64 { return math.Log(p) - math.Log1p(-p) }

// Silent returns the chances with evidence i struck out and every other piece
// keeping the weight and tempering it has beside it: what the rest says by itself.
func (m *Model) Silent(evidence []Evidence, excluded []bool, i int) []float64 {
	weights := m.Weights(evidence, excluded)
	power := m.Power(evidence, weights, excluded)
	weights[i] = 0
	return m.Weighted(evidence, weights, power, excluded)
}

// Shift returns what evidence i says of hypothesis h: the log-odds with all the
// evidence less the log-odds with it struck out (see [Model.Silent]), in natural
// logarithms. Above zero it speaks for the hypothesis.
func (m *Model) Shift(evidence []Evidence, excluded []bool, i, h int) float64 {
	return LogOdds(m.Posterior(evidence, excluded)[h]) - LogOdds(m.Silent(evidence, excluded, i)[h])
}

// Without returns the evidence with piece i left out.
func Without(evidence []Evidence, i int) []Evidence {
	less := make([]Evidence, 0, len(evidence)-1)
	less = append(less, evidence[:i]...)
	return append(less, evidence[i+1:]...)
}
