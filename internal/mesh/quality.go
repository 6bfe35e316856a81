package mesh

import "math"

// Quality sums up the shapes of the triangles. Angles are in degrees.
type Quality struct {
	Points, Triangles int
	Area              float64
	SmallestAngle     float64
	SmallestAt        Point // the corner it is at
	LargestAngle      float64
	ShortestSide      float64
	LongestSide       float64
	// WorstAspect is the longest side over the smallest height, times √3/2: 1 for
	// the even-sided triangle.
	WorstAspect float64
	MeanAspect  float64
	Below       int     // triangles with an angle below the smallest asked for
	Angles      [18]int // how many corners in each ten degrees
}

// Quality measures every triangle.
func (m *Mesh) Quality() Quality {
	limit := m.work.domain.MinAngle
	if limit == 0 {
		limit = defaultMinAngle
	}
	q := Quality{Points: len(m.Points), Triangles: len(m.Triangles), SmallestAngle: 180, ShortestSide: math.Inf(1)}
	for _, v := range m.Triangles {
		q.add([3]Point{m.Points[v[0]], m.Points[v[1]], m.Points[v[2]]}, limit)
	}
	q.MeanAspect /= float64(max(len(m.Triangles), 1))
	return q
}

func (q *Quality) add(p [3]Point, limit float64) {
	twice := Orient(p[0], p[1], p[2])
	q.Area += twice / 2
	smallest, longest := 180.0, 0.0
	for i := range p {
		a, b, c := p[i], p[(i+1)%3], p[(i+2)%3]
		dot := (b[0]-a[0])*(c[0]-a[0]) + (b[1]-a[1])*(c[1]-a[1])
		angle := math.Atan2(twice, dot) * 180 / math.Pi
		q.Angles[min(int(angle/10), 17)]++
		q.LargestAngle = max(q.LargestAngle, angle)
		smallest = min(smallest, angle)
		if angle < q.SmallestAngle {
			q.SmallestAngle, q.SmallestAt = angle, a
		}
		side := distance(a, b)
		longest = max(longest, side)
		q.ShortestSide = min(q.ShortestSide, side)
	}
	q.LongestSide = max(q.LongestSide, longest)
	aspect := longest * longest / twice * math.Sqrt(3) / 2
	q.WorstAspect = max(q.WorstAspect, aspect)
	q.MeanAspect += aspect
	if smallest < limit*(1-1e-9) {
		q.Below++
	}
}
