package flexure

import "slabwright/internal/fem"

func sideOf(a, b int32) [2]int32 { return [2]int32{min(a, b), max(a, b)} }

// finer is part of a grid with each rectangle cut in parts by parts smaller ones, and
// the deflections of the large ones at all its nodes.
type finer struct {
	net     *net
	u, dead []float64
	held    []bool // all unknowns of nodes on the rim
	parts   int
	number  map[finerNode]int32
}

// finerNode names a node by the ends of the side it is on and its place along it, or by
// its rectangle and place in it.
type finerNode struct {
	a, b int32
	i, j int
}

func newFiner(b *Bent, within []bool, parts int) *finer {
	f := &finer{net: &net{mesh: &fem.Mesh{Shape: fem.Q4}, kind: b.frame.net.kind}, parts: parts, number: map[finerNode]int32{}}
	m := b.frame.net.mesh
	outside := map[[2]int32]bool{}
	for e, in := range within {
		for k, n := range m.Of(e) {
			if !in {
				outside[sideOf(n, m.Of(e)[(k+1)%4])] = true
			}
		}
	}
	for e, in := range within {
		if in {
			f.cutUp(b, e, outside)
		}
	}
	for _, c := range b.frame.net.faces {
		f.cutFace(c)
	}
	return f
}

// key names the node at i, j of rectangle e.
func (f *finer) key(of []int32, e, i, j int) finerNode {
	p := f.parts
	along := func(a, b int32, i int) finerNode {
		switch {
		case i == 0:
			return finerNode{a: a, b: a}
		case i == p:
			return finerNode{a: b, b: b}
		case a < b:
			return finerNode{a: a, b: b, i: i}
		}
		return finerNode{a: b, b: a, i: p - i}
	}
	switch {
	case j == 0:
		return along(of[0], of[1], i)
	case j == p:
		return along(of[3], of[2], i)
	case i == 0:
		return along(of[0], of[3], j)
	case i == p:
		return along(of[1], of[2], j)
	}
	return finerNode{a: -1, b: int32(e), i: i, j: j}
}

// cutUp adds rectangle e.
func (f *finer) cutUp(b *Bent, e int, outside map[[2]int32]bool) {
	of, p := b.frame.net.mesh.Of(e), f.parts
	rim := [4]bool{}
	for k := range rim {
		rim[k] = outside[sideOf(of[k], of[(k+1)%4])]
	}
	nodes := make([]int32, (p+1)*(p+1))
	for j := range p + 1 {
		for i := range p + 1 {
			n := f.node(b, of, e, i, j)
			nodes[j*(p+1)+i] = n
			if j == 0 && rim[0] || i == p && rim[1] || j == p && rim[2] || i == 0 && rim[3] {
				for u := range 4 {
					f.held[4*int(n)+u] = true
				}
			}
		}
	}
	for j := range p {
		for i := range p {
			k := j*(p+1) + i
			f.net.mesh.Node = append(f.net.mesh.Node, nodes[k], nodes[k+1], nodes[k+p+2], nodes[k+p+1])
		}
	}
}

// node returns the number of a node, with the large rectangle's field at it.
func (f *finer) node(b *Bent, of []int32, e, i, j int) int32 {
	key := f.key(of, e, i, j)
	n, known := f.number[key]
	if known {
		return n
	}
	n = int32(len(f.net.mesh.X))
	f.number[key] = n
	m := b.frame.net.mesh
	xi, eta := 2*float64(i)/float64(f.parts)-1, 2*float64(j)/float64(f.parts)-1
	lerp := func(from, to, t float64) float64 { return from + (to-from)*(1+t)/2 }
	f.net.mesh.X = append(f.net.mesh.X, lerp(m.X[of[0]], m.X[of[1]], xi))
	f.net.mesh.Y = append(f.net.mesh.Y, lerp(m.Y[of[0]], m.Y[of[3]], eta))
	u, dead := b.frame.fieldAt(e, xi, eta, b.u), b.frame.fieldAt(e, xi, eta, b.dead)
	f.u, f.dead = append(f.u, u[:]...), append(f.dead, dead[:]...)
	f.held = append(f.held, false, false, false, false)
	return n
}

// fieldAt returns deflection, slopes and twist at a place of a thin rectangle.
func (f *frame) fieldAt(e int, xi, eta float64, u []float64) (field [4]float64) {
	var own, local [16]float64
	turnSquare(f.net.mesh, e, f.bed.ownOf(e, u, &own), local[:])
	a, b := halves(f.net.mesh, e)
	for k, c := range squareCorners {
		vx, sx := hermite(xi, c[0])
		vy, sy := hermite(eta, c[1])
		for q, p := range [4][2]*[3]float64{{&vx, &vy}, {&sx, &vy}, {&vx, &sy}, {&sx, &sy}} {
			v := local[4*k+q]
			field[0] += v * p[0][0] * p[1][0]
			field[1] += v * p[0][1] * p[1][0] / a
			field[2] += v * p[0][0] * p[1][1] / b
			field[3] += v * p[0][1] * p[1][1] / (a * b)
		}
	}
	return field
}

// cutFace adds the parts of a face whose both sides are in.
func (f *finer) cutFace(c face) {
	p := f.parts
	at := func(a, b int32, i int) (int32, bool) {
		key := finerNode{a: min(a, b), b: max(a, b), i: i}
		switch {
		case i == 0:
			key = finerNode{a: a, b: a}
		case i == p:
			key = finerNode{a: b, b: b}
		case a > b:
			key.i = p - i
		}
		n, ok := f.number[key]
		return n, ok
	}
	for i := range p {
		var nodes [4]int32
		all := true
		for k := range 4 {
			n, ok := at(c.node[k/2*2], c.node[k/2*2+1], i+k%2)
			nodes[k], all = n, all && ok
		}
		if !all {
			return
		}
		step := (c.to - c.from) / float64(p)
		f.net.faces = append(f.net.faces, face{joint: c.joint, node: nodes, from: c.from + step*float64(i), to: c.from + step*float64(i+1)})
	}
}
