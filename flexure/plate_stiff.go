package flexure

import (
	"math"
	"runtime"
	"slices"
	"sync"

	"slabwright/internal/fem"
	"slabwright/internal/sparse"
	"slabwright/plan"
	"slabwright/source"
)

// frame is a plate and its joints without the ground: stiffness, and the forces of
// weight and warp.
type frame struct {
	plate   Plate
	net     *net
	bed     *bed
	springs [][]spring // of each face
	bars    []bar
	pattern *sparse.Pattern
	matrix  *sparse.Matrix // of plate and joints
	bedded  *sparse.Matrix // with ground that pushes everywhere
	dead    []float64
}

// spring ties the two sides of a face together: at a share of its length, in step and
// in turn.
type spring struct{ at, shear, bending float64 }

// bar is one dowel. Its force spreads in the slab from mid-depth to both faces, so it
// acts along the joint over a thickness: a single point would stress a thin plate
// without limit.
type bar struct {
	joint int
	at    plan.Point
	along float64 // along the joint, m
	parts []barPart
}

// barPart is one of the springs that a bar is made of.
type barPart struct {
	face      int
	share     float64 // along the face
	stiffness float64 // N/m
}

// barParts is how many springs stand for a bar.
const barParts = 5

// newFrame puts plate and joints together. Like, if not nil, is a frame whose pattern
// serves again if its mesh hangs together in the same way.
func newFrame(p Plate, n *net, like *frame) *frame {
	f := &frame{plate: p, net: n, bed: newBed(p, n)}
	f.addSprings()
	var faces []int32
	for _, c := range n.faces {
		faces = append(faces, c.node[:]...)
	}
	connect := n.mesh.Connectivity()
	if len(faces) > 0 {
		connect = sparse.Join(connect, sparse.Uniform(4, faces))
	}
	if like != nil && f.hangsLike(like) {
		f.pattern = like.pattern
	} else {
		f.pattern = sparse.NewPattern(n.mesh.Nodes(), n.kind.Unknowns, connect)
	}
	f.matrix, f.bedded = f.pattern.NewMatrix(), f.pattern.NewMatrix()
	f.dead = make([]float64, f.pattern.Unknowns())
	plate, ground := f.elements()
	inParallel(2, func(k int) {
		if k == 0 {
			f.matrix.Assemble(1, f.dead, plate)
		} else {
			f.bedded.Assemble(1, nil, ground)
		}
	})
	for i, v := range f.matrix.Value {
		f.bedded.Value[i] += v
	}
	for i := range f.dead {
		f.dead[i] = -f.dead[i]
	}
	return f
}

// hangsLike says whether two frames join the same numbers of nodes.
func (f *frame) hangsLike(g *frame) bool {
	if f.net.kind != g.net.kind || !slices.Equal(f.net.mesh.Node, g.net.mesh.Node) || len(f.net.faces) != len(g.net.faces) {
		return false
	}
	for k, c := range f.net.faces {
		if c.node != g.net.faces[k].node {
			return false
		}
	}
	return true
}

// elements returns what makes the matrices of plate and joints, and of the ground
// below them. Rectangles of one size share theirs.
func (f *frame) elements() (plate, ground sparse.Element) {
	bending, shear := fem.IsotropicPlate(f.plate.Modulus, f.plate.Poisson, f.plate.Thickness)
	free := f.plate.freeCurvature()
	layer := fem.PlateLayer{Bending: bending, Shear: shear, FreeCurvature: [3]float64{free, free, 0}, Load: f.plate.weight()}
	part := &fem.Plate{Mesh: f.net.mesh, Kind: f.net.kind, Law: func(fem.Place) fem.PlateLayer { return layer }}
	zero := make([]float64, 16)
	slab := func(e int, ke, fe []float64) { part.Element(e, zero[:len(fe)], ke, fe) }
	soil := func(e int, ke, _ []float64) {
		f.bed.stiffness(e, func(i int) float64 { return f.bed.stiff[i] }, ke)
	}
	if f.net.mesh.Shape == fem.Q4 {
		slab, soil = f.shared(slab, false), f.shared(soil, true)
	}
	plates := f.net.mesh.Elements()
	whole := func(e int, ke, fe []float64) {
		if e < plates {
			slab(e, ke, fe)
			return
		}
		f.faceStiffness(e-plates, ke, len(fe))
	}
	below := func(e int, ke, fe []float64) {
		if e < plates {
			soil(e, ke, fe)
		}
	}
	return whole, below
}

// shared makes each size of rectangle once; bySupport where the ground below counts
// as well. Rectangles on uneven ground have their own.
func (f *frame) shared(one func(e int, ke, fe []float64), bySupport bool) func(e int, ke, fe []float64) {
	type size struct{ a, b, k float64 }
	type made struct{ ke, fe []float64 }
	const grain = 1e-12 // m; what rounding makes of equal steps
	number := map[size]int{}
	of := make([]int, f.net.mesh.Elements())
	var first []int
	for e := range of {
		a, b := halves(f.net.mesh, e)
		key := size{a: math.Round(a / grain), b: math.Round(b / grain)}
		if bySupport {
			key.k = f.bed.evenSupport(e)
		}
		k, known := number[key]
		if !known || key.k < 0 {
			k = len(first)
			number[key] = k
			first = append(first, e)
		}
		of[e] = k
	}
	sizes := make([]made, len(first))
	width := f.bed.width
	for k, e := range first {
		sizes[k] = made{make([]float64, width*width), make([]float64, width)}
		one(e, sizes[k].ke, sizes[k].fe)
	}
	return func(e int, ke, fe []float64) {
		copy(ke, sizes[of[e]].ke)
		copy(fe, sizes[of[e]].fe)
	}
}

// inParallel calls do for 0 to n−1 on all cores.
func inParallel(n int, do func(k int)) {
	workers := min(n, runtime.GOMAXPROCS(0))
	var all sync.WaitGroup
	for w := range workers {
		all.Go(func() {
			for k := w; k < n; k += workers {
				do(k)
			}
		})
	}
	all.Wait()
}

// gauss3 is the rule on 0…1 that is exact for degree 5.
// Source: Abramowitz and Stegun, table 25.4.
var gauss3 = [3][2]float64{{0.5 - math.Sqrt(0.15), 5. / 18}, {0.5, 8. / 18}, {0.5 + math.Sqrt(0.15), 5. / 18}}

// addSprings lays what the joints pass on along their faces.
func (f *frame) addSprings() {
	f.springs = make([][]spring, len(f.net.faces))
	transfers := f.plate.transfers()
	for k, c := range f.net.faces {
		shear, bending := transfers[c.joint].spread(f.plate)
		if shear == 0 && bending == 0 {
			continue
		}
		length := math.Abs(c.to - c.from)
		for _, g := range gauss3 {
			f.springs[k] = append(f.springs[k], spring{g[0], g[1] * length * shear, g[1] * length * bending})
		}
	}
	for j, t := range transfers {
		if t.Kind == Dowelled {
			f.addBars(j, t)
		}
	}
}

// addBars puts the dowels of a joint in their places.
func (f *frame) addBars(j int, t Transfer) {
	joint := f.plate.Slab.Joints[j]
	fact := func(v float64) *source.Fact { return &source.Fact{Value: v} }
	joint.Dowels = &plan.Dowels{Spacing: fact(t.Bars.Spacing), Length: fact(0.4), Clear: fact(t.Bars.Clear)}
	path := plan.Polyline(joint.Path)
	stiffness := t.perBar()
	for _, b := range f.plate.Slab.DowelBars(joint) {
		along, at, _ := path.Nearest(b.From.Plus(b.To).Times(0.5))
		dowel := bar{joint: j, at: at, along: along}
		for i := range barParts {
			offset := (float64(i) - (barParts-1)/2) / barParts * f.plate.Thickness
			k, share := f.faceAt(j, along+offset)
			if k < 0 {
				k, share = f.faceAt(j, along)
			}
			if k < 0 {
				continue // in an opening
			}
			f.springs[k] = append(f.springs[k], spring{share, stiffness / barParts, 0})
			dowel.parts = append(dowel.parts, barPart{k, share, stiffness / barParts})
		}
		if len(dowel.parts) == barParts {
			f.bars = append(f.bars, dowel)
		}
	}
}

// force is the shear force through a bar at deflections u, N.
func (d bar) force(f *frame, u []float64) float64 {
	sum := 0.0
	for _, p := range d.parts {
		sum += p.stiffness * f.step(p.face, p.share, u)
	}
	return math.Abs(sum)
}

// faceAt finds the face of a joint at a distance along it, −1 if there is none.
func (f *frame) faceAt(joint int, along float64) (k int, share float64) {
	for k, c := range f.net.faces {
		if c.joint != joint || along < math.Min(c.from, c.to)-1e-9 || along > math.Max(c.from, c.to)+1e-9 {
			continue
		}
		return k, (along - c.from) / (c.to - c.from)
	}
	return -1, 0
}

// stepRow returns how the step of a face at a share of its length, second side less
// first, follows from the unknowns of its four nodes. Along a thin plate's side the
// deflection is a cubic, along a thick one's a straight line.
func (f *frame) stepRow(k int, t float64) (row [16]float64) {
	n := &f.net.faces[k].node
	a, b := f.net.at(n[0]), f.net.at(n[1])
	way := b.Minus(a)
	value := [2]float64{1 - t, t}
	slope := [2]float64{}
	if !f.net.kind.Thick {
		value = [2]float64{1 - 3*t*t + 2*t*t*t, 3*t*t - 2*t*t*t}
		slope = [2]float64{t - 2*t*t + t*t*t, t*t*t - t*t}
	}
	u := f.net.kind.Unknowns
	for i := range 2 {
		for side, sign := range [2]float64{-1, 1} {
			at := (2*side + i) * u
			row[at] = sign * value[i]
			row[at+1] = sign * slope[i] * way.X
			row[at+2] = sign * slope[i] * way.Y
		}
	}
	return row
}

// turnRow returns how the turn across a face, second side less first, follows from
// its unknowns; a straight line between the nodes.
func (f *frame) turnRow(k int, t float64) (row [16]float64) {
	n := &f.net.faces[k].node
	way, _ := f.net.at(n[1]).Minus(f.net.at(n[0])).Unit()
	across := way.Left()
	u := f.net.kind.Unknowns
	for i, share := range [2]float64{1 - t, t} {
		for side, sign := range [2]float64{-1, 1} {
			at := (2*side + i) * u
			row[at+1] = sign * share * across.X
			row[at+2] = sign * share * across.Y
		}
	}
	return row
}

// faceStiffness adds up the springs of a face.
func (f *frame) faceStiffness(k int, ke []float64, width int) {
	add := func(row [16]float64, stiffness float64) {
		if stiffness == 0 {
			return
		}
		for i := range width {
			for j := range i + 1 {
				ke[i*width+j] += stiffness * row[i] * row[j]
			}
		}
	}
	for _, s := range f.springs[k] {
		add(f.stepRow(k, s.at), s.shear)
		add(f.turnRow(k, s.at), s.bending)
	}
}

// step returns the step of a face: deflection of the second side less the first.
func (f *frame) step(k int, share float64, u []float64) float64 {
	row, sum := f.stepRow(k, share), 0.0
	unknowns := f.net.kind.Unknowns
	for i, n := range f.net.faces[k].node {
		for q := range unknowns {
			sum += row[i*unknowns+q] * u[int(n)*unknowns+q]
		}
	}
	return sum
}

// sides returns the deflections of both sides of a face.
func (f *frame) sides(k int, share float64, u []float64) (first, second float64) {
	row := f.stepRow(k, share)
	unknowns := f.net.kind.Unknowns
	for i, n := range f.net.faces[k].node {
		for q := range unknowns {
			v := row[i*unknowns+q] * u[int(n)*unknowns+q]
			if i < 2 {
				first -= v
			} else {
				second += v
			}
		}
	}
	return first, second
}

// loadForce returns the forces on all unknowns of a load.
func (f *frame) loadForce(l Load) []float64 {
	plate := &fem.Plate{Mesh: f.near(l), Kind: f.net.kind}
	if len(l.Line) > 0 {
		return f.lineForce(plate, l)
	}
	ring := l.ring()
	corners := make([][2]float64, len(ring))
	for i, q := range ring {
		corners[i] = [2]float64{q.X, q.Y}
	}
	force, covered := plate.PatchForce(corners, 1)
	whole := ring.Area()
	if covered > (1-hangOver)*whole {
		whole = covered // the whole force, though a circle's polygon reaches over the edge a little
	}
	for i := range force {
		force[i] *= l.Force / whole
	}
	return force
}

// near returns the elements whose box a load's box meets.
func (f *frame) near(l Load) *fem.Mesh {
	m := f.net.mesh
	part := &fem.Mesh{Shape: m.Shape, X: m.X, Y: m.Y}
	low, high := l.box()
	const slack = 0.01
	for e := range m.Elements() {
		of := m.Of(e)
		x0, x1, y0, y1 := m.X[of[0]], m.X[of[0]], m.Y[of[0]], m.Y[of[0]]
		for _, n := range of[1:] {
			x0, x1, y0, y1 = min(x0, m.X[n]), max(x1, m.X[n]), min(y0, m.Y[n]), max(y1, m.Y[n])
		}
		if x1 >= low.X-slack && x0 <= high.X+slack && y1 >= low.Y-slack && y0 <= high.Y+slack {
			part.Node = append(part.Node, of...)
		}
	}
	return part
}

// lineForce spreads a line load over points closer than a quarter of an element.
func (f *frame) lineForce(plate *fem.Plate, l Load) []float64 {
	total := make([]float64, f.pattern.Unknowns())
	find := fem.NewLocator(plate.Mesh)
	line := plan.Polyline(l.Line)
	parts := int(math.Ceil(line.Length()/(f.plate.fineUnder(l)/4))) + 4
	for i := range parts {
		at, _ := line.At(line.Length() * (float64(i) + 0.5) / float64(parts))
		if force := plate.PointForce(find, at.X, at.Y, 1); force != nil {
			for k, v := range force {
				total[k] += v
			}
		}
	}
	for k := range total {
		total[k] *= l.Force / float64(parts)
	}
	return total
}
