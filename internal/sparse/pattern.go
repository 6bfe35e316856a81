package sparse

import "slices"

// Pattern says which blocks of a symmetric matrix can differ from zero. Only
// blocks on and below the diagonal are kept: column j holds rows
// Row[Start[j]:Start[j+1]], rising, the first of them j itself.
type Pattern struct {
	Nodes int
	Block int     // unknowns per node
	Start []int32 // one more than nodes
	Row   []int32

	connect Connectivity
	slot    []int32 // where each pair of nodes of each element goes; ^slot if transposed
	pairs   []int32 // first pair of each element
}

// NewPattern finds the pattern of the matrix that the elements make together.
// Every node has a diagonal block even if no element touches it.
func NewPattern(nodes, block int, connect Connectivity) *Pattern {
	if nodes <= 0 || block <= 0 || block > 8 {
		panic("sparse: a pattern needs nodes, and 1 to 8 unknowns at each")
	}
	connect.check(nodes)
	p := &Pattern{Nodes: nodes, Block: block, connect: connect}
	p.findRows()
	p.mapElements()
	return p
}

// Unknowns returns the number of unknowns.
func (p *Pattern) Unknowns() int { return p.Nodes * p.Block }

func (p *Pattern) findRows() {
	at, element := p.connect.elementsAt(p.Nodes)
	p.Start = make([]int32, p.Nodes+1)
	p.Row = make([]int32, 0, p.Nodes*6)
	seen := make([]int32, p.Nodes)
	for j := range int32(p.Nodes) {
		p.Row = append(p.Row, j)
		seen[j] = j + 1
		for _, e := range element[at[j]:at[j+1]] {
			for _, i := range p.connect.Of(int(e)) {
				if i > j && seen[i] != j+1 {
					seen[i] = j + 1
					p.Row = append(p.Row, i)
				}
			}
		}
		sortShort(p.Row[p.Start[j]:])
		p.Start[j+1] = int32(len(p.Row))
	}
}

// sortShort sorts by insertion when that is quicker.
func sortShort(a []int32) {
	if len(a) > 24 {
		slices.Sort(a)
		return
	}
	for i := 1; i < len(a); i++ {
		v, k := a[i], i
		for ; k > 0 && a[k-1] > v; k-- {
			a[k] = a[k-1]
		}
		a[k] = v
	}
}

func (p *Pattern) mapElements() {
	elements := p.connect.Elements()
	p.pairs = make([]int32, elements+1)
	for e := range elements {
		m := p.connect.Start[e+1] - p.connect.Start[e]
		p.pairs[e+1] = p.pairs[e] + m*(m+1)/2
	}
	p.slot = make([]int32, p.pairs[elements])
	at := 0
	for e := range elements {
		nodes := p.connect.Of(e)
		for a, na := range nodes {
			for _, nb := range nodes[:a+1] {
				if na >= nb {
					p.slot[at] = p.find(na, nb)
				} else {
					p.slot[at] = ^p.find(nb, na)
				}
				at++
			}
		}
	}
}

// find returns the place of block (row, col), row ≥ col, which must exist.
func (p *Pattern) find(row, col int32) int32 {
	lo, hi := p.Start[col], p.Start[col+1]
	for hi-lo > 8 {
		mid := (lo + hi) / 2
		if p.Row[mid] <= row {
			lo = mid
		} else {
			hi = mid
		}
	}
	for p.Row[lo] != row {
		lo++
	}
	return lo
}
