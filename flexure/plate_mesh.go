package flexure

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"slabwright/internal/fem"
	"slabwright/internal/mesh"
	"slabwright/plan"
)

// net is the plan cut into elements, parted along its joints.
type net struct {
	mesh  *fem.Mesh
	kind  *fem.PlateShape
	faces []face
	parts [2][]int // steps of an even grid between its stops along x and y
}

// face is one side of an element on a joint: nodes a and b of the first panel, c
// beside a and d beside b of the second, which lies on the left from a to b.
type face struct {
	joint int // of the plan
	node  [4]int32
	from  float64 // of a along the joint
	to    float64 // of b; below from where the face runs against the joint
}

// newNet meshes a plate, fine at the loads given. Like, if not nil, is a net whose
// numbers of steps are kept where they still do.
func newNet(p Plate, loads []Load, like *net) (*net, error) {
	paths, parted := p.jointPaths()
	if !p.Triangles && p.upright(paths) {
		return p.gridNet(paths, parted, loads, like)
	}
	return p.triangleNet(paths, parted, loads)
}

// jointPaths returns the joints run on to what they stop just short of, and which of
// them part the slab.
func (p Plate) jointPaths() (paths []plan.Polyline, parted []bool) {
	var edges []plan.Polyline
	for _, r := range append(p.openings(), p.Slab.Outline) {
		edges = append(edges, append(append(plan.Polyline(nil), r...), r[0]))
	}
	for _, j := range p.Slab.Joints {
		edges = append(edges, j.Path)
	}
	first := len(edges) - len(p.Slab.Joints)
	for i, t := range p.transfers() {
		path := append(plan.Polyline(nil), p.Slab.Joints[i].Path...)
		for _, end := range []int{0, len(path) - 1} {
			path[end] = runOn(path[end], edges, first+i)
		}
		paths, parted = append(paths, path), append(parted, t.Kind != WholeJoint)
	}
	return paths, parted
}

// runOn moves the end of a joint onto the nearest edge or other joint within reach;
// edges come first.
func runOn(end plan.Point, lines []plan.Polyline, own int) plan.Point {
	best, to := plan.JointReach, end
	for i, l := range lines {
		if i == own {
			continue
		}
		if _, at, d := l.Nearest(end); d < best {
			best, to = d, at
		}
	}
	return to
}

// straight is how far a line may lie off an axis and count as along it, m.
const straight = 1e-6

// upright says whether everything runs along the axes.
func (p Plate) upright(paths []plan.Polyline) bool {
	ok := func(s plan.Segment) bool { return math.Abs(s.A.X-s.B.X) < straight || math.Abs(s.A.Y-s.B.Y) < straight }
	for _, r := range p.rings() {
		for _, s := range r.Sides() {
			if !ok(s) {
				return false
			}
		}
	}
	for _, l := range paths {
		for _, s := range l.Pieces() {
			if !ok(s) {
				return false
			}
		}
	}
	return true
}

// rings returns outline, openings and zones.
func (p Plate) rings() []plan.Ring {
	rings := append([]plan.Ring{p.Slab.Outline}, p.openings()...)
	for _, z := range p.Zones {
		rings = append(rings, z.Area)
	}
	return rings
}

// gridNet meshes in rectangles between straight lines.
func (p Plate) gridNet(paths []plan.Polyline, parted []bool, loads []Load, like *net) (*net, error) {
	n := &net{kind: fem.BFS}
	if p.theory() == Thick {
		n.kind = fem.MITC4
	}
	xs, ys := n.gridLines(p, paths, loads, like)
	if len(xs)*len(ys) > tooMany {
		return nil, fmt.Errorf("elements of this size would be %d: take them larger, or fewer loads at a time", len(xs)*len(ys))
	}
	whole := fem.GridMesh(fem.Q4, xs, ys, func(x, y float64) bool { return p.onSlab(plan.Point{X: x, Y: y}) })
	if whole.Elements() == 0 {
		return nil, errors.New("nothing is left of the slab: look at its openings")
	}
	var along [][2]int32
	for _, s := range innerSides(whole) {
		mid := plan.Point{X: (whole.X[s[0]] + whole.X[s[1]]) / 2, Y: (whole.Y[s[0]] + whole.Y[s[1]]) / 2}
		if j := onJoint(mid, paths, parted); j >= 0 && onPath(whole, s, paths[j]) {
			along = append(along, s)
		}
	}
	cut, nodes, _ := whole.Cut(along)
	n.mesh = cut
	for k := 0; k < len(nodes); k += 4 {
		f := [4]int32(nodes[k : k+4])
		j := onJoint(n.at(f[0]).Plus(n.at(f[1])).Times(0.5), paths, parted)
		n.addFace(f, j, paths[j])
	}
	return n, nil
}

// innerSides lists the sides between two elements, in the order of the elements.
func innerSides(m *fem.Mesh) (sides [][2]int32) {
	count := map[[2]int32]int{}
	for e := range m.Elements() {
		of := m.Of(e)
		for k, a := range of {
			b := of[(k+1)%len(of)]
			key := [2]int32{min(a, b), max(a, b)}
			if count[key]++; count[key] == 2 {
				sides = append(sides, key)
			}
		}
	}
	return sides
}

// onJoint returns the first parting joint through a place, −1 if none.
func onJoint(at plan.Point, paths []plan.Polyline, parted []bool) int {
	for j, path := range paths {
		if !parted[j] || len(path) < 2 {
			continue
		}
		if _, _, d := path.Nearest(at); d < 10*straight {
			return j
		}
	}
	return -1
}

// onPath says whether both ends of a side lie on a joint.
func onPath(m *fem.Mesh, side [2]int32, path plan.Polyline) bool {
	for _, n := range side {
		if _, _, d := path.Nearest(plan.Point{X: m.X[n], Y: m.Y[n]}); d > 10*straight {
			return false
		}
	}
	return true
}

// addFace notes a side that was cut open along a joint.
func (n *net) addFace(nodes [4]int32, joint int, path plan.Polyline) {
	from, _, _ := path.Nearest(n.at(nodes[0]))
	to, _, _ := path.Nearest(n.at(nodes[1]))
	n.faces = append(n.faces, face{joint: joint, node: nodes, from: from, to: to})
}

func (n *net) at(node int32) plan.Point { return plan.Point{X: n.mesh.X[node], Y: n.mesh.Y[node]} }

// tooMany is how many elements are refused.
const tooMany = 250_000

// mostCells is about how many rectangles a grid may have before it is made coarser.
const mostCells = 16_000

// gridLines returns the straight lines of the grid: all edges, joints, zones and
// loads lie on them, and between them lines crowd towards loads and inside corners.
// With many loads it is made coarser all over until it has few enough rectangles.
func (n *net) gridLines(p Plate, paths []plan.Polyline, loads []Load, like *net) (xs, ys []float64) {
	if like == nil {
		like = &net{}
	}
	for coarser := 1.0; ; coarser *= 1.2 {
		x, y := p.stopsFor(paths, loads, coarser)
		xs, n.parts[0] = x.lines(p.size()*coarser, like.parts[0])
		ys, n.parts[1] = y.lines(p.size()*coarser, like.parts[1])
		if len(xs)*len(ys) <= mostCells || coarser > 10 || p.Size > 0 || p.Fine > 0 {
			return xs, ys
		}
	}
}

// stopsFor lists where lines of the grid go along each axis.
func (p Plate) stopsFor(paths []plan.Polyline, loads []Load, coarser float64) (x, y *stops) {
	x, y = &stops{}, &stops{}
	need := func(points []plan.Point) {
		for _, q := range points {
			x.need(q.X)
			y.need(q.Y)
		}
	}
	for _, r := range p.rings() {
		need(r)
	}
	for _, l := range paths {
		need(l)
	}
	wish := func(q plan.Point, fine float64) {
		x.wish(q.X, fine*coarser)
		y.wish(q.Y, fine*coarser)
	}
	for _, l := range loads {
		low, high := l.box()
		for _, q := range [3]plan.Point{low, high, low.Plus(high).Times(0.5)} {
			wish(q, p.fineUnder(l))
		}
	}
	if len(loads) > 0 {
		for _, q := range p.sharpPlaces() {
			wish(q, p.size()*atSharp)
		}
	}
	return x, y
}

// atSharp is how much smaller elements are at inside corners.
const atSharp = 0.3

// fineUnder returns the size of elements wanted under a load.
func (p Plate) fineUnder(l Load) float64 {
	if p.Fine > 0 {
		return p.Fine
	}
	low, high := l.box()
	across := math.Min(high.X-low.X, high.Y-low.Y)
	if len(l.Line) > 0 {
		return math.Min(p.size(), p.stiffness()/8)
	}
	return math.Min(p.size(), math.Max(across/6, p.stiffness()/25))
}

// box returns the lower left and upper right of a load.
func (l Load) box() (low, high plan.Point) {
	if len(l.Line) > 0 {
		return plan.Ring(l.Line).Box()
	}
	if len(l.Area) > 0 {
		return plan.Ring(l.Area).Box()
	}
	r := plan.Point{X: l.Radius, Y: l.Radius}
	return l.At.Minus(r), l.At.Plus(r)
}

// stops are places along an axis where a line of the grid goes.
type stops struct {
	at, fine []float64 // fine 0 for no wish
	wishes   [][2]float64
}

// need puts a line at a place.
func (s *stops) need(at float64) {
	s.at, s.fine = append(s.at, at), append(s.fine, 0)
}

// wish asks for a line at a place with steps of a size beside it.
func (s *stops) wish(at, fine float64) { s.wishes = append(s.wishes, [2]float64{at, fine}) }

// growth is how much longer each step of the grid may be than the one before.
const growth = 1.25

// lines returns the lines of the grid. A wish near a place that has a line makes that
// one fine instead.
func (s *stops) lines(most float64, like []int) (lines []float64, parts []int) {
	s.sort(straight)
	if len(s.wishes) == 0 {
		parts = evenParts(s.at, most, like)
		return fem.EqualLines(s.at, parts), parts
	}
	low, high := s.at[0], s.at[len(s.at)-1]
	for _, w := range s.wishes {
		if w[0] < low || w[0] > high {
			continue
		}
		i := nearest(s.at, w[0])
		if math.Abs(s.at[i]-w[0]) < 0.4*w[1] {
			if s.fine[i] == 0 || w[1] < s.fine[i] {
				s.fine[i] = w[1]
			}
			continue
		}
		s.at, s.fine = append(s.at, w[0]), append(s.fine, w[1])
	}
	s.sort(straight)
	return fem.GradedLines(s.at, s.fine, growth, most), nil
}

// sort puts stops in order and drops those on top of each other.
func (s *stops) sort(tolerance float64) {
	order := make([]int, len(s.at))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case s.at[a] < s.at[b]:
			return -1
		case s.at[a] > s.at[b]:
			return 1
		}
		return 0
	})
	var at, fine []float64
	for _, i := range order {
		if k := len(at) - 1; k >= 0 && s.at[i]-at[k] < tolerance {
			if s.fine[i] > 0 && (fine[k] == 0 || s.fine[i] < fine[k]) {
				fine[k] = s.fine[i]
			}
			continue
		}
		at, fine = append(at, s.at[i]), append(fine, s.fine[i])
	}
	s.at, s.fine = at, fine
}

func nearest(values []float64, v float64) int {
	best := 0
	for i, x := range values {
		if math.Abs(x-v) < math.Abs(values[best]-v) {
			best = i
		}
	}
	return best
}

// evenParts returns in how many equal steps no longer than most each gap between
// stops is parted. The numbers of a grid before are kept while steps are no longer
// than half as much again.
func evenParts(at []float64, most float64, like []int) []int {
	parts := make([]int, len(at)-1)
	keep := len(like) == len(parts)
	for i := range parts {
		parts[i] = max(1, int(math.Ceil((at[i+1]-at[i])/most-1e-9)))
		keep = keep && (at[i+1]-at[i])/float64(like[i]) <= 1.5*most && like[i] <= 3*parts[i]+1
	}
	if keep {
		return like
	}
	return parts
}

// triangleNet meshes in triangles.
func (p Plate) triangleNet(paths []plan.Polyline, parted []bool, loads []Load) (*net, error) {
	n := &net{kind: fem.DKT}
	if p.theory() == Thick {
		n.kind = fem.MITC3
	}
	d := mesh.Domain{Outline: [][]mesh.Point{toMesh(p.Slab.Outline)}, Smooth: 2, Unstructured: true, Snap: 1e-4, MaxTriangles: tooMany}
	for _, h := range p.openings() {
		d.Holes = append(d.Holes, toMesh(h))
	}
	for i, path := range paths {
		if parted[i] {
			d.Lines = append(d.Lines, toMesh(path))
		} else {
			d.Lines = append(d.Lines, nil)
		}
	}
	for _, z := range p.Zones {
		d.Lines = append(d.Lines, toMesh(append(append([]plan.Point(nil), z.Area...), z.Area[0])))
	}
	d.Size = mesh.Grade(p.size(), growth, p.fineAt(loads)...)
	m, err := mesh.Build(d)
	if err != nil {
		return nil, fmt.Errorf("the plan cannot be cut into triangles: %w", err)
	}
	slit := m.Slit(func(line int32) bool { return int(line) < len(parted) && parted[line] })
	n.mesh = fem.FromTriangles(slit.Points, slit.Triangles)
	for _, e := range slit.Edges {
		for _, mark := range m.Marks[e.Set] {
			if j := int(mark.Index); mark.Kind == mesh.OnLine && j < len(paths) {
				n.addFace([4]int32{e.A, e.B, e.C, e.D}, j, paths[j])
				break
			}
		}
	}
	return n, nil
}

// fineAt lists the places where elements must be small.
func (p Plate) fineAt(loads []Load) (fine []mesh.Source) {
	if len(loads) > 0 {
		for _, q := range p.sharpPlaces() {
			fine = append(fine, mesh.Source{At: mesh.Point{q.X, q.Y}, Size: p.size() * atSharp})
		}
	}
	for _, l := range loads {
		size := p.fineUnder(l)
		if len(l.Line) > 0 {
			fine = append(fine, mesh.Along(toMesh(l.Line), size, size)...)
			continue
		}
		low, high := l.box()
		across := int(math.Ceil(math.Max(high.X-low.X, high.Y-low.Y)/size)) + 1
		for i := range across + 1 {
			for j := range across + 1 {
				q := plan.Point{X: low.X + (high.X-low.X)*float64(i)/float64(across), Y: low.Y + (high.Y-low.Y)*float64(j)/float64(across)}
				fine = append(fine, mesh.Source{At: mesh.Point{q.X, q.Y}, Size: size})
			}
		}
	}
	return fine
}

func toMesh(ring []plan.Point) []mesh.Point {
	out := make([]mesh.Point, len(ring))
	for i, p := range ring {
		out[i] = mesh.Point{p.X, p.Y}
	}
	return out
}
