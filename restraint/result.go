package restraint

import (
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
	// Freed is the work that the opening set free, and Needed what tearing its area
	// takes, J: the first is never the less.
	Freed, Needed float64
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
	Openings  []Opening    // of the lines then; First counts from the model alone
}

// Peak is the greatest tension met, as a share of strength. Above 1 it was passed over
// so short a length that the work would not have carried a crack.
type Peak struct {
	Share, Stress, Hour float64
	At                  plan.Point
}

// add keeps an event; what opens of the same line at the same hour is one.
func (r *Replay) add(e Event) {
	for i := range r.Events {
		o := &r.Events[i]
		if o.Line != e.Line || o.Hour != e.Hour {
			continue
		}
		o.Length += e.Length
		o.Freed += e.Freed
		o.Needed += e.Needed
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
	f.Beside, f.Openings = s.beside(mean), s.openings(nil)
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
