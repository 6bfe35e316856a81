package climate

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"slabwright/plan"
)

// Obstacle is something beside or over the slab that keeps sun, sky and wind off it:
// a wall, a building, a fence, a canopy, a row of trees. It stands upright on its
// outline, level with the slab at the bottom.
type Obstacle struct {
	Name    string
	Outline plan.Ring // m, on the axes of the plan
	Height  float64   // of its top above the slab, m
	Under   float64   // clear height below it, m; 0: it stands on the ground
	Through float64   // share of the direct sun let through, 0 for a wall, 0.2 to 0.5 for a tree in leaf
	Porous  float64   // share of it open to the wind, 0 for a wall, 0.5 for a slatted fence
}

// Check returns everything that cannot be right about the obstacle.
func (o Obstacle) Check() error {
	var errs []error
	fault := func(format string, values ...any) {
		errs = append(errs, fmt.Errorf("obstacle %q: "+format, append([]any{o.Name}, values...)...))
	}
	if len(o.Outline) < 3 || o.Outline.Area() < 1e-6 {
		fault("its outline needs three points or more round an area; a wall has a thickness")
	}
	if !(o.Height > 0 && o.Height <= 300) {
		fault("height %g m is outside 0 to 300 m", o.Height)
	}
	if !(o.Under >= 0 && o.Under < o.Height) {
		fault("clear height %g m must be at least 0 and below its top at %g m", o.Under, o.Height)
	}
	if !(o.Through >= 0 && o.Through <= 1) {
		fault("share of the sun let through %g is outside 0 to 1", o.Through)
	}
	if !(o.Porous >= 0 && o.Porous <= 1) {
		fault("share open to the wind %g is outside 0 to 1", o.Porous)
	}
	return errors.Join(errs...)
}

// reach is a stretch of a ray over the plan, m from its start.
type reach struct{ from, to float64 }

// over returns where a ray from a point runs over the outline, in order. A start
// within the outline begins a stretch at 0.
func (o Obstacle) over(from plan.Point, direction plan.Point) []reach {
	var hits []float64
	n := len(o.Outline)
	for i, a := range o.Outline {
		b := o.Outline[(i+1)%n]
		sideA, sideB := direction.Cross(a.Minus(from)), direction.Cross(b.Minus(from))
		if (sideA < 0) == (sideB < 0) { // both on one side; a corner on the ray counts to the left, once
			continue
		}
		share := sideA / (sideA - sideB)
		if d := direction.Dot(a.Plus(b.Minus(a).Times(share)).Minus(from)); d > 0 {
			hits = append(hits, d)
		}
	}
	return pairs(hits)
}

// pairs turns the crossings of a closed line into stretches inside it: an odd number
// means the start lies inside.
func pairs(hits []float64) []reach {
	slices.Sort(hits)
	if len(hits)%2 == 1 {
		hits = append([]float64{0}, hits...)
	}
	var out []reach
	for i := 0; i+1 < len(hits); i += 2 {
		out = append(out, reach{hits[i], hits[i+1]})
	}
	return out
}

// hides reports whether the obstacle stands between a point on the slab and the sun.
//
// The ray to the sun climbs by the cotangent of the zenith; it meets the obstacle
// where it is over the outline at a height between its underside and its top.
func (o Obstacle) hides(p plan.Point, zenith float64, toward plan.Point) bool {
	if zenith <= 0 {
		return o.Outline.Contains(p)
	}
	climb := 1 / math.Tan(radians(zenith))
	for _, r := range o.over(p, toward) {
		if r.to*climb >= o.Under && r.from*climb <= o.Height {
			return true
		}
	}
	return false
}
