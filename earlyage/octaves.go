package earlyage

import "math"

// octaves finds the place of a positive number among points that divide every
// doubling into 16 equal parts. The place comes from the bits of the number, so
// it costs no logarithm.
type octaves struct{ base, count int }

const octaveShift = 52 - 4 // keeps the exponent and four bits of the mantissa

// newOctaves covers the numbers from low to high.
func newOctaves(low, high float64) octaves {
	base := int(math.Float64bits(low) >> octaveShift)
	return octaves{base, int(math.Float64bits(high)>>octaveShift) - base + 2}
}

// point returns the i-th point.
func (o octaves) point(i int) float64 {
	return math.Float64frombits(uint64(o.base+i) << octaveShift)
}

// place returns the point below x and the share of the way to the next. Below the
// first point it gives the first, above the last the last.
func (o octaves) place(x float64) (i int, share float64) {
	i = int(math.Float64bits(x)>>octaveShift) - o.base
	switch {
	case i < 0:
		return 0, 0
	case i > o.count-2:
		return o.count - 2, 1
	}
	low := o.point(i)
	return i, (x - low) / (o.point(i+1) - low)
}
