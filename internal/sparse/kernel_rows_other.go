//go:build !amd64

package sparse

func residual2(from, end int, start, node []int32, value, x, r, q []float32) {
	residual2Plain(from, end, start, node, value, x, r, q)
}

func residual3(from, end int, start, node []int32, value, x, r, q []float32) {
	residual3Plain(from, end, start, node, value, x, r, q)
}
