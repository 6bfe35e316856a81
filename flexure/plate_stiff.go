package flexure

import (
	"math"
	"runtime"
	"slices"
	"sync"

	"slabwright/internal/fem"
	"slabwright/internal/sparse"
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
