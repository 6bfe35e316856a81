package flexure

import (
	"math"

	"slabwright/internal/fem"
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

// addFace notes a side that was cut open along a joint.
func (n *net) addFace(nodes [4]int32, joint int, path plan.Polyline) {
	from, _, _ := path.Nearest(n.at(nodes[0]))
	to, _, _ := path.Nearest(n.at(nodes[1]))
	n.faces = append(n.faces, face{joint: joint, node: nodes, from: from, to: to})
}

func (n *net) at(node int32) plan.Point { return plan.Point{X: n.mesh.X[node], Y: n.mesh.Y[node]} }

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
