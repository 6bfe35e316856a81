package mesh

import "math"

// A refiner adds points until no segment is crowded, no side too long and no
// angle too small.
//
// Source: Ruppert, Journal of Algorithms 18 (1995), 548-585; Shewchuk,
// Computational Geometry 22 (2002), 21-74, for the order of the steps.
type refiner struct {
	t        *triangulation
	segments []segment
	// on is, per point, the segment it was put on, or free, or given.
	on      []int32
	small   smallAngles
	size    Sizing
	uniform float64 // the size when it is the same everywhere, else 0
	limit   int     // most triangles
	least   float64 // sides on segments up to this long are not split
	finest  float64

	sineSquared float64 // of the smallest angle allowed
	offCentre   float64 // height over the shortest side that gives that angle

	crowded, large, skinny queue
	unsplit                map[[2]int32]bool // sides of segments that must stay whole
	swept                  int               // how many points there were at the last sweep for large triangles
}

const (
	free  = -1
	given = -2
)

// A task is a triangle, or one side of it, as it was when it was set aside.
type task struct {
	side    int32
	written int32
}

// A queue hands tasks out in the order they came.
type queue struct {
	tasks []task
	head  int
}

func (q *queue) push(t task) {
	if q.head > 1024 && q.head > len(q.tasks)/2 {
		q.tasks = q.tasks[:copy(q.tasks, q.tasks[q.head:])]
		q.head = 0
	}
	q.tasks = append(q.tasks, t)
}

func (q *queue) pop() (task, bool) {
	if q.head == len(q.tasks) {
		q.tasks, q.head = q.tasks[:0], 0
		return task{}, false
	}
	q.head++
	return q.tasks[q.head-1], true
}

// What seg[3] of a triangle in use says.
const (
	settled  = -1
	oversize = 1
)

func newRefiner(d *Domain, t *triangulation, segments []segment, on []int32) *refiner {
	angle := d.MinAngle
	if angle == 0 {
		angle = defaultMinAngle
	}
	angle *= math.Pi / 180
	r := &refiner{t: t, segments: segments, on: on, size: d.Size, least: 8 * d.rounding(), finest: d.finest(), limit: d.MaxTriangles,
		sineSquared: math.Pow(math.Sin(angle), 2), unsplit: map[[2]int32]bool{}}
	// A twentieth closer than the exact height, so that rounding and the smoothing
	// of neighbours do not bring the angle below the limit at once.
	r.offCentre = 0.95 * 0.5 / math.Tan(angle/2)
	if r.limit == 0 {
		r.limit = defaultMaxTriangles
	}
	if u, ok := d.Size.(Uniform); ok {
		r.uniform = float64(u)
	}
	r.small = findSmallAngles(t, segments, on)
	return r
}

// prepare cuts the segments to size and lays the lattice.
func (r *refiner) prepare() error {
	r.all()
	for {
		job, ok := r.crowded.pop()
		if !ok {
			break
		}
		if len(r.t.corner)-len(r.t.free) > r.limit {
			return r.tooMany()
		}
		if r.current(job) {
			r.split(job.side)
		}
	}
	r.seed()
	r.crowded, r.large, r.skinny = queue{}, queue{}, queue{}
	r.all()
	return nil
}

// all sets every triangle aside that needs work.
func (r *refiner) all() {
	r.swept = 0
	for tri := range r.t.corner {
		if r.t.alive(int32(tri)) {
			r.judge(int32(tri))
		}
	}
	for tri := range r.t.corner {
		if r.t.alive(int32(tri)) {
			r.advance(int32(tri))
		}
	}
}

// run works until nothing is left: crowded segments first, then size, then shape.
func (r *refiner) run() error {
	for {
		if len(r.t.corner)-len(r.t.free) > r.limit {
			return r.tooMany()
		}
		if job, ok := r.crowded.pop(); ok {
			if r.current(job) {
				r.split(job.side)
			}
		} else if job, ok := r.large.pop(); ok {
			if r.current(job) {
				r.improve(job, true)
			}
		} else if job, ok := r.skinny.pop(); ok {
			if r.current(job) {
				r.improve(job, false)
			}
		} else if !r.anyLarge() {
			return nil
		}
	}
}

// tooMany names the place that is farthest from its size, or where sides have
// become shortest.
func (r *refiner) tooMany() error {
	shortest, thin := math.Inf(1), Point{}
	largest, coarse := 1.0, Point{}
	for tri := range r.t.corner {
		if !r.t.alive(int32(tri)) {
			continue
		}
		a, b, c := r.t.place(int32(tri))
		at := middle(a, b, c)
		ab, bc, ca := distance(a, b), distance(b, c), distance(c, a)
		if l := min(ab, bc, ca); l < shortest {
			shortest, thin = l, at
		}
		if times := max(ab, bc, ca) / r.sizeAt(at); times > largest {
			largest, coarse = times, at
		}
	}
	if largest > 1 {
		return refuse(TooManyNeeded, coarse, "Ask for larger triangles there or raise MaxTriangles.",
			"The mesh needs more than %d triangles; it is farthest from the size asked for, %.3g,", r.limit, r.sizeAt(coarse))
	}
	return refuse(TooManyNeeded, thin, "Raise MaxTriangles or Finest, or join what lies close together there.",
		"The mesh needs more than %d triangles; the shortest side is %.3g", r.limit, shortest)
}

// current tells whether a task still stands for the triangle it was made of.
func (r *refiner) current(job task) bool {
	k := &r.t.corner[job.side>>2]
	return k.v[3] == job.written && k.seg[3] != dead
}

func (r *refiner) taskOf(side int32) task { return task{side, r.t.corner[side>>2].v[3]} }

// sizeAt is the longest side allowed at p.
func (r *refiner) sizeAt(p Point) float64 {
	if r.uniform > 0 {
		return r.uniform
	}
	if r.size != nil {
		if h := r.size.At(p); h > 0 {
			return h
		}
	}
	return math.Inf(1)
}

// judge sets a triangle aside if it has a crowded segment, is too large or too
// thin.
func (r *refiner) judge(tri int32) {
	k := &r.t.corner[tri]
	a, b, c := r.t.points[k.v[0]], r.t.points[k.v[1]], r.t.points[k.v[2]]
	length := [3]float64{squaredDistance(a, b), squaredDistance(b, c), squaredDistance(c, a)}
	twiceArea := (b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])
	for i := range int32(3) {
		if k.seg[i] >= 0 && r.needsSplit(4*tri+i, length[i], length[(i+1)%3]+length[(i+2)%3], twiceArea) {
			r.crowded.push(task{4*tri + i, k.v[3]})
		}
	}
	short := 0
	if length[1] < length[0] {
		short = 1
	}
	if length[2] < length[short] {
		short = 2
	}
	l, m := length[(short+1)%3], length[(short+2)%3]
	k.seg[3] = settled
	if r.size != nil {
		h := r.uniform
		if h == 0 {
			h = r.sizeAt(middle(a, b, c))
		}
		if max(l, m) > h*h {
			k.seg[3] = oversize
			return
		}
	}
	if twiceArea*twiceArea < r.sineSquared*l*m && length[short] > r.finest*r.finest && !r.excused(tri, int32(short)) {
		r.skinny.push(task{4*tri + int32(short), k.v[3]})
	}
}
