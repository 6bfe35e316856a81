package mesh

import (
	"cmp"
	"slices"
)

// boxPoints is how many points of the surrounding box come before the others.
const boxPoints = 4

// newDelaunay triangulates points inside a box that reaches well beyond them.
// Point i becomes number i+boxPoints. All points must differ.
//
// The corners of the box do bend the triangles near the hull, but never those
// inside an outline laid down as segments: it cannot be seen through.
func newDelaunay(points []Point) *triangulation {
	low, high := bounds(points)
	reach := 2 * max(high[0]-low[0], high[1]-low[1])
	t := &triangulation{points: make([]Point, 0, len(points)+boxPoints)}
	t.points = append(t.points,
		Point{low[0] - reach, low[1] - reach}, Point{high[0] + reach, low[1] - reach},
		Point{high[0] + reach, high[1] + reach}, Point{low[0] - reach, high[1] + reach})
	t.points = append(t.points, points...)
	t.around = make([]int32, len(t.points))
	t.corner = make([]corners, 0, 2*len(t.points))
	one, two := t.newTriangle(0, 1, 2), t.newTriangle(0, 2, 3)
	t.join(4*one+2, 4*two)
	for _, i := range alongCurve(points, low, high) {
		p := points[i]
		t.dig(p, t.walk(p, t.last), -1)
		t.fill(i+boxPoints, -1)
	}
	return t
}

// alongCurve orders points along a Hilbert curve, so that each lies near the one
// before.
func alongCurve(points []Point, low, high Point) []int32 {
	extent := max(high[0]-low[0], high[1]-low[1])
	scale := float64(1<<hilbertBits-1) / extent
	type keyed struct {
		key uint64
		i   int32
	}
	order := make([]keyed, len(points))
	for i, p := range points {
		order[i] = keyed{hilbertKey(uint32((p[0]-low[0])*scale), uint32((p[1]-low[1])*scale)), int32(i)}
	}
	slices.SortStableFunc(order, func(a, b keyed) int { return cmp.Compare(a.key, b.key) })
	out := make([]int32, len(points))
	for k, o := range order {
		out[k] = o.i
	}
	return out
}

const hilbertBits = 16

// hilbertKey is how far along the curve of order hilbertBits the cell x, y lies.
//
// Source: Hamilton and Rau-Chaplin, Information Processing Letters 105 (2008),
// 155-163, reduced to the plane.
func hilbertKey(x, y uint32) uint64 {
	var key uint64
	for s := uint32(1) << (hilbertBits - 1); s > 0; s >>= 1 {
		var right, up uint32
		if x&s != 0 {
			right = 1
		}
		if y&s != 0 {
			up = 1
		}
		key = key<<2 | uint64(3*right^up)
		if up == 0 {
			if right == 1 {
				x, y = ^x, ^y
			}
			x, y = y, x
		}
	}
	return key
}
