package mesh

import "math"

// inCircleError bounds the rounding of the plain determinant, relative to the
// same sum with every sign made positive. The longest chain is a difference
// (squared: two of them), the square, the sum of squares, two differences and a
// product in the minor, its subtraction, the product of both and two additions:
// ten roundings, so (10u+O(u²)); 96u² covers the higher powers and the rounding
// of the sum itself.
const inCircleError = (10 + 96*unitRoundoff) * unitRoundoff

// InCircle is positive when d lies inside the circle through a, b, c (which turn
// left), negative outside and zero only exactly on it.
//
// Source: Shewchuk, Discrete & Computational Geometry 18 (1997), section 4.4.
func InCircle(a, b, c, d Point) float64 {
	adx, ady := a[0]-d[0], a[1]-d[1]
	bdx, bdy := b[0]-d[0], b[1]-d[1]
	cdx, cdy := c[0]-d[0], c[1]-d[1]
	bc, cb := bdx*cdy, cdx*bdy
	ca, ac := cdx*ady, adx*cdy
	ab, ba := adx*bdy, bdx*ady
	aLift := adx*adx + ady*ady
	bLift := bdx*bdx + bdy*bdy
	cLift := cdx*cdx + cdy*cdy
	det := aLift*(bc-cb) + bLift*(ca-ac) + cLift*(ab-ba)
	bound := inCircleError * (aLift*(math.Abs(bc)+math.Abs(cb)) +
		bLift*(math.Abs(ca)+math.Abs(ac)) + cLift*(math.Abs(ab)+math.Abs(ba)))
	if det > bound || -det > bound {
		return det
	}
	return inCircleExact(a, b, c, d)
}

// inCircleExact multiplies the exact differences out without any rounding.
func inCircleExact(a, b, c, d Point) float64 {
	var buffer [6][2]float64
	ax, ay := difference(buffer[0][:0], a[0], d[0]), difference(buffer[1][:0], a[1], d[1])
	bx, by := difference(buffer[2][:0], b[0], d[0]), difference(buffer[3][:0], b[1], d[1])
	cx, cy := difference(buffer[4][:0], c[0], d[0]), difference(buffer[5][:0], c[1], d[1])
	var p, q, r [512]float64
	var pq [1024]float64
	var pqr [1536]float64
	aTerm := liftedMinor(p[:0], ax, ay, bx, by, cx, cy)
	bTerm := liftedMinor(q[:0], bx, by, cx, cy, ax, ay)
	cTerm := liftedMinor(r[:0], cx, cy, ax, ay, bx, by)
	det := sumOf(pqr[:0], sumOf(pq[:0], aTerm, bTerm), cTerm)
	return det[len(det)-1]
}

// liftedMinor writes |u|²·(v × w) into out.
func liftedMinor(out, ux, uy, vx, vy, wx, wy []float64) []float64 {
	var xx, yy, spareA, spareB [8]float64
	var lift, cross [16]float64
	l := sumOf(lift[:0],
		smallProduct(xx[:0], spareA[:0], spareB[:0], ux, ux),
		smallProduct(yy[:0], spareA[:0], spareB[:0], uy, uy))
	m := crossOf(cross[:0], vx, vy, wx, wy)
	var here, there [512]float64
	var s [32]float64
	sum, next := append(here[:0], 0), there[:0]
	for _, factor := range l {
		next = sumOf(next, sum, scaled(s[:0], m, factor))
		sum, next = next, sum
	}
	return append(out[:0], sum...)
}
