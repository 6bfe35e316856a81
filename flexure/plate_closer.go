package flexure

import (
	"context"
	"math"
	"slices"

	"slabwright/internal/fem"
	"slabwright/internal/sparse"
	"slabwright/plan"
)

// closeUp is the neighbourhood of some loads bent again with small elements, its rim
// held as the whole slab has it. Deflections of the whole are good with large elements;
// the peak of stress below a small load is not.
type closeUp struct {
	*Bent
	low, high plan.Point // where it is to be believed
}

func (c *closeUp) covers(at plan.Point) bool {
	return at.X >= c.low.X && at.X <= c.high.X && at.Y >= c.low.Y && at.Y <= c.high.Y
}

const (
	closeReach = 0.5 // around a load that is believed, over l
	closeRim   = 0.9 // beyond that, over l
	mostClose  = 2500
)

// lookCloser bends the neighbourhood of the loads again and puts the finer figures in
// place of the coarse ones.
func (b *Bent) lookCloser(ctx context.Context) error {
	for _, box := range b.closeBoxes() {
		c, err := b.closeUpOf(ctx, box[0], box[1])
		if err != nil {
			return err
		}
		if c != nil {
			b.closer = append(b.closer, c)
		}
	}
	for i, l := range b.Plate.Loads {
		b.Under[i].Here, _ = b.At(l.middle())
	}
	b.peaks()
	return nil
}

// closeBoxes returns the boxes around loads smaller than the elements; those that touch
// are one.
func (b *Bent) closeBoxes() (boxes [][2]plan.Point) {
	reach := plan.Point{X: closeReach * b.Stiff, Y: closeReach * b.Stiff}
	for _, l := range b.Plate.Loads {
		low, high := l.box()
		if len(l.Line) > 0 || math.Min(high.X-low.X, high.Y-low.Y) > 3*b.Plate.size() {
			continue
		}
		box := [2]plan.Point{low.Minus(reach), high.Plus(reach)}
		for i := 0; i < len(boxes); i++ {
			o := boxes[i]
			if box[0].X <= o[1].X && box[1].X >= o[0].X && box[0].Y <= o[1].Y && box[1].Y >= o[0].Y {
				box[0] = plan.Point{X: math.Min(box[0].X, o[0].X), Y: math.Min(box[0].Y, o[0].Y)}
				box[1] = plan.Point{X: math.Max(box[1].X, o[1].X), Y: math.Max(box[1].Y, o[1].Y)}
				boxes = slices.Delete(boxes, i, i+1)
				i = -1
			}
		}
		boxes = append(boxes, box)
	}
	return boxes
}

// closeUpOf bends what lies in a box and a rim around it. It is nil where the box is so
// large that small elements would be too many.
func (b *Bent) closeUpOf(ctx context.Context, low, high plan.Point) (*closeUp, error) {
	rim := plan.Point{X: closeRim * b.Stiff, Y: closeRim * b.Stiff}
	within := b.elementsIn(low.Minus(rim), high.Plus(rim))
	count := 0
	for _, in := range within {
		if in {
			count++
		}
	}
	parts := int(math.Min(6, math.Sqrt(mostClose/math.Max(1, float64(count)))))
	if count == 0 || parts < 2 {
		return nil, nil
	}
	cut := newFiner(b, within, parts)
	f := newFrame(b.Plate, cut.net, nil)
	force := append([]float64(nil), f.dead...)
	for _, l := range b.Plate.Loads {
		for i, v := range f.loadForce(l) {
			force[i] += v
		}
	}
	c := &contact{frame: f, pushes: make([]bool, len(f.bed.stiff)), matrix: f.bedded, held: cut.held}
	for i := range c.pushes {
		c.pushes[i] = true
	}
	c.matrix.Hold(c.held)
	symbolic := sparse.Analyse(f.pattern, cut.net.mesh.X, cut.net.mesh.Y)
	s := &search{contact: c, u: cut.u, w: make([]float64, len(c.pushes))}
	s.look() // the coarse state is near: its contact is the one to start from
	var err error
	if c.factor, err = symbolic.Factor(c.matrix, 0); err != nil {
		return nil, c.explained(err)
	}
	c.own = c.factor
	rounds, err := c.settle(ctx, force, cut.u, dragged)
	if err != nil {
		return nil, (&Ready{frame: f, dead: cut.dead}).withState(err, b.Plate.Loads, cut.u, c)
	}
	near := &Bent{Plate: b.Plate, Theory: b.Theory, Rounds: rounds, Stiff: b.Stiff, frame: f, u: cut.u, dead: cut.dead}
	free := b.Plate.freeCurvature()
	near.moment, near.still = f.nodeMoments(cut.u, free), f.nodeMoments(cut.dead, free)
	return &closeUp{near, low, high}, nil
}

// elementsIn marks the elements whose middle lies in a box, and those across a joint
// from them.
func (b *Bent) elementsIn(low, high plan.Point) []bool {
	m := b.frame.net.mesh
	in := make([]bool, m.Elements())
	touched := map[int32]bool{}
	for e := range in {
		of := m.Of(e)
		x, y := (m.X[of[0]]+m.X[of[2]])/2, (m.Y[of[0]]+m.Y[of[2]])/2
		if in[e] = x >= low.X && x <= high.X && y >= low.Y && y <= high.Y; in[e] {
			for _, n := range of {
				touched[n] = true
			}
		}
	}
	across := map[[2]int32]bool{}
	for _, f := range b.frame.net.faces {
		if touched[f.node[0]] && touched[f.node[1]] || touched[f.node[2]] && touched[f.node[3]] {
			across[sideOf(f.node[0], f.node[1])], across[sideOf(f.node[2], f.node[3])] = true, true
		}
	}
	for e := range in {
		for k, n := range m.Of(e) {
			if across[sideOf(n, m.Of(e)[(k+1)%4])] {
				in[e] = true
			}
		}
	}
	return in
}

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
