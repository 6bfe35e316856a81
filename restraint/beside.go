package restraint

import (
	"math"

	"slabwright/plan"
)

// Beside is a hand calculation beside the greatest tension of a field: a strip of the
// slab in the direction of that tension, from one free edge, joint or crack to the
// next, on the base alone.
type Beside struct {
	At      plan.Point
	Angle   float64 // of the tension, degrees anticlockwise from x
	Model   float64 // averaged tension of the replay, Pa
	Hand    float64 // the least of the next three, Pa
	Drag    float64 // base sliding from the nearer free end to the place
	Elastic float64 // base giving like a spring, at the middle of the strip
	Full    float64 // nothing gives
	Near    float64 // to the nearer free end, m
	Length  float64 // of the strip, m
	Apart   float64 // Model over Hand less 1
	Why     string  // what the hand calculation leaves out, where they are more than 20 % apart
}

// apartFrom is how far a replay and a hand calculation may lie apart without a word.
const apartFrom = 0.2

// beside works out the hand calculation for the greatest tension of a state.
func (s *slabState) beside(mean [][3]float64) Beside {
	var b Beside
	best := -1
	for t, m := range mean {
		if most, _, _ := principal(m); most > b.Model {
			b.Model, best = most, t
		}
	}
	if best < 0 {
		return b
	}
	_, _, angle := principal(mean[best])
	b.At, b.Angle = s.frame.middle(best), angle*180/math.Pi
	way := plan.Point{X: math.Cos(angle), Y: math.Sin(angle)}
	ahead, back := s.freeEnd(b.At, way), s.freeEnd(b.At, way.Times(-1))
	b.Near, b.Length = math.Min(ahead, back), ahead+back
	p := s.frame.pour[best]
	thick := s.frame.thick[best]
	b.Full = math.Max(0, s.full[p])
	b.Drag = s.model.Base.Limit(thick) * b.Near / thick
	if pulled := s.since[p]; pulled > 0 && b.Full > 0 {
		b.Elastic = ElasticBedStress(b.Full/pulled, pulled, b.Length, thick, s.model.Base.Stiffness)
	}
	b.Hand = math.Min(b.Full, math.Min(b.Drag, b.Elastic))
	if b.Hand > 0 {
		b.Apart = b.Model/b.Hand - 1
	}
	if math.Abs(b.Apart) > apartFrom || b.Hand == 0 {
		b.Why = s.why(b)
	}
	return b
}

// freeEnd returns how far it is in a direction to an edge or an open line.
func (s *slabState) freeEnd(from, way plan.Point) float64 {
	nearest := math.Inf(1)
	see := func(key side) {
		a := s.frame.at[key[0]]
		along := s.frame.at[key[1]].Minus(a)
		det := way.Cross(along)
		if math.Abs(det) < 1e-12 {
			return
		}
		far, share := a.Minus(from).Cross(along)/det, a.Minus(from).Cross(way)/det
		if far > 0 && share >= -1e-9 && share <= 1+1e-9 {
			nearest = math.Min(nearest, far)
		}
	}
	for key, pair := range s.frame.beside {
		if _, open := s.cut[key]; open || pair[1] < 0 {
			see(key)
		}
	}
	return nearest
}

// why says what is near the place that the hand calculation knows nothing of.
func (s *slabState) why(b Beside) string {
	const near = 2.0 // m
	for _, h := range s.model.Holds {
		if _, _, d := plan.Polyline(h.Path).Nearest(b.At); d < near {
			return "held by " + h.ID + ", which the hand calculation leaves out"
		}
	}
	for _, l := range s.model.Lines {
		if _, _, d := plan.Polyline(l.Path).Nearest(b.At); l.Bars != nil && d < near {
			return "bars across " + l.ID + " pull too, which the hand calculation leaves out"
		}
	}
	for p := range s.frame.at {
		if s.frame.at[p].To(b.At) < near && s.insideCorner(int32(p)) {
			return "tension crowds at an inside corner or the end of a crack; the hand calculation gives the mean across the strip"
		}
	}
	if b.Apart > 0 {
		return "the slab is wider beside the strip, and pulls on it"
	}
	return "the base drags in two directions at once, and less of it along the strip"
}

func (s *slabState) insideCorner(p int32) bool {
	t := tracer{slabState: s}
	rank, _ := t.rank(p)
	return rank >= 2
}
