package restraint

import (
	"maps"
	"math"
	"slices"

	"slabwright/plan"
)

// waits are what places that have passed their strength wait for, because opening
// them would not set free the work that it takes.
type waits struct {
	tri   []float64       // of each triangle: tension over toughness at which to look again, 1/√m
	line  map[int]float64 // the same of sawn lines
	tried []trial
}

// trial is an opening that was tried and taken back.
type trial struct {
	at     plan.Point
	line   int     // −1 for a crack
	pull   float64 // tension over toughness √(E·G), 1/√m
	length float64
	ratio  float64 // work set free over work needed
}

func newWaits(triangles int) waits {
	return waits{tri: make([]float64, triangles), line: map[int]float64{}}
}

func (w waits) copied() waits {
	return waits{tri: slices.Clone(w.tri), line: maps.Clone(w.line), tried: slices.Clip(w.tried)}
}

// nearest returns the trial last made near a place: of the same line, or of a crack
// that the tried one stands for.
func (w waits) nearest(at plan.Point, line int) (trial, bool) {
	for _, t := range slices.Backward(w.tried) {
		if t.line == line && (line >= 0 || t.at.To(at) < min(1.5, 0.75*t.length)) {
			return t, true
		}
	}
	return trial{}, false
}

// toughen works out the toughness of each pour as it is now.
func (s *slabState) toughen() {
	s.tough = make([]float64, len(s.now))
	for p, c := range s.now {
		s.tough[p] = Toughness(c.Modulus, s.fracture(p))
	}
}

const (
	lookAgain = 1.05 // growth of tension after which a place that waits is looked at again
	worthIt   = 0.97 // work expected over work needed from which an opening is tried
	worthAll  = 0.7  // of a way up to which the part where tension passes the strength is tried first
	worthMore = 1.03 // growth of the work expected over that of the last trial
)

// try opens a place that has passed its strength if the work that this sets free is
// what tearing takes: both must hold (Leguillon, 2002). Where the tension passes the
// strength on the mean (Cornetti and others, 2006) over a part of the way only, that part
// must do by itself; then all of the way opens if it sets enough free too. If nothing will do, all is as it was and the place
// waits.
//
// Before a trial the work is judged from the last one nearby: it grows with the square
// of the tension, and for its area with the length.
func (s *slabState) try(mean [][3]float64, at site) (e Event, opened bool, err error) {
	place := s.intoGroove(mean, at)
	w := s.wayFrom(mean, place, math.Inf(1))
	if w.length == 0 {
		s.hold(at, place)
		return e, false, nil
	}
	first := w
	if w.strong < worthAll*w.length {
		first = s.wayFrom(mean, place, w.strong)
	}
	this := trial{at: w.at, line: place.line, pull: s.pullAt(mean, place, w), length: first.length}
	if last, ok := s.waits.nearest(this.at, this.line); ok && last.expects(this) < max(worthIt, worthMore*last.ratio) {
		s.hold(at, place)
		return e, false, nil
	}
	before := *s
	if e, err = s.tear(mean, place, first); err != nil {
		return e, false, err
	}
	if e.Freed < e.Needed {
		this.ratio = e.Freed / e.Needed
		s.waits.tried = append(s.waits.tried, this)
		s.hold(at, place)
		return e, false, nil
	}
	if first.length == w.length {
		return e, true, nil
	}
	return s.tearAll(mean, place, w, e, before)
}

// tearAll opens all of a way of which a part has opened, if that sets enough free, else
// leaves it at the part. before is the state before either.
func (s *slabState) tearAll(mean [][3]float64, at site, w way, part Event, before slabState) (e Event, opened bool, err error) {
	partly := *s
	s.goBack(before)
	if e, err = s.tear(mean, at, w); err != nil {
		return e, false, err
	}
	if e.Freed < e.Needed {
		s.goBack(partly)
		return part, true, nil
	}
	return e, true, nil
}

// tear opens a way, and takes it back if the work set free is not what it takes or
// the slab does not come to rest.
func (s *slabState) tear(mean [][3]float64, at site, w way) (e Event, err error) {
	before := s.kept()
	e = s.open(mean, at, w)
	s.wake(s.now)
	e.Freed, err = s.again(e.Needed)
	if err != nil || e.Freed < e.Needed {
		s.goBack(before)
	}
	return e, err
}

// goBack returns to a state that was kept; what was spent stays spent.
func (s *slabState) goBack(to slabState) {
	to.rounds = s.rounds
	*s = to
}

// expects returns the work set free over that needed that a trial lets expect of
// another.
func (t trial) expects(other trial) float64 {
	grown := other.pull / t.pull
	return t.ratio * grown * grown * max(1, other.length/t.length)
}

// pullAt returns tension over toughness where a way starts, 1/√m.
func (s *slabState) pullAt(mean [][3]float64, at site, w way) float64 {
	tough := s.tough[s.pourAt(at)]
	if at.line >= 0 {
		return at.share * at.strength / tough
	}
	most := 0.0
	for _, t := range s.frame.around(w.start) {
		most = max(most, tension(mean[t])+s.now[s.frame.pour[t]].Face)
	}
	return most / tough
}

func (s *slabState) pourAt(at site) int {
	if at.line >= 0 {
		return s.frame.pour[s.frame.beside[at.side][0]]
	}
	return s.frame.pour[at.tri]
}

// hold lets a place and the triangles near it wait until the tension has grown.
func (s *slabState) hold(at, place site) {
	until := lookAgain * place.share * place.strength / s.tough[s.pourAt(place)]
	if place.line >= 0 {
		s.waits.line[place.line] = until
	}
	if at.tri < 0 {
		return
	}
	for _, o := range s.nearTo(at.tri) {
		s.waits.tri[o] = max(s.waits.tri[o], until)
	}
}

// kept returns the state to come back to: what an opening changes is copied.
func (s *slabState) kept() slabState {
	before := *s
	n, f := *s.frame.net, *s.frame
	n.at, n.tri, n.pour = slices.Clone(n.at), slices.Clone(n.tri), slices.Clone(n.pour)
	n.beside, n.onLine, n.onHold = maps.Clone(n.beside), maps.Clone(n.onLine), maps.Clone(n.onHold)
	f.net = &n
	s.frame = &f
	s.cut, s.memory, s.waits = maps.Clone(s.cut), maps.Clone(s.memory), s.waits.copied()
	s.lines, s.starts = slices.Clone(s.lines), slices.Clip(s.starts)
	s.slid = slices.Clone(s.slid)
	return before
}
