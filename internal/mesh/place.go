package mesh

import "slices"

// Place puts the line down along path and returns the new mesh. The mesh it is
// lifted from stays as it is.
func (l *Lifted) Place(path []Point) (*Mesh, error) { return l.place(path, nil) }

// PlaceSized does so under another size, for instance one with small triangles at
// the new ends. Where the mesh is already finer it stays so.
func (l *Lifted) PlaceSized(path []Point, size Sizing) (*Mesh, error) {
	if c, ok := size.(interface{ check() error }); ok {
		if err := c.check(); err != nil {
			return nil, err
		}
	}
	return l.place(path, func(w *work) { w.domain.Size, w.resized = size, true })
}

func (l *Lifted) place(path []Point, resize func(*work)) (*Mesh, error) {
	w := l.base.work.clone()
	if err := checkPath(path, l.line, w.snap); err != nil {
		return nil, err
	}
	if resize != nil {
		resize(w)
	}
	w.domain.Lines[l.line] = slices.Clone(path)
	w.mark()
	p := placer{w: w, base: l.base, mark: Mark{OnLine, int32(l.line)}, path: path, parts: map[int32][]int32{}}
	if err := p.place(); err != nil {
		if err.(*Error).Code == Tangled {
			return l.afresh(w.domain)
		}
		return nil, err
	}
	if err := w.mend(); err != nil {
		return nil, err
	}
	m := w.mesh(append(slices.Clone(l.base.Clipped), p.clipped...), l.base.At)
	m.placed = l
	m.fromBase = origin{m.PointFrom, m.TriangleFrom}
	m.PointFrom = through(m.PointFrom, l.pointFrom)
	m.TriangleFrom = through(m.TriangleFrom, l.triangleFrom)
	return m, nil
}

func checkPath(path []Point, line int, snap float64) error {
	for _, p := range path {
		if err := checkFinite(p); err != nil {
			return err
		}
	}
	return checkLine(path, line, snap)
}

// afresh meshes everything again, for paths that run along others at about the
// snap distance, where lines once snapped would have to be snapped again.
func (l *Lifted) afresh(d Domain) (*Mesh, error) {
	m, err := Build(d)
	if err != nil {
		return nil, err
	}
	m.PointFrom = slices.Repeat([]int32{-1}, len(m.Points))
	m.TriangleFrom = slices.Repeat([]int32{-1}, len(m.Triangles))
	return m, nil
}

// through looks numbers up in a second list.
func through(from, further []int32) []int32 {
	out := make([]int32, len(from))
	for i, k := range from {
		if out[i] = -1; k >= 0 {
			out[i] = further[k]
		}
	}
	return out
}

// A placer lays one path into a mesh that has none of it.
type placer struct {
	w       *work
	base    *Mesh
	mark    Mark
	path    []Point
	n       *noding
	given   []int32         // per node, its point in the mesh or -1
	on      map[int32]int32 // the segment a new node lies on
	shared  map[[2]int32]int32
	parts   map[int32][]int32 // a segment and those cut off from it
	inside  []piece
	clipped []Clip
}

func (p *placer) place() error {
	if err := p.cutUp(); err != nil {
		return err
	}
	p.choose()
	if len(p.inside) == 0 {
		return refuse(OutsideLine, p.path[0], "Move it inside or leave it out.", "Line %d lies wholly outside the outline or in a hole", p.mark.Index)
	}
	p.clear()
	for _, piece := range p.inside {
		for _, node := range [2]int32{piece.a, piece.b} {
			if p.given[node] < 0 {
				if p.given[node] = p.put(node); p.given[node] < 0 {
					return p.tangled(p.n.weld.points[node])
				}
			}
		}
	}
	for _, piece := range p.inside {
		if at, ok := p.lay(piece); !ok {
			return p.tangled(at)
		}
	}
	return nil
}

func (p *placer) tangled(at Point) error {
	return refuse(Tangled, at, "Draw the lines there farther apart or exactly on each other.",
		"Lines run so close together that they cannot be told apart")
}

// cutUp cuts the path where it meets segments, and segments where they meet it.
func (p *placer) cutUp() error {
	w := p.w
	n := &noding{weld: newWelder(w.snap)}
	node := map[int32]int32{}
	number := func(v int32) int32 {
		if _, ok := node[v]; !ok {
			node[v] = n.weld.number(w.t.points[v])
			for int(node[v]) >= len(p.given) {
				p.given = append(p.given, -1)
			}
			p.given[node[v]] = v
		}
		return node[v]
	}
	for i := range w.segments {
		n.sources = append(n.sources, Mark{OnLine, int32(i)})
		if s := &w.segments[i]; s.a >= 0 && s.b >= 0 {
			n.pieces = append(n.pieces, piece{number(s.a), number(s.b), int32(i)})
		}
	}
	for v, on := range w.on {
		if on == given {
			number(int32(v))
		}
	}
	n.addPath(p.path, p.mark)
	if err := n.settle(); err != nil {
		return err
	}
	for len(p.given) < len(n.weld.points) {
		p.given = append(p.given, -1)
	}
	p.n = n
	return nil
}

// choose picks the pieces of the path that lie inside, and notes what they share
// with segments.
func (p *placer) choose() {
	p.on, p.shared = map[int32]int32{}, map[[2]int32]int32{}
	own := int32(len(p.n.sources) - 1)
	for _, piece := range p.n.pieces {
		if piece.source == own {
			continue
		}
		p.shared[ends(piece.a, piece.b)] = piece.source
		for _, node := range [2]int32{piece.a, piece.b} {
			if p.given[node] < 0 {
				p.on[node] = piece.source
			}
		}
	}
	laid := map[[2]int32]bool{}
	for _, piece := range p.n.pieces {
		if piece.source != own || laid[ends(piece.a, piece.b)] {
			continue
		}
		laid[ends(piece.a, piece.b)] = true
		at := p.n.weld.points
		half := between(at[piece.a], at[piece.b], 0.5)
		_, shared := p.shared[ends(piece.a, piece.b)]
		if shared || p.base.Locate(half) >= 0 {
			p.inside = append(p.inside, piece)
		} else if len(p.clipped) == 0 {
			p.clipped = append(p.clipped, Clip{p.mark.Index, half})
		}
	}
}

// clearWidth is how near the path points that nothing needs are taken out, in
// mean lengths of their sides.
const clearWidth = 0.6

// clear takes out points near the path that the refinement had put there.
func (p *placer) clear() {
	t := p.w.t
	at := p.n.weld.points
	seen := map[int32]bool{}
	for _, piece := range p.inside {
		a, b := at[piece.a], at[piece.b]
		p.base.along(a, b, func(tri int32) {
			for _, v := range p.base.Triangles[tri] {
				if seen[v] || p.w.on[v] == given || t.around[v] < 0 {
					continue
				}
				if _, away := nearestOn(a, b, t.points[v]); away < clearWidth*t.meanSide(v) {
					seen[v] = true
					t.remove(v)
				}
			}
		})
	}
}

// put makes a point of the mesh for a node and returns it, or -1.
func (p *placer) put(node int32) int32 {
	at := p.n.weld.points[node]
	s, ok := p.on[node]
	if !ok {
		return p.w.putFree(at, p.base)
	}
	v, cutOff := p.w.putOnSegment(at, p.partsOf(s))
	if cutOff >= 0 {
		p.parts[s] = append(p.partsOf(s), cutOff)
	}
	return v
}

func (p *placer) partsOf(s int32) []int32 {
	if parts, ok := p.parts[s]; ok {
		return parts
	}
	return []int32{s}
}

// lay makes the mark of the path show along a piece.
func (p *placer) lay(piece piece) (blocked Point, ok bool) {
	w := p.w
	a, b := p.given[piece.a], p.given[piece.b]
	if a == b {
		return Point{}, true
	}
	if s, shared := p.shared[ends(piece.a, piece.b)]; shared {
		return w.t.points[a], w.share(a, b, p.partsOf(s), p.mark)
	}
	number := int32(len(w.segments))
	w.segments = append(w.segments, segment{a: a, b: b, set: w.table.of([]Mark{p.mark})})
	return w.t.lay(number, a, b)
}
