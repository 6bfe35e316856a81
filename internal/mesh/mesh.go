package mesh

import (
	"slices"
	"sync"
)

// Mesh is the result. Side i of a triangle runs from its corner i to corner i+1.
// The slices belong to the mesh; change none of them.
type Mesh struct {
	Points     []Point
	Triangles  [][3]int32 // point numbers, turning left
	Neighbours [][3]int32 // the triangle across each side, or -1
	Sides      [][3]int32 // what each side lies on: a row of Marks, 0 for nothing
	Marks      [][]Mark
	Region     []int32 // triangles with the same number can be reached from each other without crossing a marked side
	Regions    int
	At         []int32 // the point number of each of Domain.Points
	Clipped    []Clip
	Structured bool // triangles 2k and 2k+1 make a rectangle

	// After [Mesh.Move], [Mesh.Lift] and [Lifted.Place]: the number each point and
	// triangle had in the mesh it was made from, or -1 for a new one.
	PointFrom    []int32
	TriangleFrom []int32

	work     *work
	find     finder
	listed   sync.Once
	edges    []Edge
	placed   *Lifted
	fromBase origin // numbers in placed.base
}

// origin is where points and triangles come from.
type origin struct{ points, triangles []int32 }

// Clip is a line of which a part lies outside the outline or in a hole and is
// not in the mesh.
type Clip struct {
	Line int32
	At   Point // somewhere on the part left out
}

// work is what a later change needs.
type work struct {
	domain   Domain
	t        *triangulation
	segments []segment
	on       []int32
	table    *markTable
	snap     float64
	// The state at the last mark: how often each triangle had been written, and
	// the number of points. Nil for a mesh made afresh.
	before       []int32
	pointsBefore int32
	// Triangles at segments that now have another end, and with it perhaps no
	// small angle to excuse theirs.
	doubtful []int32
	resized  bool // all triangles are to be judged, by another size
}

// Build meshes a domain. The error is always an [*Error].
func Build(d Domain) (*Mesh, error) {
	d = d.copied()
	b, err := triangulate(&d)
	if err != nil {
		return nil, err
	}
	if m := b.structured(); m != nil {
		return m, nil
	}
	return b.refined()
}

// refined adds points until size and angles are as wanted.
func (b *builder) refined() (*Mesh, error) {
	on := make([]int32, len(b.t.points))
	for i := range on {
		on[i] = given
	}
	clipped := b.clipped()
	b.dropHidden()
	r := newRefiner(b.domain, b.t, b.segments, on)
	if err := r.prepare(); err != nil {
		return nil, err
	}
	if err := r.run(); err != nil {
		return nil, err
	}
	if b.domain.Smooth > 0 {
		r.smooth(b.domain.Smooth)
		r.all() // turned sides may be too long, and angles beside them too small
		if err := r.run(); err != nil {
			return nil, err
		}
	}
	w := &work{domain: *b.domain, t: b.t, segments: b.segments, on: r.on, table: b.table, snap: b.snap}
	return w.mesh(clipped, b.nodes.single), nil
}

// dropHidden takes the ends off segments outside the outline.
func (b *builder) dropHidden() {
	for i := range b.segments {
		if b.hidden[i] {
			b.segments[i].a, b.segments[i].b = -1, -1
		}
	}
}

// clipped lists the lines with a segment that is not in the mesh.
func (b *builder) clipped() []Clip {
	var out []Clip
	seen := map[int32]bool{}
	for i := range b.segments {
		s := &b.segments[i]
		if b.hidden[i] {
			for _, mark := range b.table.sets[s.set] {
				if mark.Kind == OnLine && !seen[mark.Index] {
					seen[mark.Index] = true
					p := b.nodes.weld.points
					out = append(out, Clip{mark.Index, between(p[s.a], p[s.b], 0.5)})
				}
			}
		}
	}
	return out
}

// mesh numbers what is in use and copies it out.
func (w *work) mesh(clipped []Clip, single []int32) *Mesh {
	t := w.t
	triangles := w.unchanged()
	t.compact(0)
	to := w.dropUnused()
	m := &Mesh{Points: t.points, Marks: w.table.sets, Clipped: clipped, work: w,
		Triangles:  make([][3]int32, len(t.corner)),
		Neighbours: make([][3]int32, len(t.corner)),
		Sides:      make([][3]int32, len(t.corner)),
	}
	if w.before != nil {
		m.TriangleFrom = triangles
		m.PointFrom = slices.Repeat([]int32{-1}, len(t.points))
		for v := range w.pointsBefore {
			if to[v] >= 0 {
				m.PointFrom[to[v]] = v
			}
		}
	}
	for _, v := range single {
		m.At = append(m.At, to[v])
	}
	for tri := range t.corner {
		k := &t.corner[tri]
		m.Triangles[tri] = [3]int32(k.v[:3])
		for i := range 3 {
			m.Neighbours[tri][i] = k.twin[i] >> 2 // -1 stays -1
			if s := k.seg[i]; s >= 0 {
				m.Sides[tri][i] = w.segments[s].set
			}
		}
	}
	m.number()
	return m
}

// unchanged lists, for the triangles in use, their numbers at the last mark.
func (w *work) unchanged() []int32 {
	if w.before == nil {
		return nil
	}
	var from []int32
	for tri := range w.t.corner {
		switch {
		case !w.t.alive(int32(tri)):
		case w.changed(int32(tri)):
			from = append(from, -1)
		default:
			from = append(from, int32(tri))
		}
	}
	return from
}

// dropUnused takes out points without triangles and returns the new numbers.
func (w *work) dropUnused() []int32 {
	t := w.t
	to := make([]int32, len(t.points))
	n := int32(0)
	for v := range t.points {
		if t.around[v] < 0 {
			to[v] = -1
			continue
		}
		to[v] = n
		t.points[n], t.around[n], w.on[n] = t.points[v], t.around[v], w.on[v]
		n++
	}
	t.points, t.around, w.on = t.points[:n], t.around[:n], w.on[:n]
	for tri := range t.corner {
		k := &t.corner[tri]
		k.v[0], k.v[1], k.v[2] = to[k.v[0]], to[k.v[1]], to[k.v[2]]
	}
	for i := range w.segments {
		s := &w.segments[i]
		if s.a >= 0 && s.b >= 0 {
			s.a, s.b = to[s.a], to[s.b]
		}
	}
	return to
}

// number gives triangles their regions, in the order of their first triangle.
func (m *Mesh) number() {
	m.Region = make([]int32, len(m.Triangles))
	for i := range m.Region {
		m.Region[i] = -1
	}
	var queue []int32
	for first := range m.Region {
		if m.Region[first] >= 0 {
			continue
		}
		m.Region[first] = int32(m.Regions)
		queue = append(queue[:0], int32(first))
		for len(queue) > 0 {
			tri := queue[len(queue)-1]
			queue = queue[:len(queue)-1]
			for i, beside := range m.Neighbours[tri] {
				if beside >= 0 && m.Sides[tri][i] == 0 && m.Region[beside] < 0 {
					m.Region[beside] = int32(m.Regions)
					queue = append(queue, beside)
				}
			}
		}
		m.Regions++
	}
}
