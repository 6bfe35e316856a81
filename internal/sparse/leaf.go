package sparse

import "math/bits"

// leafOrder orders a small part by least degree: the node with the fewest
// neighbours left, the ones around the part counted, is eliminated next and its
// neighbours become neighbours of one another.
//
// Source: Tinney and Walker, Direct solutions of sparse network equations by
// optimally ordered triangular factorization, Proceedings of the IEEE 55 (1967),
// scheme 2, on sets of bits.
type leafOrder struct {
	slot  []int32 // place of a node in the sets
	stamp []int32 // part for which slot holds
}

// nodeSet holds up to 128 nodes, those of the part first.
type nodeSet [2]uint64

func (s *nodeSet) add(i int)      { s[i>>6] |= 1 << (i & 63) }
func (s *nodeSet) remove(i int)   { s[i>>6] &^= 1 << (i & 63) }
func (s *nodeSet) size() int      { return bits.OnesCount64(s[0]) + bits.OnesCount64(s[1]) }
func (s *nodeSet) join(o nodeSet) { s[0] |= o[0]; s[1] |= o[1] }

// arrange reorders the nodes of part here, at most leafNodes of them.
func (l *leafOrder) arrange(g graph, here int32, nodes []int32) {
	if l.slot == nil {
		l.slot, l.stamp = make([]int32, g.nodes()), make([]int32, g.nodes())
	}
	n := len(nodes)
	var beside [leafNodes]nodeSet
	for a, i := range nodes {
		l.slot[i], l.stamp[i] = int32(a), here
	}
	next := n
	for a, i := range nodes {
		for _, k := range g.of(i) {
			if l.stamp[k] != here {
				if next == 128 {
					continue // counted no longer; only the order suffers
				}
				l.slot[k], l.stamp[k] = int32(next), here
				next++
			}
			beside[a].add(int(l.slot[k]))
		}
	}
	var result [leafNodes]int32
	var gone [leafNodes]bool
	for k := range n {
		pick := fewest(beside[:n], gone[:n])
		gone[pick] = true
		result[k] = nodes[pick]
		inside := beside[pick][0] & (1<<n - 1)
		for ; inside != 0; inside &= inside - 1 {
			a := bits.TrailingZeros64(inside)
			beside[a].join(beside[pick])
			beside[a].remove(a)
			beside[a].remove(pick)
		}
	}
	copy(nodes, result[:n])
}

// fewest returns the node still there with the fewest neighbours.
func fewest(beside []nodeSet, gone []bool) int {
	pick, least := -1, 1<<30
	for a := range beside {
		if !gone[a] {
			if size := beside[a].size(); size < least {
				pick, least = a, size
			}
		}
	}
	return pick
}
