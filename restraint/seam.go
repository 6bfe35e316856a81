package restraint

import "math"

// rule is how one seam works at present: what the line is, reduced to springs.
type rule struct {
	alive   bool
	contact float64 // against closing beyond give, N/m³
	give    float64 // closing that is free, m
	tie     float64 // against opening and closing, N/m³
	lock    float64 // of touching sides against sliding, N/m³, as left by the opening
	bars    float64 // against sliding beyond room, N/m³
	room    float64
	across0 float64 // movement at which it came alive
	along0  float64
}

// pull is what a seam answers: traction across and along, and how each grows.
type pull struct{ across, along, acrossGrowth, alongGrowth float64 }

// answer returns the traction for a movement. Both curves only rise, so that the
// whole slab has one state of balance.
func (r *rule) answer(across, along float64) (p pull) {
	across -= r.across0
	along -= r.along0
	p.across, p.acrossGrowth = r.tie*across, r.tie
	if beyond := across + r.give; beyond < 0 {
		p.across += r.contact * beyond
		p.acrossGrowth += r.contact
	}
	p.along, p.alongGrowth = r.lock*along, r.lock
	if beyond := math.Abs(along) - r.room; r.bars > 0 && beyond > 0 {
		p.along += math.Copysign(r.bars*beyond, along)
		p.alongGrowth += r.bars
	}
	return p
}

// memory is what a seam carries from step to step, whatever the numbering.
type memory struct {
	alive           bool
	across0, along0 float64
	widest          float64 // opening
	now             float64
}

// lockLeft returns the share of the stiffness against sliding that sides keep once
// they have opened.
func lockLeft(opening, gone float64) float64 {
	return math.Max(0, 1-math.Max(0, opening)/gone)
}

// hard is the modulus of concrete whose sides are as stiff as the settings say, Pa.
// Younger sides are softer in proportion: stiff ones on soft concrete would rattle.
const hard = 30e9

// young returns how stiff the sides of a seam are against those of hard concrete.
func (s *slabState) young(seam *seam, modulus []float64) float64 {
	pair := s.frame.beside[seam.key.side]
	least := modulus[s.frame.pour[pair[0]]]
	if pair[1] >= 0 {
		least = math.Min(least, modulus[s.frame.pour[pair[1]]])
	}
	return math.Min(1, math.Max(1e-6, least/hard))
}

// ruleOf reduces a line or hold to springs at one seam, for moduli of the pours.
func (s *slabState) ruleOf(k int, modulus []float64) rule {
	seam := &s.frame.seams[k]
	contact := s.set.Contact * s.young(seam, modulus)
	mem := s.memory[seam.key]
	r := rule{alive: mem.alive, across0: mem.across0, along0: mem.along0}
	if seam.line < 0 {
		h := s.model.Holds[-1-seam.line]
		r.contact, r.give, r.tie, r.lock = h.Push, h.Give, h.Bond, h.Bond
		if r.contact == 0 {
			r.contact = contact
		}
		return r
	}
	l := &s.lines[seam.line]
	r.contact, r.give = contact, l.Give
	if l.Give == 0 {
		r.lock = s.set.Lock * s.young(seam, modulus) * lockLeft(mem.now, s.set.LockGone)
	}
	if l.Kind == FormedLine {
		r.lock = 0 // a formed face is smooth
	}
	if b := l.Bars; b != nil && !s.clear(seam.line, seam.key.end) {
		thick := s.frame.thick[s.frame.beside[seam.key.side][0]]
		r.tie += b.Across / thick
		r.bars, r.room = b.Along/thick, b.Room
	}
	return r
}
