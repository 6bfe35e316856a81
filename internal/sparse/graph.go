package sparse

// graph is a pattern with both halves: node i has neighbours
// node[start[i]:start[i+1]], itself left out.
type graph struct {
	start []int32
	node  []int32
}

func (g graph) nodes() int         { return len(g.start) - 1 }
func (g graph) of(i int32) []int32 { return g.node[g.start[i]:g.start[i+1]] }

// graphOf returns the whole graph of a pattern.
func graphOf(p *Pattern) graph {
	g := graph{start: make([]int32, p.Nodes+2)}
	for j := range p.Nodes {
		for _, i := range p.Row[p.Start[j]+1 : p.Start[j+1]] {
			g.start[i+2]++
			g.start[j+2]++
		}
	}
	for i := 2; i < len(g.start); i++ {
		g.start[i] += g.start[i-1]
	}
	g.node = make([]int32, g.start[p.Nodes+1])
	for j := range int32(p.Nodes) {
		for _, i := range p.Row[p.Start[j]+1 : p.Start[j+1]] {
			g.node[g.start[i+1]] = j
			g.start[i+1]++
			g.node[g.start[j+1]] = i
			g.start[j+1]++
		}
	}
	g.start = g.start[:p.Nodes+1]
	return g
}

// levels returns the distance of every node from a root in steps along the graph.
// Parts that cannot be reached get distances beyond the farthest one, so that every
// node has one. last is the node reached last.
func (g graph) levels(root int32) (level []float64, last int32) {
	n := g.nodes()
	level = make([]float64, n)
	for i := range level {
		level[i] = -1
	}
	queue := make([]int32, 0, n)
	visit := func(i int32, d float64) {
		level[i] = d
		queue = append(queue, i)
	}
	visit(root, 0)
	for head, fresh := 0, int32(0); ; {
		for ; head < len(queue); head++ {
			i := queue[head]
			for _, k := range g.of(i) {
				if level[k] < 0 {
					visit(k, level[i]+1)
				}
			}
		}
		if len(queue) == n {
			return level, queue[n-1]
		}
		for level[fresh] >= 0 {
			fresh++
		}
		visit(fresh, level[queue[head-1]]+1)
	}
}

// ownCoordinates makes up a place for each node from distances along the graph, for
// meshes whose coordinates are not given.
func (g graph) ownCoordinates() (x, y []float64) {
	_, a := g.levels(0)
	x, b := g.levels(a)
	fromB, _ := g.levels(b)
	far, best := a, -1.0
	for i := range x {
		if d := min(x[i], fromB[i]); d > best {
			far, best = int32(i), d
		}
	}
	y, _ = g.levels(far)
	return x, y
}
