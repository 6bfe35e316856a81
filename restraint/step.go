package restraint

import (
	"math"
	"slices"
)

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
		b.rules[k] = s.ruleOf(k, modulus)
	}
	return b
}

// step goes on to an hour. Stress grows with the mean modulus of the step and relaxes
// by the creep within it. If that does not settle the state stays as it was.
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
	frozen := s.frozenOver(next, over, stays)
	s.wake(next)
	b := s.balance(over, frozen)
	u := s.guess(next)
	count, err := b.solve(u)
	s.rounds += count
	if err != nil {
		return s.named(err, hour)
	}
	after := s.frozenAfter(next, over, frozen, u)
	s.tally(next, over, stays)
	s.moved, s.pulled = minus(u, s.u), s.pull(next)
	s.ledger.step(s, b, next, after, u)
	s.frozen, s.now, s.hour = after, next, hour
	s.toughen()
	s.accept(b, u)
	return nil
}

// frozenOver returns the strain of each triangle at which a sheet of the step's modulus
// would end the step without stress: stress before it that stays, and free strain.
func (s *slabState) frozenOver(next []Concrete, over, stays []float64) [][3]float64 {
	frozen := make([][3]float64, len(s.frozen))
	for t := range frozen {
		p := s.frame.pour[t]
		was, strain := s.now[p], s.frame.strainIn(t, s.u)
		free := next[p].Strain - was.Strain
		frozen[t] = [3]float64{strain[0] + free, strain[1] + free, strain[2]}
		if over[p] > 0 {
			for i := range 3 {
				frozen[t][i] -= was.Modulus * stays[p] / over[p] * (strain[i] - s.frozen[t][i])
			}
		}
	}
	return frozen
}

// frozenAfter returns the same for the modulus at the end of the step.
func (s *slabState) frozenAfter(next []Concrete, over []float64, frozen [][3]float64, u []float64) [][3]float64 {
	after := make([][3]float64, len(frozen))
	for t := range after {
		p := s.frame.pour[t]
		strain := s.frame.strainIn(t, u)
		after[t] = strain
		if next[p].Modulus > 0 {
			for i := range 3 {
				after[t][i] -= over[p] / next[p].Modulus * (strain[i] - frozen[t][i])
			}
		}
	}
	return after
}

// tally keeps the stress of full restraint and the shortening of each pour.
func (s *slabState) tally(next []Concrete, over, stays []float64) {
	s.full, s.since = slices.Clone(s.full), slices.Clone(s.since)
	for p, c := range next {
		if over[p] > 0 {
			s.full[p] = s.full[p]*stays[p] - over[p]*(c.Strain-s.now[p].Strain)
			s.since[p] -= c.Strain - s.now[p].Strain
		}
	}
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
		if far := math.Sqrt(ex*ex + ey*ey); k*far > s.frame.drag[n] {
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

// again looks for balance at the same hour after something opened, and returns the work
// that this set free. Where a first look says that it is well short of what is needed,
// the search ends there and the state is left as it was found.
func (s *slabState) again(needed float64) (freed float64, err error) {
	modulus := make([]float64, len(s.now))
	for p, c := range s.now {
		modulus[p] = c.Modulus
	}
	b := s.balance(modulus, s.frozen)
	u := append([]float64(nil), s.u...)
	before, slid := s.stored(b, u), s.ledger.Slid
	if needed > 0 {
		rough := *b
		rough.set.Settled *= roughly
		count, err := rough.solve(u)
		s.rounds += count
		if freed = before.sum() - s.stored(b, u).sum() - s.slides(b, u); err == nil && freed < wellShort*needed {
			return freed, nil
		}
	}
	count, err := b.solve(u)
	s.rounds += count
	if err != nil {
		return 0, s.named(err, s.hour)
	}
	after := s.stored(b, u)
	s.accept(b, u)
	freed = before.sum() - after.sum() - (s.ledger.Slid - slid)
	s.ledger.Released += freed
	s.ledger.joints += after.Joints - before.Joints
	s.ledger.stored = after
	return freed, nil
}

// A first look leaves so much more out of balance than is settled for. The work set free
// is off by the square of that, so what falls well short of the work needed stays so.
const (
	roughly   = 20
	wellShort = 0.85
)

// slides returns the work that sliding over the base would take if u were accepted.
func (s *slabState) slides(b *balance, u []float64) (sum float64) {
	for n := range s.frame.nodes {
		k, limit := b.base*s.frame.bed[n], s.frame.drag[n]
		if far := math.Hypot(u[2*n]-s.slid[2*n], u[2*n+1]-s.slid[2*n+1]); k*far > limit {
			sum += limit * (far - limit/k)
		}
	}
	return sum
}
