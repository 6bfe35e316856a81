package sparse

// galerkin returns Pᵀ·A·P for the transfer P.
func (t *transfer) galerkin(f *fullRows) *Matrix {
	m := t.coarse
	g := &galerkin{transfer: t, rows: f, place: make([]int32, t.nodes), seen: make([]int32, f.a.Nodes)}
	start, of := t.columns()
	p := &Pattern{Nodes: t.nodes, Block: m, Start: make([]int32, t.nodes+1), Row: make([]int32, 0, 8*t.nodes)}
	a := &Matrix{p, make([]float64, 0, 8*t.nodes*m*m)}
	for c := range int32(t.nodes) {
		g.product(of[start[c]:start[c+1]])
		g.collect(c)
		order := sortedPlaces(g.found)
		for _, k := range order {
			p.Row = append(p.Row, g.found[k])
			a.Value = append(a.Value, g.sum[int(k)*m*m:(int(k)+1)*m*m]...)
		}
		p.Start[c+1] = int32(len(p.Row))
		d := a.Value[int(p.Start[c])*m*m:]
		for u := range m { // a mode that a group could not have
			if d[u*(m+1)] == 0 {
				d[u*(m+1)] = 1
			}
		}
	}
	return a
}

// galerkin is one product in progress, a coarse column at a time.
type galerkin struct {
	*transfer
	rows    *fullRows
	touched []int32   // nodes where A·P has something in this column
	ap      []float64 // and what
	seen    []int32   // place of a node in touched, plus one
	found   []int32   // coarse rows from the diagonal down
	sum     []float64
	place   []int32 // place of a coarse node in found, plus one
}

// entryOf is a fine node with something in a coarse column: node and place in value.
type entryOf struct{ node, at int32 }

// columns lists for each coarse node the fine ones that have a part in it.
func (t *transfer) columns() (start []int32, of []entryOf) {
	start = make([]int32, t.nodes+2)
	for _, c := range t.node {
		start[c+2]++
	}
	for c := 2; c < len(start); c++ {
		start[c] += start[c-1]
	}
	of = make([]entryOf, len(t.node))
	for i := range int32(len(t.start) - 1) {
		for k := t.start[i]; k < t.start[i+1]; k++ {
			at := &start[t.node[k]+1]
			of[*at] = entryOf{i, k}
			*at++
		}
	}
	return start[:t.nodes+1], of
}

// product fills ap with a column of A·P.
func (g *galerkin) product(of []entryOf) {
	b, m := g.fine, g.coarse
	for _, i := range g.touched {
		g.seen[i] = 0
	}
	g.touched, g.ap = g.touched[:0], g.ap[:0]
	at := func(i int32) []float64 {
		if g.seen[i] == 0 {
			g.touched = append(g.touched, i)
			g.seen[i] = int32(len(g.touched))
			for range b * m {
				g.ap = append(g.ap, 0)
			}
		}
		k := int(g.seen[i]-1) * b * m
		return g.ap[k : k+b*m]
	}
	f := g.rows
	for _, e := range of {
		v := g.value[int(e.at)*b*m : (int(e.at)+1)*b*m]
		f.addTimes(at(e.node), f.a.Start[e.node], v, m)
		for k := f.start[e.node]; k < f.start[e.node+1]; k++ {
			f.addTimes(at(f.node[k]), ^f.slot[k], v, m)
		}
	}
}

// collect fills found and sum with rows c and below of Pᵀ times ap.
func (g *galerkin) collect(c int32) {
	b, m := g.fine, g.coarse
	for _, r := range g.found {
		g.place[r] = 0
	}
	g.found, g.sum = g.found[:0], g.sum[:0]
	for n, i := range g.touched {
		y := g.ap[n*b*m : (n+1)*b*m]
		for k := g.start[i]; k < g.start[i+1]; k++ {
			r := g.node[k]
			if r < c {
				continue
			}
			if g.place[r] == 0 {
				g.found = append(g.found, r)
				g.place[r] = int32(len(g.found))
				for range m * m {
					g.sum = append(g.sum, 0)
				}
			}
			to := g.sum[int(g.place[r]-1)*m*m:][:m*m]
			v := g.value[int(k)*b*m : (int(k)+1)*b*m]
			addTransposed(to, v, y, b, m)
		}
	}
}

// addTransposed adds vᵀ·y, both b by m.
func addTransposed(to []float64, v []float32, y []float64, b, m int) {
	if m == 3 {
		to = to[:9]
		for p := range b {
			w, z := v[3*p:3*p+3], y[3*p:3*p+3]
			w0, w1, w2 := float64(w[0]), float64(w[1]), float64(w[2])
			to[0] += w0 * z[0]
			to[1] += w0 * z[1]
			to[2] += w0 * z[2]
			to[3] += w1 * z[0]
			to[4] += w1 * z[1]
			to[5] += w1 * z[2]
			to[6] += w2 * z[0]
			to[7] += w2 * z[1]
			to[8] += w2 * z[2]
		}
		return
	}
	for p := range b {
		for u := range m {
			w := float64(v[p*m+u])
			for q := range m {
				to[u*m+q] += w * y[p*m+q]
			}
		}
	}
}

// sortedPlaces returns the places of the numbers in rising order of the numbers.
func sortedPlaces(numbers []int32) []int32 {
	order := make([]int32, len(numbers))
	for i := range order {
		k := i
		for ; k > 0 && numbers[order[k-1]] > numbers[i]; k-- {
			order[k] = order[k-1]
		}
		order[k] = int32(i)
	}
	return order
}
