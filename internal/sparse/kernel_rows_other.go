//go:build !amd64

package sparse

func residual2(nodes int, start, node []int32, value, x, r, q []float32) {
	residual2Plain(nodes, start, node, value, x, r, q)
}

func residual3(nodes int, start, node []int32, value, x, r, q []float32) {
	residual3Plain(nodes, start, node, value, x, r, q)
}
