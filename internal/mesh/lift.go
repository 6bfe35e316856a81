package mesh

import (
	"math"
	"slices"
)

// Lifted is a mesh from which one line has been taken out, ready to have the line
// put down elsewhere, as often as wanted. Each [Lifted.Place] starts from the
// same mesh, so that the result depends on the place alone and not on the way
// there. It may be used from several goroutines.
type Lifted struct {
	base *Mesh
	line int
	// Numbers in the mesh it is compared with, per triangle and point of base.
	triangleFrom, pointFrom []int32
}

// Move takes line out, puts it down along path and returns the new mesh. Triangles
// away from the old and the new place stay as they are: see [Mesh.TriangleFrom].
// For many moves of one line call [Mesh.Lift] once.
func (m *Mesh) Move(line int, path []Point) (*Mesh, error) {
	l, err := m.Lift(line)
	if err != nil {
		return nil, err
	}
	return l.Place(path)
}

// Lift takes a line out of the mesh and mends the mesh where it was.
func (m *Mesh) Lift(line int) (*Lifted, error) {
	if line < 0 || line >= len(m.work.domain.Lines) {
		return nil, refuseWhole(BadOption, "Give the number of one of them.", "There is no line %d among %d", line, len(m.work.domain.Lines))
	}
	if m.placed != nil && m.placed.line == line {
		return m.placed.seenFrom(m), nil
	}
	w := m.work.clone()
	w.domain.Lines[line] = nil
	w.mark()
	w.erase(Mark{OnLine, int32(line)}, m.At)
	if err := w.mend(); err != nil {
		return nil, err
	}
	clipped := slices.DeleteFunc(slices.Clone(m.Clipped), func(c Clip) bool { return c.Line == int32(line) })
	base := w.mesh(clipped, m.At)
	return &Lifted{base: base, line: line, triangleFrom: base.TriangleFrom, pointFrom: base.PointFrom}, nil
}

// Without is the mesh with the line taken out.
func (l *Lifted) Without() *Mesh { return l.base }

// seenFrom makes numbers refer to m, a mesh placed from l.
func (l *Lifted) seenFrom(m *Mesh) *Lifted {
	return &Lifted{base: l.base, line: l.line,
		triangleFrom: inverse(m.fromBase.triangles, len(l.base.Triangles)),
		pointFrom:    inverse(m.fromBase.points, len(l.base.Points))}
}

func inverse(from []int32, n int) []int32 {
	out := slices.Repeat([]int32{-1}, n)
	for i, k := range from {
		if k >= 0 {
			out[k] = int32(i)
		}
	}
	return out
}

// clone copies all that a change touches.
func (w *work) clone() *work {
	c := &work{domain: w.domain, snap: w.snap, segments: slices.Clone(w.segments), on: slices.Clone(w.on)}
	c.domain.Lines = slices.Clone(w.domain.Lines)
	c.t = &triangulation{points: slices.Clone(w.t.points), corner: slices.Clone(w.t.corner), around: slices.Clone(w.t.around)}
	c.table = newMarkTable()
	for _, marks := range w.table.sets[1:] {
		c.table.of(slices.Clone(marks))
	}
	return c
}

// mark remembers the state of each triangle and how many points there are, to
// know later what has changed.
func (w *work) mark() {
	w.before = make([]int32, len(w.t.corner))
	for tri := range w.t.corner {
		w.before[tri] = w.t.corner[tri].v[3]
	}
	w.pointsBefore = int32(len(w.t.points))
}

// changed tells whether a triangle was written since mark.
func (w *work) changed(tri int32) bool {
	return int(tri) >= len(w.before) || w.t.corner[tri].v[3] != w.before[tri]
}

// erase takes one mark off all sides. Sides without another become ordinary;
// points that only the line needed go.
func (w *work) erase(mark Mark, at []int32) {
	points, loose := w.unmark(w.reduce(mark))
	w.t.legalise(loose)
	keep := w.cornersOfInput(at)
	for _, v := range points {
		w.release(v, keep)
	}
	for _, v := range points {
		w.doubt(v)
	}
}

// reduce takes a mark off the segments that have it, and returns the set left to
// each of them.
func (w *work) reduce(mark Mark) map[int32]int32 {
	left := map[int32]int32{}
	for s := range w.segments {
		set := w.table.sets[w.segments[s].set]
		if slices.Contains(set, mark) {
			rest := slices.DeleteFunc(slices.Clone(set), func(m Mark) bool { return m == mark })
			left[int32(s)] = w.table.of(rest)
			w.segments[s].set = left[int32(s)]
		}
	}
	return left
}

// unmark makes the sides ordinary whose segment has nothing left. It returns them
// and the points on all sides concerned.
func (w *work) unmark(left map[int32]int32) (points, loose []int32) {
	t := w.t
	seen := map[int32]bool{}
	for tri := range t.corner {
		for i := range int32(3) {
			side := 4*int32(tri) + i
			set, had := left[t.segmentOf(side)]
			if !had {
				continue
			}
			for _, v := range [2]int32{t.start(side), t.end(side)} {
				if !seen[v] {
					seen[v] = true
					points = append(points, v)
				}
			}
			if set == 0 {
				t.constrain(side, -1)
				t.corner[side>>2].v[3]++
				loose = append(loose, side)
			}
		}
	}
	return points, loose
}

// cornersOfInput tells which points the rest of the input names.
func (w *work) cornersOfInput(at []int32) func(v int32) bool {
	named := newWelder(w.snap)
	for _, paths := range [3][][]Point{w.domain.Outline, w.domain.Holes, w.domain.Lines} {
		for _, path := range paths {
			for _, p := range path {
				named.number(p)
			}
		}
	}
	for _, v := range at {
		named.number(w.t.points[v])
	}
	return func(v int32) bool { return named.find(w.t.points[v]) >= 0 }
}

// release removes a point that nothing needs any more: a free one, or one where
// only two collinear segments with the same marks are left.
func (w *work) release(v int32, keep func(int32) bool) {
	if keep(v) {
		w.on[v] = given
		return
	}
	t := w.t
	sides := t.segmentsAt(v)
	switch len(sides) {
	case 0:
		w.on[v] = free
		t.remove(v)
	case 2:
		one, two := t.segmentOf(sides[0]), t.segmentOf(sides[1])
		if w.segments[one].set != w.segments[two].set || !straight(t.points[t.other(sides[0], v)], t.points[v], t.points[t.other(sides[1], v)]) {
			return
		}
		if one != two {
			w.mergeSegments(v, one, two)
		}
		t.remove(v)
	}
}

// straightError is how far a line may turn in a point and count as straight: what
// snapping and rounding can turn a short side by.
const straightError = 1e-6

func straight(a, v, b Point) bool {
	ux, uy, wx, wy := v[0]-a[0], v[1]-a[1], b[0]-v[0], b[1]-v[1]
	return ux*wx+uy*wy > 0 && math.Abs(ux*wy-uy*wx) <= straightError*math.Hypot(ux, uy)*math.Hypot(wx, wy)
}

// mend refines where the triangulation has changed since mark.
func (w *work) mend() error {
	w.t.made = w.t.made[:0]
	for tri := range w.t.corner {
		if w.t.alive(int32(tri)) && w.changed(int32(tri)) {
			w.t.made = append(w.t.made, int32(tri))
		}
	}
	w.t.legaliseMade()
	r := newRefiner(&w.domain, w.t, w.segments, w.on)
	var concerned []int32
	for tri := range w.t.corner {
		if w.t.alive(int32(tri)) && (w.resized || w.changed(int32(tri))) {
			concerned = append(concerned, int32(tri))
		}
	}
	if !w.resized {
		for _, tri := range w.doubtful {
			if w.t.alive(tri) && !w.changed(tri) {
				concerned = append(concerned, tri)
			}
		}
	}
	w.doubtful, w.resized = nil, false
	for _, tri := range concerned {
		r.judge(tri)
	}
	if r.size != nil {
		for _, tri := range concerned {
			r.advance(tri)
		}
	}
	err := r.run()
	w.on = r.on
	return err
}
