package restraint

import "math"

// Ledger is where the work went, J. Supplied = Stored + Crept + Base + Slid + Joints +
// Released + Left at any time.
type Ledger struct {
	Supplied float64 // by shortening that was held back
	Stored   float64 // in the sheet, as stress
	Crept    float64 // by creep and ageing under stress
	Base     float64 // in the base, as elastic movement
	Slid     float64 // by sliding over the base
	Joints   float64 // at joints, cracks and holds
	Released float64 // when something cracked
	Left     float64 // not accounted for: the error of the steps in time

	stored energies
	joints float64
}

// energies are stored at one time.
type energies struct{ Sheet, Base, Joints float64 }

func (e energies) sum() float64 { return e.Sheet + e.Base + e.Joints }

// stored adds up what a state holds.
func (s *slabState) stored(b *balance, u []float64) (e energies) {
	e = s.storedBeside(b, u)
	for t := range b.node {
		m := b.modulus[b.pour[t]]
		if m == 0 {
			continue
		}
		strain := sub3(b.strainIn(t, u), b.frozen[t])
		e.Sheet += b.thick[t] * b.sheet[t] / 2 * dot3(stressOf(b.plane, m, strain), strain)
	}
	return e
}

// storedBeside adds up what the base and the joints hold.
func (s *slabState) storedBeside(b *balance, u []float64) (e energies) {
	for n := range b.nodes {
		k := b.base * b.bed[n]
		ex, ey := u[2*n]-b.slid[2*n], u[2*n+1]-b.slid[2*n+1]
		far := math.Min(math.Sqrt(ex*ex+ey*ey), b.drag[n]/k)
		e.Base += k / 2 * far * far
	}
	for k := range b.seams {
		if r := &b.rules[k]; r.alive {
			across, along := b.seams[k].move(u)
			e.Joints += b.seams[k].area * r.energy(across, along)
		}
	}
	return e
}

// energy is the work of answer per area.
func (r *rule) energy(across, along float64) float64 {
	across -= r.across0
	along -= r.along0
	w := (r.tie*across*across + r.lock*along*along) / 2
	if beyond := across + r.give; beyond < 0 {
		w += r.contact / 2 * beyond * beyond
	}
	if beyond := math.Abs(along) - r.room; beyond > 0 {
		w += r.bars / 2 * beyond * beyond
	}
	return w
}

func dot3(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// step books a step in time, before its state is accepted: stress and strain of the
// sheet are taken as changing evenly over the step.
func (l *Ledger) step(s *slabState, b *balance, next []Concrete, after [][3]float64, u []float64) {
	d := plane(s.set.Poisson)
	var sheet float64
	for t := range s.frame.tri {
		p := s.frame.pour[t]
		volume := s.frame.thick[t] * s.frame.sheet[t]
		var was, is [3]float64
		strain0, strain1 := s.frame.strainIn(t, s.u), s.frame.strainIn(t, u)
		for i := range 3 {
			was[i], is[i] = strain0[i]-s.frozen[t][i], strain1[i]-after[t][i]
		}
		stress0, stress1 := stressOf(d, s.now[p].Modulus, was), stressOf(d, next[p].Modulus, is)
		free := next[p].Strain - s.now[p].Strain
		var mean, inelastic [3]float64
		for i := range 3 {
			mean[i] = (stress0[i] + stress1[i]) / 2
			inelastic[i] = after[t][i] - s.frozen[t][i]
		}
		inelastic[0] -= free
		inelastic[1] -= free
		l.Supplied -= volume * free * (mean[0] + mean[1])
		stored0, stored1 := dot3(stress0, was)/2, dot3(stress1, is)/2
		ageing := dot3(mean, sub3(is, was)) - (stored1 - stored0)
		l.Crept += volume * (dot3(mean, inelastic) + ageing)
		sheet += volume * stored1
	}
	now := s.storedBeside(b, u)
	now.Sheet = sheet
	for k := range b.seams {
		r := &b.rules[k]
		if !r.alive {
			continue
		}
		seam := &b.seams[k]
		a0, s0 := seam.move(s.u)
		a1, s1 := seam.move(u)
		before, then := r.answer(a0, s0), r.answer(a1, s1)
		l.joints += seam.area * ((before.across+then.across)/2*(a1-a0) + (before.along+then.along)/2*(s1-s0))
	}
	l.stored = now
}

func sub3(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

// missed returns the share of the work supplied since before that is not accounted
// for; 0 where it is nothing beside all the work so far.
func (l Ledger) missed(before Ledger) float64 {
	now, was := l.total(), before.total()
	left := math.Abs(now.Left - was.Left)
	if left < 0.002*now.Supplied {
		return 0
	}
	return left / math.Max(math.Abs(now.Supplied-was.Supplied), 1e-9)
}

// total returns the ledger with all columns filled.
func (l Ledger) total() Ledger {
	l.Stored, l.Base, l.Joints = l.stored.Sheet, l.stored.Base, l.joints
	l.Left = l.Supplied - l.Stored - l.Crept - l.Base - l.Slid - l.Joints - l.Released
	return l
}
