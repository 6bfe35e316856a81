package mesh

// The front is where triangles of the right size meet those still too large. A
// large triangle is only worked on once it touches the front or a segment, so
// that rows of even triangles grow from there.

// leastRise keeps new points from being put right on the side they stand on.
const leastRise = 0.5

// advance sets aside the large triangles at this triangle: itself if it touches
// the front, or the ones it has become the front for.
func (r *refiner) advance(tri int32) {
	k := &r.t.corner[tri]
	if k.seg[3] == oversize {
		r.queueLarge(tri)
		return
	}
	for i := range 3 {
		if twin := k.twin[i]; twin >= 0 && r.t.corner[twin>>2].seg[3] == oversize {
			r.queueLarge(twin >> 2)
		}
	}
}

// queueLarge sets a large triangle aside with its shortest side on the front, if
// it has one from which a point inside its circle can be reached.
func (r *refiner) queueLarge(tri int32) {
	if side := r.frontSide(tri); side >= 0 {
		r.large.push(r.taskOf(side))
	}
}

func (r *refiner) frontSide(tri int32) int32 {
	t := r.t
	k := &t.corner[tri]
	best, shortest := int32(-1), 0.0
	for i := range int32(3) {
		if twin := k.twin[i]; k.seg[i] < 0 && twin >= 0 && t.corner[twin>>2].seg[3] == oversize {
			continue
		}
		a, b := t.points[k.v[i]], t.points[k.v[(i+1)%3]]
		if l := squaredDistance(a, b); best < 0 || l < shortest {
			best, shortest = 4*tri+i, l
		}
	}
	if best < 0 {
		return -1
	}
	a, b, c := t.points[t.start(best)], t.points[t.end(best)], t.points[t.apex(best)]
	if centreRise(a, b, c) < leastRise {
		return r.shortestSide(tri)
	}
	return best
}

func (r *refiner) shortestSide(tri int32) int32 {
	a, b, c := r.t.place(tri)
	ab, bc, ca := squaredDistance(a, b), squaredDistance(b, c), squaredDistance(c, a)
	switch {
	case bc < ab && bc <= ca:
		return 4*tri + 1
	case ca < ab:
		return 4*tri + 2
	}
	return 4 * tri
}

// anyLarge sets aside the large triangles the front has not reached, if there are
// any and points have been added since it last did.
func (r *refiner) anyLarge() bool {
	if r.size == nil || r.swept == len(r.t.points) {
		return false
	}
	r.swept = len(r.t.points)
	for tri := range r.t.corner {
		if r.t.corner[tri].seg[3] == oversize {
			r.large.push(r.taskOf(r.shortestSide(int32(tri))))
		}
	}
	return true
}
