package restraint

// SpacingRule returns the panel length of the rule of thumb: so many times the
// thickness. Guides name 24 (dry bases, small stone), 30 and 36 (low shrinkage),
// with caps of 4.5 to 5.5 m for plain slabs.
//
// Source: ACI 360R and trade notes that quote it, seen in an excerpt.
func SpacingRule(times, thickness float64) float64 { return times * thickness }

// Aspect returns the long side over the short side of a panel. Guides ask for 1.5
// at most (ACI 302.1R), road practice for 1.25.
func Aspect(a, b float64) float64 {
	if a < b {
		a, b = b, a
	}
	return a / b
}

// SawDepth returns the depth of cut as a share of the thickness, 1/4 by usual
// practice and 1/3 for thick slabs or stabilised bases; never less than least
// (0.025 m by practice, 0 for the bare rule).
func SawDepth(share, thickness, least float64) float64 {
	return max(share*thickness, least)
}
