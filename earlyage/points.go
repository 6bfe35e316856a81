package earlyage

import (
	"math"
	"sort"
)

// spread returns the tenth and nine-tenth points of a time over the members by
// their weights; never counts as latest and comes back as NaN.
func (m *Members) spread(of func(*member) float64) (low, high float64) {
	points := m.points(of, 0.1, 0.9)
	return points[0], points[1]
}

// points returns the values below which these shares of the weight lie.
func (m *Members) points(of func(*member) float64, shares ...float64) []float64 {
	type weighted struct{ value, weight float64 }
	all := make([]weighted, len(m.members))
	for i := range m.members {
		all[i] = weighted{of(&m.members[i]), m.members[i].weight}
		if math.IsNaN(all[i].value) {
			all[i].value = math.Inf(1)
		}
	}
	sort.SliceStable(all, func(i, k int) bool { return all[i].value < all[k].value })
	out := make([]float64, len(shares))
	for k, share := range shares {
		sum := 0.0
		out[k] = all[len(all)-1].value
		for _, a := range all {
			if sum += a.weight; sum >= share-1e-12 {
				out[k] = a.value
				break
			}
		}
		if math.IsInf(out[k], 1) {
			out[k] = math.NaN()
		}
	}
	return out
}
