package mesh

// A builder carries one mesh from input to triangles.
type builder struct {
	domain   *Domain
	snap     float64
	nodes    *noding
	table    *markTable
	segments []segment
	hidden   []bool // segments outside the outline
	t        *triangulation
}

// triangulate makes the constrained Delaunay triangulation of d, with no points
// added but those where lines meet.
func triangulate(d *Domain) (*builder, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	b := &builder{domain: d, snap: d.snapDistance(), table: newMarkTable()}
	var err error
	if b.nodes, err = cutUp(d, b.snap); err != nil {
		return nil, err
	}
	for _, check := range []func() error{b.checkAreas, b.checkGaps} {
		if err := check(); err != nil {
			return nil, err
		}
	}
	b.segments = b.nodes.segments(b.table, b.turning())
	b.t = newDelaunay(b.nodes.weld.points)
	for i := range b.segments {
		s := &b.segments[i]
		s.a += boxPoints
		s.b += boxPoints
		if at, ok := b.t.lay(int32(i), s.a, s.b); !ok {
			return nil, refuse(Tangled, at, "Draw the lines there farther apart or exactly on each other.",
				"Lines run so close together that they cannot be told apart")
		}
	}
	if m := b.t.carve(b.segments); m != nil {
		return nil, b.explain(m)
	}
	for i := range b.segments {
		b.segments[i].a -= boxPoints
		b.segments[i].b -= boxPoints
	}
	return b, b.checkInside()
}

// turning tells for each source of pieces whether its ring turns left.
func (b *builder) turning() []bool {
	var left []bool
	for _, rings := range [2][][]Point{b.domain.Outline, b.domain.Holes} {
		for _, ring := range rings {
			left = append(left, ringArea(ring) > 0)
		}
	}
	return append(left, make([]bool, len(b.domain.Lines))...)
}

// ringArea is positive for a ring that turns left. Coordinates are taken from the
// first point, which keeps the digits when the ring lies far from the origin.
func ringArea(ring []Point) float64 {
	twice := 0.0
	for i := 2; i < len(ring); i++ {
		p, q := ring[i-1], ring[i]
		twice += (p[0]-ring[0][0])*(q[1]-ring[0][1]) - (q[0]-ring[0][0])*(p[1]-ring[0][1])
	}
	return twice / 2
}
