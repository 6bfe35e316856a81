package sparse

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// The plain loops and the vector units must agree to rounding.
func TestKernelsAgree(t *testing.T) {
	for _, m := range []int{4, 8, 12, 16, 20, 24, 40} {
		for _, k := range []int{1, 3, 8, 64} {
			a, b := randomVector((m+16)*k+64, 1), randomVector(9*k+64, 2)
			c := randomVector(4*(m+4)+8, 3)
			plain := append([]float64(nil), c...)
			subtractStrip(m, k, a, m+3, tileRows, b, 7, c, m+4)
			subtractStripPlain(m, k, a, m+3, tileRows, b, 7, plain, m+4)
			for i := range c {
				if math.Abs(c[i]-plain[i]) > 1e-13 {
					t.Fatalf("m %d, k %d: entry %d is %g, plain %g", m, k, i, c[i], plain[i])
				}
			}
		}
		l := [10]float64{0.5, 0.3, 2, -0.4, 0.7, 1.5, 0.2, -0.9, 0.6, 0.8}
		c := randomVector(4*(m+4), 4)
		plain := append([]float64(nil), c...)
		solveStrip(m, &l, c, m+4)
		solveStripPlain(m, &l, plain, m+4)
		for i := range c {
			if math.Abs(c[i]-plain[i]) > 1e-13 {
				t.Fatalf("solving %d rows: entry %d is %g, plain %g", m, i, c[i], plain[i])
			}
		}
	}
}

// One dense front of awkward sizes against gonum's Cholesky, packed and not.
func TestDenseFront(t *testing.T) {
	for _, size := range [][2]int{{1, 1}, {2, 5}, {3, 3}, {6, 30}, {7, 50}, {66, 70}, {70, 260}, {130, 800}, {401, 401}} {
		own, rows := size[0], size[1]
		g := mat.NewDense(rows, rows+3, randomVector(rows*(rows+3), 5))
		var full mat.SymDense
		full.SymOuterK(1, g)
		ld, below := roundUp(rows), roundUp(rows-own)
		panel, rest := make([]float64, own*ld+slack), make([]float64, below*below)
		for j := range rows {
			for i := j; i < rows; i++ {
				if j < own {
					panel[i+j*ld] = full.At(i, j)
				} else {
					rest[i-own+(j-own)*below] = full.At(i, j)
				}
			}
		}
		for _, team := range []int{1, 2} {
			p, r := append([]float64(nil), panel...), append([]float64(nil), rest...)
			w := &worker{team: team}
			if bad := w.eliminate(own, rows, ld, p, make([]float64, own+4), r, below); bad >= 0 {
				t.Fatalf("%d of %d: pivot %d", own, rows, bad)
			}
			checkFront(t, own, rows, ld, below, p, r, &full)
		}
	}
}

// checkFront multiplies back: L·Lᵀ plus what is left must be the whole.
func checkFront(t *testing.T, own, rows, ld, below int, panel, rest []float64, full *mat.SymDense) {
	t.Helper()
	l := mat.NewDense(rows, own, nil)
	for j := range own {
		for i := j; i < rows; i++ {
			l.Set(i, j, panel[i+j*ld])
		}
	}
	var back mat.Dense
	back.Mul(l, l.T())
	for j := range rows {
		for i := j; i < rows; i++ {
			got := back.At(i, j)
			if j >= own {
				got += rest[i-own+(j-own)*below]
			}
			if math.Abs(got-full.At(i, j)) > 1e-11*float64(rows) {
				t.Fatalf("%d of %d: entry %d,%d is %g, want %g", own, rows, i, j, got, full.At(i, j))
			}
		}
	}
}
