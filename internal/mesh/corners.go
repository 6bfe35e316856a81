package mesh

import "math"

// InsideCorners lists the corners of the outline and the holes where the inside
// takes up at least the given angle, in degrees: 225 finds the inside corners of
// an L and the corners of a square hole, but no point of a round hole drawn with
// more than eight. Stress grows without bound there, so they want a [Source].
func (d Domain) InsideCorners(least float64) []Point {
	var out []Point
	for _, rings := range [2]struct {
		rings [][]Point
		sign  float64
	}{{d.Outline, 1}, {d.Holes, -1}} {
		for _, ring := range rings.rings {
			sign := rings.sign
			if ringArea(ring) < 0 {
				sign = -sign
			}
			for i, b := range ring {
				a, c := ring[(i+len(ring)-1)%len(ring)], ring[(i+1)%len(ring)]
				ux, uy, wx, wy := b[0]-a[0], b[1]-a[1], c[0]-b[0], c[1]-b[1]
				turn := math.Atan2(sign*(ux*wy-uy*wx), ux*wx+uy*wy) * 180 / math.Pi
				if 180-turn >= least {
					out = append(out, b)
				}
			}
		}
	}
	return out
}

// Tips lists the points inside where exactly one marked side ends: the ends of
// cracks and of joints that stop short.
func (m *Mesh) Tips() []int32 {
	ends := make([]uint8, len(m.Points))
	for _, e := range m.Edges() {
		for _, v := range [2]int32{e.A, e.B} {
			ends[v] = min(ends[v]+1, 2)
		}
	}
	var out []int32
	for v, n := range ends {
		if n == 1 {
			out = append(out, int32(v))
		}
	}
	return out
}
