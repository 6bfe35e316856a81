package march

// tridiagonal is a factored tridiagonal matrix. Rows are lower[i] x[i-1] +
// diagonal[i] x[i] + upper[i] x[i+1]; factorAndSolve overwrites it so that solve can be
// called again and again.
type tridiagonal struct {
	lower, diagonal, upper []float64
}

func newTridiagonal(n int) tridiagonal {
	return tridiagonal{make([]float64, n), make([]float64, n), make([]float64, n)}
}

// factorAndSolve eliminates downward without pivoting, which is safe for the matrices
// of diffusion (diagonally dominant), and solves on the way: one pass down and one up.
// Afterwards lower holds the multipliers and diagonal the inverse pivots.
func (m tridiagonal) factorAndSolve(b []float64) {
	d := m.diagonal
	l, u := m.lower[:len(d)], m.upper[:len(d)]
	b = b[:len(d)]
	before, above, right := 1/d[0], u[0], b[0]
	d[0] = before
	for i := 1; i < len(d); i++ {
		f := l[i] * before
		l[i] = f
		before = 1 / (d[i] - f*above)
		above = u[i]
		d[i] = before
		right = b[i] - f*right
		b[i] = right
	}
	m.back(b)
}

// solve overwrites b with the solution.
func (m tridiagonal) solve(b []float64) {
	l := m.lower[:len(b)]
	right := b[0]
	for i := 1; i < len(b); i++ {
		right = b[i] - l[i]*right
		b[i] = right
	}
	m.back(b)
}

// back is the pass upward.
func (m tridiagonal) back(b []float64) {
	d, u := m.diagonal[:len(b)], m.upper[:len(b)]
	below := 0.0
	for i := len(b) - 1; i >= 0; i-- {
		below = (b[i] - u[i]*below) * d[i]
		b[i] = below
	}
}
