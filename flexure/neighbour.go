package flexure

import "math"

// NeighbourMoments returns the bending moments that a load at a distance makes on an
// unbounded slab, as shares of the load: along the line to the load, and square to
// it. Positive is tension underneath; beyond about 1.1 l the moment along the line
// turns negative, so a second wheel may ease the first.
//
//	distance   r/l, above 0      [–]
//	poisson    ratio             [–]
//
// Source: Timoshenko and Woinowsky-Krieger, elastic foundation, from memory; exact
// for a point load.
func NeighbourMoments(distance, poisson float64) (along, across float64) {
	ker, slope := KelvinNear(distance)
	along = (ker - (1-poisson)*slope/distance) / (2 * math.Pi)
	across = (poisson*ker + (1-poisson)*slope/distance) / (2 * math.Pi)
	return along, across
}

// KelvinNear returns ker x and kei' x, the two Kelvin functions that
// [NeighbourMoments] is made of; x above 0.
func KelvinNear(x float64) (ker, keiPrime float64) {
	ker, _, _, keiPrime = kelvin(x)
	return ker, keiPrime
}
