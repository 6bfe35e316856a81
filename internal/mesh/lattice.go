package mesh

import (
	"cmp"
	"math"
	"slices"
)

// Where the size is the largest everywhere around, the best triangles are those
// of an even lattice. It is laid before the refinement, which then only has to
// fill the strips between lattice, segments and graded places.

// A plateau is a Sizing that knows its largest value, reached over wide areas.
type plateau interface {
	Sizing
	Largest() float64
}

// clearance is how near a lattice point may come to other points, and half of it
// to segments, as a share of the spacing.
const clearance = 0.7

// A lattice lays points in rows of even triangles.
type lattice struct {
	r       *refiner
	size    plateau
	largest float64
	spacing float64
	low     Point
	rows    [][]entry
}

// An entry is where a row crosses the rim, and a point of the rim nearby.
type entry struct {
	x    float64
	near int32
}

// seed lays the lattice. Without a plateau there is none.
func (r *refiner) seed() {
	size, ok := r.size.(plateau)
	if !ok {
		return
	}
	low, high := bounds(r.t.points)
	l := lattice{r: r, size: size, largest: size.Largest(), spacing: latticeShare * size.Largest()}
	step := l.spacing * math.Sqrt(3) / 2
	l.low = Point{low[0] + l.spacing/2, low[1] + step}
	count := (high[1] - l.low[1]) / step
	points := r.t.area() / (step * l.spacing)
	if !(count >= 1 && count < float64(r.limit) && points < float64(r.limit)) {
		return
	}
	extra := int(1.1 * points)
	r.t.points, r.on = slices.Grow(r.t.points, extra), slices.Grow(r.on, extra)
	r.t.around, r.t.corner = slices.Grow(r.t.around, extra), slices.Grow(r.t.corner, 2*extra)
	l.rows = make([][]entry, int(count)+1)
	l.findEntries(step)
	for i := range l.rows {
		l.layRow(i, l.low[1]+float64(i)*step)
	}
}

// findEntries notes which rows cross which sides of the rim.
func (l *lattice) findEntries(step float64) {
	t := l.r.t
	for tri := range t.corner {
		for i := range int32(3) {
			side := 4*int32(tri) + i
			if !t.alive(int32(tri)) || t.twin(side) >= 0 {
				continue
			}
			v := t.start(side)
			a, b := t.points[v], t.points[t.end(side)]
			if a[1] > b[1] {
				a, b = b, a
			}
			// A row belongs to a side from its lower end up to, not including, the upper.
			for k := max(int(math.Floor((a[1]-l.low[1])/step)), 0); k < len(l.rows); k++ {
				y := l.low[1] + float64(k)*step
				if y >= b[1] {
					break
				}
				if y >= a[1] {
					l.rows[k] = append(l.rows[k], entry{a[0] + (y-a[1])/(b[1]-a[1])*(b[0]-a[0]), v})
				}
			}
		}
	}
}

// layRow puts points on the parts of a row inside the rim, every second row from
// right to left so that each point lies near the one before.
func (l *lattice) layRow(i int, y float64) {
	row := l.rows[i]
	slices.SortFunc(row, func(a, b entry) int { return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(a.near, b.near)) })
	shift := l.low[0]
	if i%2 == 1 {
		shift += l.spacing / 2
	}
	for k := 0; k+1 < len(row); k += 2 {
		l.r.t.last = l.r.t.around[row[k].near] >> 2
		first := math.Ceil((row[k].x - shift) / l.spacing)
		last := math.Floor((row[k+1].x - shift) / l.spacing)
		for n := first; n <= last; n++ {
			l.put(Point{shift + n*l.spacing, y})
		}
	}
}

// put adds a point unless it would lie too near to what is there.
func (l *lattice) put(p Point) {
	if l.size.At(p) < l.largest*(1-1e-9) {
		return
	}
	t := l.r.t
	tri := t.walk(p, t.last)
	if tri < 0 {
		return
	}
	t.last = tri
	t.dig(p, tri, -1)
	if t.hidden(p) >= 0 {
		return
	}
	near := clearance * l.spacing
	for i := range t.rim {
		s := &t.rim[i]
		a, b := t.points[s.a], t.points[s.b]
		if squaredDistance(a, p) < near*near {
			return
		}
		if s.seg >= 0 {
			if _, away := nearestOn(a, b, p); away < near/2 || sees(a, b, p) {
				return
			}
		}
	}
	t.fill(l.r.addPoint(p, free), -1)
}
