package sparse

import "sync"

// assembleChunk is how many element matrices are held at once; enough to make the
// hand-over between cores cheap, few enough to stay in the cache.
const assembleChunk = 256

// Element fills the matrix and the vector of element e, both zero before: ke has
// (m·b)² entries row by row, fe m·b, unknowns running node by node. Only entries of
// ke on and below the diagonal are read.
type Element func(e int, ke, fe []float64)

// Assemble adds the matrices of all elements to a and their vectors to vector,
// which may be nil. element is called from several goroutines at once if workers is
// above 1, never twice for one e.
func (a *Matrix) Assemble(workers int, vector []float64, element Element) {
	a.AssembleRange(workers, vector, 0, a.connect.Elements(), element)
}

// AssembleRange does the same for elements from up to, not including, end.
func (a *Matrix) AssembleRange(workers int, vector []float64, from, end int, element Element) {
	if from >= end {
		return
	}
	if vector == nil {
		vector = make([]float64, a.Unknowns())
	}
	most := 0
	for e := from; e < end; e++ {
		most = max(most, int(a.connect.Start[e+1]-a.connect.Start[e])*a.Block)
	}
	if workers <= 1 {
		buffer := make([]float64, most*(most+1))
		for e := from; e < end; e++ {
			a.makeElement(e, buffer, element)
			a.takeElement(e, buffer, vector)
		}
		return
	}
	a.assembleParallel(workers, most*(most+1), vector, from, end, element)
}

// makeElement has the caller fill the front of a buffer: the matrix, then the vector.
func (a *Matrix) makeElement(e int, buffer []float64, element Element) {
	m := len(a.connect.Of(e)) * a.Block
	buffer = buffer[:m*(m+1)]
	clear(buffer)
	element(e, buffer[:m*m:m*m], buffer[m*m:])
}

// takeElement adds what makeElement left.
func (a *Matrix) takeElement(e int, buffer, vector []float64) {
	a.AddElement(e, buffer)
	b := a.Block
	nodes := a.connect.Of(e)
	fe := buffer[len(nodes)*len(nodes)*b*b:]
	for i, n := range nodes {
		to := vector[int(n)*b : int(n)*b+b]
		for u := range to {
			to[u] += fe[i*b+u]
		}
	}
}

// assembleParallel has the workers make chunks of element matrices while one
// goroutine adds them up in the order of the elements, so that sums never depend on
// who was quicker.
func (a *Matrix) assembleParallel(workers, most int, vector []float64, from, end int, element Element) {
	chunks := (end - from + assembleChunk - 1) / assembleChunk
	chunk := func(c int) (first, last int) {
		return from + c*assembleChunk, min(end, from+(c+1)*assembleChunk)
	}
	done := make([]chan []float64, chunks)
	for c := range done {
		done[c] = make(chan []float64, 1)
	}
	next := make(chan int)
	free := make(chan []float64, 2*workers)
	for range cap(free) {
		free <- make([]float64, most*assembleChunk)
	}
	var all sync.WaitGroup
	for range workers {
		all.Go(func() {
			for {
				buffer := <-free // before the chunk: whoever holds the first chunk can go on
				c, more := <-next
				if !more {
					free <- buffer
					return
				}
				first, last := chunk(c)
				for e := first; e < last; e++ {
					a.makeElement(e, buffer[(e-first)*most:], element)
				}
				done[c] <- buffer
			}
		})
	}
	all.Go(func() {
		for c := range chunks {
			next <- c
		}
		close(next)
	})
	for c := range chunks {
		buffer := <-done[c]
		first, last := chunk(c)
		for e := first; e < last; e++ {
			a.takeElement(e, buffer[(e-first)*most:], vector)
		}
		free <- buffer
	}
	all.Wait()
}

// AddElement adds the matrix of element e, laid out as for [Element].
func (a *Matrix) AddElement(e int, ke []float64) {
	nodes := a.connect.Of(e)
	b, m := a.Block, len(nodes)*a.Block
	slot := a.slot[a.pairs[e]:a.pairs[e+1]]
	if b == 2 {
		a.addElement2(nodes, slot, ke, m)
		return
	}
	at := 0
	for i := range nodes {
		for j := range i + 1 {
			s := int(slot[at])
			at++
			switch {
			case i == j:
				a.addDiagonalBlock(s, ke, m, i)
			case nodes[i] == nodes[j]: // an element folded onto itself
				a.addBlock(s, ke[i*b*m+j*b:], m, false)
				a.addBlock(s, ke[i*b*m+j*b:], m, true)
			case s >= 0:
				a.addBlock(s, ke[i*b*m+j*b:], m, false)
			default:
				a.addBlock(^s, ke[i*b*m+j*b:], m, true)
			}
		}
	}
}

// addElement2 is AddElement for two unknowns a node.
func (a *Matrix) addElement2(nodes []int32, slot []int32, ke []float64, m int) {
	at := 0
	for i := range nodes {
		upper, lower := ke[2*i*m:2*i*m+2*i+2], ke[(2*i+1)*m:(2*i+1)*m+2*i+2]
		for j := range i {
			s := int(slot[at])
			at++
			k00, k01, k10, k11 := upper[2*j], upper[2*j+1], lower[2*j], lower[2*j+1]
			if nodes[i] == nodes[j] {
				v := a.Value[4*s : 4*s+4]
				v[0] += 2 * k00
				v[1] += k01 + k10
				v[2] += k10 + k01
				v[3] += 2 * k11
				continue
			}
			if s < 0 {
				s = ^s
				k01, k10 = k10, k01
			}
			v := a.Value[4*s : 4*s+4]
			v[0] += k00
			v[1] += k01
			v[2] += k10
			v[3] += k11
		}
		s := int(slot[at])
		at++
		v := a.Value[4*s : 4*s+4]
		v[0] += upper[2*i]
		v[1] += lower[2*i]
		v[2] += lower[2*i]
		v[3] += lower[2*i+1]
	}
}

// addBlock adds the block whose first entry is k[0] and whose rows are m apart.
func (a *Matrix) addBlock(slot int, k []float64, m int, transposed bool) {
	b := a.Block
	v := a.Value[slot*b*b : (slot+1)*b*b]
	for r := range b {
		for c := range b {
			if transposed {
				v[c*b+r] += k[r*m+c]
			} else {
				v[r*b+c] += k[r*m+c]
			}
		}
	}
}

// addDiagonalBlock adds the lower half of block (i, i) of ke to both halves.
func (a *Matrix) addDiagonalBlock(slot int, ke []float64, m, i int) {
	b := a.Block
	v := a.Value[slot*b*b : (slot+1)*b*b]
	k := ke[i*b*m+i*b:]
	for r := range b {
		v[r*b+r] += k[r*m+r]
		for c := range r {
			v[r*b+c] += k[r*m+c]
			v[c*b+r] += k[r*m+c]
		}
	}
}
