package layout

import (
	"context"
	"math"

	"slabwright/plan"
)

// shared is the share of the scatter that all panels of a slab have in common: one mix,
// one weather, one base. Our own judgement.
const shared = 0.5

// cornerRise is how much more of the strength is used beside an inside corner that no
// joint meets. Our own judgement: the stress there has no bound in theory, and over
// the first 0.2 m it is about half as much again.
const cornerRise = 1.5

// ChanceOf tells the chance that a panel of the slab cracks away from its joints, by
// the closed forms of curl and base friction: each panel's stress over its strength
// with its scatter, half of it common to all panels. It is the default of a [Brief];
// a caller that can replay the pour passes that instead.
//
// Low is the chance of the worst panel alone, High that of panels that have nothing
// in common.
func (l Limit) ChanceOf(ctx context.Context, s plan.Slab) (Chance, error) {
	e, err := examine(s, l.Panel)
	if err != nil {
		return Chance{}, err
	}
	if err := ctx.Err(); err != nil {
		return Chance{}, err
	}
	rise := map[string]float64{}
	for _, b := range e.breaches {
		if (b.rule == "corner" || b.rule == "bars") && b.panel != "" {
			rise[b.panel] = cornerRise
		}
	}
	var risks []float64
	low, sound := 0.0, 1.0
	for i, p := range e.panels {
		if e.block[i] {
			continue
		}
		curl, friction := l.Facts.Use(math.Max(0.3, p.Length), math.Max(0.3, p.Width))
		risk := RiskOfUse(l.Facts.Scatter, (curl+friction)*math.Max(1, rise[p.ID]))
		risks = append(risks, risk)
		low = math.Max(low, risk)
		sound *= 1 - risk
	}
	high := 1 - sound
	return Chance{Unplanned: anyOf(risks, shared), Low: &low, High: &high,
		How: "closed forms of curl and base friction, panel by panel; half of the scatter common to all"}, nil
}

// anyOf returns the chance that at least one of several events happens whose normal
// variables have this correlation, by Simpson's rule over what they have in common.
//
// Source: one-factor normal model, textbook.
func anyOf(risks []float64, correlation float64) float64 {
	const reach, steps = 6.0, 120
	sum := 0.0
	for i := 0; i <= steps; i++ {
		z := -reach + 2*reach*float64(i)/steps
		sound := 1.0
		for _, r := range risks {
			if r <= 0 {
				continue
			}
			x := (normalQuantile(math.Min(r, 1-1e-12)) - math.Sqrt(correlation)*z) / math.Sqrt(1-correlation)
			sound *= 0.5 * math.Erfc(x/math.Sqrt2)
		}
		weight := 2.0
		switch {
		case i == 0 || i == steps:
			weight = 1
		case i%2 == 1:
			weight = 4
		}
		sum += weight * (1 - sound) * math.Exp(-z*z/2) / math.Sqrt(2*math.Pi)
	}
	return math.Max(0, math.Min(1, sum*2*reach/steps/3))
}
