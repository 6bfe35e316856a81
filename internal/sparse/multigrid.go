package sparse

import (
	"math"
	"runtime"
)

// Multigrid is a preconditioner whose work grows with the unknowns only: nodes are
// gathered into small groups, each moving as a rigid whole and smoothed a little; on
// the groups stands a smaller matrix, and so on down to one that is factored. What it
// keeps is in single precision, which halves the memory it moves; the search around
// it stays in double precision, and so does its answer.
//
// For a million unknowns it needs about a quarter of the memory of a factor.
//
// Source: Vaněk, Mandel and Brezina, Algebraic multigrid by smoothed aggregation for
// second and fourth order elliptic problems, Computing 56 (1996).
type Multigrid struct {
	levels   []*level
	bottom   *Factor
	z, r     []float32 // on the bottom
	z64, r64 []float64
}

const (
	// smoothed is the step of the smoothing that groups get, in shares of the largest
	// eigenvalue; the source takes 4/3, this takes fewer rounds on sheets.
	smoothed    = 1.5
	bottomNodes = 1500 // factor below this
	mostLevels  = 12
)

// NewMultigrid builds the levels. modes are movements of all unknowns that cost
// little energy: the rigid movements of a sheet or plate. Without them (nil) each
// unknown moving alike everywhere is taken. The error is [NotPositive]; on a matrix
// of groups it names a group for the node.
func NewMultigrid(a *Matrix, modes [][]float64) (*Multigrid, error) {
	if modes == nil {
		modes = evenModes(a)
	}
	m := &Multigrid{}
	for len(m.levels) < mostLevels && a.Nodes > bottomNodes {
		full := rowsOf(a)
		group, groups := full.gather()
		if groups > a.Nodes*3/4 {
			break
		}
		l, err := newLevel(full, len(m.levels) == 0)
		if err != nil {
			return nil, err
		}
		l.largest = l.largestEigenvalue()
		tent, coarse := tentative(a.Block, group, groups, modes)
		carry := full.smoothed(tent, NewBlockDiagonal(a), smoothed/float64(l.largest))
		if k := len(m.levels); k > 0 {
			m.levels[k-1].carry.scaleCoarse(l)
		}
		m.levels = append(m.levels, l)
		a, modes = carry.galerkin(full), coarse
		carry.scaleFine(l)
		l.carry = carry
	}
	x, err := Analyse(a.Pattern, nil, nil).Factor(a, 1)
	if err != nil {
		return nil, err
	}
	m.bottom = x
	n := a.Unknowns()
	m.r, m.z, m.r64, m.z64 = make([]float32, n), make([]float32, n), make([]float64, n), make([]float64, n)
	return m, nil
}

// Use sets how many cores a visit may take, 0 for all. Answers do not depend on it.
func (m *Multigrid) Use(workers int) {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	for _, l := range m.levels {
		l.workers = workers
	}
}

// evenModes lets each unknown move alike everywhere.
func evenModes(a *Matrix) [][]float64 {
	var modes [][]float64
	for u := range a.Block {
		m := make([]float64, a.Unknowns())
		for i := u; i < len(m); i += a.Block {
			m[i] = 1
		}
		modes = append(modes, m)
	}
	return modes
}

// Levels returns how many matrices there are, the factored one included.
func (m *Multigrid) Levels() int { return len(m.levels) + 1 }

// Precondition goes once down and up again.
func (m *Multigrid) Precondition(z, r []float64) {
	if len(m.levels) == 0 {
		m.bottom.SolveTo(z, r)
		return
	}
	l := m.levels[0]
	size := math.Sqrt(inner(r, r))
	if !(size > 0) || math.IsInf(size, 1) {
		copy(z, r) // nothing, or nothing to be helped
		return
	}
	l.enter(r, size)
	m.cycle(0)
	l.leave(z, size)
}

// enter brings a right-hand side, divided by size, to the scale of the level.
func (l *level) enter(r []float64, size float64) {
	b := l.block
	size = 1 / size
	for i := 0; i < len(r); i += b {
		s := l.scale[i*b : (i+b)*b]
		for u := range b {
			sum := 0.0
			for c, v := range s[u*b : u*b+u+1] {
				sum += v * r[i+c]
			}
			l.r[i+u] = float32(sum * size)
		}
	}
}

// leave brings the answer back.
func (l *level) leave(z []float64, size float64) {
	b := l.block
	for i := 0; i < len(z); i += b {
		s := l.scale[i*b : (i+b)*b]
		for u := range b {
			sum := 0.0
			for c := u; c < b; c++ {
				sum += s[c*b+u] * float64(l.z[i+c])
			}
			z[i+u] = sum * size
		}
	}
}

// cycle sets z of level k to about the solution for r.
func (m *Multigrid) cycle(k int) {
	if k == len(m.levels) {
		for i, v := range m.r {
			m.r64[i] = float64(v)
		}
		m.bottom.SolveTo(m.z64, m.r64)
		for i, v := range m.z64 {
			m.z[i] = float32(v)
		}
		return
	}
	l := m.levels[k]
	l.smoothFromZero()
	z, r := m.z, m.r
	if k+1 < len(m.levels) {
		z, r = m.levels[k+1].z, m.levels[k+1].r
	}
	l.carry.down(r, l.q)
	m.cycle(k + 1)
	if k > 0 && k+1 < len(m.levels) {
		m.again(k + 1)
	}
	l.carry.addUp(l.z, z)
	l.smooth()
}

// again goes down a second time for what the first left over. Small levels cost
// little, and one visit leaves too much.
func (m *Multigrid) again(k int) {
	l := m.levels[k]
	copy(l.first, l.z)
	l.residual(l.r, l.r, l.z)
	m.cycle(k)
	for i, v := range l.first {
		l.z[i] += v
	}
}

// lanczosSteps are enough for the largest eigenvalue to a few per cent.
const lanczosSteps = 8

// largestEigenvalue estimates it by conjugate gradients from a right-hand side that
// has something of every direction: their steps make up a small tridiagonal matrix
// with nearly the same largest eigenvalue.
//
// Source: Golub and Van Loan, Matrix computations, section 10.2.5 of the third edition.
func (l *level) largestEigenvalue() float32 {
	r, d, q := l.r, l.d, l.q
	clear(d)
	state := uint64(88172645463325252)
	for i := range r {
		state ^= state << 13
		state ^= state >> 7
		state ^= state << 17
		r[i] = float32(state>>40)/(1<<24) - 0.5
	}
	clear(l.z)
	var diagonal, beside []float64
	rho, lastStep := 0.0, 0.0
	for k := range lanczosSteps {
		before := rho
		rho = innerSingle(r, r)
		along := 0.0
		if k > 0 {
			along = rho / before
		}
		for i, v := range r {
			d[i] = v + float32(along)*d[i]
		}
		l.residual(q, l.z, d) // −A·d
		bend := -innerSingle(d, q)
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
		for i, v := range q {
			r[i] += float32(step) * v
		}
	}
	if len(diagonal) == 0 {
		return 1
	}
	return float32(largestOfTridiagonal(diagonal, beside))
}

// innerSingle is the inner product, summed in double precision.
func innerSingle(a, b []float32) float64 {
	var s0, s1 float64
	b = b[:len(a)]
	i := 0
	for ; i+2 <= len(a); i += 2 {
		s0 += float64(a[i]) * float64(b[i])
		s1 += float64(a[i+1]) * float64(b[i+1])
	}
	for ; i < len(a); i++ {
		s0 += float64(a[i]) * float64(b[i])
	}
	return s0 + s1
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
