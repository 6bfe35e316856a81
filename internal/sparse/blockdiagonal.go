package sparse

import "math"

// BlockDiagonal is the inverse of the blocks on the diagonal of a matrix: the
// cheapest preconditioner.
type BlockDiagonal struct {
	block int
	value []float64 // inverse blocks, row by row
}

// NewBlockDiagonal inverts the blocks on the diagonal. A block that is not positive
// definite is taken as its diagonal, entries not above 0 as 1.
func NewBlockDiagonal(a *Matrix) *BlockDiagonal {
	b := a.Block
	d := &BlockDiagonal{b, make([]float64, a.Nodes*b*b)}
	for j := range a.Nodes {
		v := a.Value[int(a.Start[j])*b*b:][:b*b]
		to := d.value[j*b*b : (j+1)*b*b]
		if !invert(to, v, b) {
			clear(to)
			for u := range b {
				to[u*(b+1)] = 1
				if v[u*(b+1)] > 0 {
					to[u*(b+1)] = 1 / v[u*(b+1)]
				}
			}
		}
	}
	return d
}

// Precondition sets z to the inverse blocks times r; z may be r.
func (d *BlockDiagonal) Precondition(z, r []float64) {
	b := d.block
	if b == 2 {
		for j := 0; j < len(r); j += 2 {
			v := d.value[2*j : 2*j+4]
			z[j], z[j+1] = v[0]*r[j]+v[1]*r[j+1], v[2]*r[j]+v[3]*r[j+1]
		}
		return
	}
	for j := 0; j < len(r); j += b {
		v := d.value[j*b : (j+b)*b]
		var own [8]float64
		copy(own[:b], r[j:])
		for i := range b {
			sum := 0.0
			for k, w := range v[i*b : i*b+b] {
				sum += w * own[k]
			}
			z[j+i] = sum
		}
	}
}

// factorSmall sets l to the Cholesky factor of a small symmetric matrix, row by row,
// and reports whether it is positive definite.
func factorSmall(l *[64]float64, v []float64, b int) bool {
	for j := range b {
		for i := j; i < b; i++ {
			s := v[i*b+j]
			for k := range j {
				s -= l[i*b+k] * l[j*b+k]
			}
			if i > j {
				l[i*b+j] = s / l[j*b+j]
				continue
			}
			if !(s > smallestPivot*v[j*b+j]) || math.IsInf(s, 1) {
				return false
			}
			l[j*b+j] = math.Sqrt(s)
		}
	}
	return true
}

// invert sets to to the inverse of a small symmetric matrix by Cholesky and reports
// whether it is positive definite.
func invert(to, v []float64, b int) bool {
	var l [64]float64
	if !factorSmall(&l, v, b) {
		return false
	}
	for c := range b {
		var x [8]float64
		x[c] = 1
		for i := range b {
			for k := range i {
				x[i] -= l[i*b+k] * x[k]
			}
			x[i] /= l[i*b+i]
		}
		for i := b - 1; i >= 0; i-- {
			for k := i + 1; k < b; k++ {
				x[i] -= l[k*b+i] * x[k]
			}
			x[i] /= l[i*b+i]
			to[i*b+c] = x[i]
		}
	}
	return true
}
