package earlyage

import (
	"context"
	"fmt"
	"math"
	"time"
)

// Calibration says what the observations at the slab did to the members: how far
// they moved the opening and the unknowns, how many members still count, and where
// the observations lie outside of what the members can do.
type Calibration struct {
	Observations            int
	Members                 int
	Effective               float64   // members that still count: 1 over the sum of squared weights
	Tempered                float64   // power to which the observations were lowered so that enough members count; 1: not
	OpensBefore, OpensAfter time.Time // median opening, zero: never
	Moved                   []Moved
	Warnings                []string
}

// Moved is an unknown before and after.
type Moved struct {
	Unknown
	MeanBefore, SpreadBefore float64 // spread: standard deviation
	MeanAfter, SpreadAfter   float64
}

// moved is what calibrating found out.
type moved struct {
	effective, tempered float64
	warnings            []string
}

// Least number of members that must count after weighing, and as a share of all;
// below, the observations are tempered. Own judgement.
const leastMembers, leastShare = 15.0, 0.08

// mostRounds is how often new members are drawn before the observations are tempered.
const mostRounds = 3

// calibrated weighs the members by the observations: each weight is the likelihood of
// all of them if that member is true (importance weights, Bayes). Where too few members
// would count, as many new ones are drawn where the observations point (see redraw) and
// weighed likewise, for the way they were drawn too. What is still too sharp after three
// such rounds, or lies outside what any member can do, is tempered: the likelihood over
// the first members is raised to a power below one, which widens the result instead
// of trusting a handful of them. The expected course is then run again with the
// unknowns at their new means.
//
// Source: population Monte Carlo, Cappe et al., Journal of Computational and Graphical
// Statistics 13 (2004); from memory.
func (m *Members) calibrated(ctx context.Context) (*Members, error) {
	readings := m.Pour.Observed.readings(m.Pour.Column.Placed)
	if len(readings) == 0 {
		return m, nil
	}
	out := &Members{Pour: m.Pour, Hours: m.Hours, unknowns: m.unknowns, before: m, members: append([]member(nil), m.members...)}
	drawn := make([]float64, len(m.members)) // logarithm of how densely each was drawn
	power := out.weighBy(readings, drawn)
	warnings := m.outside(readings)
	for round := 1; round <= mostRounds && power < 1 && warnings == nil; round++ {
		var points [][]float64
		points, drawn = out.redraw(readings, m.Pour.Seed+uint64(round))
		if err := out.run(ctx, points); err != nil {
			return nil, err
		}
		power = out.weighBy(readings, drawn)
	}
	warnings = append(warnings, out.together(readings)...)
	if power < 1 { // the first members span more than new ones that miss
		out.members = append(out.members[:0:0], m.members...)
		power = out.weighBy(readings, make([]float64, len(m.members)))
	}
	out.moved.tempered, out.moved.warnings = power, warnings
	if power < 1 {
		out.moved.warnings = append(out.moved.warnings, fmt.Sprintf("The observations are sharper than %d members can follow, or contradict them: they were taken at %.0f %% of their sharpness so that %.0f members count. Run more members, or widen the doubt.",
			len(out.members), 100*power, out.moved.effective))
	}
	values := make([]float64, len(m.unknowns))
	for k := range values {
		values[k], _ = out.mean(k)
	}
	var err error
	out.expected, err = m.Pour.follow(ctx, values, nil)
	return out, err
}

// weighBy weighs the members by the readings, tempered where too few would count, and
// returns the power it took.
func (m *Members) weighBy(readings []reading, drawn []float64) (power float64) {
	logs := make([]float64, len(m.members))
	for i := range m.members {
		for k, r := range readings {
			logs[i] += r.likelihood(m.members[i].seen[k])
		}
	}
	enough := math.Min(math.Max(leastMembers, leastShare*float64(len(logs))), float64(len(logs))/2)
	power = 1
	weights, effective := weigh(logs, drawn, power)
	if effective < enough {
		low, high := 0.0, 1.0
		for range 60 {
			power = (low + high) / 2
			if weights, effective = weigh(logs, drawn, power); effective < enough {
				high = power
			} else {
				low = power
			}
		}
	}
	for i := range m.members {
		m.members[i].weight = weights[i]
	}
	m.moved.effective = effective
	return power
}

// weigh turns logarithms of likelihood, raised to a power, and of the density of drawing
// into weights, and returns how many members count.
func weigh(logs, drawn []float64, power float64) (weights []float64, effective float64) {
	best := math.Inf(-1)
	for i, l := range logs {
		best = math.Max(best, power*l-drawn[i])
	}
	weights = make([]float64, len(logs))
	var sum, squares float64
	for i, l := range logs {
		weights[i] = math.Exp(power*l - drawn[i] - best)
		sum += weights[i]
	}
	for i := range weights {
		weights[i] /= sum
		squares += weights[i] * weights[i]
	}
	return weights, 1 / squares
}

// mean returns the weighted mean and standard deviation of an unknown.
func (m *Members) mean(k int) (mean, spread float64) {
	for i := range m.members {
		mean += m.members[i].weight * m.members[i].values[k]
	}
	for i := range m.members {
		d := m.members[i].values[k] - mean
		spread += m.members[i].weight * d * d
	}
	return mean, math.Sqrt(spread)
}

// farOff is how many errors an observation may lie beyond all members before it is
// said to be outside of what they can do.
const farOff = 2.0

// outside lists the observations no member comes near.
func (m *Members) outside(readings []reading) (warnings []string) {
	for k, r := range readings {
		low, high := math.Inf(1), math.Inf(-1)
		for i := range m.members {
			low, high = math.Min(low, m.members[i].seen[k]), math.Max(high, m.members[i].seen[k])
		}
		switch {
		case r.trial && (r.value == 1 && high < 1-farOff*r.error || r.value == 0 && low > 1+farOff*r.error):
			warnings = append(warnings, fmt.Sprintf("Outside what the members can do: %s; their edge has %.2f to %.2f of the strength it takes.", r.what, low, high))
		case !r.trial && (r.value < low-farOff*r.error || r.value > high+farOff*r.error):
			warnings = append(warnings, fmt.Sprintf("Outside what the members can do (%.3g to %.3g): %s, %.3g %s. Is it of this pour, or is a fact of the pour wrong?", low, high, r.what, r.value, r.unit))
		}
	}
	return warnings
}

// together says when no member fits all observations at once.
func (m *Members) together(readings []reading) (warnings []string) {
	fits, counts := math.Inf(1), 0.0
	for i := range m.members {
		misfit := 0.0
		for k, r := range readings {
			misfit -= 2 * r.likelihood(m.members[i].seen[k])
		}
		fits = math.Min(fits, misfit)
	}
	for _, r := range readings {
		counts += r.count
	}
	if fits > counts+3*math.Sqrt(2*counts) {
		warnings = append(warnings, fmt.Sprintf("No member fits all %d observations together (misfit of the best %.0f, about %.0f to expect): some contradict each other, or a fact of the pour is wrong.", len(readings), fits, counts))
	}
	return warnings
}

// Calibration returns what the observations did, with the opening for a saw.
func (m *Members) Calibration(saw Saw) Calibration {
	readings := m.Pour.Observed.readings(m.Pour.Column.Placed)
	c := Calibration{Observations: len(readings), Members: len(m.members), Effective: float64(len(m.members)), Tempered: 1}
	before := m
	if m.before != nil {
		before = m.before
		c.Effective, c.Tempered, c.Warnings = m.moved.effective, m.moved.tempered, m.moved.warnings
	}
	median := func(m *Members) time.Time {
		t := m.points(func(b *member) float64 { return m.opening(b, saw) }, 0.5)[0]
		if math.IsNaN(t) {
			return time.Time{}
		}
		return m.Expected().Clock(t)
	}
	c.OpensBefore, c.OpensAfter = median(before), median(m)
	for k, u := range m.unknowns {
		row := Moved{Unknown: u}
		row.MeanBefore, row.SpreadBefore = before.mean(k)
		row.MeanAfter, row.SpreadAfter = m.mean(k)
		c.Moved = append(c.Moved, row)
	}
	return c
}
