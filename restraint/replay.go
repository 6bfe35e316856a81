package restraint

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"

	"slabwright/plan"
)

// Event is something that opened.
type Event struct {
	Hour   float64
	Line   string // id of the joint, or C1, C2 ... for a crack
	Kind   LineKind
	Path   []plan.Point // the stretch that opened
	Length float64      // m
	Share  float64      // tension over strength where it started, in the state found
	At     plan.Point   // where that was
	Stress float64      // tension in plan there, Pa
}

// Opening is how wide a line stands at the end.
type Opening struct {
	Line   string
	Kind   LineKind
	Path   []plan.Point
	Open   float64 // length that has opened, m
	Length float64 // of the line, m
	Mean   float64 // width over what has opened, m
	Widest float64
	First  float64 // hour at which the first of it opened
}

// Field is the state of the slab at one hour, triangle by triangle.
type Field struct {
	Hour      float64
	Triangles [][3]plan.Point
	Stress    [][3]float64 // xx, yy, xy, Pa
	Most      []float64    // largest principal stress, averaged over the reach, Pa
	Angle     []float64    // of it, radians from x
	Share     []float64    // of the strength
	Beside    Beside       // a hand calculation of the greatest tension
}

// Replay is what a model went through.
type Replay struct {
	Events   []Event
	Openings []Opening
	Fields   []Field
	Ledger   Ledger
	Peak     Peak // greatest share of strength away from grooves, before anything opened there
	Nodes    int
	Rounds   int // factorisations
	Until    float64
}

// Peak is the greatest tension met, as a share of strength.
type Peak struct {
	Share, Stress, Hour float64
	At                  plan.Point
}

// Progress is told how far a replay has come.
type Progress func(done, of int, hour float64)

// Replay follows a slab over the given hours. shown are the hours at which to keep
// fields; the nearest hour after each is taken. say may be nil.
//
// If a step does not settle, or ctx ends, the replay up to then is returned with the
// error.
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
	s.wake(s.now)
	r := &Replay{}
	err = s.run(ctx, hours, shown, say, r)
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
		if err := s.advance(ctx, hour, r, halvings); err != nil {
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

const (
	halvings  = 3    // of a step within which something cracks
	overshoot = 1.08 // tension over strength that a step may reach before it is halved
)

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
	if left > 0 && s.share < 1 && s.share+s.growth*(hour-s.hour) > overshoot {
		return between()
	}
	before := *s
	before.slid, before.memory = slices.Clone(s.slid), maps.Clone(s.memory)
	if err := s.step(hour); err != nil {
		return err
	}
	if err := s.openKnown(); err != nil {
		return err
	}
	mean := s.mean()
	share := s.worst(mean, nil).share
	if left > 0 && share > overshoot && before.frame == s.frame {
		rounds := s.rounds
		*s = before
		s.rounds, s.growth = rounds, 0
		return between()
	}
	s.growth, s.share = (share-s.share)/(hour-before.hour), share
	if share < 1 {
		r.see(s, mean)
		return nil
	}
	if err := s.look(ctx, r); err != nil {
		return err
	}
	s.share = s.worst(s.mean(), nil).share
	return nil
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
	s.opened()
	return s.again()
}

// look opens what has passed its strength, the worst first, until nothing has.
func (s *slabState) look(ctx context.Context, r *Replay) error {
	spent, first := map[int32]bool{}, true
	mean := s.mean()
	for len(r.Events) < s.set.Cracks {
		if err := ctx.Err(); err != nil {
			return err
		}
		at := s.worst(mean, spent)
		if first {
			r.see(s, mean)
			first = false
		}
		if at.share < 1 {
			return nil
		}
		at = s.intoGroove(mean, at)
		e := Event{Hour: s.hour, Share: at.share}
		if at.line >= 0 {
			e.At = s.frame.at[at.side[0]].Plus(s.frame.at[at.side[1]]).Times(0.5)
			l := s.lines[at.line]
			e.Line, e.Kind = l.ID, l.Kind
			e.Stress = at.share * at.strength * l.Share
			for _, key := range s.openSawn(mean, at) {
				e.Length += s.frame.at[key[0]].To(s.frame.at[key[1]])
				e.Path = append(e.Path, s.frame.at[key[0]], s.frame.at[key[1]])
			}
			e.Path = spanOf(e.Path)
		} else {
			e.At = s.frame.middle(int(at.tri))
			e.Stress, _, _ = principal(mean[at.tri])
			line, sides, path := s.crackFrom(mean, at)
			if len(sides) == 0 {
				for _, o := range s.near.tri[s.near.start[at.tri]:s.near.start[at.tri+1]] {
					spent[o] = true
				}
				continue
			}
			e.Line, e.Kind, e.Path = s.lines[line].ID, CrackLine, path
			e.Length = plan.Polyline(path).Length()
			spent = map[int32]bool{}
		}
		r.add(e, s)
		s.wake(s.now)
		if err := s.again(); err != nil {
			return err
		}
		mean = s.mean()
	}
	return fmt.Errorf("hour %.4g: %d cracks and openings; stopped looking. Check strain, strength and base", s.hour, s.set.Cracks)
}

// add keeps an event; what opens of the same line at the same hour is one.
func (r *Replay) add(e Event, s *slabState) {
	for i := range r.Events {
		o := &r.Events[i]
		if o.Line != e.Line || o.Hour != e.Hour {
			continue
		}
		o.Length += e.Length
		if e.Kind == CrackLine {
			o.Path = joinPaths(o.Path, e.Path)
		} else {
			o.Path = spanOf(append(slices.Clone(o.Path), e.Path...))
		}
		return
	}
	r.Events = append(r.Events, e)
}

// spanOf returns the two points of a straight set that lie furthest apart.
func spanOf(points []plan.Point) []plan.Point {
	best := []plan.Point{points[0], points[0]}
	far := 0.0
	for _, p := range points {
		if d := p.To(points[0]); d > far {
			far, best[0] = d, p
		}
	}
	far = 0
	for _, p := range points {
		if d := p.To(best[0]); d > far {
			far, best[1] = d, p
		}
	}
	return best
}

// see keeps the greatest share met in sound concrete.
func (r *Replay) see(s *slabState, mean [][3]float64) {
	at := s.worstSound(mean, nil)
	if at.tri < 0 || at.share <= r.Peak.Share {
		return
	}
	r.Peak = Peak{Share: at.share, Hour: s.hour, At: s.frame.middle(int(at.tri))}
	r.Peak.Stress, _, _ = principal(mean[at.tri])
}

// openings sums up every line that is open at the end.
func (s *slabState) openings(events []Event) []Opening {
	out := make([]Opening, len(s.lines))
	weight := make([]float64, len(s.lines))
	for i, l := range s.lines {
		out[i] = Opening{Line: l.ID, Kind: l.Kind, Path: l.Path, Length: plan.Polyline(l.Path).Length(), Open: s.lengthOpen(i), First: math.NaN()}
		for _, e := range events {
			if e.Line == l.ID {
				out[i].First = e.Hour
				break
			}
		}
		if math.IsNaN(out[i].First) {
			out[i].First = math.Max(l.From, 0)
		}
	}
	for k := range s.frame.seams {
		seam := &s.frame.seams[k]
		mem := s.memory[seam.key]
		if seam.line < 0 || !mem.alive {
			continue
		}
		o := &out[seam.line]
		o.Widest = math.Max(o.Widest, mem.now)
		o.Mean += seam.area * mem.now
		weight[seam.line] += seam.area
	}
	kept := out[:0]
	for i, o := range out {
		if o.Open == 0 {
			continue
		}
		if weight[i] > 0 {
			o.Mean /= weight[i]
		}
		kept = append(kept, o)
	}
	return kept
}

// field returns the present state for drawing.
func (s *slabState) field() Field {
	f := Field{Hour: s.hour, Stress: s.stress()}
	mean := s.mean()
	f.Beside = s.beside(mean)
	for t, m := range mean {
		v := s.frame.tri[t]
		f.Triangles = append(f.Triangles, [3]plan.Point{s.frame.at[v[0]], s.frame.at[v[1]], s.frame.at[v[2]]})
		most, _, angle := principal(m)
		c := s.now[s.frame.pour[t]]
		share := 0.0
		if c.Strength > 0 && most > 0 {
			share = (most + c.Face) / (c.Strength * s.factor[t])
		}
		f.Most, f.Angle, f.Share = append(f.Most, most), append(f.Angle, angle), append(f.Share, share)
	}
	return f
}
