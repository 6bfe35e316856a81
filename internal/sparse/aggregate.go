package sparse

// fullRows gives every row of a matrix whole: neighbours and the blocks that lead to
// them.
type fullRows struct {
	a     *Matrix
	start []int32
	node  []int32
	slot  []int32 // ^slot where the block must be transposed
}

// rowsOf lists the rows, the diagonal left out.
func rowsOf(a *Matrix) *fullRows {
	n := a.Nodes
	f := &fullRows{a: a, start: make([]int32, n+2)}
	for j := range n {
		for _, i := range a.Row[a.Start[j]+1 : a.Start[j+1]] {
			f.start[i+2]++
			f.start[j+2]++
		}
	}
	for i := 2; i < len(f.start); i++ {
		f.start[i] += f.start[i-1]
	}
	f.node, f.slot = make([]int32, f.start[n+1]), make([]int32, f.start[n+1])
	put := func(row, node, slot int32) {
		at := &f.start[row+1]
		f.node[*at], f.slot[*at] = node, slot
		*at++
	}
	for j := range int32(n) {
		for s := a.Start[j] + 1; s < a.Start[j+1]; s++ {
			put(a.Row[s], j, s)
			put(j, a.Row[s], ^s)
		}
	}
	f.start = f.start[:n+1]
	return f
}

// entry returns entry (r, c) of the block at a signed slot.
func (f *fullRows) entry(slot int32, r, c int) float64 {
	b := f.a.Block
	if slot < 0 {
		return f.a.Value[int(^slot)*b*b+c*b+r]
	}
	return f.a.Value[int(slot)*b*b+r*b+c]
}

// strongShare is how large a block must be, beside those on the diagonal, to tie two
// nodes together.
const strongShare = 0.06

// gather puts nodes into groups of a node and its strong neighbours. It returns the
// group of each node.
//
// Source: Vaněk, Mandel and Brezina 1996, algorithm 5.1.
func (f *fullRows) gather() (group []int32, groups int) {
	n := f.a.Nodes
	strong := f.strong()
	group = make([]int32, n)
	for i := range group {
		group[i] = -1
	}
	for i := range n { // a node whose strong neighbours are all free starts a group
		if group[i] < 0 && f.allFree(i, strong, group) {
			f.claim(i, strong, group, int32(groups))
			groups++
		}
	}
	joined := append([]int32(nil), group...)
	for i := range n { // the rest join the neighbour's group
		for k := f.start[i]; k < f.start[i+1] && joined[i] < 0; k++ {
			if strong[k] {
				joined[i] = group[f.node[k]]
			}
		}
	}
	for i := range n { // and what is left makes its own
		if joined[i] < 0 {
			f.claim(i, strong, joined, int32(groups))
			groups++
		}
	}
	return joined, groups
}

// allFree says whether no strong neighbour of a node has a group.
func (f *fullRows) allFree(i int, strong []bool, group []int32) bool {
	for k := f.start[i]; k < f.start[i+1]; k++ {
		if strong[k] && group[f.node[k]] >= 0 {
			return false
		}
	}
	return true
}

// claim puts a node and its strong neighbours that are free into a group.
func (f *fullRows) claim(i int, strong []bool, group []int32, number int32) {
	group[i] = number
	for k := f.start[i]; k < f.start[i+1]; k++ {
		if strong[k] && group[f.node[k]] < 0 {
			group[f.node[k]] = number
		}
	}
}

// strong says which neighbours are tied, measured after every unknown is scaled to a
// diagonal of 1, so that units do not matter.
func (f *fullRows) strong() []bool {
	b := f.a.Block
	diagonal := make([]float64, f.a.Unknowns())
	for j := range f.a.Nodes {
		for u := range b {
			diagonal[j*b+u] = f.a.Value[int(f.a.Start[j])*b*b+u*(b+1)]
		}
	}
	strong := make([]bool, len(f.node))
	for i := range f.a.Nodes {
		for k := f.start[i]; k < f.start[i+1]; k++ {
			j := int(f.node[k])
			size := 0.0
			for r := range b {
				for c := range b {
					v := f.entry(f.slot[k], r, c)
					size += v * v / (diagonal[i*b+r] * diagonal[j*b+c])
				}
			}
			strong[k] = size > strongShare*strongShare*float64(b)
		}
	}
	return strong
}
