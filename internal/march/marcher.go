package march

import (
	"fmt"
)

// Marcher holds the values of a problem at one time and moves them forward.
type Marcher struct {
	Problem
	Time   float64
	Value  []float64 // by node; after writing to it call Changed
	Hidden []float64 // by node of the local process

	Tolerance  float64 // largest Newton correction accepted, in units of the value
	Iterations int     // Newton iterations so far

	entered   float64 // content let in through both ends since the start
	contentAt float64 // content at the start
	throughTo float64 // flow into the top at the last stage
	throughBo float64

	content, hidden   stage // at the start of the step
	contentG, hiddenG stage // at the inner stage
	contentE, hiddenE stage // at the end
	star, hiddenStar  []float64
	residual, error   []float64
	phi, slopePhi     []float64
	saved, savedHide  []float64
	inner             []float64 // values at the inner stage of the last step
	lastStep          float64   // its length
	drift             []float64 // how fast the values moved in the last step, to start Newton's method
	matrix            tridiagonal
	released, rate    []float64 // of the local process in the present state
	known             bool      // released and rate belong to the present state
	euler             bool      // the last step was backward Euler
}

// stage is content (or hidden state) and its rate of change by node.
type stage struct{ value, rate []float64 }

func newStage(n int) stage { return stage{make([]float64, n), make([]float64, n)} }

// Unsettled is returned when Newton's method did not converge in a step.
type Unsettled struct {
	Time, Step, Correction float64
}

func (e *Unsettled) Error() string {
	return fmt.Sprintf("march: no solution for the step of %g s at %g s: last correction %g", e.Step, e.Time, e.Correction)
}

// New returns a marcher at time start with the given values at the nodes (copied)
// and the hidden states at zero.
func New(p Problem, start float64, values []float64) *Marcher {
	n := len(p.Grid)
	if len(values) != n || len(p.Capacity) != n || len(p.Conductance) != n-1 || n < 2 {
		panic("march: grid, values, capacity and conductance do not belong together")
	}
	h := 0
	if p.Local != nil {
		h = p.Local.Count()
	}
	m := &Marcher{Problem: p, Time: start, Tolerance: 1e-8,
		Value: append([]float64(nil), values...), Hidden: make([]float64, h),
		content: newStage(n), contentG: newStage(n), contentE: newStage(n),
		hidden: newStage(h), hiddenG: newStage(h), hiddenE: newStage(h),
		star: make([]float64, n), hiddenStar: make([]float64, h),
		residual: make([]float64, n), error: make([]float64, n),
		phi: make([]float64, n), slopePhi: make([]float64, n),
		inner: make([]float64, n), drift: make([]float64, n), saved: make([]float64, n), savedHide: make([]float64, h),
		matrix: newTridiagonal(n), released: make([]float64, h), rate: make([]float64, h)}
	m.holdEnds(start)
	m.contentAt = m.Content()
	return m
}

// Changed tells the marcher that its owner has written to Value or Hidden.
func (m *Marcher) Changed() { m.known = false }

// know brings released and rate to the present state.
func (m *Marcher) know() {
	if m.known {
		return
	}
	for i, s := range m.Hidden {
		m.released[i], _ = m.Local.Release(i, s)
		m.rate[i], _ = m.Local.Rate(i, m.Value[i])
	}
	m.known = true
}

// Content returns what is stored now less what the local process has released
// since its hidden state was zero.
func (m *Marcher) Content() float64 {
	var sum float64
	for i, u := range m.Value {
		sum += m.Capacity[i] * u
	}
	for i, s := range m.Hidden {
		released, _ := m.Local.Release(i, s)
		sum -= released
	}
	return sum
}

// Entered returns what came in through the ends since the start, held ends
// included.
func (m *Marcher) Entered() float64 { return m.entered }

// Imbalance returns the part of the change of content that did not come in
// through the ends. It is meaningless once the owner has changed Capacity.
func (m *Marcher) Imbalance() float64 { return m.Content() - m.contentAt - m.entered }

// TopFlow returns the flow into the top at the end of the last step.
func (m *Marcher) TopFlow() float64 { return m.throughTo }

// holdEnds puts the held ends at their value of time t. The content that this
// takes is counted as entered.
func (m *Marcher) holdEnds(t float64) {
	if held, ok := m.Top.(Held); ok {
		m.Value[0] = held(t)
	}
	if held, ok := m.Bottom.(Held); ok {
		m.Value[len(m.Value)-1] = held(t)
	}
}

// spread fills phi and slopePhi with the potential of the present values.
func (m *Marcher) spread() {
	if m.Potential == nil {
		copy(m.phi, m.Value)
		return
	}
	for i, u := range m.Value {
		m.phi[i], m.slopePhi[i] = m.Potential(u)
	}
}

// measure fills the stage with content and rate of the present values at time t.
func (m *Marcher) measure(t float64, content, hidden stage) {
	m.spread()
	n := len(m.Value) - 1
	for i := range m.Value {
		content.value[i] = m.Capacity[i] * m.Value[i]
		content.rate[i] = 0
	}
	for i := 0; i < n; i++ {
		flow := m.Conductance[i] * (m.phi[i] - m.phi[i+1])
		content.rate[i] -= flow
		content.rate[i+1] += flow
	}
	m.know()
	for i := range m.Hidden {
		content.value[i] -= m.released[i]
		hidden.value[i], hidden.rate[i] = m.Hidden[i], m.rate[i]
	}
	m.throughTo = m.through(m.Top, t, 0, content)
	m.throughBo = m.through(m.Bottom, t, n, content)
}

// through adds the flow of an end to its node's rate and returns it. A held node
// takes whatever keeps it held, so its rate is what its neighbour sends; the
// flow that balances it is found by the caller from the change of content.
func (m *Marcher) through(end End, t float64, node int, content stage) float64 {
	if _, ok := end.(Held); ok {
		return 0
	}
	flow, _ := end.Into(t, m.Value[node])
	content.rate[node] += flow
	return flow
}
