package mesh

import (
	"cmp"
	"slices"
)

// Edge is a side of the mesh that lies on an input, from A to B.
type Edge struct {
	A, B        int32
	Left, Right int32 // triangles on either side, -1 outside
	Set         int32 // row of Marks
	Along       float64
}

// Edges lists every side that lies on an input, once. Along is not set.
func (m *Mesh) Edges() []Edge {
	m.listed.Do(func() {
		for tri, sides := range m.Sides {
			for i, set := range sides {
				beside := m.Neighbours[tri][i]
				if set != 0 && beside <= int32(tri) {
					v := m.Triangles[tri]
					m.edges = append(m.edges, Edge{A: v[i], B: v[(i+1)%3], Left: int32(tri), Right: beside, Set: set})
				}
			}
		}
	})
	return slices.Clone(m.edges)
}

// Line lists the sides on line i in the order of the line, each running its way.
// Along is how far from the start of the line the middle of the side lies.
func (m *Mesh) Line(i int) []Edge {
	var out []Edge
	path := m.work.domain.Lines[i]
	for _, e := range m.Edges() {
		if !slices.Contains(m.Marks[e.Set], Mark{OnLine, int32(i)}) {
			continue
		}
		a, b := m.Points[e.A], m.Points[e.B]
		var direction Point
		e.Along, direction = along(path, between(a, b, 0.5))
		if (b[0]-a[0])*direction[0]+(b[1]-a[1])*direction[1] < 0 {
			e.A, e.B, e.Left, e.Right = e.B, e.A, e.Right, e.Left
		}
		out = append(out, e)
	}
	slices.SortFunc(out, func(x, y Edge) int { return cmp.Compare(x.Along, y.Along) })
	return out
}

// along returns how far along a path the place nearest to p lies, and which way
// the path runs there.
func along(path []Point, p Point) (position float64, direction Point) {
	passed, nearest := 0.0, -1.0
	for k := 1; k < len(path); k++ {
		a, b := path[k-1], path[k]
		t, away := nearestOn(a, b, p)
		if nearest < 0 || away < nearest {
			nearest = away
			position, direction = passed+t*distance(a, b), Point{b[0] - a[0], b[1] - a[1]}
		}
		passed += distance(a, b)
	}
	return position, direction
}
