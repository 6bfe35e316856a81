package mesh

import "math"

// targetShare is how long sides are made, as a share of the longest allowed. New
// points lie this far from the side they stand on, so most sides come out within
// a fifth of it and few have to be cut again.
const targetShare = 0.8

// latticeShare is the spacing of the lattice, likewise.
const latticeShare = 0.9

// leftShare bounds the shortest side of a triangle left thin because its remedy p
// crowds a segment no longer than 2·Finest: p is within Finest·√2 of both ends of
// the segment, those lie outside the circle around p, and no shortest side is
// longer than √3 times the radius.
const leftShare = 2.5

// improve adds a point that removes a triangle too large or too thin, or splits
// the segments that point would crowd.
func (r *refiner) improve(job task, large bool) {
	t := r.t
	tri := job.side >> 2
	p := r.remedy(job.side, large)
	t.dig(p, tri, -1)
	hidden := t.hidden(p) >= 0
	if hidden && !r.reachHidden(job, p, large) {
		return
	}
	again := false
	crowds := false
	for i := range t.rim {
		s := &t.rim[i]
		if s.seg < 0 || !sees(t.points[s.a], t.points[s.b], p) {
			continue
		}
		crowds = true
		if r.splittable(s.a, s.b, 2*r.finest) {
			r.crowded.push(r.taskOf(s.inner))
			again = true
		}
	}
	if again {
		r.putBack(job, large)
		return
	}
	if crowds && !large {
		return
	}
	v := r.addPoint(p, free)
	t.fill(v, -1)
	if hidden {
		t.legaliseMade()
	}
	r.judgeMade()
}

func (r *refiner) putBack(job task, large bool) {
	if large {
		r.large.push(job)
	} else {
		r.skinny.push(job)
	}
}

// sees tells whether p sees a–b under more than a right angle.
func sees(a, b, p Point) bool {
	return (a[0]-p[0])*(b[0]-p[0])+(a[1]-p[1])*(b[1]-p[1]) < 0
}

// reachHidden digs the cavity of p again from where p is, when p was hidden from
// a part of it. When a segment is in the way it is set aside for splitting, and
// the answer is no.
func (r *refiner) reachHidden(job task, p Point, large bool) bool {
	t := r.t
	tri, blocked := t.toward(p, job.side>>2)
	if blocked >= 0 {
		least := 2 * r.finest
		if large {
			least = 0
		}
		if r.splittable(t.start(blocked), t.end(blocked), least) {
			r.crowded.push(r.taskOf(blocked))
			r.putBack(job, large)
		}
		return false
	}
	if tri < 0 {
		return false
	}
	t.digSeen(p, tri)
	return t.hidden(p) < 0
}

// remedy is where a new point goes to remove a triangle: above the given side, at
// most as high as the centre of the circle through the corners.
//
// Too thin a triangle gets the point that just gives the angle wanted with its
// shortest side; too large a one the point at the wanted distance from the ends
// of a side on the front, so that triangles grow inward in even rows.
//
// Source: Üngör, Computational Geometry 42 (2009), 109-118, for the first; Rebay,
// Journal of Computational Physics 106 (1993), 125-138, for the second.
func (r *refiner) remedy(side int32, large bool) Point {
	t := r.t
	a, b, c := t.points[t.start(side)], t.points[t.end(side)], t.points[t.apex(side)]
	ux, uy := b[0]-a[0], b[1]-a[1]
	short := ux*ux + uy*uy
	rise := centreRise(a, b, c)
	if large {
		goal := targetShare * r.sizeAt(middle(a, b, c))
		goal = max(goal*goal, short)
		rise = min(rise, math.Sqrt((goal-short/4)/short))
	} else {
		rise = min(rise, r.offCentre)
	}
	return Point{a[0] + ux/2 - rise*uy, a[1] + uy/2 + rise*ux}
}

// centreRise is how far the centre of the circle through a, b, c lies above the
// middle of a–b, in lengths of a–b.
func centreRise(a, b, c Point) float64 {
	ux, uy := b[0]-a[0], b[1]-a[1]
	wx, wy := c[0]-a[0], c[1]-a[1]
	return ((wx*wx + wy*wy) - (wx*ux + wy*uy)) / (2 * (ux*wy - uy*wx))
}
