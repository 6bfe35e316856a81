package mesh

// segmentsAt lists the sides on segments that start at v, or end there on the rim
// where no side starts, turning left.
func (t *triangulation) segmentsAt(v int32) []int32 {
	var out []int32
	t.fan(v, func(side int32) bool {
		if t.segmentOf(side) >= 0 {
			out = append(out, side)
		}
		if back := previous(side); t.twin(back) < 0 {
			out = append(out, back)
		}
		return true
	})
	return out
}

// other is the end of a side that is not v.
func (t *triangulation) other(side, v int32) int32 {
	if t.start(side) == v {
		return t.end(side)
	}
	return t.start(side)
}

// onward is the side at v on segment s other than the one it came by (-1 for
// none), or -1.
func (t *triangulation) onward(s, v, cameBy int32) int32 {
	back := int32(-1)
	if cameBy >= 0 {
		back = t.twin(cameBy)
	}
	for _, side := range t.segmentsAt(v) {
		if t.segmentOf(side) == s && side != cameBy && side != back {
			return side
		}
	}
	return -1
}

// relabel gives the sides of segment s from v on, starting with first, and the
// points between, the number to. It returns the last point.
func (w *work) relabel(s, to, v, first int32) int32 {
	t := w.t
	last, cameBy := t.other(first, v), first
	t.constrain(first, to)
	for w.on[last] != given {
		onward := t.onward(s, last, cameBy)
		if onward < 0 {
			break
		}
		w.on[last] = to
		t.constrain(onward, to)
		last, cameBy = t.other(onward, last), onward
	}
	return last
}

// sides lists the sides on segment s from its one end to the other.
func (w *work) sides(s int32) []int32 {
	t := w.t
	var out []int32
	v, cameBy := w.segments[s].a, int32(-1)
	for v >= 0 && (cameBy < 0 || w.on[v] != given) {
		onward := t.onward(s, v, cameBy)
		if onward < 0 {
			break
		}
		out = append(out, onward)
		v, cameBy = t.other(onward, v), onward
	}
	return out
}

// cutSegment makes point v, if it lies within a segment, the end of it and the
// start of a new one, whose number it returns; otherwise -1.
func (w *work) cutSegment(v int32) int32 {
	s := w.on[v]
	if s < 0 {
		return -1
	}
	var sides []int32
	for _, side := range w.t.segmentsAt(v) {
		if w.t.segmentOf(side) == s {
			sides = append(sides, side)
		}
	}
	w.on[v] = given
	if len(sides) != 2 {
		return -1
	}
	number := int32(len(w.segments))
	second := w.segments[s]
	w.segments = append(w.segments, second)
	end := w.relabel(s, number, v, sides[1])
	w.segments[number].a, w.segments[number].b = v, end
	if w.segments[s].a == end {
		w.segments[s].a = v
	} else {
		w.segments[s].b = v
	}
	for _, side := range append(w.sides(s), w.sides(number)...) {
		w.doubt(w.t.start(side))
		w.doubt(w.t.end(side))
	}
	return number
}

// doubt has the triangles at v judged again: see doubtful.
func (w *work) doubt(v int32) {
	w.t.fan(v, func(side int32) bool {
		w.doubtful = append(w.doubtful, side>>2)
		return true
	})
}

// mergeSegments joins the two segments that meet in v into one, and makes v a
// point on it.
func (w *work) mergeSegments(v, one, two int32) {
	var first int32 = -1
	for _, side := range w.t.segmentsAt(v) {
		if w.t.segmentOf(side) == two {
			first = side
		}
	}
	w.on[v] = one
	end := w.relabel(two, one, v, first)
	if w.segments[one].a == v {
		w.segments[one].a = end
	} else {
		w.segments[one].b = end
	}
	w.segments[two].a, w.segments[two].b = -1, -1
}
