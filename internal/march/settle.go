package march

import "math"

const maxIterations = 25

// settle finds the values with content(u) = star + weight*rate(u) at time t, and
// leaves the factored matrix behind.
func (m *Marcher) settle(t, weight float64) error {
	m.holdEnds(t)
	correction := math.Inf(1)
	for range maxIterations {
		m.Iterations++
		d, r := m.matrix.diagonal, m.residual
		for i, c := range m.Capacity {
			d[i] = c
			r[i] = m.star[i] - c*m.Value[i]
		}
		m.assembleLocal(weight)
		m.assembleFlow(weight)
		m.assembleEnds(t, weight)
		m.matrix.factorAndSolve(r)
		correction = m.correct()
		if correction <= m.Tolerance {
			m.finishLocal(weight)
			return nil
		}
		if math.IsNaN(correction) {
			break
		}
	}
	return &Unsettled{Time: t, Step: weight, Correction: correction}
}

// correct adds the solution to the values and returns its largest part, NaN if it
// is no number.
func (m *Marcher) correct() float64 {
	var largest, sum float64
	for i, du := range m.residual {
		m.Value[i] += du
		sum += du
		if du < 0 {
			du = -du
		}
		if du > largest {
			largest = du
		}
	}
	if math.IsNaN(sum) {
		return sum
	}
	return largest
}

// finishLocal brings the hidden states to the end of a stage.
func (m *Marcher) finishLocal(weight float64) {
	for i := range m.Hidden {
		m.rate[i], _ = m.Local.Rate(i, m.Value[i])
		m.Hidden[i] = m.hiddenStar[i] + weight*m.rate[i]
		m.released[i], _ = m.Local.Release(i, m.Hidden[i])
	}
	m.known = true
}

// assembleEnds adds the flows through the ends; the row of a held end is one.
func (m *Marcher) assembleEnds(t, weight float64) {
	n := len(m.Value) - 1
	d, lo, up, r := m.matrix.diagonal, m.matrix.lower, m.matrix.upper, m.residual
	if _, held := m.Top.(Held); held {
		d[0], up[0], r[0] = 1, 0, 0
	} else {
		flow, slope := m.Top.Into(t, m.Value[0])
		r[0] += weight * flow
		d[0] -= weight * slope
	}
	if _, held := m.Bottom.(Held); held {
		d[n], lo[n], r[n] = 1, 0, 0
	} else {
		flow, slope := m.Bottom.Into(t, m.Value[n])
		r[n] += weight * flow
		d[n] -= weight * slope
	}
}

// assembleLocal adds the release of the local process over the stage.
func (m *Marcher) assembleLocal(weight float64) {
	d, r := m.matrix.diagonal, m.residual
	for i := range m.Hidden {
		rate, slope := m.Local.Rate(i, m.Value[i])
		released, perState := m.Local.Release(i, m.hiddenStar[i]+weight*rate)
		r[i] += released
		d[i] -= perState * weight * slope
	}
}

// assembleFlow adds the flows between the nodes.
func (m *Marcher) assembleFlow(weight float64) {
	d, lo, up, r := m.matrix.diagonal, m.matrix.lower, m.matrix.upper, m.residual
	if m.Potential == nil {
		for i, g := range m.Conductance {
			w := weight * g
			flow := w * (m.Value[i] - m.Value[i+1])
			r[i] -= flow
			r[i+1] += flow
			d[i] += w
			d[i+1] += w
			up[i], lo[i+1] = -w, -w
		}
		return
	}
	m.spread()
	for i, g := range m.Conductance {
		w := weight * g
		flow := w * (m.phi[i] - m.phi[i+1])
		r[i] -= flow
		r[i+1] += flow
		d[i] += w * m.slopePhi[i]
		d[i+1] += w * m.slopePhi[i+1]
		up[i], lo[i+1] = -w*m.slopePhi[i+1], -w*m.slopePhi[i]
	}
}
