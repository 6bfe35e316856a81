package sparse

// All dense blocks stand column by column; ld is the distance between columns.
// Kernels take four columns of C at a time and rows by fours; rows and columns that
// fill up the last four hold anything.

// tileRows is how many rows of C are taken at a time; packed copies of A keep that
// many rows together.
const tileRows = 12

// subtractStripPlain does C −= A·Bᵀ for m rows and four columns of C, k columns of A
// and B. Every tileRows rows A goes on by step.
func subtractStripPlain(m, k int, a []float64, lda, step int, b []float64, ldb int, c []float64, ldc int) {
	for i := 0; i < m; i += 4 {
		from := i/tileRows*step + i%tileRows
		for j := range 4 {
			var s0, s1, s2, s3 float64
			for p := range k {
				v := b[p*ldb+j]
				col := a[from+p*lda : from+p*lda+4]
				s0 += col[0] * v
				s1 += col[1] * v
				s2 += col[2] * v
				s3 += col[3] * v
			}
			to := c[i+j*ldc : i+j*ldc+4]
			to[0] -= s0
			to[1] -= s1
			to[2] -= s2
			to[3] -= s3
		}
	}
}

// solveStripPlain solves X·Lᵀ = C in place for m rows, L of four columns given as
// 1/l00, l10, 1/l11, l20, l21, 1/l22, l30, l31, l32, 1/l33.
func solveStripPlain(m int, l *[10]float64, c []float64, ldc int) {
	for i := range m {
		x0 := c[i] * l[0]
		x1 := (c[i+ldc] - x0*l[1]) * l[2]
		x2 := (c[i+2*ldc] - x0*l[3] - x1*l[4]) * l[5]
		x3 := (c[i+3*ldc] - x0*l[6] - x1*l[7] - x2*l[8]) * l[9]
		c[i], c[i+ldc], c[i+2*ldc], c[i+3*ldc] = x0, x1, x2, x3
	}
}
