package sparse

// eliminationTree returns the parent of each column of the factor, −1 for a root.
// inverse[node] is the place of a node in order.
//
// Source: Liu, The role of elimination trees in sparse factorization, SIAM Journal
// on Matrix Analysis and Applications 11 (1990), algorithm 4.2.
func eliminationTree(g graph, order, inverse []int32) []int32 {
	n := len(order)
	parent, ancestor := make([]int32, n), make([]int32, n)
	for i := range int32(n) {
		parent[i], ancestor[i] = -1, -1
		for _, node := range g.of(order[i]) {
			k := inverse[node]
			for k != -1 && k < i {
				up := ancestor[k]
				ancestor[k] = i
				if up == -1 {
					parent[k] = i
				}
				k = up
			}
		}
	}
	return parent
}

// postorder returns the nodes of a forest, children before parents and each subtree
// in one run, children in the order of their numbers.
func postorder(parent []int32) []int32 {
	n := len(parent)
	first, next := make([]int32, n), make([]int32, n)
	for i := range first {
		first[i] = -1
	}
	for i := n - 1; i >= 0; i-- {
		if p := parent[i]; p >= 0 {
			next[i] = first[p]
			first[p] = int32(i)
		}
	}
	order := make([]int32, 0, n)
	var stack []int32
	for root := range int32(n) {
		if parent[root] >= 0 {
			continue
		}
		stack = append(stack, root)
		for len(stack) > 0 {
			i := stack[len(stack)-1]
			if c := first[i]; c >= 0 {
				first[i] = next[c]
				stack = append(stack, c)
				continue
			}
			order = append(order, i)
			stack = stack[:len(stack)-1]
		}
	}
	return order
}

// columnCounts returns how many entries each column of the factor has, the diagonal
// included. The tree must be postordered: children before parents in one run.
//
// Source: Gilbert, Ng and Peyton, An efficient algorithm to compute row and column
// counts for sparse Cholesky factorization, SIAM Journal on Matrix Analysis and
// Applications 15 (1994).
func columnCounts(g graph, order, inverse, parent []int32) []int32 {
	n := int32(len(order))
	count, first := make([]int32, n), make([]int32, n)
	furthest, previous, ancestor := make([]int32, n), make([]int32, n), make([]int32, n)
	for i := range n {
		first[i], furthest[i], previous[i], ancestor[i] = -1, -1, -1, i
	}
	for j := range n {
		if first[j] == -1 {
			count[j] = 1
		}
		for i := j; i != -1 && first[i] == -1; i = parent[i] {
			first[i] = j
		}
	}
	for j := range n {
		if parent[j] != -1 {
			count[parent[j]]--
		}
		for _, node := range g.of(order[j]) {
			i := inverse[node]
			if i <= j || first[j] <= furthest[i] {
				continue
			}
			furthest[i] = first[j]
			count[j]++
			if before := previous[i]; before != -1 {
				count[leastCommonAncestor(ancestor, before)]--
			}
			previous[i] = j
		}
		if parent[j] != -1 {
			ancestor[j] = parent[j]
		}
	}
	for j := range n {
		if parent[j] != -1 {
			count[parent[j]] += count[j]
		}
	}
	return count
}

// leastCommonAncestor follows the sets merged so far from a node and shortens the way.
func leastCommonAncestor(ancestor []int32, from int32) int32 {
	root := from
	for root != ancestor[root] {
		root = ancestor[root]
	}
	for from != root {
		from, ancestor[from] = ancestor[from], root
	}
	return root
}
