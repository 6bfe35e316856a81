package mesh

import "math"

// unitRoundoff is half the gap between 1 and the next float.
const unitRoundoff = 1.0 / (1 << 53)

// orientError bounds the rounding of the plain determinant, relative to the sum
// of the sizes of its two products. Each factor is a rounded difference, each
// product and the last difference are rounded once more: with u the roundoff,
// (1+u)³ on each product and (1+u) on the result, so |error| ≤ (3u+O(u²))·sum,
// and the sum itself is known to (1+u)⁴; 16u² covers the higher powers.
const orientError = (3 + 16*unitRoundoff) * unitRoundoff

// Orient is positive when a, b, c turn left, negative when they turn right and
// zero only when they lie exactly on one line. Its size is close to twice the
// area of the triangle; its sign is exact.
//
// Source: Shewchuk, Discrete & Computational Geometry 18 (1997), section 4.1.
func Orient(a, b, c Point) float64 {
	left := (a[0] - c[0]) * (b[1] - c[1])
	right := (a[1] - c[1]) * (b[0] - c[0])
	det := left - right
	if bound := orientError * (math.Abs(left) + math.Abs(right)); det > bound || -det > bound {
		return det
	}
	return orientExact(a, b, c)
}

// orientExact multiplies the exact differences out without any rounding.
func orientExact(a, b, c Point) float64 {
	var ax, ay, bx, by [2]float64
	acx, acy := difference(ax[:0], a[0], c[0]), difference(ay[:0], a[1], c[1])
	bcx, bcy := difference(bx[:0], b[0], c[0]), difference(by[:0], b[1], c[1])
	var det [16]float64
	d := crossOf(det[:0], acx, acy, bcx, bcy)
	return d[len(d)-1]
}

// crossOf writes ux·vy − uy·vx into out, for components of at most two terms.
func crossOf(out, ux, uy, vx, vy []float64) []float64 {
	var p, q, spareA, spareB [8]float64
	left := smallProduct(p[:0], spareA[:0], spareB[:0], ux, vy)
	right := smallProduct(q[:0], spareA[:0], spareB[:0], uy, vx)
	return sumOf(out, left, negated(right))
}

// smallProduct writes e·f into out for f of one or two terms.
func smallProduct(out, spareA, spareB, e, f []float64) []float64 {
	if len(f) == 1 {
		return scaled(out, e, f[0])
	}
	return sumOf(out, scaled(spareA, e, f[0]), scaled(spareB, e, f[1]))
}
