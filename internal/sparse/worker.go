package sparse

import "math/bits"

// worker is what one goroutine needs to itself.
type worker struct {
	team   int // how many may share one large front
	packed []float64
	strip  []float64
	mates  []*worker            // who help with one front
	free   [classes][][]float64 // blocks for the next fronts, by size
}

// mate returns helper number k.
func (w *worker) mate(k int) *worker {
	for len(w.mates) <= k {
		w.mates = append(w.mates, &worker{})
	}
	return w.mates[k]
}

// Blocks come in four sizes to each power of two.
const classes = 4 * 48

// classOf returns the smallest class whose blocks hold n numbers, and their size.
func classOf(n int) (class, size int) {
	power := max(bits.Len(uint(n-1)), 5) - 3 // quarter steps below the power of two
	step := 1 << power
	steps := (n + step - 1) >> power
	return 4*power + steps - 4, steps << power
}

// largerClasses is how much larger a block may be than asked for: twice, at most.
const largerClasses = 4

// take returns a zeroed block of n numbers.
func (w *worker) take(n int) []float64 {
	class, size := classOf(n)
	for k := class; k <= class+largerClasses; k++ {
		if last := len(w.free[k]) - 1; last >= 0 {
			block := w.free[k][last][:n]
			w.free[k] = w.free[k][:last]
			clear(block)
			return block
		}
	}
	return make([]float64, n, size)
}

// give takes a block back.
func (w *worker) give(block []float64) {
	class, size := classOf(cap(block))
	if size == cap(block) { // always so for what take made, unless the allocator rounds
		w.free[class] = append(w.free[class], block)
	}
}

// largeBlock is too much to keep between factors.
const largeBlock = 1 << 19

func (w *worker) dropLarge() {
	for class, blocks := range w.free {
		if len(blocks) > 0 && cap(blocks[0]) > largeBlock {
			w.free[class] = nil
		}
	}
}
