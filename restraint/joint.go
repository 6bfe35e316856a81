package restraint

// JointOpening returns how far a joint opens when the panels on both sides shorten,
// each from its middle.
//
// It is a mean over joints that all work. Where every second or third has not
// cracked below its groove, the one that has takes the movement of all.
//
//	base            share of the movement the base lets through: 0.65 on a
//	                stabilised base, 0.80 on granular, 1 free                [–]
//	spacing         of working joints, half on each side                     [m]
//	expansion       coefficient of thermal expansion                         [1/K]
//	cooling         fall of mean temperature since the joint formed          [K]
//	shrinkage       drying and autogenous, positive                          [–]
//
// Result in m. Source: AASHTO Guide 1993 (Darter and Barenberg 1977), from memory.
func JointOpening(base, spacing, expansion, cooling, shrinkage float64) float64 {
	return base * spacing * (expansion*cooling + shrinkage)
}

// JointSpacingFor returns the spacing at which the opening of [JointOpening]
// reaches a limit. Textbook limits are about 1.3 mm for interlock and 6.4 mm for
// dowelled joints (from memory). Result in m.
func JointSpacingFor(limit, base, expansion, cooling, shrinkage float64) float64 {
	return limit / (base * (expansion*cooling + shrinkage))
}

// LateralDemand returns how far a dowel must be able to move sideways, parallel to
// its own joint: the difference of shortening of the panels on the two sides, from
// the point where both stand still.
//
// Two panels cast together and aligned shorten alike: no demand. New concrete
// beside old, or a long strip beside short panels, makes a round bar without side
// room pin the corner, and the slab cracks behind the bars.
//
//	strainHere, strainBeyond   shortening on either side since the bar was held   [–]
//	fromFixedPoint             distance along the joint from where both stand
//	                           still to the bar                                   [m]
//
// Result in m, never negative. Source: geometry.
func LateralDemand(strainHere, strainBeyond, fromFixedPoint float64) float64 {
	d := (strainHere - strainBeyond) * fromFixedPoint
	if d < 0 {
		return -d
	}
	return d
}

// FillerWidth returns the width of joint that a sealant needs for a movement.
//
//	movement     opening and closing together                                 [m]
//	capability   share of its width that the sealant stretches, such as 0.25  [–]
//
// Result in m. Source: ISO 11600 classes, from memory.
func FillerWidth(movement, capability float64) float64 { return movement / capability }
