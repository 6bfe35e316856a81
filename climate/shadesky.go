package climate

import (
	"math"
	"slices"

	"slabwright/plan"
)

// skyBearings is the number of bearings over which the sky in view is summed.
const skyBearings = 180

// SkyBehind returns the share of the sky's radiation that a level surface still gets
// when everything up to a height angle is hidden all round: cos²β.
//
//	angle   of the top of what hides it above the horizon [degrees]
//
// A wall without end on one side leaves (1 + cos β)/2. Source: a sky of even
// brightness seen by a level plane; textbook.
func SkyBehind(angle float64) float64 {
	c := math.Cos(radians(angle))
	return c * c
}

// hidden is a span of height angles that an obstacle covers on one bearing, as the
// squared sines of its lower and upper end: their difference is the share of that
// bearing's sky.
type hidden struct{ from, to, through float64 }

// SkyView returns the share of the sky in view of a point on the slab among
// obstacles: 1 in the open, 0 inside a building. On each of 180 bearings the height
// angles they hide are joined, so that what stands behind another counts once.
//
// What lets sun through lets the sky through alike.
func SkyView(p plan.Point, obstacles []Obstacle) float64 {
	if len(obstacles) == 0 {
		return 1
	}
	seen := 0.0
	for i := range skyBearings {
		direction := plan.Direction((float64(i) + 0.5) * 360 / skyBearings)
		var spans []hidden
		for _, o := range obstacles {
			for _, r := range o.over(p, direction) {
				spans = append(spans, hidden{sineSquared(o.Under, r.to), sineSquared(o.Height, r.from), o.Through})
			}
		}
		seen += 1 - covered(spans)
	}
	return seen / skyBearings
}

// sineSquared is the squared sine of the height angle of a height at a distance.
func sineSquared(height, distance float64) float64 {
	if height == 0 && distance == 0 {
		return 1 // on its very foot: straight up
	}
	return height * height / (height*height + distance*distance)
}

// covered returns the length of all spans together, each part by the densest that
// covers it.
func covered(spans []hidden) float64 {
	var ends []float64
	for _, s := range spans {
		ends = append(ends, s.from, s.to)
	}
	slices.Sort(ends)
	sum := 0.0
	for i := 1; i < len(ends); i++ {
		middle, through := (ends[i-1]+ends[i])/2, 1.0
		for _, s := range spans {
			if s.from < middle && middle < s.to {
				through = math.Min(through, s.through)
			}
		}
		sum += (ends[i] - ends[i-1]) * (1 - through)
	}
	return sum
}
