package restraint

import "slabwright/plan"

// walk is a crack on its way: at a point of the net, or on a side of the triangle it
// is about to cross.
type walk struct {
	*tracer
	from      int32
	at        plan.Point
	point     int32 // −1 on a side
	tri       int32
	came      side
	direction plan.Point
	passed    map[int32]bool
	out       []station
	sum       float64 // of tension over strength, along the way
	arrested  int     // stations when the stress no longer drove it; −1 while it does
	ranOn     float64 // how far it went since
}

var noSide = side{-1, -1}

// follow runs from a point of the net in a direction until it reaches an edge or an
// open line, or until the stress ahead no longer drives it. What is left between there
// and an edge, if less than twice the reach, tears too. It returns the stations after
// the first.
func (t *tracer) follow(from int32, direction plan.Point) []station {
	w := &walk{tracer: t, from: from, at: t.frame.at[from], point: from, tri: -1, came: noSide, direction: direction,
		passed: map[int32]bool{from: true}, arrested: -1}
	const most = 4000
	for len(w.out) < most {
		next, ok := w.next()
		if !ok {
			if w.arrested >= 0 {
				return w.out[:w.arrested]
			}
			return w.out
		}
		w.out = append(w.out, next)
		if w.caught(next, w.direction) || w.enter(next) {
			break
		}
	}
	return w.out
}

// next returns the next station, false where the crack stops before it.
func (w *walk) next() (station, bool) {
	if w.point >= 0 {
		w.tri = w.sector(w.point, w.direction)
	}
	if w.tri < 0 {
		return station{}, false
	}
	if w.frame.at[w.from].To(w.at) >= w.most {
		return station{}, false
	}
	w.turn()
	far := w.frame.at[w.from].To(w.at)
	share, least := w.runs(w.tri, w.direction, w.started+far)
	if w.arrested < 0 && w.started+far >= w.set.least() && share < least {
		w.arrested = len(w.out)
	}
	next, ok := w.exit(w.tri, w.point, w.came, w.at, w.direction)
	if !ok || next.point >= 0 && (w.passed[next.point] || w.point >= 0 && w.closed(sideOf(w.point, next.point))) {
		return next, false
	}
	on := next.at.To(w.at)
	if w.sum += share * on; w.sum >= far+on {
		w.strong = max(w.strong, far+on)
	}
	if w.arrested >= 0 {
		w.ranOn += on
	}
	return next, w.ranOn <= 2*w.set.Reach
}

// turn follows the stress in the triangle ahead. Where that leads out of the triangle
// at a point of the net, the one beside it is taken.
func (w *walk) turn() {
	turned := w.across(w.tri, w.direction)
	if w.point >= 0 && !w.inSector(w.tri, w.point, turned) {
		other := w.sector(w.point, turned)
		if other < 0 {
			return
		}
		w.tri = other
	}
	w.direction = turned
}

// enter goes to a station and says whether the crack ends there, at an edge or an open
// line.
func (w *walk) enter(next station) (ended bool) {
	w.at = next.at
	if next.point >= 0 {
		w.passed[next.point] = true
		w.point, w.came = next.point, noSide
		return w.ends(next.point)
	}
	pair := w.frame.beside[next.side]
	if pair[0] == w.tri {
		w.tri = pair[1]
	} else {
		w.tri = pair[0]
	}
	w.point, w.came = -1, next.side
	return w.closed(next.side)
}
