package flexure

import "math"

// EdgeLift is the shape of the end of a long slab that curls up, on ground that pushes
// but cannot pull, under its own weight.
type EdgeLift struct {
	Lifted float64 // length off the ground, m; 0 where all of it keeps touching
	Edge   float64 // height of the edge over where the slab lies flat, m

	curvature, weight, stiffness, beta float64
	a, b                               float64 // of the part that touches
}

// EdgeLiftOf returns the lift of an edge.
//
//	curvature   of the slab if nothing held it, positive for edges up         [1/m]
//	stiffness   of the plate per width, E·h³/12(1−ν²)                          [N·m]
//	support     k, pressure over settlement                                    [N/m³]
//	weight      of the slab per area                                           [Pa]
//
// Along the edge the slab stays straight, so the curvature that counts across it is
// (1+ν) times the free one; the caller puts that in. The part off the ground is a
// cantilever of length s, the rest a beam on springs, and where they meet the pressure is
// none: (1+s/(l√2))² = curvature·l²·k/weight. Below 1 nothing comes off the ground and the
// shape is that of [Strip] for a long strip. For curvature below 0 the shape is turned
// over: ends down.
//
// Creep is left out, and so is what the far end does: good for panels longer than
// about 4 l. Source: our own solution of D w”” + k w = 0, statics.
func EdgeLiftOf(curvature, stiffness, support, weight float64) EdgeLift {
	beta := math.Pow(support/(4*stiffness), 0.25)
	e := EdgeLift{curvature: curvature, weight: weight, stiffness: stiffness, beta: beta}
	if reach := 2 * beta * beta * curvature * stiffness / weight; reach > 1 {
		e.Lifted = (math.Sqrt(reach) - 1) / beta
		e.a = -weight / support
		e.b = weight*e.Lifted/(2*stiffness*math.Pow(beta, 3)) - e.a
	} else {
		e.b = curvature / (2 * beta * beta)
		e.a = -e.b
	}
	e.Edge = e.At(0)
	return e
}

// At returns the height over where the slab lies flat, at a distance from the edge. Both
// in m; the height is positive up.
func (e EdgeLift) At(fromEdge float64) float64 {
	if fromEdge >= e.Lifted {
		x := e.beta * (fromEdge - e.Lifted)
		return -math.Exp(-x) * (e.a*math.Cos(x) + e.b*math.Sin(x))
	}
	s, l := e.Lifted-fromEdge, e.Lifted
	bent := -e.curvature*s*s/2 + e.weight/(2*e.stiffness)*(l*l*s*s/2-l*s*s*s/3+s*s*s*s/12)
	return -(e.a - s*e.beta*(e.b-e.a) + bent)
}
