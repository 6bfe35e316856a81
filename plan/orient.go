package plan

import (
	"math"
	"math/big"
)

// orientErrorShare bounds the rounding error of the determinant in Turn as a share
// of the sum of its two products: (3 + 16ε)ε with ε = 2^-53 (Shewchuk's filter).
const orientErrorShare = (3 + 16*0x1p-53) * 0x1p-53

// Turn returns +1 when a, b, c turn left (anticlockwise), -1 when they turn right
// and 0 when they lie on one line. The answer is exact for the coordinates as
// given: where rounding could spoil the sign, it is worked out again in rational
// arithmetic.
func Turn(a, b, c Point) int {
	left := (a.X - c.X) * (b.Y - c.Y)
	right := (a.Y - c.Y) * (b.X - c.X)
	det := left - right
	if math.Abs(det) > orientErrorShare*(math.Abs(left)+math.Abs(right)) {
		return sign(det)
	}
	if (a.X == c.X || b.Y == c.Y) && (a.Y == c.Y || b.X == c.X) {
		return 0 // both products are nothing: three places along an axis, or two alike
	}
	return exactTurn(a, b, c)
}

func exactTurn(a, b, c Point) int {
	for _, v := range []float64{a.X, a.Y, b.X, b.Y, c.X, c.Y} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return 0
		}
	}
	minus := func(p, q float64) *big.Rat {
		return new(big.Rat).Sub(new(big.Rat).SetFloat64(p), new(big.Rat).SetFloat64(q))
	}
	left := new(big.Rat).Mul(minus(a.X, c.X), minus(b.Y, c.Y))
	right := new(big.Rat).Mul(minus(a.Y, c.Y), minus(b.X, c.X))
	return left.Cmp(right)
}

func sign(v float64) int {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}
