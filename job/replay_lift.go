package job

import (
	"fmt"
	"math"

	"slabwright/flexure"
	"slabwright/plan"
	"slabwright/restraint"
)

// bending is the slab as a plate at one hour: the means of the pours that have set.
type bending struct {
	gap     float64 // top less bottom that curls it, K; negative curls edges up
	modulus float64 // eased by the creep since the set, since weight stays on it, Pa
	set     map[*planPour]bool
}

// bendingAt gathers what curls the slab at an hour; nothing has set where set is empty.
func (r *replayRun) bendingAt(hour float64) bending {
	b := bending{set: map[*planPour]bool{}}
	for _, p := range r.in.pours {
		since := hour - p.offset
		if since <= 0 {
			continue
		}
		if m := p.history.At(since); m.E > 0 {
			b.set[p] = true
			b.gap += m.Gradient
			b.modulus += p.eased(hour)
		}
	}
	if n := float64(len(b.set)); n > 0 {
		b.gap, b.modulus = b.gap/n, b.modulus/n
	}
	return b
}

// eased is the modulus, Pa, of concrete that a load has lain on since the set.
func (p *planPour) eased(hour float64) float64 {
	c := p.at(hour, 1)
	return c.Modulus / (1 + c.Creep)
}

// plate is the slab as a plate parted by the joints that are open by an hour.
func (r *replayRun) plate(b bending, hour float64) flexure.Plate {
	slab := r.in.slab
	slab.Joints = r.jointsOpen(hour)
	return flexure.Plate{ID: "replay", Title: "The slab bent by its own drying and cooling", Slab: slab, Thickness: slab.Thickness.Value, Modulus: b.modulus, Poisson: poisson,
		Support: 1e6 * r.d.support(), UnitWeight: r.in.base.UnitWeight, Warp: flexure.Warp{Difference: b.gap, Expansion: r.in.pours[0].run.mix.Expansion}, Size: plateSize}
}

// plateSize is the longest side of an element of the plate, m; half of it moves corners by
// under one per cent on the worked example.
const plateSize = 0.6

// jointsOpen are the joints that part the slab by an hour: formed and isolation joints, and
// sawn ones that have cracked over half their length.
func (r *replayRun) jointsOpen(hour float64) (open []plan.Joint) {
	length := map[string]float64{}
	for _, e := range r.result.Events {
		if e.Kind == restraint.SawnLine && e.Hour <= hour {
			length[e.Line] += e.Length
		}
	}
	for _, j := range r.in.slab.Joints {
		if j.Kind != plan.Sawn || length[j.ID] > plan.Polyline(j.Path).Length()/2 {
			open = append(open, j)
		}
	}
	return open
}

// liftAt works out how far each of some places stands over where the slab would lie flat
// at an hour, m. Places whose concrete has not set lie flat.
func (r *replayRun) liftAt(hour float64, points []plan.Point) ([]float64, error) {
	out := make([]float64, len(points))
	b := r.bendingAt(hour)
	if len(b.set) == 0 || b.modulus < leastModulus {
		return out, nil
	}
	p := r.plate(b, hour)
	bent, err := p.Solve(r.d.ctx)
	if err != nil {
		return out, fmt.Errorf("bent shape: %w", err)
	}
	flat := p.UnitWeight * p.Thickness / p.Support
	for i, at := range points {
		if here, ok := bent.At(at); ok && b.set[r.in.pourAt(at)] {
			out[i] = flat - here.Deflection
		}
	}
	return out, nil
}

// leastModulus is the stiffness below which a slab lies as its ground does, Pa.
const leastModulus = 1e9

// cornerByHand is the lift of a free corner at an hour in closed form, m: the sum of its two
// edges, each the end of a long slab on ground that cannot pull.
func (r *replayRun) cornerByHand(hour float64) (corner float64, edge flexure.EdgeLift) {
	b := r.bendingAt(hour)
	thick := r.in.slab.Thickness.Value
	curvature := -(1 + poisson) * flexure.FreeCurvature(r.in.pours[0].run.mix.Expansion, b.gap, thick)
	stiffness := b.modulus * math.Pow(thick, 3) / 12 / (1 - poisson*poisson)
	edge = flexure.EdgeLiftOf(curvature, stiffness, 1e6*r.d.support(), r.in.base.UnitWeight*thick)
	return 2 * edge.Edge, edge
}
