package job

import (
	"math"

	"slabwright/flexure"
	"slabwright/plan"
	"slabwright/restraint"
)

// gapAt is the difference top less bottom that curls the slab at an hour, K, as the mean of
// the pours that have set by then; negative curls edges up.
func (r *replayRun) gapAt(hour float64) float64 {
	sum, n := 0.0, 0.0
	for _, p := range r.in.pours {
		if since := hour - p.offset; since > 0 {
			if m := p.history.At(since); m.E > 0 {
				sum, n = sum+m.Gradient, n+1
			}
		}
	}
	return sum / math.Max(n, 1)
}

// edgeLifts are the ends of one pour at an hour.
type edgeLifts struct {
	lift flexure.EdgeLift
	set  bool
}

// liftAt returns how far a place stands over where the slab would lie flat at an hour, m:
// what the nearest free edges along both axes of the plan lift it.
func (r *replayRun) liftAt(hour float64) func(plan.Point) float64 {
	ends := map[*planPour]edgeLifts{}
	for _, p := range r.in.pours {
		ends[p] = r.endsOf(p, hour)
	}
	free := r.openBy(hour)
	return func(at plan.Point) float64 {
		pour := r.in.pourAt(at)
		if pour == nil || !ends[pour].set {
			return 0
		}
		sum := 0.0
		for _, way := range []plan.Point{{X: 1}, {Y: 1}} {
			away := math.Min(rayOrOn(free, at, way), rayOrOn(free, at, way.Times(-1)))
			if !math.IsInf(away, 1) {
				sum += ends[pour].lift.At(away)
			}
		}
		return sum
	}
}

// rayOrOn is rayTo, but 0 for a place on a line that is not along the way.
func rayOrOn(lines []plan.Segment, at, way plan.Point) float64 {
	const on = 1e-4 // m
	for _, s := range lines {
		along, ok := s.B.Minus(s.A).Unit()
		if _, away := s.Nearest(at); ok && away < on && math.Abs(along.Cross(way)) > 0.5 {
			return 0
		}
	}
	return rayTo(lines, at, way)
}

// endsOf works out the end of a slab of one pour, curled by what its column says, its
// stiffness against weight that stays eased by the creep since the set.
func (r *replayRun) endsOf(p *planPour, hour float64) edgeLifts {
	since := hour - p.offset
	if since <= 0 {
		return edgeLifts{}
	}
	m := p.history.At(since)
	if m.E <= 0 {
		return edgeLifts{}
	}
	thick := r.in.slab.Thickness.Value
	curvature := -(1 + poisson) * flexure.FreeCurvature(p.run.mix.Expansion, m.Gradient, thick)
	stiffness := p.eased(hour) * math.Pow(thick, 3) / 12 / (1 - poisson*poisson)
	return edgeLifts{lift: flexure.EdgeLiftOf(curvature, stiffness, 1e6*r.d.support(), r.in.base.UnitWeight*thick), set: true}
}

// openBy are the lines at which the slab is parted by an hour.
func (r *replayRun) openBy(hour float64) []plan.Segment {
	n := 0
	for n < len(r.result.Events) && r.result.Events[n].Hour <= hour {
		n++
	}
	var long []restraint.Event
	length := map[string]float64{}
	for _, e := range r.result.Events[:n] {
		length[e.Line] += e.Length
	}
	for _, e := range r.result.Events[:n] {
		if length[e.Line] >= longEnd {
			long = append(long, e)
		}
	}
	free := r.freeLines("", long, false)
	for _, f := range r.in.slab.Fixtures {
		if low, high := plan.Ring(f.Shape).Box(); f.Opening && math.Min(high.X-low.X, high.Y-low.Y) >= longEnd/2 {
			free = append(free, plan.Polyline(append(append([]plan.Point(nil), f.Shape...), f.Shape[0])).Pieces()...)
		}
	}
	return free
}

// longEnd is the length from which an edge curls up as a long one does, m: about two
// radii of relative stiffness. The slab beside a shorter one holds it down. Of an opening
// half of that counts, since it has two sides.
const longEnd = 1.5

// eased is the modulus, Pa, of concrete that a load has lain on since the set.
func (p *planPour) eased(hour float64) float64 {
	c := p.at(hour, 1)
	return c.Modulus / (1 + c.Creep)
}
