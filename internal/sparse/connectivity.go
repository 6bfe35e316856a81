package sparse

import "fmt"

// Connectivity lists the nodes of each element: element e joins
// Node[Start[e]:Start[e+1]]. A node may occur twice in an element.
type Connectivity struct {
	Start []int32 // one more than elements
	Node  []int32
}

// Uniform returns the connectivity of elements with the same number of nodes.
func Uniform(nodesPerElement int, node []int32) Connectivity {
	if nodesPerElement <= 0 || len(node)%nodesPerElement != 0 {
		panic("sparse: nodes do not fill whole elements")
	}
	start := make([]int32, len(node)/nodesPerElement+1)
	for e := range start {
		start[e] = int32(e * nodesPerElement)
	}
	return Connectivity{start, node}
}

// Join returns the elements of several connectivities one after another.
func Join(parts ...Connectivity) Connectivity {
	all := Connectivity{Start: []int32{0}}
	for _, p := range parts {
		base := int32(len(all.Node))
		all.Node = append(all.Node, p.Node...)
		for _, s := range p.Start[min(1, len(p.Start)):] {
			all.Start = append(all.Start, base+s)
		}
	}
	return all
}

// Elements returns how many there are.
func (c Connectivity) Elements() int { return max(0, len(c.Start)-1) }

// Of returns the nodes of element e.
func (c Connectivity) Of(e int) []int32 { return c.Node[c.Start[e]:c.Start[e+1]] }

func (c Connectivity) check(nodes int) {
	for e := range c.Elements() {
		for _, n := range c.Of(e) {
			if n < 0 || int(n) >= nodes {
				panic(fmt.Sprintf("sparse: element %d names node %d of %d", e, n, nodes))
			}
		}
	}
}

// elementsAt lists, node by node, the elements that touch it.
func (c Connectivity) elementsAt(nodes int) (start, element []int32) {
	start = make([]int32, nodes+2)
	for _, n := range c.Node {
		start[n+2]++
	}
	for i := 2; i < len(start); i++ {
		start[i] += start[i-1]
	}
	element = make([]int32, len(c.Node))
	for e := range c.Elements() {
		for _, n := range c.Of(e) {
			element[start[n+1]] = int32(e)
			start[n+1]++
		}
	}
	return start[:nodes+1], element
}
