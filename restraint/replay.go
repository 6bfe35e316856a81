package restraint

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"slices"
)

// Replay is what a model went through.
type Replay struct {
	Events   []Event
	Openings []Opening
	Fields   []Field
	Ledger   Ledger
	Peak     Peak // greatest share of strength away from grooves
	Nodes    int
	Rounds   int // factorisations
	Until    float64
}

// Progress is told how far a replay has come.
type Progress func(done, of int, hour float64)

// Replay follows a slab over the given hours. shown are the hours at which to keep
// fields; the nearest hour after each is taken. say may be nil.
//
// If a step does not settle, or ctx ends, the replay up to then is returned with the
// error; where a step did not settle ([NotSettled]) its last field is the last state
// that did.
func (m Model) Replay(ctx context.Context, hours, shown []float64, say Progress) (*Replay, error) {
	if found := m.Check(hours); found != nil {
		return nil, errors.Join(found...)
	}
	set := m.Settings.filled()
	s, err := newSlabState(&m, set)
	if err != nil {
		return nil, err
	}
	for i, p := range m.Pours {
		if s.now[i], err = p.check(hours[0]); err != nil {
			return nil, err
		}
	}
	s.hour = hours[0]
	s.toughen()
	s.wake(s.now)
	r := &Replay{}
	err = s.run(ctx, hours, shown, say, r)
	var not *NotSettled
	if errors.As(err, &not) {
		r.Fields = append(r.Fields, s.field())
	}
	r.Openings, r.Ledger = s.openings(r.Events), s.ledger.total()
	r.Nodes, r.Rounds, r.Until = s.frame.nodes, s.rounds, s.hour
	return r, err
}

func (s *slabState) run(ctx context.Context, hours, shown []float64, say Progress, r *Replay) error {
	shown = slices.Clone(shown)
	for i, hour := range hours[1:] {
		if err := ctx.Err(); err != nil {
			return err
		}
		if err := s.advance(ctx, hour, r, s.set.Halvings); err != nil {
			return err
		}
		for len(shown) > 0 && shown[0] <= hour {
			r.Fields = append(r.Fields, s.field())
			shown = shown[1:]
		}
		if say != nil {
			say(i+1, len(hours)-1, hour)
		}
	}
	return nil
}

// advance goes on to an hour and opens what cracks. If the tension overshoots the
// strength, or is about to, the hour in between is taken first.
func (s *slabState) advance(ctx context.Context, hour float64, r *Replay, left int) error {
	between := func() error {
		if err := s.advance(ctx, (s.hour+hour)/2, r, left-1); err != nil {
			return err
		}
		return s.advance(ctx, hour, r, left-1)
	}
	if len(r.Events) >= s.set.Cracks {
		left = 0
	}
	if left > 0 && s.share < 1 && s.share+s.growth*(hour-s.hour) > s.set.Over {
		return between()
	}
	before := *s
	before.slid, before.memory = slices.Clone(s.slid), maps.Clone(s.memory)
	if err := s.step(hour); err != nil {
		return err
	}
	if left > 0 && s.ledger.missed(before.ledger) > s.set.Miss {
		s.back(before)
		return between()
	}
	if err := s.openKnown(); err != nil {
		return err
	}
	mean := s.mean()
	worst := s.worst(mean, nil)
	share := worst.pace()
	if left > 0 && share > s.set.Over && before.frame == s.frame {
		s.back(before)
		return between()
	}
	s.growth, s.share = (share-s.share)/(hour-before.hour), share
	if worst.ready < 1 {
		r.see(s, mean)
		return nil
	}
	switch err := s.look(ctx, r, left > 0 && before.frame == s.frame); {
	case errors.Is(err, errTooLong):
		s.back(before)
		return between()
	case err != nil:
		return err
	}
	s.share = s.worst(s.mean(), nil).pace()
	return nil
}

// errTooLong says that a step went beyond the hour at which something opened.
var errTooLong = errors.New("the step was too long")

// tooMuch is work set free over work needed from which what opens first in a step, where
// tension had passed the strength before, opened well before its end.
const tooMuch = 1.1

// back returns to a state before a step that was too long.
func (s *slabState) back(before slabState) {
	s.goBack(before)
	s.growth = 0
}

// openKnown opens cracks that are known to have come by now.
func (s *slabState) openKnown() error {
	found := false
	for l := range s.model.Lines {
		if s.lines[l].Kind != CrackLine || s.lines[l].From > s.hour {
			continue
		}
		for _, key := range s.sidesOf(l) {
			if _, open := s.cut[key]; !open && s.frame.beside[key][1] >= 0 {
				s.cut[key] = l
				found = true
			}
		}
	}
	if !found {
		return nil
	}
	before := s.kept()
	s.opened()
	_, err := s.again(0)
	if err != nil {
		*s = before
	}
	return err
}

// look opens what has passed its strength, the worst first, until nothing has. The error
// is errTooLong if the step can be taken again and was.
func (s *slabState) look(ctx context.Context, r *Replay, again bool) error {
	spent := map[int32]bool{}
	mean := s.mean()
	r.see(s, mean)
	for len(r.Events) < s.set.Cracks {
		if err := ctx.Err(); err != nil {
			return err
		}
		at := s.worst(mean, spent)
		if at.ready < 1 {
			return nil
		}
		e, opened, err := s.try(mean, at)
		switch {
		case err != nil:
			return err
		case opened && again && at.waited() && e.Freed > tooMuch*e.Needed:
			return errTooLong
		case opened:
			again = false
			clear(spent)
			r.add(e)
			mean = s.mean()
		case at.tri >= 0: // a line waits of itself
			for _, o := range s.nearTo(at.tri) {
				spent[o] = true
			}
		}
	}
	return fmt.Errorf("hour %.4g: %d cracks and openings; stopped looking. Check strain, strength and base", s.hour, s.set.Cracks)
}

// open opens a way that was found from a place and tells what came of it.
func (s *slabState) open(mean [][3]float64, at site, w way) Event {
	e := Event{Hour: s.hour, Share: at.share, At: w.at, Length: w.length, Kind: CrackLine, Path: w.path}
	pour := s.pourAt(at)
	e.Needed = s.fracture(pour) * s.model.Pours[pour].Thickness * e.Length
	if at.line < 0 {
		e.Stress = tension(mean[at.tri])
		e.Line = s.openCrack(w)
		return e
	}
	l := s.lines[at.line]
	e.Line, e.Kind, e.Stress = l.ID, l.Kind, at.share*at.strength*l.Share
	e.Needed *= l.Share
	for _, key := range w.sides {
		s.cut[key] = at.line
	}
	s.opened()
	return e
}
