package sparse

import (
	"sync"
)

// level is one matrix of [Multigrid] in single precision, scaled from both sides so
// that the blocks on the diagonal are ones: with Aii = Li·Liᵀ block (i, j) is
// Li⁻¹·Aij·Lj⁻ᵀ. Diagonal blocks are left out.
type level struct {
	block   int
	start   []int32 // one more than nodes
	node    []int32
	value   []float32 // see blockSize
	scale   []float64 // Li⁻¹, lower half row by row, block² a node
	largest float32   // largest eigenvalue
	carry   *transfer
	workers int // cores for a residual; 0 for one

	z, r, q, d []float32
	first      []float32 // what the first visit brought; nil on the finest
}

// blockSize is how many numbers a block takes. Blocks of two stand row by row, of
// three column by column with a fourth number for the vector units, others row by row.
func blockSize(b int) int {
	if b == 3 {
		return 12
	}
	return b * b
}

// newLevel scales a matrix. The error is [NotPositive].
func newLevel(f *fullRows, finest bool) (*level, error) {
	a := f.a
	b, n := a.Block, a.Unknowns()
	l := &level{block: b, start: f.start, node: f.node, value: make([]float32, len(f.node)*blockSize(b)), scale: make([]float64, a.Nodes*b*b)}
	for i := range a.Nodes {
		if !invertFactor(l.scale[i*b*b:(i+1)*b*b], a.Value[int(a.Start[i])*b*b:][:b*b], b) {
			return nil, &NotPositive{Node: i}
		}
	}
	l.fill(a)
	l.z, l.r, l.q, l.d = make([]float32, n), make([]float32, n), make([]float32, n), make([]float32, n)
	if !finest {
		l.first = make([]float32, n)
	}
	return l, nil
}

// fill stores every block of a matrix and its transpose where [rowsOf] lists them.
func (l *level) fill(a *Matrix) {
	b := a.Block
	var block, turned [64]float64
	next := append([]int32(nil), l.start...)
	for j := range a.Nodes {
		for s := int(a.Start[j]) + 1; s < int(a.Start[j+1]); s++ {
			i := int(a.Row[s])
			scaleBlock(&block, a.Value[s*b*b:(s+1)*b*b], l.scale[i*b*b:(i+1)*b*b], l.scale[j*b*b:(j+1)*b*b], b)
			for k := range b * b {
				turned[k] = block[k%b*b+k/b]
			}
			l.put(int(next[i]), block[:b*b])
			l.put(int(next[j]), turned[:b*b])
			next[i]++
			next[j]++
		}
	}
}

// scaleBlock sets to to left·v·rightᵀ, left and right lower triangles.
func scaleBlock(to *[64]float64, v, left, right []float64, b int) {
	if b == 2 {
		v, left, right = v[:4], left[:4], right[:4]
		h00, h01 := left[0]*v[0], left[0]*v[1]
		h10, h11 := left[2]*v[0]+left[3]*v[2], left[2]*v[1]+left[3]*v[3]
		to[0], to[1] = h00*right[0], h00*right[2]+h01*right[3]
		to[2], to[3] = h10*right[0], h10*right[2]+h11*right[3]
		return
	}
	var half [64]float64 // left·v
	for r := range b {
		for p := range r + 1 {
			w := left[r*b+p]
			for c := range b {
				half[r*b+c] += w * v[p*b+c]
			}
		}
	}
	for r := range b {
		for c := range b {
			sum := 0.0
			for p := range c + 1 {
				sum += half[r*b+p] * right[c*b+p]
			}
			to[r*b+c] = sum
		}
	}
}

// put stores block k, given row by row.
func (l *level) put(k int, v []float64) {
	b := l.block
	to := l.value[k*blockSize(b) : (k+1)*blockSize(b)]
	if b == 3 {
		for c := range 3 {
			to[4*c], to[4*c+1], to[4*c+2] = float32(v[c]), float32(v[3+c]), float32(v[6+c])
		}
		return
	}
	for i, x := range v {
		to[i] = float32(x)
	}
}

// residual sets q = r − A·x, on several cores where that pays. Every row is summed by
// one of them, so the answer does not depend on their number.
func (l *level) residual(q, r, x []float32) {
	nodes := len(l.start) - 1
	if l.workers <= 1 || nodes < parallelNodes {
		l.residualRows(0, nodes, q, r, x)
		return
	}
	var all sync.WaitGroup
	for w := range l.workers {
		all.Go(func() { l.residualRows(w*nodes/l.workers, (w+1)*nodes/l.workers, q, r, x) })
	}
	all.Wait()
}

// parallelNodes is from how many nodes on more than one core pays.
const parallelNodes = 20_000

func (l *level) residualRows(from, end int, q, r, x []float32) {
	switch l.block {
	case 2:
		residual2(from, end, l.start, l.node, l.value, x, r, q)
	case 3:
		residual3(from, end, l.start, l.node, l.value, x, r, q)
	default:
		l.residualPlain(from, end, q, r, x)
	}
}

func (l *level) residualPlain(from, end int, q, r, x []float32) {
	b := l.block
	for i := from; i < end; i++ {
		var sum [8]float32
		copy(sum[:b], x[i*b:])
		for k := l.start[i]; k < l.start[i+1]; k++ {
			v := l.value[int(k)*b*b : int(k+1)*b*b]
			xj := x[int(l.node[k])*b:][:b]
			for u := range b {
				for c, w := range xj {
					sum[u] += v[u*b+c] * w
				}
			}
		}
		for u := range b {
			q[i*b+u] = r[i*b+u] - sum[u]
		}
	}
}

// A smoothing is a Chebyshev polynomial of the second degree that damps the upper
// part of the spectrum, from an eighth of its top on: two steps along residuals, by
// firstStep, and then by again times the first and by second times the new residual.
//
// Source: Adams, Brezina, Hu and Tuminaro, Journal of Computational Physics 188 (2003).
func (l *level) smoothing() (firstStep, again, second float32) {
	top := 1.1 * l.largest
	middle, half := (top+top/8)/2, (top-top/8)/2
	rho := half / middle
	next := 1 / (2*middle/half - rho)
	return 1 / middle, next * rho, 2 * next / half
}

// smoothFromZero smooths with z = 0 before and leaves the residual in q.
func (l *level) smoothFromZero() {
	one, again, two := l.smoothing()
	for i, v := range l.r {
		l.z[i] = one * v
	}
	l.residual(l.q, l.r, l.z)
	for i, v := range l.q {
		d := again*l.z[i] + two*v
		l.z[i] += d
	}
	l.residual(l.q, l.r, l.z)
}

// smooth smooths from what z holds.
func (l *level) smooth() {
	one, again, two := l.smoothing()
	l.residual(l.q, l.r, l.z)
	for i, v := range l.q {
		l.d[i] = one * v
		l.z[i] += l.d[i]
	}
	l.residual(l.q, l.r, l.z)
	for i, v := range l.q {
		l.z[i] += again*l.d[i] + two*v
	}
}

// invertFactor sets to to L⁻¹ of a small symmetric matrix L·Lᵀ, lower half row by
// row, and reports whether it is positive definite.
func invertFactor(to, v []float64, b int) bool {
	var l [64]float64
	if !factorSmall(&l, v, b) {
		return false
	}
	invertLower(to, l[:], b)
	return true
}
