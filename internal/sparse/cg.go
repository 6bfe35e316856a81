package sparse

import (
	"fmt"
	"math"
)

// Preconditioner gives roughly the solution of A·z = r, quickly. It must be
// symmetric and positive definite: [Factor] of A or of a matrix like it, [Multigrid],
// [BlockDiagonal].
type Preconditioner interface {
	Precondition(z, r []float64)
}

// Precondition solves with the factor.
func (f *Factor) Precondition(z, r []float64) { f.SolveTo(z, r) }

// NotSettled says that [ConjugateGradients] stopped before its goal.
type NotSettled struct {
	Rounds int
	Left   float64 // residual as a share of the right-hand side
}

func (e *NotSettled) Error() string {
	return fmt.Sprintf("the equations did not settle in %d rounds: %.2g of the right-hand side is left over", e.Rounds, e.Left)
}

// Goal says when [ConjugateGradients] may stop.
type Goal struct {
	Left   float64 // residual as a share of the right-hand side, by length; 0 for 1e-10
	Rounds int     // most rounds; 0 for 1000
}

// ConjugateGradients solves A·x = rhs. It starts from what x holds: an old solution
// is a good start. It returns the rounds taken. After the error [NotSettled] x is the
// last state, never NaN if the start was not; a matrix that turns out not to be
// positive definite ends the search in the same way.
//
// Source: Hestenes and Stiefel, Journal of Research of the National Bureau of
// Standards 49 (1952); with a preconditioner, Golub and Van Loan, Matrix
// computations, algorithm 11.5.1.
func ConjugateGradients(a *Matrix, x, rhs []float64, p Preconditioner, goal Goal) (rounds int, err error) {
	if goal.Left == 0 {
		goal.Left = 1e-10
	}
	if goal.Rounds == 0 {
		goal.Rounds = 1000
	}
	size := math.Sqrt(inner(rhs, rhs))
	if size == 0 {
		clear(x)
		return 0, nil
	}
	n := len(x)
	s := &search{a: a, p: p, x: x, r: make([]float64, n), z: make([]float64, n), d: make([]float64, n), q: make([]float64, n)}
	a.Multiply(s.r, x)
	for i := range s.r {
		s.r[i] = rhs[i] - s.r[i]
	}
	for {
		left := math.Sqrt(inner(s.r, s.r)) / size
		if left <= goal.Left {
			return rounds, nil
		}
		if rounds >= goal.Rounds || math.IsNaN(left) || !s.step() {
			return rounds, &NotSettled{rounds, left}
		}
		rounds++
	}
}

// search is one search by conjugate gradients: solution, residual, preconditioned
// residual, direction and its image.
type search struct {
	a             *Matrix
	p             Preconditioner
	x, r, z, d, q []float64
	rho           float64
}

// step goes to the lowest point along the next direction; false if there is none.
func (s *search) step() bool {
	s.p.Precondition(s.z, s.r)
	before := s.rho
	s.rho = inner(s.r, s.z)
	if !(s.rho > 0) || math.IsInf(s.rho, 1) {
		return false
	}
	along := 0.0
	if before > 0 {
		along = s.rho / before
	}
	for i, z := range s.z {
		s.d[i] = z + along*s.d[i]
	}
	s.a.Multiply(s.q, s.d)
	bend := inner(s.d, s.q)
	if !(bend > 0) || math.IsInf(bend, 1) {
		return false
	}
	far := s.rho / bend
	for i := range s.x {
		s.x[i] += far * s.d[i]
		s.r[i] -= far * s.q[i]
	}
	return true
}

// inner is the inner product, summed in four strands for speed; the order is fixed.
func inner(a, b []float64) float64 {
	var s0, s1, s2, s3 float64
	b = b[:len(a)]
	i := 0
	for ; i+4 <= len(a); i += 4 {
		s0 += a[i] * b[i]
		s1 += a[i+1] * b[i+1]
		s2 += a[i+2] * b[i+2]
		s3 += a[i+3] * b[i+3]
	}
	for ; i < len(a); i++ {
		s0 += a[i] * b[i]
	}
	return (s0 + s1) + (s2 + s3)
}
