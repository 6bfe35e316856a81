package sparse

import (
	"cmp"
	"math"
	"slices"
)

// leafNodes is the size below which a part is ordered by least degree instead of
// being cut again.
const leafNodes = 48

// dissection orders the nodes of a graph for little fill: a cut across the mesh
// comes last, and before it the two halves it leaves, each ordered in the same way.
//
// Source: George, Nested dissection of a regular finite element mesh, SIAM Journal
// on Numerical Analysis 10 (1973). The place of each cut is chosen by counting, at
// every place along both axes, how many nodes a cut there would need.
type dissection struct {
	g     graph
	order [2][]int32 // nodes by x and by y; part [lo,hi) of both holds the same nodes
	spare []int32
	rank  [2][]int32 // place within the part by x and by y
	part  []int32    // which part a node is in
	parts int32
	count []int32 // nodes needed at each cut, as differences
	side  []int8
	leaf  leafOrder
}

// dissect returns the order: order[k] is the node eliminated as number k.
func dissect(g graph, x, y []float64) []int32 {
	n := g.nodes()
	d := &dissection{
		g: g, spare: make([]int32, n), part: make([]int32, n),
		count: make([]int32, n+2), side: make([]int8, n),
	}
	d.order[0], d.order[1] = sorted(x, y), sorted(y, x)
	d.rank[0], d.rank[1] = make([]int32, n), make([]int32, n)
	d.cut(0, n)
	return d.order[0]
}

// sorted returns the nodes by x, equal ones by y.
func sorted(x, y []float64) []int32 {
	type place struct {
		x, y float64
		node int32
	}
	all := make([]place, len(x))
	for i := range x {
		all[i] = place{x[i], y[i], int32(i)}
	}
	slices.SortFunc(all, func(a, b place) int {
		if a.x != b.x {
			if a.x < b.x {
				return -1
			}
			return 1
		}
		if a.y != b.y {
			if a.y < b.y {
				return -1
			}
			return 1
		}
		return cmp.Compare(a.node, b.node)
	})
	order := make([]int32, len(x))
	for i, p := range all {
		order[i] = p.node
	}
	return order
}

const (
	left, right, across = 0, 1, 2
	settled             = -1 // part of nodes on a cut already made
)

// cut orders part [lo,hi) of the lists in place.
func (d *dissection) cut(lo, hi int) {
	n := hi - lo
	if n <= 2 {
		return
	}
	d.parts++
	here := d.parts
	for _, i := range d.order[0][lo:hi] {
		d.part[i] = here
	}
	if n <= leafNodes {
		d.leaf.arrange(d.g, here, d.order[0][lo:hi])
		return
	}
	axis, at, cost := 0, 0, math.Inf(1)
	for k := range d.order {
		for r, i := range d.order[k][lo:hi] {
			d.rank[k][i] = int32(r)
		}
		if a, c := d.bestPlace(k, lo, hi, here); c < cost {
			axis, at, cost = k, a, c
		}
	}
	nLeft, nAcross := d.divide(axis, at, lo, hi, here)
	d.cut(lo, lo+nLeft)
	d.cut(lo+nLeft, hi-nAcross)
}

// bestPlace returns how many nodes to leave before the cut across one axis, and its
// cost. A node before the cut lies on it when a neighbour is beyond.
func (d *dissection) bestPlace(axis, lo, hi int, here int32) (at int, cost float64) {
	n := hi - lo
	rank := d.rank[axis]
	count := d.count[:n+2]
	clear(count)
	for _, i := range d.order[axis][lo:hi] {
		r := rank[i]
		far := r
		for _, k := range d.g.of(i) {
			if d.part[k] == here && rank[k] > far {
				far = rank[k]
			}
		}
		count[r+1]++ // on the cuts after r+1 … far nodes
		count[far+1]--
	}
	cost = math.Inf(1)
	needed := int32(0)
	for m := 1; m < n; m++ {
		needed += count[m]
		if m < n*2/5 || m > n*3/5 {
			continue
		}
		skew := float64(2*m-n) / float64(n)
		if c := (float64(needed) + 0.5) * (1 + 2*skew*skew); c < cost {
			at, cost = m, c
		}
	}
	return at, cost
}

// divide moves the nodes of both lists to left, right and across in that order and
// returns how many went left and across.
func (d *dissection) divide(axis, at, lo, hi int, here int32) (nLeft, nAcross int) {
	rank := d.rank[axis]
	for _, i := range d.order[axis][lo:hi] {
		s := int8(right)
		if int(rank[i]) < at {
			s = left
			nLeft++
			for _, k := range d.g.of(i) {
				if d.part[k] == here && int(rank[k]) >= at {
					s = across
					nLeft--
					nAcross++
					break
				}
			}
		}
		d.side[i] = s
	}
	for k := range d.order {
		list := d.order[k][lo:hi]
		put := [3]int{0, nLeft, len(list) - nAcross}
		for _, i := range list {
			s := d.side[i]
			d.spare[put[s]] = i
			put[s]++
		}
		copy(list, d.spare)
	}
	// Both lists end with the nodes across; they must stay in one order.
	copy(d.order[1][hi-nAcross:hi], d.order[0][hi-nAcross:hi])
	for _, i := range d.order[0][hi-nAcross : hi] {
		d.part[i] = settled
	}
	return nLeft, nAcross
}
