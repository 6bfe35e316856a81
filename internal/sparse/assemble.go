package sparse

import "sync"

// assembleChunk is how many element matrices are held at once; enough to make the
// hand-over between cores cheap, few enough to stay in the cache.
const assembleChunk = 256

// Assemble adds the matrices of all elements. matrix fills ke, the zeroed (m·b)²
// entries of element e row by row, unknowns running node by node; only entries on
// and below the diagonal are read. It is called from several goroutines at once if
// workers is above 1, never twice for one element.
func (a *Matrix) Assemble(workers int, matrix func(e int, ke []float64)) {
	elements := a.connect.Elements()
	if elements == 0 {
		return
	}
	most := 0
	for e := range elements {
		m := int(a.connect.Start[e+1]-a.connect.Start[e]) * a.Block
		most = max(most, m*m)
	}
	if workers <= 1 {
		ke := make([]float64, most)
		for e := range elements {
			m := len(a.connect.Of(e)) * a.Block
			clear(ke[:m*m])
			matrix(e, ke[:m*m])
			a.addElement(e, ke)
		}
		return
	}
	a.assembleParallel(workers, most, matrix)
}

// assembleParallel has the workers make chunks of element matrices while one
// goroutine adds them up in the order of the elements, so that sums never depend on
// who was quicker.
func (a *Matrix) assembleParallel(workers, most int, matrix func(e int, ke []float64)) {
	elements := a.connect.Elements()
	chunks := (elements + assembleChunk - 1) / assembleChunk
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
				for e := c * assembleChunk; e < min(elements, (c+1)*assembleChunk); e++ {
					m := len(a.connect.Of(e)) * a.Block
					ke := buffer[e%assembleChunk*most:][:m*m]
					clear(ke)
					matrix(e, ke)
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
		for e := c * assembleChunk; e < min(elements, (c+1)*assembleChunk); e++ {
			a.addElement(e, buffer[e%assembleChunk*most:])
		}
		free <- buffer
	}
	all.Wait()
}

// AddElement adds the matrix of element e, laid out as for [Matrix.Assemble].
func (a *Matrix) AddElement(e int, ke []float64) { a.addElement(e, ke) }

func (a *Matrix) addElement(e int, ke []float64) {
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

// addElement2 is addElement for two unknowns a node.
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
