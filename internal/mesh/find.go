package mesh

import (
	"math"
	"sync"
)

// A finder is a raster whose cells list the triangles that reach into them. It
// is made at the first question.
type finder struct {
	once        sync.Once
	low         Point
	step        float64
	wide, high  int
	start, list []int32
}

// Locate returns a triangle that holds p, inside or on its rim, or -1 when p lies
// outside the mesh. It may be called from several goroutines.
func (m *Mesh) Locate(p Point) int32 {
	m.find.once.Do(m.makeFinder)
	f := &m.find
	x, y := (p[0]-f.low[0])/f.step, (p[1]-f.low[1])/f.step
	if !(x >= -1e-9 && y >= -1e-9 && x <= float64(f.wide) && y <= float64(f.high)) {
		return -1
	}
	cell := min(int(y), f.high-1)*f.wide + min(int(x), f.wide-1)
	for _, tri := range f.list[f.start[cell]:f.start[cell+1]] {
		if m.Holds(tri, p) {
			return tri
		}
	}
	return -1
}

// Holds tells whether a triangle holds p, its rim included.
func (m *Mesh) Holds(tri int32, p Point) bool {
	v := m.Triangles[tri]
	a, b, c := m.Points[v[0]], m.Points[v[1]], m.Points[v[2]]
	return Orient(a, b, p) >= 0 && Orient(b, c, p) >= 0 && Orient(c, a, p) >= 0
}

// Shares returns the weights of the three corners whose weighted mean is p.
func (m *Mesh) Shares(tri int32, p Point) [3]float64 {
	v := m.Triangles[tri]
	a, b, c := m.Points[v[0]], m.Points[v[1]], m.Points[v[2]]
	whole := Orient(a, b, c)
	return [3]float64{Orient(b, c, p) / whole, Orient(c, a, p) / whole, Orient(a, b, p) / whole}
}

func (m *Mesh) makeFinder() {
	f := &m.find
	low, high := bounds(m.Points)
	f.low = low
	cells := max(float64(len(m.Triangles))/2, 1)
	f.step = max(math.Sqrt((high[0]-low[0])*(high[1]-low[1])/cells), max(high[0]-low[0], high[1]-low[1])/4096)
	f.wide = int((high[0]-low[0])/f.step) + 1
	f.high = int((high[1]-low[1])/f.step) + 1
	f.start, f.list = buckets(f.wide*f.high, func(put func(int, int32)) {
		for tri, v := range m.Triangles {
			from, to := bounds([]Point{m.Points[v[0]], m.Points[v[1]], m.Points[v[2]]})
			// One part in a billion wider, so that rounding loses no cell.
			x, y := f.cell(from, -1e-9)
			right, top := f.cell(to, 1e-9)
			for r := y; r <= top; r++ {
				for c := x; c <= right; c++ {
					put(r*f.wide+c, int32(tri))
				}
			}
		}
	})
}

func (f *finder) cell(p Point, extra float64) (column, row int) {
	x, y := (p[0]-f.low[0])/f.step+extra, (p[1]-f.low[1])/f.step+extra
	return min(max(int(x), 0), f.wide-1), min(max(int(y), 0), f.high-1)
}

// along calls visit for the triangles in the cells within half a cell of a–b,
// once each.
func (m *Mesh) along(a, b Point, visit func(tri int32)) {
	m.find.once.Do(m.makeFinder)
	f := &m.find
	seen := map[int32]bool{}
	steps := int(math.Ceil(2*distance(a, b)/f.step)) + 1
	for k := range steps + 1 {
		p := between(a, b, float64(k)/float64(steps))
		x, y := f.cell(p, -0.5)
		right, top := f.cell(p, 0.5)
		for r := y; r <= top; r++ {
			for c := x; c <= right; c++ {
				cell := r*f.wide + c
				for _, tri := range f.list[f.start[cell]:f.start[cell+1]] {
					if !seen[tri] {
						seen[tri] = true
						visit(tri)
					}
				}
			}
		}
	}
}
