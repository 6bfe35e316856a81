package restraint

import (
	"errors"
	"math"
	"slices"
	"strconv"

	"slabwright/plan"
)

// slabState is a slab in the course of a replay.
type slabState struct {
	model     *Model
	set       Settings
	lines     []Line         // of the model, then cracks that came
	crossings [][]plan.Point // of each line of the model with the others
	cut       map[side]int   // open sides and their lines
	frame     *frame
	near      *nearby
	hour      float64
	now       []Concrete   // of each pour
	u         []float64    // displacement of each node
	slid      []float64    // over the base
	frozen    [][3]float64 // strain of each triangle at which it would have no stress
	memory    map[seamKey]memory
	scatter   *scatter
	factor    []float64 // of the scatter, for each triangle
	ledger    Ledger
	starts    []plan.Point // of cracks that came
	rounds    int          // factorisations so far
	full      []float64    // tension of each pour if nothing gave, along one direction, Pa
	since     []float64    // shortening of each pour since it set
	moved     []float64    // in the last step
	pulled    float64      // the shortening that moved it
	share     float64      // the greatest tension over strength
	growth    float64      // of it in the last step, 1/h
}

func newSlabState(m *Model, set Settings) (*slabState, error) {
	n, lines, err := newNet(*m, set)
	if err != nil {
		return nil, err
	}
	s := &slabState{model: m, set: set, lines: lines, cut: map[side]int{}, memory: map[seamKey]memory{}, scatter: newScatter(set)}
	s.crossings = crossingsOf(lines)
	for key, on := range n.onLine {
		for _, l := range on {
			if k := lines[l].Kind; k == FormedLine || k == IsolationLine {
				s.cut[key] = l
				break
			}
		}
	}
	s.now = make([]Concrete, len(m.Pours))
	s.full, s.since = make([]float64, len(m.Pours)), make([]float64, len(m.Pours))
	s.frame = newFrame(n, s.cut, m, set)
	s.near = newNearby(s.frame, s.cut, set.Reach)
	s.u = make([]float64, 2*s.frame.nodes)
	s.slid = make([]float64, 2*s.frame.nodes)
	s.frozen = make([][3]float64, len(n.tri))
	for t := range n.tri {
		s.factor = append(s.factor, s.scatter.at(n.middle(t)))
	}
	return s, nil
}

// crossingsOf lists where each line meets the others.
func crossingsOf(lines []Line) [][]plan.Point {
	slab := plan.Slab{}
	for i, l := range lines {
		slab.Joints = append(slab.Joints, plan.Joint{ID: strconv.Itoa(i), Path: l.Path})
	}
	out := make([][]plan.Point, len(lines))
	for _, c := range slab.Crossings() {
		for _, id := range c.Joints {
			i, _ := strconv.Atoi(id)
			out[i] = append(out[i], c.At)
		}
	}
	return out
}

// clear says whether bars of a line keep clear of a point of the net.
func (s *slabState) clear(line int, point int32) bool {
	if line >= len(s.crossings) {
		return false
	}
	for _, c := range s.crossings[line] {
		if s.frame.at[point].To(c) < s.lines[line].Bars.Clear {
			return true
		}
	}
	return false
}

// wake makes seams work whose two sides have set, from where they are.
func (s *slabState) wake(next []Concrete) {
	for k := range s.frame.seams {
		seam := &s.frame.seams[k]
		mem := s.memory[seam.key]
		if mem.alive {
			continue
		}
		pair := s.frame.beside[seam.key.side]
		set := next[s.frame.pour[pair[0]]].Modulus > 0 && (pair[1] < 0 || next[s.frame.pour[pair[1]]].Modulus > 0)
		if set {
			mem.alive = true
			mem.across0, mem.along0 = seam.move(s.u)
			s.memory[seam.key] = mem
		}
	}
}

// balance returns a search with given moduli.
func (s *slabState) balance(modulus []float64, frozen [][3]float64) *balance {
	b := &balance{frame: s.frame, set: s.set, plane: plane(s.set.Poisson), modulus: modulus, frozen: frozen, base: s.model.Base.Stiffness, slid: s.slid}
	b.rules = make([]rule, len(s.frame.seams))
	for k := range b.rules {
		b.rules[k] = s.ruleOf(k)
	}
	return b
}

// step goes on to an hour. Stress grows with the mean modulus of the step and relaxes
// by the creep within it.
func (s *slabState) step(hour float64) error {
	next := make([]Concrete, len(s.now))
	for i, p := range s.model.Pours {
		c, err := p.check(hour)
		if err != nil {
			return err
		}
		next[i] = c
	}
	over, stays := stepModuli(s.now, next)
	frozen := make([][3]float64, len(s.frozen))
	for t := range frozen {
		p := s.frame.pour[t]
		was, strain := s.now[p], s.frame.strainIn(t, s.u)
		free := next[p].Strain - was.Strain
		for i := range 3 {
			frozen[t][i] = strain[i]
			if i < 2 {
				frozen[t][i] += free
			}
			if over[p] > 0 {
				frozen[t][i] -= was.Modulus * stays[p] / over[p] * (strain[i] - s.frozen[t][i])
			}
		}
	}
	s.wake(next)
	b := s.balance(over, frozen)
	u := s.guess(next)
	count, err := b.solve(u)
	s.rounds += count
	if err != nil {
		return s.named(err, hour)
	}
	s.full, s.since = slices.Clone(s.full), slices.Clone(s.since)
	for p, c := range next {
		if over[p] > 0 {
			s.full[p] = s.full[p]*stays[p] - over[p]*(c.Strain-s.now[p].Strain)
			s.since[p] -= c.Strain - s.now[p].Strain
		}
	}
	s.moved, s.pulled = minus(u, s.u), s.pull(next)
	after := make([][3]float64, len(frozen))
	for t := range after {
		p := s.frame.pour[t]
		strain := s.frame.strainIn(t, u)
		for i := range 3 {
			after[t][i] = strain[i]
			if next[p].Modulus > 0 {
				after[t][i] -= over[p] / next[p].Modulus * (strain[i] - frozen[t][i])
			}
		}
	}
	s.ledger.step(s, b, next, after, u)
	s.frozen, s.now, s.hour = after, next, hour
	s.accept(b, u)
	return nil
}

// pull returns how far the pours would shorten on the mean, were they free.
func (s *slabState) pull(next []Concrete) (sum float64) {
	for p, c := range next {
		if s.now[p].Modulus > 0 {
			sum += c.Strain - s.now[p].Strain
		}
	}
	return sum
}

// guess returns displacements to start a step from: those of the last step carried on
// in proportion to the shortening.
func (s *slabState) guess(next []Concrete) []float64 {
	u := slices.Clone(s.u)
	if len(s.moved) != len(u) || s.pulled == 0 {
		return u
	}
	if part := s.pull(next) / s.pulled; part > 0 && part < 4 {
		for i, d := range s.moved {
			u[i] += part * d
		}
	}
	return u
}

func minus(a, b []float64) []float64 {
	out := make([]float64, len(a))
	for i, v := range a {
		out[i] = v - b[i]
	}
	return out
}

// stepModuli returns for each pour the stress that a strain within the step brings
// by its end, and the share of the stress before it that stays.
func stepModuli(was, next []Concrete) (over, stays []float64) {
	over, stays = make([]float64, len(was)), make([]float64, len(was))
	for p := range was {
		creep := math.Max(0, next[p].Creep-was[p].Creep)
		mean := (was[p].Modulus + next[p].Modulus) / 2
		over[p], stays[p] = RelaxingModulus(mean, creep), math.Exp(-creep)
	}
	return over, stays
}

// RelaxingModulus returns the stress at the end of a step by a strain that grows
// evenly over it while the concrete creeps: E·(1 − exp(−Δφ))/Δφ.
//
//	modulus   mean of elasticity over the step               [Pa]
//	creep     growth of the creep coefficient over the step  [–]
//
// Result in Pa. It is the exact solution of dσ/dt = E·dε/dt − σ·dφ/dt, the rate form
// of creep, which relaxes old concrete somewhat too much and young concrete a little
// too little. Source: Dischinger (1937), textbook form.
func RelaxingModulus(modulus, creep float64) float64 {
	if creep < 1e-9 {
		return modulus * (1 - creep/2)
	}
	return modulus * -math.Expm1(-creep) / creep
}

// accept makes u the state to go on from.
func (s *slabState) accept(b *balance, u []float64) {
	s.u = u
	for n := range s.frame.nodes {
		k := b.base * s.frame.bed[n]
		ex, ey := u[2*n]-s.slid[2*n], u[2*n+1]-s.slid[2*n+1]
		if far := math.Hypot(ex, ey); k*far > s.frame.drag[n] {
			part := 1 - s.frame.drag[n]/(k*far)
			s.ledger.Slid += s.frame.drag[n] * part * far
			s.slid[2*n] += part * ex
			s.slid[2*n+1] += part * ey
		}
	}
	for k := range s.frame.seams {
		seam := &s.frame.seams[k]
		mem := s.memory[seam.key]
		if !mem.alive {
			continue
		}
		across, _ := seam.move(u)
		mem.now = across - mem.across0
		mem.widest = math.Max(mem.widest, mem.now)
		s.memory[seam.key] = mem
	}
}

// named puts the name of the line or hold into an error.
func (s *slabState) named(err error, hour float64) error {
	var not *NotSettled
	if errors.As(err, &not) {
		not.Hour = hour
		if not.What != "the base" {
			not.What = s.nameOf(not.line)
		}
	}
	return err
}

func (s *slabState) nameOf(line int) string {
	if line < 0 {
		return s.model.Holds[-1-line].ID
	}
	return s.lines[line].ID
}

// again looks for balance at the same hour after something opened.
func (s *slabState) again() error {
	modulus := make([]float64, len(s.now))
	for p, c := range s.now {
		modulus[p] = c.Modulus
	}
	b := s.balance(modulus, s.frozen)
	u := append([]float64(nil), s.u...)
	before, slid := s.stored(b, u), s.ledger.Slid
	count, err := b.solve(u)
	s.rounds += count
	if err != nil {
		return s.named(err, s.hour)
	}
	after := s.stored(b, u)
	s.accept(b, u)
	s.ledger.Released += before.sum() - after.sum() - (s.ledger.Slid - slid)
	s.ledger.joints += after.Joints - before.Joints
	s.ledger.stored = after
	return nil
}

// opened takes the net apart along the sides now in cut.
func (s *slabState) opened() {
	u, slid := s.corners(s.u), s.corners(s.slid)
	s.reframe(u, slid)
}

// corners copies values of nodes to the corners of triangles.
func (s *slabState) corners(v []float64) [][6]float64 {
	out := make([][6]float64, len(s.frame.tri))
	for t, nodes := range s.frame.node {
		for i, n := range nodes {
			out[t][2*i], out[t][2*i+1] = v[2*n], v[2*n+1]
		}
	}
	return out
}

// reframe numbers the nodes anew and brings values back from the corners.
func (s *slabState) reframe(u, slid [][6]float64) {
	s.frame = newFrame(s.frame.net, s.cut, s.model, s.set)
	s.near = newNearby(s.frame, s.cut, s.set.Reach)
	s.moved = nil
	s.u, s.slid = make([]float64, 2*s.frame.nodes), make([]float64, 2*s.frame.nodes)
	for t, nodes := range s.frame.node {
		for i, n := range nodes {
			s.u[2*n], s.u[2*n+1] = u[t][2*i], u[t][2*i+1]
			s.slid[2*n], s.slid[2*n+1] = slid[t][2*i], slid[t][2*i+1]
		}
	}
	s.wake(s.now)
}
