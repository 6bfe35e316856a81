package mesh

import "math"

// An expansion is a number held exactly as a sum of floats that do not overlap,
// smallest first. The operations below are exact as long as nothing overflows or
// underflows; [Domain] keeps its coordinates far from both.
//
// Source: Shewchuk, Adaptive precision floating-point arithmetic and fast robust
// geometric predicates, Discrete & Computational Geometry 18 (1997), section 2.

// twoSum returns a+b as a rounded sum and the exact remainder.
func twoSum(a, b float64) (sum, rest float64) {
	sum = a + b
	bPart := sum - a
	aPart := sum - bPart
	return sum, (a - aPart) + (b - bPart)
}

// twoProduct returns a·b as a rounded product and the exact remainder.
func twoProduct(a, b float64) (product, rest float64) {
	product = a * b
	return product, math.FMA(a, b, -product)
}

// difference writes a−b into out as an expansion of one or two terms.
func difference(out []float64, a, b float64) []float64 {
	d, rest := twoSum(a, -b)
	if rest != 0 {
		out = append(out, rest)
	}
	return append(out, d)
}

// sumOf writes e+f into out, which must share no memory with either.
func sumOf(out, e, f []float64) []float64 {
	out = out[:0]
	var q, rest float64
	for i, j := 0, 0; i < len(e) || j < len(f); {
		var term float64
		if j == len(f) || (i < len(e) && math.Abs(e[i]) < math.Abs(f[j])) {
			term = e[i]
			i++
		} else {
			term = f[j]
			j++
		}
		if q, rest = twoSum(q, term); rest != 0 {
			out = append(out, rest)
		}
	}
	if q != 0 || len(out) == 0 {
		out = append(out, q)
	}
	return out
}

// scaled writes e·b into out, which must share no memory with e.
func scaled(out, e []float64, b float64) []float64 {
	out = out[:0]
	q, rest := twoProduct(e[0], b)
	if rest != 0 {
		out = append(out, rest)
	}
	for _, term := range e[1:] {
		p, pRest := twoProduct(term, b)
		s, sRest := twoSum(q, pRest)
		if sRest != 0 {
			out = append(out, sRest)
		}
		if q, rest = twoSum(p, s); rest != 0 {
			out = append(out, rest)
		}
	}
	if q != 0 || len(out) == 0 {
		out = append(out, q)
	}
	return out
}

// negated flips the sign of e in place.
func negated(e []float64) []float64 {
	for i := range e {
		e[i] = -e[i]
	}
	return e
}
