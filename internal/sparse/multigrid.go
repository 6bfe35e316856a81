package sparse

import (
	"math"
)

// Multigrid is a preconditioner whose work grows with the unknowns only: nodes are
// gathered into small groups, each moving as a rigid whole and smoothed a little; on
// the groups stands a smaller matrix, and so on down to one that is factored.
//
// For a million unknowns it needs about a quarter of the memory of a factor.
//
// Source: Vaněk, Mandel and Brezina, Algebraic multigrid by smoothed aggregation for
// second and fourth order elliptic problems, Computing 56 (1996).
type Multigrid struct {
	levels []*level
	bottom *Factor
	r, z   []float64 // on the bottom
}

type level struct {
	a       *Matrix
	smooth  *BlockDiagonal
	largest float64 // largest eigenvalue of the block diagonal's inverse times A
	carry   *transfer
	z, r    []float64 // of this level, on all but the finest
	first   []float64 // what the first visit brought
	q, d    []float64 // work of the smoother
}

const (
	bottomNodes = 1500 // factor below this
	mostLevels  = 12
)

// NewMultigrid builds the levels. modes are movements of all unknowns that cost
// little energy: the rigid movements of a sheet or plate. Without them (nil) each
// unknown moving alike everywhere is taken.
func NewMultigrid(a *Matrix, modes [][]float64) (*Multigrid, error) {
	if modes == nil {
		for u := range a.Block {
			m := make([]float64, a.Unknowns())
			for i := u; i < len(m); i += a.Block {
				m[i] = 1
			}
			modes = append(modes, m)
		}
	}
	m := &Multigrid{}
	for len(m.levels) < mostLevels && a.Nodes > bottomNodes {
		n := a.Unknowns()
		l := &level{a: a, smooth: NewBlockDiagonal(a), q: make([]float64, n), d: make([]float64, n)}
		if len(m.levels) > 0 {
			l.z, l.r, l.first = make([]float64, n), make([]float64, n), make([]float64, n)
		}
		full := rowsOf(a)
		l.largest = l.largestEigenvalue()
		group, groups := full.gather()
		if groups > a.Nodes*3/4 {
			break
		}
		tent, coarse := tentative(a.Block, group, groups, modes)
		l.carry = full.smoothed(tent, l.smooth, 4./3/l.largest)
		m.levels = append(m.levels, l)
		a, modes = l.carry.galerkin(full), coarse
	}
	x, err := Analyse(a.Pattern, nil, nil).Factor(a, 1)
	if err != nil {
		return nil, err
	}
	m.bottom = x
	m.r, m.z = make([]float64, a.Unknowns()), make([]float64, a.Unknowns())
	return m, nil
}

// Levels returns how many matrices there are, the factored one included.
func (m *Multigrid) Levels() int { return len(m.levels) + 1 }

// Precondition goes once down and up again.
func (m *Multigrid) Precondition(z, r []float64) { m.cycle(0, z, r) }

func (m *Multigrid) cycle(k int, z, r []float64) {
	if k == len(m.levels) {
		m.bottom.SolveTo(z, r)
		return
	}
	l := m.levels[k]
	clear(z)
	l.relax(z, r, true)
	l.a.Multiply(l.q, z)
	for i := range l.q {
		l.q[i] = r[i] - l.q[i]
	}
	nextR, nextZ := m.r, m.z
	if k+1 < len(m.levels) {
		nextR, nextZ = m.levels[k+1].r, m.levels[k+1].z
	}
	l.carry.down(nextR, l.q)
	m.cycle(k+1, nextZ, nextR)
	if k+1 < len(m.levels) {
		m.levels[k+1].again(m, k+1)
	}
	l.carry.addUp(z, nextZ)
	l.relax(z, r, false)
}

// again goes down a second time for what the first left over. Small levels cost
// little, and one visit leaves too much.
func (l *level) again(m *Multigrid, k int) {
	first := l.first
	copy(first, l.z)
	l.a.Multiply(l.q, l.z)
	for i, v := range l.q {
		l.r[i] -= v
	}
	m.cycle(k, l.z, l.r)
	for i, v := range first {
		l.z[i] += v
	}
}

// smoothingRounds is the degree of the polynomial of each smoothing.
const smoothingRounds = 2

// relax damps the upper part of the spectrum by a Chebyshev polynomial, from z on.
//
// Source: Adams, Brezina, Hu and Tuminaro, Journal of Computational Physics 188 (2003).
func (l *level) relax(z, r []float64, fromZero bool) {
	top := 1.1 * l.largest
	middle, half := (top+top/8)/2, (top-top/8)/2
	rho := half / middle
	for k := range smoothingRounds {
		if k == 0 && fromZero {
			copy(l.q, r)
		} else {
			l.a.Multiply(l.q, z)
			for i := range l.q {
				l.q[i] = r[i] - l.q[i]
			}
		}
		l.smooth.Precondition(l.q, l.q)
		if k == 0 {
			for i, v := range l.q {
				l.d[i] = v / middle
				z[i] += l.d[i]
			}
			continue
		}
		next := 1 / (2*middle/half - rho)
		a, b := next*rho, 2*next/half
		for i, v := range l.q {
			l.d[i] = a*l.d[i] + b*v
			z[i] += l.d[i]
		}
		rho = next
	}
}

// lanczosSteps are enough for the largest eigenvalue to a few per cent.
const lanczosSteps = 14

// largestEigenvalue estimates it by conjugate gradients from a right-hand side that
// has something of every direction: their steps make up a small tridiagonal matrix
// with nearly the same largest eigenvalue.
//
// Source: Golub and Van Loan, Matrix computations, section 10.2.5 of the third edition.
func (l *level) largestEigenvalue() float64 {
	n := l.a.Unknowns()
	r, z, d, q := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	state := uint64(88172645463325252)
	for i := range r {
		state ^= state << 13
		state ^= state >> 7
		state ^= state << 17
		r[i] = float64(state>>11)/(1<<53) - 0.5
	}
	var diagonal, beside []float64
	rho, before, lastStep := 0.0, 0.0, 0.0
	for k := range lanczosSteps {
		l.smooth.Precondition(z, r)
		before, rho = rho, inner(r, z)
		along := 0.0
		if k > 0 {
			along = rho / before
		}
		for i := range d {
			d[i] = z[i] + along*d[i]
		}
		l.a.Multiply(q, d)
		bend := inner(d, q)
		if !(rho > 0) || !(bend > 0) {
			break
		}
		step := rho / bend
		entry := 1 / step
		if k > 0 {
			entry += along / lastStep
			beside = append(beside, math.Sqrt(along)/lastStep)
		}
		diagonal = append(diagonal, entry)
		lastStep = step
		for i := range r {
			r[i] -= step * q[i]
		}
	}
	if len(diagonal) == 0 {
		return 1
	}
	return largestOfTridiagonal(diagonal, beside)
}

// largestOfTridiagonal halves an interval by counting how many eigenvalues lie above.
func largestOfTridiagonal(diagonal, beside []float64) float64 {
	low, high := 0.0, 0.0
	for i, d := range diagonal {
		reach := 0.0
		if i > 0 {
			reach += beside[i-1]
		}
		if i < len(beside) {
			reach += beside[i]
		}
		low, high = math.Max(low, d), math.Max(high, d+reach)
	}
	anyAbove := func(x float64) bool {
		p := 1.0
		for i, d := range diagonal {
			next := d - x
			if i > 0 {
				next -= beside[i-1] * beside[i-1] / p
			}
			if next >= 0 {
				return true
			}
			p = next
		}
		return false
	}
	for range 60 {
		if mid := (low + high) / 2; anyAbove(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}
