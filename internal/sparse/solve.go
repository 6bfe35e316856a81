package sparse

import (
	"math"
	"runtime"
	"sync"
	"sync/atomic"
)

// Solve returns the solutions of A·x = rhs for any number of right-hand sides, on all
// cores.
func (f *Factor) Solve(rhs ...[]float64) [][]float64 {
	out := make([][]float64, len(rhs))
	var next atomic.Int64
	work := func() {
		for i := int(next.Add(1)) - 1; i < len(rhs); i = int(next.Add(1)) - 1 {
			out[i] = make([]float64, len(rhs[i]))
			f.SolveTo(out[i], rhs[i])
		}
	}
	var all sync.WaitGroup
	for range min(len(rhs), runtime.GOMAXPROCS(0)) - 1 {
		all.Go(work)
	}
	work()
	all.Wait()
	return out
}

// SolveTo solves A·x = rhs; x and rhs may be the same.
func (f *Factor) SolveTo(x, rhs []float64) {
	b := f.Pattern.Block
	if len(x) != f.Pattern.Unknowns() || len(rhs) != len(x) {
		panic("sparse: vector and matrix differ in length")
	}
	y := make([]float64, len(x))
	for k, node := range f.order {
		copy(y[k*b:k*b+b], rhs[int(node)*b:])
	}
	work := make([]float64, f.tallest())
	for s := range f.rows {
		f.forward(s, y, work)
	}
	for s := len(f.rows) - 1; s >= 0; s-- {
		f.backward(s, y, work)
	}
	for k, node := range f.order {
		copy(x[int(node)*b:int(node)*b+b], y[k*b:])
	}
}

func (f *Factor) tallest() int {
	most := 0
	for _, l := range f.lead {
		most = max(most, l)
	}
	return most
}

// forward solves with the own columns of a front and passes on to the rows below.
func (f *Factor) forward(s int, y, work []float64) {
	b := f.Pattern.Block
	first, own := int(f.first[s])*b, int(f.first[s+1]-f.first[s])*b
	ld := f.lead[s]
	own1 := y[first : first+own]
	sum := work[:len(f.rows[s])*b]
	clear(sum)
	panel := f.value[f.offset[s]:]
	j := 0
	for ; j+2 <= own; j += 2 {
		c0, c1 := panel[j*ld:j*ld+own+len(sum)], panel[(j+1)*ld:(j+1)*ld+own+len(sum)]
		x0 := own1[j] / c0[j]
		x1 := (own1[j+1] - x0*c0[j+1]) / c1[j+1]
		own1[j], own1[j+1] = x0, x1
		rest := own1[j+2:]
		d0, d1 := c0[j+2:own], c1[j+2:own]
		for i := range rest {
			rest[i] -= x0*d0[i] + x1*d1[i]
		}
		d0, d1 = c0[own:][:len(sum)], c1[own:][:len(sum)]
		for i := range sum {
			sum[i] += x0*d0[i] + x1*d1[i]
		}
	}
	for ; j < own; j++ {
		c0 := panel[j*ld : j*ld+own+len(sum)]
		x0 := own1[j] / c0[j]
		own1[j] = x0
		for i := j + 1; i < own; i++ {
			own1[i] -= x0 * c0[i]
		}
		for i, v := range c0[own:] {
			sum[i] += x0 * v
		}
	}
	for k, row := range f.rows[s] {
		to := y[int(row)*b : int(row)*b+b]
		for u := range to {
			to[u] -= sum[k*b+u]
		}
	}
}

// backward solves with the transposed columns of a front.
func (f *Factor) backward(s int, y, work []float64) {
	b := f.Pattern.Block
	first, own := int(f.first[s])*b, int(f.first[s+1]-f.first[s])*b
	ld := f.lead[s]
	all := work[:own+len(f.rows[s])*b]
	copy(all, y[first:first+own])
	for k, row := range f.rows[s] {
		copy(all[own+k*b:own+k*b+b], y[int(row)*b:])
	}
	panel := f.value[f.offset[s]:]
	j := own - 1
	if own%2 == 1 {
		c0 := panel[j*ld : j*ld+len(all)]
		v := all[j]
		for i := j + 1; i < len(all); i++ {
			v -= c0[i] * all[i]
		}
		all[j] = v / c0[j]
		j--
	}
	for ; j > 0; j -= 2 {
		c0, c1 := panel[(j-1)*ld:(j-1)*ld+len(all)], panel[j*ld:j*ld+len(all)]
		v0, v1 := all[j-1], all[j]
		var p0, p1, q0, q1 float64
		x, d0, d1 := all[j+1:], c0[j+1:], c1[j+1:]
		d0, d1 = d0[:len(x)], d1[:len(x)]
		i := 0
		for ; i+2 <= len(x); i += 2 {
			p0 += d0[i] * x[i]
			p1 += d1[i] * x[i]
			q0 += d0[i+1] * x[i+1]
			q1 += d1[i+1] * x[i+1]
		}
		if i < len(x) {
			p0 += d0[i] * x[i]
			p1 += d1[i] * x[i]
		}
		v1 = (v1 - p1 - q1) / c1[j]
		v0 = (v0 - p0 - q0 - c0[j]*v1) / c0[j-1]
		all[j-1], all[j] = v0, v1
	}
	copy(y[first:first+own], all[:own])
}

// SolveRefined solves A·x = rhs and improves x by solving for what is left over,
// until that no longer falls. It returns the largest left-over as a share of the
// largest entry of rhs.
func (f *Factor) SolveRefined(a *Matrix, x, rhs []float64) (left float64) {
	f.SolveTo(x, rhs)
	scale := largest(rhs)
	if scale == 0 {
		return 0
	}
	r, best := make([]float64, len(x)), append([]float64(nil), x...)
	left = math.Inf(1)
	for range 5 {
		a.Multiply(r, x)
		for i := range r {
			r[i] = rhs[i] - r[i]
		}
		now := largest(r) / scale
		if !(now < left) {
			break
		}
		copy(best, x)
		halted := now > left/4
		left = now
		if halted || now < 1e-16 {
			break
		}
		f.SolveTo(r, r)
		for i := range x {
			x[i] += r[i]
		}
	}
	copy(x, best)
	return left
}

func largest(v []float64) float64 {
	most := 0.0
	for _, x := range v {
		most = math.Max(most, math.Abs(x)) // NaN stays NaN
	}
	return most
}
