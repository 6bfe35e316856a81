package march

// tridiagonal is a factored tridiagonal matrix. Rows are lower[i] x[i-1] +
// diagonal[i] x[i] + upper[i] x[i+1]; factor overwrites it so that solve can be
// called again and again.
type tridiagonal struct {
	lower, diagonal, upper []float64
}

func newTridiagonal(n int) tridiagonal {
	return tridiagonal{make([]float64, n), make([]float64, n), make([]float64, n)}
}

// factor eliminates downward without pivoting, which is safe for the matrices of
// diffusion (diagonally dominant). Afterwards lower holds the multipliers and
// diagonal the inverse pivots.
func (m tridiagonal) factor() {
	l, d, u := m.lower, m.diagonal, m.upper
	d[0] = 1 / d[0]
	for i := 1; i < len(d); i++ {
		l[i] *= d[i-1]
		d[i] = 1 / (d[i] - l[i]*u[i-1])
	}
}

// solve overwrites b with the solution.
func (m tridiagonal) solve(b []float64) {
	l, d, u := m.lower, m.diagonal, m.upper
	for i := 1; i < len(b); i++ {
		b[i] -= l[i] * b[i-1]
	}
	n := len(b) - 1
	b[n] *= d[n]
	for i := n - 1; i >= 0; i-- {
		b[i] = (b[i] - u[i]*b[i+1]) * d[i]
	}
}
