package sparse

import (
	"math"
	"testing"
)

// The plain loops and the vector units must agree to rounding in single precision.
func TestRowKernelsAgree(t *testing.T) {
	single := func(n int, seed uint64) []float32 {
		v := make([]float32, n)
		for i, x := range randomVector(n, seed) {
			v[i] = float32(x)
		}
		return v
	}
	start := []int32{0, 0, 1, 4, 4, 9}
	node := []int32{4, 0, 1, 3, 2, 1, 0, 3, 4}
	for _, c := range []struct {
		b, size      int
		plain, quick func(from, end int, start, node []int32, value, x, r, q []float32)
	}{{2, 4, residual2Plain, residual2}, {3, 12, residual3Plain, residual3}} {
		value, x, r := single(c.size*9, 1), single(5*c.b, 2), single(5*c.b, 3)
		if c.b == 3 {
			for k := 3; k < len(value); k += 4 {
				value[k] = 0
			}
		}
		one, two := make([]float32, 5*c.b), make([]float32, 5*c.b)
		c.plain(0, 5, start, node, value, x, r, one)
		c.quick(2, 5, start, node, value, x, r, two)
		c.quick(0, 2, start, node, value, x, r, two)
		for i := range one {
			if math.Abs(float64(one[i]-two[i])) > 1e-6 {
				t.Errorf("blocks of %d, unknown %d: plain %g, vector %g", c.b, i, one[i], two[i])
			}
		}
	}
}

// A scaled level must multiply as the matrix it was made from does, for any number
// of unknowns a node.
func TestLevelIsTheMatrix(t *testing.T) {
	for _, b := range []int{1, 2, 3, 4} {
		c, x, _ := gridCells(6, 4)
		a := randomMatrix(NewPattern(len(x), b, c), 7)
		l, err := newLevel(rowsOf(a), false)
		if err != nil {
			t.Fatal(err)
		}
		// With A = L·Â·Lᵀ, L⁻¹·A·z is what Â makes of Lᵀ·z.
		z, az := randomVector(a.Unknowns(), 8), make([]float64, a.Unknowns())
		a.Multiply(az, z)
		l.enter(az, 1)
		want := append([]float32(nil), l.r...)
		hat := make([]float32, len(z))
		var lower [64]float64
		for i := 0; i < len(z); i += b {
			invertLower(lower[:], l.scale[i*b:(i+b)*b], b)
			for u := range b {
				for p := u; p < b; p++ {
					hat[i+u] += float32(lower[p*b+u] * z[i+p])
				}
			}
		}
		clear(l.r)
		l.residual(l.q, l.r, hat)
		for i := range want {
			if math.Abs(float64(want[i]+l.q[i])) > 3e-5*(1+math.Abs(float64(want[i]))) {
				t.Fatalf("%d unknowns a node: entry %d is %g, want %g", b, i, -l.q[i], want[i])
			}
		}
	}
}

// A matrix on a level that is not positive definite is refused with its node.
func TestMultigridRefuses(t *testing.T) {
	a, _, _ := sheetOn(t, 50, 50, 1e-3)
	a.AddDiagonal(2*700, -100)
	_, err := NewMultigrid(a, nil)
	if not, ok := err.(*NotPositive); !ok || not.Node != 700 {
		t.Errorf("got %v", err)
	}
}
