package sparse

// Matrix is a symmetric matrix on a pattern. Block s of the pattern is
// Value[s·b²:(s+1)·b²], row by row; blocks on the diagonal are whole.
type Matrix struct {
	*Pattern
	Value []float64
}

// NewMatrix returns a zero matrix.
func (p *Pattern) NewMatrix() *Matrix {
	return &Matrix{p, make([]float64, len(p.Row)*p.Block*p.Block)}
}

// Copy returns a matrix of the same pattern with its own values.
func (a *Matrix) Copy() *Matrix {
	return &Matrix{a.Pattern, append([]float64(nil), a.Value...)}
}

// At returns one entry; unknown u of node n has index n·Block+u.
func (a *Matrix) At(row, col int) float64 {
	if row/a.Block < col/a.Block {
		row, col = col, row
	}
	b := a.Block
	i, j := int32(row/b), int32(col/b)
	for s := a.Start[j]; s < a.Start[j+1]; s++ {
		if a.Row[s] == i {
			return a.Value[int(s)*b*b+row%b*b+col%b]
		}
	}
	return 0
}

// AddDiagonal adds v to the diagonal entry of one unknown: a spring to the ground.
func (a *Matrix) AddDiagonal(unknown int, v float64) {
	b := a.Block
	a.Value[int(a.Start[unknown/b])*b*b+unknown%b*(b+1)] += v
}

// Multiply sets y = A·x.
func (a *Matrix) Multiply(y, x []float64) {
	if len(x) != a.Unknowns() || len(y) != a.Unknowns() {
		panic("sparse: vector and matrix differ in length")
	}
	clear(y)
	switch a.Block {
	case 2:
		a.multiply2(y, x)
		return
	case 3:
		a.multiply3(y, x)
		return
	}
	b := a.Block
	for j := range a.Nodes {
		xj, yj := x[j*b:j*b+b], y[j*b:j*b+b]
		for s := int(a.Start[j]); s < int(a.Start[j+1]); s++ {
			i := int(a.Row[s])
			v := a.Value[s*b*b : (s+1)*b*b]
			xi, yi := x[i*b:i*b+b], y[i*b:i*b+b]
			for r := range b {
				row := v[r*b : r*b+b]
				sum := 0.0
				for c, w := range row {
					sum += w * xj[c]
				}
				yi[r] += sum
				if i != j {
					for c, w := range row {
						yj[c] += w * xi[r]
					}
				}
			}
		}
	}
}

// multiply2 is Multiply for two unknowns a node, y being zero.
func (a *Matrix) multiply2(y, x []float64) {
	for j := range a.Nodes {
		x0, x1 := x[2*j], x[2*j+1]
		s := int(a.Start[j])
		v := a.Value[4*s : 4*s+4]
		y0, y1 := v[0]*x0+v[1]*x1, v[2]*x0+v[3]*x1
		for s++; s < int(a.Start[j+1]); s++ {
			i := int(a.Row[s])
			v := a.Value[4*s : 4*s+4]
			xi, yi := x[2*i:2*i+2], y[2*i:2*i+2]
			yi[0] += v[0]*x0 + v[1]*x1
			yi[1] += v[2]*x0 + v[3]*x1
			y0 += v[0]*xi[0] + v[2]*xi[1]
			y1 += v[1]*xi[0] + v[3]*xi[1]
		}
		y[2*j] += y0
		y[2*j+1] += y1
	}
}

// multiply3 is Multiply for three unknowns a node, y being zero.
func (a *Matrix) multiply3(y, x []float64) {
	for j := range a.Nodes {
		x0, x1, x2 := x[3*j], x[3*j+1], x[3*j+2]
		s := int(a.Start[j])
		v := a.Value[9*s : 9*s+9]
		y0 := v[0]*x0 + v[1]*x1 + v[2]*x2
		y1 := v[3]*x0 + v[4]*x1 + v[5]*x2
		y2 := v[6]*x0 + v[7]*x1 + v[8]*x2
		for s++; s < int(a.Start[j+1]); s++ {
			i := int(a.Row[s])
			v := a.Value[9*s : 9*s+9]
			xi, yi := x[3*i:3*i+3], y[3*i:3*i+3]
			yi[0] += v[0]*x0 + v[1]*x1 + v[2]*x2
			yi[1] += v[3]*x0 + v[4]*x1 + v[5]*x2
			yi[2] += v[6]*x0 + v[7]*x1 + v[8]*x2
			y0 += v[0]*xi[0] + v[3]*xi[1] + v[6]*xi[2]
			y1 += v[1]*xi[0] + v[4]*xi[1] + v[7]*xi[2]
			y2 += v[2]*xi[0] + v[5]*xi[1] + v[8]*xi[2]
		}
		y[3*j] += y0
		y[3*j+1] += y1
		y[3*j+2] += y2
	}
}

// Hold clears the rows and columns of the unknowns that are held and leaves their
// diagonal entries, so that a right-hand side of zero there leaves them in place.
func (a *Matrix) Hold(held []bool) {
	b := a.Block
	for j := range a.Nodes {
		for s := int(a.Start[j]); s < int(a.Start[j+1]); s++ {
			i := int(a.Row[s])
			for k := range b * b {
				row, col := i*b+k/b, j*b+k%b
				if row != col && (held[row] || held[col]) {
					a.Value[s*b*b+k] = 0
				}
			}
		}
		for u := range b {
			d := &a.Value[int(a.Start[j])*b*b+u*(b+1)]
			if held[j*b+u] && !(*d > 0) {
				*d = 1
			}
		}
	}
}
