package march

import "math"

// Euler moves one step by backward Euler: first order, no overshoot ever.
func (m *Marcher) Euler(dt float64) error {
	m.save()
	for i, u := range m.Value {
		m.star[i] = m.Capacity[i] * u
	}
	m.know()
	for i, s := range m.Hidden {
		m.star[i] -= m.released[i]
		m.hiddenStar[i] = s
	}
	m.euler = true
	copy(m.content.value, m.star)
	if err := m.settle(m.Time+dt, dt); err != nil {
		m.restore()
		return err
	}
	m.measure(m.Time+dt, m.contentE, m.hiddenE)
	m.count(dt, 0, 0, 1)
	m.Time += dt
	return nil
}

// gamma places the inner stage of TR-BDF2 so that both stages share one matrix
// and the scheme is L-stable: 2 - sqrt 2.
var gamma = 2 - math.Sqrt2

// Weights of TR-BDF2: Bank et al., IEEE Transactions on Electron Devices 32 (1985); error
// estimate by Hosea and Shampine, Applied Numerical Mathematics 20 (1996).
// Both from memory; the orders are held by tests.
var (
	stageWeight = gamma / 2
	innerShare  = 1 / (gamma * (2 - gamma))
	startShare  = (1 - gamma) * (1 - gamma) / (gamma * (2 - gamma))
	errorScale  = (-3*gamma*gamma + 4*gamma - 2) / (12 * (2 - gamma)) * 2
	errorStart  = errorScale / gamma
	errorInner  = -errorScale / (gamma * (1 - gamma))
	errorEnd    = errorScale / (1 - gamma)
)

// Step moves one step by TR-BDF2: trapezoidal rule to an inner point, then the
// two-step backward formula. Second order, L-stable. Newton's method starts each
// stage from the values carried on as they last moved, for no longer than a few such steps.
func (m *Marcher) Step(dt float64) error {
	m.save()
	m.euler = false
	w := stageWeight * dt
	m.measure(m.Time, m.content, m.hidden)
	top0, bottom0 := m.throughTo, m.throughBo
	for i := range m.star {
		m.star[i] = m.content.value[i] + w*m.content.rate[i]
	}
	for i := range m.hiddenStar {
		m.hiddenStar[i] = m.hidden.value[i] + w*m.hidden.rate[i]
	}
	if err := m.settleFrom(m.saved, math.Min(gamma*dt, longestCarry*m.lastStep), m.Time+gamma*dt, w); err != nil {
		m.restore()
		return err
	}
	m.measure(m.Time+gamma*dt, m.contentG, m.hiddenG)
	topG, bottomG := m.throughTo, m.throughBo
	for i := range m.star {
		m.star[i] = innerShare*m.contentG.value[i] - startShare*m.content.value[i]
	}
	for i := range m.hiddenStar {
		m.hiddenStar[i] = innerShare*m.hiddenG.value[i] - startShare*m.hidden.value[i]
	}
	copy(m.inner, m.Value)
	m.lastStep = dt
	for i, u := range m.Value {
		m.drift[i] = (u - m.saved[i]) / (gamma * dt)
	}
	if err := m.settleFrom(m.inner, (1-gamma)*dt, m.Time+dt, w); err != nil {
		m.restore()
		return err
	}
	m.measure(m.Time+dt, m.contentE, m.hiddenE)
	for i, u := range m.Value {
		m.drift[i] = (u - m.saved[i]) / dt
	}
	m.count(w, innerShare*(top0+topG), innerShare*(bottom0+bottomG), 1)
	m.Time += dt
	return nil
}

// longestCarry is how many times the length of the last step the values are carried on
// as they then moved, to start Newton's method.
const longestCarry = 4

// settleFrom settles a stage from values carried on for a time as they last moved;
// where that leads nowhere, from the values themselves.
func (m *Marcher) settleFrom(values []float64, carry, t, weight float64) error {
	for i, u := range values {
		m.Value[i] = u + carry*m.drift[i]
	}
	err := m.settle(t, weight)
	if err == nil || carry == 0 {
		return err
	}
	copy(m.Value, values)
	return m.settle(t, weight)
}

// Over returns the integral over the last [Marcher.Step] of a function of time and
// of the value at a node, by the weights of the scheme itself: a part of the flow
// through an end is so counted exactly as the march counted it.
func (m *Marcher) Over(node int, f func(t, u float64) float64) float64 {
	dt := m.lastStep
	start := m.Time - dt
	w := stageWeight * dt
	return w*innerShare*(f(start, m.saved[node])+f(start+gamma*dt, m.inner[node])) + w*f(m.Time, m.Value[node])
}

// Ahead returns the value at a node when it goes on as it last moved, a time after
// now, but for no longer than a few steps like the last: what a step of seconds did says
// nothing of the next quarter of an hour.
func (m *Marcher) Ahead(node int, after float64) float64 {
	return m.Value[node] + math.Min(after, longestCarry*m.lastStep)*m.drift[node]
}

// count adds to what entered: weight*(earlier + flow at the end). At a held end
// the node's own balance tells: its change of content less what its neighbour
// sent it over the step.
func (m *Marcher) count(weight, earlierTop, earlierBottom, share float64) {
	n := len(m.Value) - 1
	if _, ok := m.Top.(Held); ok {
		m.throughTo = m.heldFlow(0)
		m.entered += m.heldEntered(0, weight)
	} else {
		m.entered += weight * (earlierTop + share*m.throughTo)
	}
	if _, ok := m.Bottom.(Held); ok {
		m.throughBo = m.heldFlow(n)
		m.entered += m.heldEntered(n, weight)
	} else {
		m.entered += weight * (earlierBottom + share*m.throughBo)
	}
}

// heldFlow is the flow that keeps a held node steady: the opposite of what its
// neighbour sends.
func (m *Marcher) heldFlow(node int) float64 { return -m.contentE.rate[node] }

// heldEntered is the content a held node took from outside over the step.
func (m *Marcher) heldEntered(node int, weight float64) float64 {
	change := m.contentE.value[node] - m.content.value[node]
	sent := weight * m.contentE.rate[node]
	if !m.euler {
		sent += weight * innerShare * (m.content.rate[node] + m.contentG.rate[node])
	}
	return change - sent
}

func (m *Marcher) save() {
	copy(m.saved, m.Value)
	copy(m.savedHide, m.Hidden)
}

func (m *Marcher) restore() {
	copy(m.Value, m.saved)
	copy(m.Hidden, m.savedHide)
	m.known = false
}
