package causes

import (
	"fmt"
	"math"

	"slabwright/source"
	"slabwright/working"
)

// sheetCauses is how many causes are worked line by line.
const sheetCauses = 3

// sheet works the chances of the leading causes so that a checker can redo them:
// the likelihood of each observation from the bands, its weight, the tempered
// sum, and the chance.
func (w *weighing) sheet(e Evidence, r Ranking) working.Sheet {
	own := source.Cite("own", "bands.txt")
	s := working.Sheet{ID: "cause-" + e.Finding, Title: "Causes of " + e.Finding, Basis: []string{
		"Bands of likelihood: slabwright's own judgement, ordered to agree with the cited rules.",
		"Prior odds: " + w.priors + ".",
		"Observations that tell the same story form a group; the strongest counts in full, the others 0.6.",
		fmt.Sprintf("Observations of one finding are taken as correlated by %.2g, so that n of them count as n/(1+%.2g·(n-1)); the range runs over %.2g to %.2g and over leaving out each observation.", dependence, dependence, dependenceLow, dependenceHigh),
	}}
	if e.Exposure != External && e.Exposure != Indoor {
		s.Basis = append(s.Basis, "Exposure not given: prior odds of external paving used.")
	}
	weights := w.model.Weights(w.evidence, w.excluded)
	power := w.model.Power(w.evidence, weights, w.excluded)
	scale := w.scale(weights, power)
	for _, h := range order(w.belief)[:min(sheetCauses, len(r.All))] {
		if w.belief[h] == 0 {
			continue
		}
		s.Add(w.causeLines(h, weights, power, scale, own)...)
	}
	return s
}

// scale is the sum over all causes of odds times tempered likelihood.
func (w *weighing) scale(weights []float64, power float64) float64 {
	z := 0.0
	for h := range catalogue {
		if !w.excluded[h] {
			z += w.model.Odds[h] * math.Exp(power*w.logLikelihood(h, weights))
		}
	}
	return z
}

func (w *weighing) logLikelihood(h int, weights []float64) float64 {
	sum := 0.0
	for i, e := range w.evidence {
		sum += weights[i] * e.LogLikelihood[h]
	}
	return sum
}

func (w *weighing) causeLines(h int, weights []float64, power, scale float64, own source.Citation) []working.Line {
	var lines []working.Line
	c := catalogue[h]
	for i, e := range w.evidence {
		likelihood := math.Exp(e.LogLikelihood[h])
		lines = append(lines, working.New(fmt.Sprintf("s%d", i+1), c.Name+": "+w.texts[i], "v·ln(P)", weights[i]*e.LogLikelihood[h], "", own,
			working.In("v", weights[i], "", "weight in its group"), working.In("P", likelihood, "", "chance of the observation under the cause")))
	}
	sum := w.logLikelihood(h, weights)
	chance := w.model.Odds[h] * math.Exp(power*sum) / scale
	return append(lines, working.New("p", "chance that it is "+c.Name, "a·e^(t·S)/Z", chance, "", own,
		working.In("a", w.model.Odds[h], "", "prior odds"), working.In("t", power, "", "tempering"),
		working.In("S", sum, "", "sum of the lines above"), working.In("Z", scale, "", "the same over all causes")))
}
