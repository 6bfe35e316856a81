package sparse

// The dense kernels use the vector units of the processor where it has them (AVX2
// and FMA); elsewhere the plain loops of kernel.go do the same sums.

//go:noescape
func subtractStripFMA(m, k int, a *float64, lda, step int, b *float64, ldb int, c *float64, ldc int)

//go:noescape
func solveStripFMA(m int, l *[10]float64, c *float64, ldc int)

func cpuid(leaf, sub uint32) (a, b, c, d uint32)

func xgetbv() (low uint32)

var hasFMA = detectFMA()

// detectFMA asks the processor for FMA and AVX2 and whether the operating system
// keeps the wide registers.
func detectFMA() bool {
	const fma, osxsave, avx, avx2 = 1 << 12, 1 << 27, 1 << 28, 1 << 5
	most, _, _, _ := cpuid(0, 0)
	if most < 7 {
		return false
	}
	_, _, c, _ := cpuid(1, 0)
	if c&fma == 0 || c&osxsave == 0 || c&avx == 0 || xgetbv()&6 != 6 {
		return false
	}
	_, b, _, _ := cpuid(7, 0)
	return b&avx2 != 0
}

func subtractStrip(m, k int, a []float64, lda, step int, b []float64, ldb int, c []float64, ldc int) {
	if m == 0 || k == 0 {
		return
	}
	if hasFMA {
		subtractStripFMA(m, k, &a[0], lda, step, &b[0], ldb, &c[0], ldc)
		return
	}
	subtractStripPlain(m, k, a, lda, step, b, ldb, c, ldc)
}

func solveStrip(m int, l *[10]float64, c []float64, ldc int) {
	if m == 0 {
		return
	}
	if hasFMA {
		solveStripFMA(m, l, &c[0], ldc)
		return
	}
	solveStripPlain(m, l, c, ldc)
}
