package mesh

import "math"

// A welder gives points numbers, and the same number to points closer than snap.
// The first point of a cluster stays where it is.
type welder struct {
	snap   float64
	points []Point
	cells  map[[2]int64][]int32
}

func newWelder(snap float64) *welder {
	return &welder{snap: snap, cells: map[[2]int64][]int32{}}
}

// cell is the square of side 2·snap a point falls in.
func (w *welder) cell(p Point) [2]int64 {
	return [2]int64{int64(math.Floor(p[0] / (2 * w.snap))), int64(math.Floor(p[1] / (2 * w.snap)))}
}

// number is find, or a new number for a place not known yet.
func (w *welder) number(p Point) int32 {
	p = Point{flushed(p[0]), flushed(p[1])}
	if i := w.find(p); i >= 0 {
		return i
	}
	at := w.cell(p)
	w.points = append(w.points, p)
	i := int32(len(w.points) - 1)
	w.cells[at] = append(w.cells[at], i)
	return i
}

// find returns the number of the nearest known point within snap, or -1.
func (w *welder) find(p Point) int32 {
	best, nearest := int32(-1), w.snap*w.snap
	low := w.cell(Point{p[0] - w.snap, p[1] - w.snap})
	high := w.cell(Point{p[0] + w.snap, p[1] + w.snap})
	for x := low[0]; x <= high[0]; x++ {
		for y := low[1]; y <= high[1]; y++ {
			for _, i := range w.cells[[2]int64{x, y}] {
				if d := squaredDistance(p, w.points[i]); d <= nearest && (d < nearest || best < 0) {
					best, nearest = i, d
				}
			}
		}
	}
	return best
}

// flushed sets to zero what is so near it that products could vanish.
func flushed(x float64) float64 {
	if math.Abs(x) < smallestCoordinate {
		return 0
	}
	return x
}

func squaredDistance(a, b Point) float64 {
	dx, dy := a[0]-b[0], a[1]-b[1]
	return dx*dx + dy*dy
}

func distance(a, b Point) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

func between(a, b Point, t float64) Point {
	return Point{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1])}
}

// nearestOn returns where along a–b (0 to 1) p is nearest, and how far it is.
func nearestOn(a, b, p Point) (t, away float64) {
	dx, dy := b[0]-a[0], b[1]-a[1]
	length := dx*dx + dy*dy
	if length > 0 {
		t = ((p[0]-a[0])*dx + (p[1]-a[1])*dy) / length
	}
	t = min(max(t, 0), 1)
	return t, distance(p, between(a, b, t))
}
