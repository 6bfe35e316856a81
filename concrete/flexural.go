package concrete

import "math"

// FlexuralRatioEN returns the mean flexural tensile strength over the axial one
// for a member of a depth in mm.
//
// Source: EN 1992-1-1:2004 (3.23); from memory.
func FlexuralRatioEN(depth float64) float64 { return math.Max(1.6-depth/1000, 1) }

// FlexuralRatioMC returns the mean flexural tensile strength over the axial one
// for a beam of a depth in mm. The thinner the slab, the larger the share of its
// depth that softens before it breaks.
//
// Source: fib Model Code 2010 (5.1-8); from memory.
func FlexuralRatioMC(depth float64) float64 {
	a := 0.06 * math.Pow(depth, 0.7)
	return (1 + a) / a
}
