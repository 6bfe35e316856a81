package sparse

import "slices"

// Symbolic is what can be said of the factor before any value is known: the order
// of elimination, the fronts, and where each block of the matrix enters. One can be
// shared by any number of factors at once.
type Symbolic struct {
	Pattern *Pattern
	order   []int32 // node eliminated as number k
	inverse []int32

	first  []int32   // first column of each front, one more than fronts
	rows   [][]int32 // rows below the own columns, rising, in the new numbering
	parent []int32   // front that takes the rest of each, −1 for none
	child  [][]int32
	into   [][]int32 // place in the parent's front of each of rows
	runs   [][]int32 // where the run of consecutive places in into ends
	offset []int     // where the own columns of each front begin in the factor
	lead   []int     // rows of each front, rounded up: distance of its columns
	work   []float64 // multiplications of each front with all below it

	entryAt []int32 // first entry of each front, one more than fronts
	entry   []entry
}

// Analyse finds an order with little fill and lays out the factor. x and y are the
// places of the nodes; without them (nil) places are made up from the graph.
func Analyse(p *Pattern, x, y []float64) *Symbolic {
	g := graphOf(p)
	if x == nil || y == nil {
		x, y = g.ownCoordinates()
	}
	if len(x) != p.Nodes || len(y) != p.Nodes {
		panic("sparse: places and nodes differ in number")
	}
	return analyse(p, g, dissect(g, x, y))
}

// AnalyseIn lays out the factor for an order that is known to have little fill, such as
// that of a mesh from which this one differs in few nodes: order[k] is the node eliminated
// as number k.
func AnalyseIn(p *Pattern, order []int32) *Symbolic {
	if len(order) != p.Nodes {
		panic("sparse: order and nodes differ in number")
	}
	return analyse(p, graphOf(p), order)
}

// Place returns the number under which each node is eliminated.
func (s *Symbolic) Place() []int32 { return s.inverse }

func analyse(p *Pattern, g graph, order []int32) *Symbolic {
	order, parent := inPostorder(g, order)
	inverse := inverseOf(order)
	count := columnCounts(g, order, inverse, parent)
	tree := findSupernodes(parent, count)
	tree.join()
	s := &Symbolic{Pattern: p}
	s.layFronts(tree, order)
	s.findRows(g)
	s.layFactor()
	s.mapBlocks()
	return s
}

// Entries returns how many numbers the factor holds, padding included.
func (s *Symbolic) Entries() int { return s.offset[len(s.offset)-1] }

// Fronts returns how many dense fronts there are.
func (s *Symbolic) Fronts() int { return len(s.rows) }

// Operations returns the multiplications needed to factor, about.
func (s *Symbolic) Operations() float64 {
	sum := 0.0
	for f, p := range s.parent {
		if p < 0 {
			sum += s.work[f]
		}
	}
	return sum
}

func inverseOf(order []int32) []int32 {
	inverse := make([]int32, len(order))
	for k, i := range order {
		inverse[i] = int32(k)
	}
	return inverse
}

// inPostorder renumbers so that every subtree of the elimination tree is one run;
// the fill stays the same.
func inPostorder(g graph, order []int32) (again, parent []int32) {
	parent = eliminationTree(g, order, inverseOf(order))
	post := postorder(parent)
	place := inverseOf(post)
	again = make([]int32, len(order))
	moved := make([]int32, len(order))
	for k, old := range post {
		again[k] = order[old]
		moved[k] = -1
		if p := parent[old]; p >= 0 {
			moved[k] = place[p]
		}
	}
	return again, moved
}

// layFronts numbers the joined supernodes and the columns in them.
func (s *Symbolic) layFronts(t *superTree, order []int32) {
	final, up := t.joined()
	number := make([]int32, len(t.columns))
	parts := make([][]int32, len(t.columns)) // supernodes joined into each, in order
	for i, f := range final {
		parts[f] = append(parts[f], int32(i))
	}
	s.first = []int32{0}
	var roots []int32
	for _, i := range postorder(up) {
		if final[i] != i {
			continue
		}
		number[i] = int32(len(roots))
		roots = append(roots, i)
		for _, part := range parts[i] {
			c := t.columns[part]
			s.order = append(s.order, order[c[0]:c[1]]...)
		}
		s.first = append(s.first, int32(len(s.order)))
	}
	s.inverse = inverseOf(s.order)
	s.parent = make([]int32, len(roots))
	s.child = make([][]int32, len(roots))
	for f, i := range roots {
		s.parent[f] = -1
		if up[i] >= 0 {
			s.parent[f] = number[up[i]]
			s.child[s.parent[f]] = append(s.child[s.parent[f]], int32(f))
		}
	}
}

// findRows gathers the rows below each front from the matrix and the children.
func (s *Symbolic) findRows(g graph) {
	s.rows = make([][]int32, len(s.parent))
	seen := make([]int32, len(s.order))
	for i := range seen {
		seen[i] = -1
	}
	var gather []int32
	for f := range s.rows {
		gather = gather[:0]
		end := s.first[f+1]
		take := func(i int32) {
			if i >= end && seen[i] != int32(f) {
				seen[i] = int32(f)
				gather = append(gather, i)
			}
		}
		for _, c := range s.child[f] {
			for _, i := range s.rows[c] {
				take(i)
			}
		}
		for k := s.first[f]; k < end; k++ {
			for _, node := range g.of(s.order[k]) {
				take(s.inverse[node])
			}
		}
		slices.Sort(gather)
		s.rows[f] = slices.Clone(gather)
	}
	s.findInto(seen)
}

// findInto finds where the rows below each front come to lie in the parent's. place
// is room for a number per column.
func (s *Symbolic) findInto(place []int32) {
	s.into, s.runs = make([][]int32, len(s.rows)), make([][]int32, len(s.rows))
	for p, children := range s.child {
		own := s.first[p+1] - s.first[p]
		for k := range own {
			place[s.first[p]+k] = k
		}
		for k, i := range s.rows[p] {
			place[i] = own + int32(k)
		}
		for _, c := range children {
			s.into[c] = make([]int32, len(s.rows[c]))
			for k, i := range s.rows[c] {
				s.into[c][k] = place[i]
			}
			s.runs[c] = runsOf(s.into[c])
		}
	}
}

// layFactor gives each front its place in the factor and counts the work.
func (s *Symbolic) layFactor() {
	b := s.Pattern.Block
	fronts := len(s.rows)
	s.offset, s.lead = make([]int, fronts+1), make([]int, fronts)
	s.work = make([]float64, fronts)
	for f := range fronts {
		own := int(s.first[f+1]-s.first[f]) * b
		below := len(s.rows[f]) * b
		s.lead[f] = roundUp(own + below)
		s.offset[f+1] = s.offset[f] + own*s.lead[f]
		n, m := float64(own), float64(below)
		s.work[f] += n*n*n/6 + n*n*m/2 + n*m*m/2
		if p := s.parent[f]; p >= 0 {
			s.work[p] += s.work[f]
		}
	}
}

// roundUp keeps columns on 32-byte steps.
func roundUp(rows int) int { return (rows + 3) &^ 3 }

// runsOf returns for each place where the run of consecutive numbers it is in ends.
func runsOf(into []int32) []int32 {
	end := make([]int32, len(into))
	for i := len(into) - 1; i >= 0; i-- {
		end[i] = int32(i + 1)
		if i+1 < len(into) && into[i+1] == into[i]+1 {
			end[i] = end[i+1]
		}
	}
	return end
}
