package sparse

import (
	"fmt"
	"runtime"
	"sync"
)

// slack is how far kernels may read past the end of a factor.
const slack = 64

// smallestPivot is the share of its own diagonal entry below which a pivot counts
// as zero: rounding leaves about 1e-15 of it, a plate of a thousand elements across
// keeps 1e-11.
const smallestPivot = 1e-13

// Factor is L with A = L·Lᵀ.
type Factor struct {
	*Symbolic
	value []float64
	limit []float64 // smallest pivot allowed, by column
	used  bool      // value holds something, or may
	kept  []*worker // one for each core, with the memory they had
}

// NotPositive says which unknown stops a matrix from being positive definite:
// usually a part that nothing holds.
type NotPositive struct {
	Node, Unknown int
}

func (e *NotPositive) Error() string {
	return fmt.Sprintf("the stiffness is not positive definite: unknown %d of node %d, or the part it belongs to, is held by nothing", e.Unknown, e.Node)
}

// Factor factors a matrix of the pattern that was analysed. workers is how many
// cores to use, 0 for all. The error is [NotPositive].
func (s *Symbolic) Factor(a *Matrix, workers int) (*Factor, error) {
	f := &Factor{Symbolic: s, value: make([]float64, s.Entries()+slack), limit: make([]float64, len(s.order)*s.Pattern.Block)}
	return f, f.Refactor(a, workers)
}

// Refactor factors other values of the same pattern in the same memory. After an
// error the factor cannot be used until a Refactor succeeds.
func (f *Factor) Refactor(a *Matrix, workers int) error {
	if a.Pattern != f.Pattern {
		panic("sparse: the matrix has another pattern than was analysed")
	}
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	f.setLimits(a)
	r := &run{Factor: f, matrix: a, clean: !f.used, rest: make([][]float64, len(f.rows))}
	f.used = true
	if workers == 1 {
		w := f.workers(1)[0]
		defer w.dropLarge()
		for s := range f.rows {
			if err := r.front(w, s); err != nil {
				return err
			}
		}
		return nil
	}
	return r.parallel(workers)
}

// workers returns n workers on their own, with the memory they had last time.
func (f *Factor) workers(n int) []*worker {
	for len(f.kept) < n {
		f.kept = append(f.kept, &worker{})
	}
	for _, w := range f.kept[:n] {
		w.team = 1
	}
	return f.kept[:n]
}

func (f *Factor) setLimits(a *Matrix) {
	b := a.Block
	for k, node := range f.order {
		v := a.Value[int(a.Start[node])*b*b:]
		for u := range b {
			f.limit[k*b+u] = smallestPivot * max(0, v[u*(b+1)])
		}
	}
}

// run is one factoring in progress.
type run struct {
	*Factor
	matrix *Matrix
	clean  bool        // value is zero as it came
	rest   [][]float64 // what each front leaves for its parent
}

// front assembles and eliminates front s.
func (r *run) front(w *worker, s int) error {
	b := r.Pattern.Block
	own, below := int(r.first[s+1]-r.first[s])*b, len(r.rows[s])*b
	ld, ldBelow := r.lead[s], roundUp(below)
	panel := r.value[r.offset[s]:]
	if !r.clean {
		clear(panel[:r.offset[s+1]-r.offset[s]])
	}
	r.enter(s, panel, ld)
	var rest []float64
	if below > 0 {
		rest = w.take(ldBelow * ldBelow)
	}
	for _, c := range r.child[s] {
		r.extendAdd(int(c), own, ld, panel, rest, ldBelow)
		w.give(r.rest[c])
		r.rest[c] = nil
	}
	first := int(r.first[s]) * b
	if bad := w.eliminate(own, own+below, ld, panel, r.limit[first:], rest, ldBelow); bad >= 0 {
		return &NotPositive{Node: int(r.order[(first+bad)/b]), Unknown: (first + bad) % b}
	}
	r.rest[s] = rest
	return nil
}

// enter puts the blocks of the matrix into a front.
func (r *run) enter(s int, panel []float64, ld int) {
	b := r.Pattern.Block
	for _, e := range r.entry[r.entryAt[s]:r.entryAt[s+1]] {
		slot, down, across := int(e.slot), 1, ld // of columns and rows of the block
		if slot < 0 {
			slot, down, across = ^slot, ld, 1
		}
		v := r.matrix.Value[slot*b*b : (slot+1)*b*b]
		to := panel[int(e.row)*b+int(e.col)*b*ld:]
		if b == 2 {
			to[0], to[across], to[down], to[down+across] = v[0], v[1], v[2], v[3]
			continue
		}
		for i := range b {
			for j := range b {
				to[i*down+j*across] = v[i*b+j]
			}
		}
	}
}

// extendAdd adds what a child left to the front of its parent.
func (r *run) extendAdd(c, own, ld int, panel, rest []float64, ldRest int) {
	b := r.Pattern.Block
	into, from := r.into[c], r.rest[c]
	ldFrom := roundUp(len(into) * b)
	runs := r.runs[c]
	for j, to := range into {
		first := runs[j]
		for u := range b {
			col := int(to)*b + u
			var target []float64
			shift := 0
			if col < own {
				target = panel[col*ld : (col+1)*ld]
			} else {
				target = rest[(col-own)*ldRest : (col-own+1)*ldRest]
				shift = own
			}
			source := from[(j*b+u)*ldFrom : (j*b+u+1)*ldFrom]
			for i, end := j, int(first); i < len(into); {
				t := target[int(into[i])*b-shift:]
				v := source[i*b : end*b]
				t = t[:len(v)]
				for k, x := range v {
					t[k] += x
				}
				i = end
				if i < len(into) {
					end = int(runs[i])
				}
			}
		}
	}
}

// parallel factors subtrees side by side, then the fronts above them one after
// another with all workers on each.
func (r *run) parallel(workers int) error {
	tops := r.subtrees(workers)
	errs := make([]error, len(tops))
	next := make(chan int, len(tops))
	for i := range tops {
		next <- i
	}
	close(next)
	done := make([]bool, len(r.rows))
	var all sync.WaitGroup
	team := r.workers(workers)
	for _, w := range team {
		all.Go(func() {
			for i := range next {
				for s := tops[i][0]; s <= tops[i][1] && errs[i] == nil; s++ {
					errs[i] = r.front(w, s)
				}
			}
		})
	}
	all.Wait()
	for i, t := range tops { // the earliest in elimination order is reported
		if errs[i] != nil {
			return errs[i]
		}
		for s := t[0]; s <= t[1]; s++ {
			done[s] = true
		}
	}
	w := team[0]
	w.team = workers
	defer func() {
		for _, w := range team {
			w.dropLarge()
		}
	}()
	for s := range r.rows {
		if done[s] {
			continue
		}
		if err := r.front(w, s); err != nil {
			return err
		}
	}
	return nil
}

// subtrees cuts the tree into runs of fronts that need nothing from each other, the
// heaviest opened until there are enough to share out.
func (r *run) subtrees(workers int) [][2]int {
	var tops []int
	for s, p := range r.parent {
		if p < 0 {
			tops = append(tops, s)
		}
	}
	total := r.Operations()
	for range 64 * workers {
		heavy := -1
		for i, s := range tops {
			if len(r.child[s]) > 0 && (heavy < 0 || r.work[s] > r.work[tops[heavy]]) {
				heavy = i
			}
		}
		if heavy < 0 || r.work[tops[heavy]] < total/float64(8*workers) {
			break
		}
		s := tops[heavy]
		tops = append(tops[:heavy], tops[heavy+1:]...)
		for _, c := range r.child[s] {
			tops = append(tops, int(c))
		}
	}
	return r.spans(tops)
}

// spans returns the first and last front of each subtree, in order.
func (r *run) spans(tops []int) [][2]int {
	size := make([]int, len(r.rows))
	for s, p := range r.parent {
		size[s]++
		if p >= 0 {
			size[p] += size[s]
		}
	}
	isTop := make([]bool, len(r.rows))
	for _, s := range tops {
		isTop[s] = true
	}
	var spans [][2]int
	for s, top := range isTop {
		if top {
			spans = append(spans, [2]int{s - size[s] + 1, s})
		}
	}
	return spans
}
