package mesh

import "math"

// needsSplit tells whether a side on a segment is too long or crowded: the corner
// across lies inside the circle that has the side as diameter, and not so near
// the side that the gap is below Finest. Lengths are squared; others is the sum
// of those of the two other sides.
func (r *refiner) needsSplit(side int32, length, others, twiceArea float64) bool {
	crowded := others < length && twiceArea*twiceArea > r.finest*r.finest*length
	if !crowded && r.size == nil {
		return false
	}
	a, b := r.t.start(side), r.t.end(side)
	if crowded && r.splittable(a, b, 2*r.finest) && !r.paired(side) {
		return true
	}
	if r.size == nil {
		return false
	}
	h := r.sizeAt(between(r.t.points[a], r.t.points[b], 0.5))
	return length > h*h && r.splittable(a, b, 0)
}

// splittable tells whether a side on a segment is longer than least, long enough
// for its middle to be told from its ends, and not known to be beyond splitting.
func (r *refiner) splittable(a, b int32, least float64) bool {
	least = max(least, r.least)
	return squaredDistance(r.t.points[a], r.t.points[b]) > least*least && (len(r.unsplit) == 0 || !r.unsplit[ends(a, b)])
}

func ends(a, b int32) [2]int32 { return [2]int32{min(a, b), max(a, b)} }

// split puts a point on a side that lies on a segment.
func (r *refiner) split(side int32) {
	t := r.t
	a, b, s := t.start(side), t.end(side), t.segmentOf(side)
	if t.splitSide(side, between(t.points[a], t.points[b], r.splitAt(side))) < 0 {
		r.unsplit[ends(a, b)] = true
		return
	}
	r.on = append(r.on, s)
	r.judgeMade()
}

// splitSide puts a new point p on a side that lies on a segment and returns it, or
// -1 when rounding puts p beyond a neighbour.
func (t *triangulation) splitSide(side int32, p Point) int32 {
	a, b, s := t.start(side), t.end(side), t.segmentOf(side)
	t.dig(p, side>>2, side)
	little := t.hidden(p) >= 0
	if little {
		if t.digLittle(side); t.hidden(p) >= 0 {
			return -1
		}
	}
	openEnd := int32(-1)
	if t.twin(side) < 0 {
		openEnd = a
	}
	v := t.addPoint(p)
	t.fill(v, openEnd)
	for _, tri := range t.made {
		k := &t.corner[tri]
		if k.v[1] == a || k.v[1] == b {
			k.seg[1] = s
		}
		if k.v[0] == a || k.v[0] == b {
			k.seg[2] = s
		}
	}
	if little {
		t.legaliseMade()
	}
	return v
}

func (t *triangulation) addPoint(p Point) int32 {
	t.points = append(t.points, p)
	t.around = append(t.around, -1)
	return int32(len(t.points) - 1)
}

func (r *refiner) addPoint(p Point, on int32) int32 {
	r.on = append(r.on, on)
	return r.t.addPoint(p)
}

func (r *refiner) judgeMade() {
	for _, tri := range r.t.made {
		r.judge(tri)
	}
	if r.size != nil {
		for _, tri := range r.t.made {
			r.advance(tri)
		}
	}
}

// splitAt is where along a side its new point goes, 0 to 1. Next to a small angle
// it lies a power of two from the corner, so that the points on both arms of the
// angle come to lie on the same circles and do not crowd each other for ever.
// Elsewhere the side is cut in equal parts of about the wanted size.
func (r *refiner) splitAt(side int32) float64 {
	a, b, s := r.t.start(side), r.t.end(side), r.t.segmentOf(side)
	pa, pb := r.t.points[a], r.t.points[b]
	length := distance(pa, pb)
	smallA, smallB := r.small.at(s, a), r.small.at(s, b)
	switch {
	case smallA && !smallB:
		return shell(length) / length
	case smallB && !smallA:
		return 1 - shell(length)/length
	case smallA:
		return 0.5
	}
	if parts := math.Ceil(length / (targetShare * r.sizeAt(between(pa, pb, 0.5)))); parts > 2 && parts < 1e6 {
		return math.Floor(parts/2) / parts
	}
	return 0.5
}

// shell is the power of two nearest to half of length: between a third and two
// thirds of it.
func shell(length float64) float64 {
	d := math.Exp2(math.Floor(math.Log2(length)))
	for d > 2*length/3 {
		d /= 2
	}
	return d
}
