package restraint

import (
	"math"

	"slabwright/plan"
)

// station is one point of a crack's path: a point of the net, or a place on a side.
type station struct {
	point int32 // −1 on a side
	side  side
	share float64 // of the way from side[0] to side[1]
	at    plan.Point
}

// snapShare is how near the end of a side, as a share of it, a path goes through the
// end itself, so that no thin triangles arise. It shifts the path by less than this
// share of a side.
const snapShare = 0.25

// tracer follows cracks through the averaged stress.
type tracer struct {
	*slabState
	mean    [][3]float64
	started float64 // length already run behind the start
	most    float64 // length to run each way
	strong  float64 // length over which tension passes the strength on the mean, of the longer way
}

func (s *slabState) tracer(mean [][3]float64) *tracer {
	return &tracer{slabState: s, mean: mean, most: math.Inf(1)}
}

// across returns the direction in which a crack runs in a triangle, nearest to a
// direction before.
func (t *tracer) across(tri int32, before plan.Point) plan.Point {
	_, _, angle := principal(t.mean[tri])
	d := plan.Point{X: -math.Sin(angle), Y: math.Cos(angle)}
	if d.Dot(before) < 0 {
		d = d.Times(-1)
	}
	if d.Dot(before) < sharpest {
		return before
	}
	return d
}

// sharpest is the cosine of the most a crack turns from one triangle to the next:
// beyond 60 degrees the stress there says nothing of the stress ahead.
const sharpest = 0.5

// runs returns tension over strength across a direction in a triangle, and the share
// that drives a crack which has run so far.
func (t *tracer) runs(tri int32, direction plan.Point, ran float64) (share, least float64) {
	m := t.mean[tri]
	n := direction.Left()
	pull := m[0]*n.X*n.X + m[1]*n.Y*n.Y + 2*m[2]*n.X*n.Y
	c := t.now[t.frame.pour[tri]]
	strength := c.Strength * t.factor[tri]
	if strength <= 0 {
		return 0, 1
	}
	return (pull + c.Face) / strength, ArrestShare(c.Modulus, t.fracture(t.frame.pour[tri]), strength, ran)
}

// ArrestShare returns the share of the strength that the stress ahead of a crack must
// still have for the crack to run on: at first almost the strength itself, then, once
// the crack is long, the stress at which its stress intensity √(πa)·1.12·σ reaches the
// toughness.
//
//	modulus, fracture, strength   [Pa] [N/m] [Pa]
//	ran                           length of the crack so far [m]
//
// Beyond a length of 1 m no less is needed: the base and the far side of the panel limit
// the work that a longer crack sets free.
//
// Result 0 to 0.95. Source: linear fracture mechanics, edge crack; both bounds are our
// own.
func ArrestShare(modulus, fracture, strength, ran float64) float64 {
	return math.Min(0.95, NotchStrength(Toughness(modulus, fracture), math.Min(ran, 1), 1.12)/strength)
}

// tension returns the largest principal stress.
func tension(s [3]float64) float64 {
	half := (s[0] - s[1]) / 2
	return (s[0]+s[1])/2 + math.Sqrt(half*half+s[2]*s[2])
}

func principal(s [3]float64) (most, least, angle float64) {
	mean, half := (s[0]+s[1])/2, (s[0]-s[1])/2
	r := math.Hypot(half, s[2])
	return mean + r, mean - r, math.Atan2(s[2], half) / 2
}

// ends says whether a path stops at a point: an edge or an open line runs through.
func (t *tracer) ends(p int32) bool {
	for _, tri := range t.frame.around(p) {
		v := t.frame.tri[tri]
		for i := range 3 {
			a, b := v[i], v[(i+1)%3]
			if (a == p || b == p) && t.closed(sideOf(a, b)) {
				return true
			}
		}
	}
	return false
}

// closed says whether no crack can pass a side.
func (t *tracer) closed(s side) bool {
	_, open := t.cut[s]
	return open || t.frame.beside[s][1] < 0
}

// sector returns the triangle at a point of the net into which a direction leads,
// −1 if it leads out of the slab.
func (t *tracer) sector(p int32, direction plan.Point) int32 {
	for _, tri := range t.frame.around(p) {
		if t.inSector(tri, p, direction) {
			return tri
		}
	}
	return -1
}

func (t *tracer) inSector(tri, p int32, direction plan.Point) bool {
	i := t.frame.corner(tri, p) % 3
	v := t.frame.tri[tri]
	a := t.frame.at[v[(i+1)%3]].Minus(t.frame.at[p])
	b := t.frame.at[v[(i+2)%3]].Minus(t.frame.at[p])
	return a.Cross(direction) >= 0 && direction.Cross(b) > 0
}

// exit finds where a ray from a place on the rim of a triangle leaves it.
func (t *tracer) exit(tri, point int32, came side, at, direction plan.Point) (station, bool) {
	v := t.frame.tri[tri]
	best, found := station{}, false
	far := 0.0
	for i := range 3 {
		a, b := v[i], v[(i+1)%3]
		s := sideOf(a, b)
		if s == came || a == point || b == point {
			continue
		}
		p, q := t.frame.at[s[0]], t.frame.at[s[1]]
		along := q.Minus(p)
		det := direction.Cross(along)
		if math.Abs(det) < 1e-14 {
			continue
		}
		ray := p.Minus(at).Cross(along) / det
		share := p.Minus(at).Cross(direction) / det
		if share < -1e-9 || share > 1+1e-9 || ray <= 0 || ray <= far {
			continue
		}
		far, found = ray, true
		best = station{point: -1, side: s, share: share, at: p.Plus(along.Times(share))}
		switch {
		case share < snapShare:
			best.point, best.at = s[0], p
		case share > 1-snapShare:
			best.point, best.at = s[1], q
		}
	}
	if found && best.point >= 0 && came != noSide && (best.point == came[0] || best.point == came[1]) && best.at.To(at) < 1e-9 {
		return best, false
	}
	return best, found
}
