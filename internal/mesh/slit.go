package mesh

import "slices"

// Slit is a mesh cut open along some of its lines: points there are doubled, so
// that the two sides may move apart. Where slits cross a point stands four times;
// where one ends inside, once; so a slit of a single side with both ends inside
// stays shut.
type Slit struct {
	Points    []Point
	From      []int32    // the point of the mesh each was made from; the first come unchanged
	Triangles [][3]int32 // as in the mesh, with the doubled points
	Edges     []SlitEdge
}

// SlitEdge is one side that was cut open, in the order of the lines and along
// them. Seen from A to B, C and D lie on the left; C stands beside A, D beside B.
type SlitEdge struct {
	A, B, C, D  int32
	Left, Right int32 // triangles
	Set         int32 // row of Marks
	Along       float64
}

// Slit cuts the mesh open along every line for which opens is true. Where several
// lines coincide one is enough.
func (m *Mesh) Slit(opens func(line int32) bool) *Slit {
	open := make([]bool, len(m.Marks))
	for set, marks := range m.Marks {
		for _, mark := range marks {
			open[set] = open[set] || mark.Kind == OnLine && opens(mark.Index)
		}
	}
	s := &Slit{Points: slices.Clone(m.Points), Triangles: slices.Clone(m.Triangles), From: make([]int32, len(m.Points))}
	for i := range s.From {
		s.From[i] = int32(i)
	}
	s.double(m, open)
	s.listEdges(m, opens)
	return s
}

// double gives each group of corners that hang together around a point a point of
// its own.
func (s *Slit) double(m *Mesh, open []bool) {
	group := make([]int32, 3*len(m.Triangles))
	for i := range group {
		group[i] = int32(i)
	}
	for tri, beside := range m.Neighbours {
		for i, other := range beside {
			if other > int32(tri) && !open[m.Sides[tri][i]] {
				j := slices.Index(m.Neighbours[other][:], int32(tri))
				unite(group, int32(3*tri+i), 3*other+int32(j+1)%3)
				unite(group, int32(3*tri+(i+1)%3), 3*other+int32(j))
			}
		}
	}
	taken := make([]bool, len(m.Points))
	point := make([]int32, len(group))
	for corner := range group {
		tri, i := corner/3, corner%3
		first := root(group, int32(corner))
		if first == int32(corner) {
			v := m.Triangles[tri][i]
			if taken[v] {
				s.Points, s.From = append(s.Points, m.Points[v]), append(s.From, v)
				point[corner] = int32(len(s.Points) - 1)
			} else {
				taken[v] = true
				point[corner] = v
			}
		}
		s.Triangles[tri][i] = point[first]
	}
}

// root is the lowest corner of a group.
func root(group []int32, i int32) int32 {
	for group[i] != i {
		group[i] = group[group[i]]
		i = group[i]
	}
	return i
}

func unite(group []int32, i, j int32) {
	i, j = root(group, i), root(group, j)
	group[max(i, j)] = min(i, j)
}

func (s *Slit) listEdges(m *Mesh, opens func(int32) bool) {
	listed := map[[2]int32]bool{}
	for line := range m.work.domain.Lines {
		if !opens(int32(line)) {
			continue
		}
		for _, e := range m.Line(line) {
			if e.Left < 0 || e.Right < 0 || listed[ends(e.A, e.B)] {
				continue
			}
			listed[ends(e.A, e.B)] = true
			s.Edges = append(s.Edges, SlitEdge{
				A: s.at(m, e.Right, e.A), B: s.at(m, e.Right, e.B),
				C: s.at(m, e.Left, e.A), D: s.at(m, e.Left, e.B),
				Left: e.Left, Right: e.Right, Set: e.Set, Along: e.Along})
		}
	}
}

// at is the point of a triangle that stands where v stood.
func (s *Slit) at(m *Mesh, tri, v int32) int32 {
	return s.Triangles[tri][slices.Index(m.Triangles[tri][:], v)]
}
