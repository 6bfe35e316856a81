package sparse

import (
	"math"
	"sync"
	"sync/atomic"
)

const (
	// panelColumns are eliminated before what is right of them is brought up to date.
	panelColumns = 64
	// packRows of A are copied to lie close together when a front is tall.
	packRows = 32 * tileRows
	// tallFront is the number of rows from which the copy pays.
	tallFront = 192
)

// subtractLower does C −= A·Bᵀ on and below the diagonal of C, m rows and n ≤ m
// columns, k columns of A and B. A and B start at the same row. Entries above the
// diagonal are spoilt. C has room for columns up to a multiple of four.
func (w *worker) subtractLower(m, n, k int, a []float64, ld int, c []float64, ldc int) {
	if m < tallFront || n < 2*tileRows || k < 8 {
		for j := 0; j < n; j += 4 {
			subtractStrip(m-j, k, a[j:], ld, tileRows, a[j:], ld, c[j+j*ldc:], ldc)
		}
		return
	}
	blocks := (m + packRows - 1) / packRows
	if w.team <= 1 || blocks < 2 {
		for i := range blocks {
			w.subtractBlock(i*packRows, m, n, k, a, ld, c, ldc)
		}
		return
	}
	var next atomic.Int64
	var all sync.WaitGroup
	for t := range w.team {
		mate := w
		if t > 0 {
			mate = w.mate(t - 1)
		}
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < blocks; i = int(next.Add(1)) - 1 {
				mate.subtractBlock((blocks-1-i)*packRows, m, n, k, a, ld, c, ldc)
			}
		})
	}
	all.Wait()
}

// subtractBlock does packRows rows of subtractLower from row i on.
func (w *worker) subtractBlock(i, m, n, k int, a []float64, ld int, c []float64, ldc int) {
	rows := min(packRows, m-i)
	packed := w.pack(rows, k, a[i:], ld)
	var strip [4 * panelColumns]float64
	for j := 0; j < min(n, i+rows); j += 4 {
		for p := range k {
			copy(strip[4*p:4*p+4], a[j+p*ld:])
		}
		skip := 0
		if j > i {
			skip = (j - i) / tileRows
		}
		at := skip * tileRows
		subtractStrip(rows-at, k, packed[at*k:], tileRows, tileRows*k, strip[:], 4, c[i+at+j*ldc:], ldc)
	}
}

// pack copies rows of A so that tileRows rows of all columns lie together.
func (w *worker) pack(rows, k int, a []float64, ld int) []float64 {
	need := (rows + tileRows) / tileRows * tileRows * k
	if cap(w.packed) < need {
		w.packed = make([]float64, need+64)
	}
	packed := w.packed[:need]
	for i := 0; i < rows; i += tileRows {
		height := min(tileRows, rows-i)
		to := packed[i*k:]
		for p := range k {
			copy(to[p*tileRows:p*tileRows+height], a[i+p*ld:])
		}
	}
	return packed
}

// eliminate factors the first own columns of a front whose columns are ld rows
// long, padding included, and takes their effect off the rest, kept in below with
// its own distance of columns. limit is the smallest pivot allowed for each column.
// It returns the first column whose pivot is too small, −1 if none.
func (w *worker) eliminate(own, rows, ld int, panel []float64, limit []float64, below []float64, ldBelow int) int {
	parts := (own + panelColumns - 1) / panelColumns
	width := ((own+parts-1)/parts + 3) &^ 3
	for from := 0; from < own; from += width {
		end := min(own, from+width)
		if bad := w.eliminatePanel(from, end, ld, panel, limit); bad >= 0 {
			return bad
		}
		if end < own {
			w.subtractOwn(own-end, ld-end, end-from, panel[end+from*ld:], panel[end+end*ld:], ld)
		}
		if rest := rows - own; rest > 0 {
			w.subtractLower(ldBelow, rest, end-from, panel[own+from*ld:], ld, below, ldBelow)
		}
	}
	return -1
}

// subtractOwn brings n own columns right of a panel up to date; the last strip may
// have fewer than four columns and is done aside.
func (w *worker) subtractOwn(n, m, k int, a, c []float64, ld int) {
	whole := n &^ 3
	if whole > 0 {
		w.subtractLower(m, whole, k, a, ld, c, ld)
	}
	if whole < n {
		w.narrowStrip(n-whole, m-whole, k, a[whole:], c[whole+whole*ld:], ld)
	}
}

// narrowStrip does C −= A·Bᵀ for fewer than four columns of C, whose neighbours
// must not be touched.
func (w *worker) narrowStrip(n, m, k int, a, c []float64, ld int) {
	if k == 0 {
		return
	}
	if cap(w.strip) < 4*m {
		w.strip = make([]float64, 4*m)
	}
	strip := w.strip[:4*m]
	for j := range n {
		copy(strip[j*m:(j+1)*m], c[j*ld:])
	}
	clear(strip[n*m:])
	subtractStrip(m, k, a, ld, tileRows, a, ld, strip, m)
	for j := range n {
		copy(c[j*ld:j*ld+m], strip[j*m:])
	}
}

// eliminatePanel factors columns from to end of a front, from a multiple of four,
// earlier columns having been taken off already.
func (w *worker) eliminatePanel(from, end, ld int, panel, limit []float64) int {
	for j := from; j < end; j += 4 {
		n := min(4, end-j)
		a, c := panel[j+from*ld:], panel[j+j*ld:]
		if n < 4 {
			w.narrowStrip(n, ld-j, j-from, a, c, ld)
			if bad := eliminateNarrow(n, ld-j, c, ld, limit[j:]); bad >= 0 {
				return j + bad
			}
			continue
		}
		subtractStrip(ld-j, j-from, a, ld, tileRows, a, ld, c, ld)
		l, bad := factorFour(c, ld, limit[j:])
		if bad >= 0 {
			return j + bad
		}
		solveStrip(ld-j-4, &l, c[4:], ld)
	}
	return -1
}

// factorFour factors the four by four block on the diagonal.
func factorFour(c []float64, ld int, limit []float64) (l [10]float64, bad int) {
	at := 0
	for i := range 4 {
		for j := range i {
			v := c[i+j*ld]
			for p := range j {
				v -= c[i+p*ld] * c[j+p*ld]
			}
			v *= l[(j+1)*(j+2)/2-1]
			c[i+j*ld] = v
			l[at] = v
			at++
		}
		d := c[i+i*ld]
		for p := range i {
			d -= c[i+p*ld] * c[i+p*ld]
		}
		if !(d > limit[i]) || math.IsInf(d, 1) {
			return l, i
		}
		d = math.Sqrt(d)
		c[i+i*ld] = d
		l[at] = 1 / d
		at++
	}
	return l, -1
}

// eliminateNarrow factors one to three columns.
func eliminateNarrow(n, m int, c []float64, ld int, limit []float64) int {
	for j := range n {
		col := c[j*ld : j*ld+m]
		for p := range j {
			before := c[p*ld : p*ld+m]
			f := before[j]
			for i := j; i < m; i++ {
				col[i] -= before[i] * f
			}
		}
		if !(col[j] > limit[j]) || math.IsInf(col[j], 1) {
			return j
		}
		d := math.Sqrt(col[j])
		col[j] = d
		d = 1 / d
		for i := j + 1; i < m; i++ {
			col[i] *= d
		}
	}
	return -1
}
