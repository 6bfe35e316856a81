package sparse

import "math"

// transfer carries vectors between two levels: row i is the node's part, block by
// coarse unknowns, in each of the groups node[start[i]:start[i+1]]. Single precision
// is enough: a transfer need only be near the best, as long as up and down are alike.
type transfer struct {
	fine, coarse int // unknowns per node on the two levels
	nodes        int // coarse ones
	start        []int32
	node         []int32
	value        []float32 // fine × coarse, row by row
}

// tentative makes each group move in the given modes only: the modes within the
// group, made orthogonal. It returns the same modes as the groups see them.
func tentative(block int, group []int32, groups int, modes [][]float64) (*transfer, [][]float64) {
	m := len(modes)
	t := &transfer{fine: block, coarse: m, nodes: groups, start: make([]int32, len(group)+1), node: group, value: make([]float32, len(group)*block*m)}
	for i := range group {
		t.start[i+1] = int32(i + 1)
	}
	members, of := bucket(group, groups)
	coarse := make([][]float64, m)
	for k := range coarse {
		coarse[k] = make([]float64, groups*m)
	}
	q := make([][]float64, m)
	for g := range groups {
		nodes := of[members[g]:members[g+1]]
		for k, mode := range modes {
			q[k] = q[k][:0]
			for _, i := range nodes {
				q[k] = append(q[k], mode[int(i)*block:(int(i)+1)*block]...)
			}
		}
		orthogonal(q, func(k, p int, part float64) { coarse[k][g*m+p] = part })
		for a, i := range nodes {
			for r := range block {
				for k := range m {
					t.value[(int(i)*block+r)*m+k] = float32(q[k][a*block+r])
				}
			}
		}
	}
	return t, coarse
}

// orthogonal makes vectors orthogonal and of length 1, those that depend on earlier
// ones zero, and calls see with the part of new vector p in old vector k.
//
// Source: the modified Gram-Schmidt process, Golub and Van Loan, Matrix computations,
// section 5.2.8.
func orthogonal(q [][]float64, see func(k, p int, part float64)) {
	for k := range q {
		whole := math.Sqrt(inner(q[k], q[k]))
		for p := range k {
			part := inner(q[p], q[k])
			see(k, p, part)
			for i, v := range q[p] {
				q[k][i] -= part * v
			}
		}
		size := math.Sqrt(inner(q[k], q[k]))
		if size <= 1e-8*whole { // too few nodes to tell this mode from the others
			clear(q[k])
			continue
		}
		see(k, k, size)
		for i := range q[k] {
			q[k][i] /= size
		}
	}
}

// bucket lists the members of each group.
func bucket(group []int32, groups int) (start, of []int32) {
	start = make([]int32, groups+2)
	for _, g := range group {
		start[g+2]++
	}
	for g := 2; g < len(start); g++ {
		start[g] += start[g-1]
	}
	of = make([]int32, len(group))
	for i, g := range group {
		of[start[g+1]] = int32(i)
		start[g+1]++
	}
	return start[:groups+1], of
}

// smoothed returns T − ω·D⁻¹·A·T for a tentative T, which has one group a node.
func (f *fullRows) smoothed(t *transfer, d *BlockDiagonal, omega float64) *transfer {
	n, b, m := f.a.Nodes, t.fine, t.coarse
	s := &transfer{fine: b, coarse: m, nodes: t.nodes, start: make([]int32, n+1)}
	s.node = make([]int32, 0, 3*n)
	s.value = make([]float32, 0, 3*n*b*m)
	place := make([]int32, t.nodes) // of a group within the row, plus one
	row := make([]float64, 0, 32*b*m)
	for i := range n {
		row = row[:0]
		first := len(s.node)
		at := func(g int32) []float64 {
			if place[g] == 0 {
				s.node = append(s.node, g)
				place[g] = int32(len(s.node) - first)
				row = append(row, make([]float64, b*m)...)
			}
			k := int(place[g]-1) * b * m
			return row[k : k+b*m]
		}
		f.addTimes(at(t.node[i]), f.a.Start[i], t.value[i*b*m:(i+1)*b*m], m)
		for k := f.start[i]; k < f.start[i+1]; k++ {
			j := int(f.node[k])
			f.addTimes(at(t.node[j]), f.slot[k], t.value[j*b*m:(j+1)*b*m], m)
		}
		inverse := d.value[i*b*b : (i+1)*b*b]
		for k, g := range s.node[first:] {
			place[g] = 0
			s.value = appendSmoothed(s.value, inverse, row[k*b*m:(k+1)*b*m], b, m, omega)
			if g == t.node[i] {
				for k, v := range t.value[i*b*m : (i+1)*b*m] {
					s.value[len(s.value)-b*m+k] += v
				}
			}
		}
		s.start[i+1] = int32(len(s.node))
	}
	return s
}

// appendSmoothed appends −ω·inverse·from, b by b times b by m.
func appendSmoothed(to []float32, inverse, from []float64, b, m int, omega float64) []float32 {
	for r := range b {
		for c := range m {
			sum := 0.0
			for p := range b {
				sum += inverse[r*b+p] * from[p*m+c]
			}
			to = append(to, float32(-omega*sum))
		}
	}
	return to
}

// addTimes adds the block at a signed slot times a block of m columns.
func (f *fullRows) addTimes(to []float64, slot int32, v []float32, m int) {
	b := f.a.Block
	at, down, across := int(slot), b, 1
	if slot < 0 {
		at, down, across = int(^slot), 1, b
	}
	e := f.a.Value[at*b*b : (at+1)*b*b]
	switch {
	case b == 2 && m == 3:
		addTimes23(to, e[0], e[across], e[down], e[3], v)
		return
	case b == 3 && m == 3:
		addTimes33(to, e, down, across, v)
		return
	}
	for r := range b {
		for p := range b {
			w := e[r*down+p*across]
			for c := range m {
				to[r*m+c] += w * float64(v[p*m+c])
			}
		}
	}
}

func addTimes23(to []float64, e00, e01, e10, e11 float64, v []float32) {
	to, v = to[:6], v[:6]
	for c := range 3 {
		v0, v1 := float64(v[c]), float64(v[3+c])
		to[c] += e00*v0 + e01*v1
		to[3+c] += e10*v0 + e11*v1
	}
}

func addTimes33(to, e []float64, down, across int, v []float32) {
	to, v, e = to[:9], v[:9], e[:9]
	for c := range 3 {
		v0, v1, v2 := float64(v[c]), float64(v[3+c]), float64(v[6+c])
		to[c] += e[0]*v0 + e[across]*v1 + e[2*across]*v2
		to[3+c] += e[down]*v0 + e[down+across]*v1 + e[down+2*across]*v2
		to[6+c] += e[2*down]*v0 + e[2*down+across]*v1 + e[2*down+2*across]*v2
	}
}
