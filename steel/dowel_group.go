package steel

import "math"

// Reach of group action over the radius of relative stiffness of the slab: beyond
// it a dowel carries nothing of the load.
//
// ReachFriberg is the older, unsafe one for the dowel under the load; ReachFE is
// that of finite element work by Tabatabaie and Barenberg. Seen in lecture slides.
const (
	ReachFriberg = 1.8
	ReachFE      = 1.0
)

// GroupShare returns the part, 0 to 1, of the force of the dowel under the load
// that a dowel at a distance carries: falling on a line to nothing at the reach.
//
// Source: Friberg 1940; seen in lecture slides.
func GroupShare(distance, reach float64) float64 {
	return math.Max(0, 1-math.Abs(distance)/reach)
}

// EffectiveDowels returns how many dowels carrying the full force there would be.
//
//	places   of the dowels along the joint, any length unit
//	load     place of the load
//	reach    see [ReachFE], times the radius of relative stiffness
func EffectiveDowels(places []float64, load, reach float64) float64 {
	sum := 0.0
	for _, p := range places {
		sum += GroupShare(p-load, reach)
	}
	return sum
}

// WheelLoad is a load on the joint and the place along it.
type WheelLoad struct{ Force, Place float64 }

// DowelForces returns the shear force of each dowel under several loads, in the
// unit of the loads.
//
//	transferred   share of each load that crosses the joint, at most 0.5 for a long
//	              joint; 1 when the loads given are already what crosses
//
// A load out of reach of every dowel crosses none.
func DowelForces(places []float64, loads []WheelLoad, reach, transferred float64) []float64 {
	forces := make([]float64, len(places))
	for _, l := range loads {
		effective := EffectiveDowels(places, l.Place, reach)
		if effective == 0 {
			continue
		}
		for i, p := range places {
			forces[i] += transferred * l.Force / effective * GroupShare(p-l.Place, reach)
		}
	}
	return forces
}

// DowelRow returns the places of so many dowels at a spacing, the first at zero.
func DowelRow(count int, spacing float64) []float64 {
	places := make([]float64, count)
	for i := range places {
		places[i] = float64(i) * spacing
	}
	return places
}
