package earlyage

import "math"

// Share returns the largest share of its tensile strength that the uncut slab has
// used up to a time in hours after placing: as expected, and the tenth and
// nine-tenth points over the members, widened to the expected where it lies outside.
func (m *Members) Share(hours float64) (expected, low, high float64) {
	i, s := m.Expected().place(hours)
	at := func(b *member) float64 { return b.ratio[i] + s*(b.ratio[i+1]-b.ratio[i]) }
	points := m.points(at, 0.1, 0.9)
	expected = at(&m.expected.member)
	return expected, math.Min(points[0], expected), math.Max(points[1], expected)
}
