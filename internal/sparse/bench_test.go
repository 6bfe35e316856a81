package sparse

import (
	"fmt"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// BenchmarkFront factors one dense matrix with the kernels here and with gonum's, to
// show which to use.
func BenchmarkFront(b *testing.B) {
	for _, n := range []int{24, 96, 400} {
		g := mat.NewDense(n, n, randomVector(n*n, 1))
		var full mat.SymDense
		full.SymOuterK(1, g)
		for i := range n {
			full.SetSym(i, i, full.At(i, i)+1)
		}
		ld := roundUp(n)
		panel := make([]float64, n*ld+slack)
		b.Run(fmt.Sprintf("here/%d", n), func(b *testing.B) {
			w := &worker{team: 1}
			limit := make([]float64, n+4)
			for b.Loop() {
				for j := range n {
					copy(panel[j*ld:j*ld+n], full.RawSymmetric().Data[j*n:])
				}
				if w.eliminate(n, n, ld, panel, limit, nil, 0) >= 0 {
					b.Fatal("not positive definite")
				}
			}
		})
		b.Run(fmt.Sprintf("gonum/%d", n), func(b *testing.B) {
			var chol mat.Cholesky
			for b.Loop() {
				if !chol.Factorize(&full) {
					b.Fatal("not positive definite")
				}
			}
		})
	}
}

// BenchmarkCores factors a square grid with 80 000 unknowns on one core and on two.
func BenchmarkCores(b *testing.B) {
	c, x, y := gridCells(200, 200)
	p := NewPattern(len(x), 2, c)
	a := randomMatrix(p, 1)
	s := Analyse(p, x, y)
	for _, workers := range []int{1, 2} {
		f, err := s.Factor(a, workers)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprint(workers), func(b *testing.B) {
			for b.Loop() {
				if err := f.Refactor(a, workers); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
