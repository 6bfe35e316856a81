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
	n := len(x)
	r, z, d, q := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	a.Multiply(r, x)
	for i := range r {
		r[i] = rhs[i] - r[i]
	}
	size := math.Sqrt(inner(rhs, rhs))
	if size == 0 {
		clear(x)
		return 0, nil
	}
	rho := 0.0
	for {
		left := math.Sqrt(inner(r, r)) / size
		if left <= goal.Left {
			return rounds, nil
		}
		if rounds >= goal.Rounds || math.IsNaN(left) {
			return rounds, &NotSettled{rounds, left}
		}
		p.Precondition(z, r)
		before := rho
		rho = inner(r, z)
		if !(rho > 0) || math.IsInf(rho, 1) {
			return rounds, &NotSettled{rounds, left}
		}
		along := 0.0
		if before > 0 {
			along = rho / before
		}
		for i := range d {
			d[i] = z[i] + along*d[i]
		}
		a.Multiply(q, d)
		bend := inner(d, q)
		if !(bend > 0) || math.IsInf(bend, 1) {
			return rounds, &NotSettled{rounds, left}
		}
		step := rho / bend
		for i := range x {
			x[i] += step * d[i]
			r[i] -= step * q[i]
		}
		rounds++
	}
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
