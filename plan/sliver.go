package plan

// sliverWidth is the mean width below which a region is not a panel but two lines
// drawn for one, in metres: half a saw groove's tolerance on each side.
const sliverWidth = 0.02

// withoutSlivers takes out the edges between the first sliver and the panel it
// shares most with.
func withoutSlivers(net network, faces []face) ([]netEdge, bool) {
	owner := owners(faces)
	for i, f := range faces {
		r := net.ring(f.outer)
		if len(f.holes) > 0 || 2*r.Area()/r.Perimeter() >= sliverWidth {
			continue
		}
		shared := make([]float64, len(faces))
		for k, p := range f.outer {
			q := f.outer[(k+1)%len(f.outer)]
			if o, ok := owner[[2]int{q, p}]; ok && o != i {
				shared[o] += net.points[p].To(net.points[q])
			}
		}
		best := 0
		for o := range shared {
			if shared[o] > shared[best] {
				best = o
			}
		}
		if shared[best] == 0 {
			continue
		}
		var kept []netEdge
		for _, e := range net.edges {
			a, aok := owner[[2]int{e.from, e.to}]
			b, bok := owner[[2]int{e.to, e.from}]
			if aok && bok && ((a == i && b == best) || (a == best && b == i)) {
				continue
			}
			kept = append(kept, e)
		}
		return kept, true
	}
	return nil, false
}

// owners returns which face lies to the left of each directed edge.
func owners(faces []face) map[[2]int]int {
	owner := map[[2]int]int{}
	for i, f := range faces {
		for _, loop := range append([][]int{f.outer}, f.holes...) {
			for k, p := range loop {
				owner[[2]int{p, loop[(k+1)%len(loop)]}] = i
			}
		}
	}
	return owner
}
