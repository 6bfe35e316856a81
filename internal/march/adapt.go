package march

import "math"

// Control chooses the steps of [Marcher.Advance].
type Control struct {
	Error           float64 // largest error allowed in one step, in units of the value
	First, Min, Max float64 // steps, s
}

// Advance moves to time end by TR-BDF2 with steps chosen so that the estimated
// error of each stays below c.Error, and returns the step to start with next
// time. seen, if not nil, is called after every step and may stop the march by
// returning false.
func (m *Marcher) Advance(end float64, c Control, seen func(*Marcher) bool) (next float64, err error) {
	dt := c.First
	if dt <= 0 {
		dt = (end - m.Time) / 100
	}
	for m.Time < end {
		left := end - m.Time
		step := math.Min(math.Min(dt, c.Max), left)
		if left-step < 1e-9*step {
			step = left
		}
		start, entered := m.Time, m.entered
		err := m.Step(step)
		off := math.Inf(1)
		if err == nil {
			off = m.stepError(step)
		}
		if off > c.Error && step > c.Min {
			if err == nil {
				m.restore()
				m.Time, m.entered = start, entered
			}
			dt = math.Max(c.Min, step*math.Max(0.2, 0.85*math.Cbrt(c.Error/off)))
			continue
		}
		if err != nil {
			return dt, err
		}
		if step == left {
			m.Time = end
		}
		if grown := step * math.Min(4, 0.85*math.Cbrt(c.Error/math.Max(off, 1e-300))); step == dt || grown < dt {
			dt = math.Max(grown, c.Min)
		}
		if seen != nil && !seen(m) {
			return dt, nil
		}
	}
	return dt, nil
}

// stepError returns the largest estimated error of the last step. The raw
// estimate is passed through the matrix of the last stage, which takes out the
// part that the scheme damps anyway.
func (m *Marcher) stepError(dt float64) float64 {
	for i := range m.error {
		m.error[i] = dt * (errorStart*m.content.rate[i] + errorInner*m.contentG.rate[i] + errorEnd*m.contentE.rate[i])
	}
	n := len(m.error) - 1
	if _, ok := m.Top.(Held); ok {
		m.error[0] = 0
	}
	if _, ok := m.Bottom.(Held); ok {
		m.error[n] = 0
	}
	m.matrix.solve(m.error)
	var worst float64
	for _, e := range m.error {
		worst = math.Max(worst, math.Abs(e))
	}
	return worst
}

// Settle marches over whole periods until the values at the end of one differ
// from those at its start by less than tolerance, and returns the number of
// periods: the state of a column under the same weather every day or year.
func (m *Marcher) Settle(period float64, steps, maxPeriods int, tolerance float64) (periods int, err error) {
	before := make([]float64, len(m.Value))
	for periods = 1; periods <= maxPeriods; periods++ {
		copy(before, m.Value)
		for range steps {
			if err := m.Step(period / float64(steps)); err != nil {
				return periods, err
			}
		}
		var change float64
		for i := range before {
			change = math.Max(change, math.Abs(m.Value[i]-before[i]))
		}
		if change < tolerance {
			return periods, nil
		}
	}
	return maxPeriods, &Unsettled{Time: m.Time, Step: period, Correction: tolerance}
}
