package fem

import "slices"

// FromTriangles makes a mesh of three-node triangles from points and corners, turning
// left.
func FromTriangles(points [][2]float64, corners [][3]int32) *Mesh {
	m := &Mesh{Shape: T3}
	for _, p := range points {
		m.X, m.Y = append(m.X, p[0]), append(m.Y, p[1])
	}
	for _, c := range corners {
		m.Node = append(m.Node, c[0], c[1], c[2])
	}
	return m
}

// Quadratic returns the same elements with nodes in the middle of their sides: T6 for
// T3, Q8 for Q4. Corners keep their numbers.
func (m *Mesh) Quadratic() *Mesh {
	to, ok := map[*Shape]*Shape{T3: T6, Q4: Q8}[m.Shape]
	if !ok {
		panic("fem: only three- and four-node elements take middle nodes")
	}
	q := &Mesh{Shape: to, X: slices.Clone(m.X), Y: slices.Clone(m.Y)}
	middle := map[[2]int32]int32{}
	for e := range m.Elements() {
		corners := m.Of(e)
		q.Node = append(q.Node, corners...)
		for k, a := range corners {
			b := corners[(k+1)%len(corners)]
			key := sideKey(a, b)
			n, known := middle[key]
			if !known {
				n = int32(len(q.X))
				middle[key] = n
				q.X, q.Y = append(q.X, (m.X[a]+m.X[b])/2), append(q.Y, (m.Y[a]+m.Y[b])/2)
			}
			q.Node = append(q.Node, n)
		}
	}
	return q
}

func sideKey(a, b int32) [2]int32 { return [2]int32{min(a, b), max(a, b)} }

// Cut parts a mesh of three- or four-node elements along sides, each given by the
// nodes at its ends: joints, cracks. Nodes on the line are doubled, so often as there
// are pieces around them; where a line ends inside, its last node stays whole. First
// copies keep their numbers.
//
// It returns the new mesh, the nodes of an [Interface] or [PlateJoint] along the cut,
// four per side, and for each node of the new mesh the old one it is a copy of. Sides
// given that lie on the outline or are no sides are left out.
func (m *Mesh) Cut(along [][2]int32) (cut *Mesh, faces, origin []int32) {
	c := cutting{mesh: m, cut: map[[2]int32]bool{}, beside: map[[2]int32][]int32{}}
	for _, s := range along {
		c.cut[sideKey(s[0], s[1])] = true
	}
	m.sides(func(s Side, key [2]int32) { c.beside[key] = append(c.beside[key], int32(s.Element)) })
	cut = &Mesh{Shape: m.Shape, X: slices.Clone(m.X), Y: slices.Clone(m.Y), Node: slices.Clone(m.Node)}
	origin = make([]int32, m.Nodes())
	for i := range origin {
		origin[i] = int32(i)
	}
	touched := map[int32]bool{}
	for _, s := range along {
		touched[s[0]], touched[s[1]] = true, true
	}
	start, element := m.elementsAt()
	for n := range int32(m.Nodes()) {
		if !touched[n] {
			continue
		}
		for _, piece := range c.pieces(n, element[start[n]:start[n+1]])[1:] {
			origin = append(origin, n)
			cut.X, cut.Y = append(cut.X, m.X[n]), append(cut.Y, m.Y[n])
			for _, e := range piece {
				of := cut.Of(int(e))
				of[slices.Index(m.Of(int(e)), n)] = int32(len(origin) - 1)
			}
		}
	}
	return cut, c.faces(cut, along), origin
}

// elementsAt lists the elements at each node.
func (m *Mesh) elementsAt() (start, element []int32) {
	start = make([]int32, m.Nodes()+2)
	for _, n := range m.Node {
		start[n+2]++
	}
	for i := 2; i < len(start); i++ {
		start[i] += start[i-1]
	}
	element = make([]int32, len(m.Node))
	for k, n := range m.Node {
		element[start[n+1]] = int32(k / m.Shape.Nodes)
		start[n+1]++
	}
	return start[:m.Nodes()+1], element
}

// cutting is a cut in progress.
type cutting struct {
	mesh   *Mesh
	cut    map[[2]int32]bool
	beside map[[2]int32][]int32 // elements at each side
}

// pieces groups the elements around a node that still hang together at it.
func (c *cutting) pieces(n int32, around []int32) [][]int32 {
	var pieces [][]int32
	left := slices.Clone(around)
	for len(left) > 0 {
		piece := []int32{left[0]}
		left = left[1:]
		for k := 0; k < len(piece); k++ {
			for _, other := range c.across(n, piece[k]) {
				if i := slices.Index(left, other); i >= 0 {
					piece = append(piece, other)
					left = slices.Delete(left, i, i+1)
				}
			}
		}
		pieces = append(pieces, piece)
	}
	if pieces == nil {
		pieces = [][]int32{nil}
	}
	return pieces
}

// across returns the elements that share with e a side at node n that is not cut.
func (c *cutting) across(n, e int32) (others []int32) {
	corners := c.mesh.Of(int(e))[:c.mesh.Shape.Corners]
	for k, a := range corners {
		b := corners[(k+1)%len(corners)]
		if a != n && b != n || c.cut[sideKey(a, b)] {
			continue
		}
		others = append(others, c.beside[sideKey(a, b)]...)
	}
	return others
}

// faces returns the four nodes of each cut side: those of the element right of it,
// then those of the element left of it.
func (c *cutting) faces(cut *Mesh, along [][2]int32) []int32 {
	var faces []int32
	for _, s := range along {
		beside := c.beside[sideKey(s[0], s[1])]
		if len(beside) != 2 {
			continue
		}
		left, right := beside[0], beside[1]
		if !c.runs(left, s[0], s[1]) {
			left, right = right, left
		}
		copyOf := func(e, n int32) int32 { return cut.Of(int(e))[slices.Index(c.mesh.Of(int(e)), n)] }
		faces = append(faces, copyOf(right, s[0]), copyOf(right, s[1]), copyOf(left, s[0]), copyOf(left, s[1]))
	}
	return faces
}

// runs says whether element e has the side from a to b, in that direction.
func (c *cutting) runs(e, a, b int32) bool {
	corners := c.mesh.Of(int(e))
	k := slices.Index(corners, a)
	return corners[(k+1)%len(corners)] == b
}
