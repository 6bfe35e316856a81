package sparse

// residual2Plain sets rows from up to, not including, end of q = r − x − V·x for blocks
// of two by two, row by row.
func residual2Plain(from, end int, start, node []int32, value, x, r, q []float32) {
	for i := from; i < end; i++ {
		y0, y1 := x[2*i], x[2*i+1]
		for k := start[i]; k < start[i+1]; k++ {
			v, xj := value[4*k:4*k+4], x[2*node[k]:2*node[k]+2]
			y0 += v[0]*xj[0] + v[1]*xj[1]
			y1 += v[2]*xj[0] + v[3]*xj[1]
		}
		q[2*i], q[2*i+1] = r[2*i]-y0, r[2*i+1]-y1
	}
}

// residual3Plain does the same for blocks of three by three, column by column, each
// column of four numbers.
func residual3Plain(from, end int, start, node []int32, value, x, r, q []float32) {
	for i := from; i < end; i++ {
		y0, y1, y2 := x[3*i], x[3*i+1], x[3*i+2]
		for k := start[i]; k < start[i+1]; k++ {
			v, xj := value[12*int(k):12*int(k)+12], x[3*node[k]:3*node[k]+3]
			y0 += v[0]*xj[0] + v[4]*xj[1] + v[8]*xj[2]
			y1 += v[1]*xj[0] + v[5]*xj[1] + v[9]*xj[2]
			y2 += v[2]*xj[0] + v[6]*xj[1] + v[10]*xj[2]
		}
		q[3*i], q[3*i+1], q[3*i+2] = r[3*i]-y0, r[3*i+1]-y1, r[3*i+2]-y2
	}
}
