//go:build !amd64

package sparse

func subtractStrip(m, k int, a []float64, lda, step int, b []float64, ldb int, c []float64, ldc int) {
	subtractStripPlain(m, k, a, lda, step, b, ldb, c, ldc)
}

func solveStrip(m int, l *[10]float64, c []float64, ldc int) { solveStripPlain(m, l, c, ldc) }
