package sparse

//go:noescape
func residual2FMA(from, end int, start, node *int32, value, x, r, q *float32)

//go:noescape
func residual3FMA(from, end int, start, node *int32, value, x, r, q *float32)

func residual2(from, end int, start, node []int32, value, x, r, q []float32) {
	if hasFMA && len(node) > 0 {
		residual2FMA(from, end, &start[0], &node[0], &value[0], &x[0], &r[0], &q[0])
		return
	}
	residual2Plain(from, end, start, node, value, x, r, q)
}

func residual3(from, end int, start, node []int32, value, x, r, q []float32) {
	if hasFMA && len(node) > 0 {
		residual3FMA(from, end, &start[0], &node[0], &value[0], &x[0], &r[0], &q[0])
		return
	}
	residual3Plain(from, end, start, node, value, x, r, q)
}
