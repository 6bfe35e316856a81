package earlyage

import "sort"

// Share returns the largest share of its tensile strength that the uncut slab has
// used up to a time in hours after placing: as expected, and the tenth and
// nine-tenth points over the members.
func (m *Members) Share(hours float64) (expected, low, high float64) {
	i, s := m.Expected().place(hours)
	all := make([]float64, len(m.members))
	for k, b := range m.members {
		all[k] = b.ratio[i] + s*(b.ratio[i+1]-b.ratio[i])
	}
	expected = all[0]
	sort.Float64s(all)
	last := float64(len(all) - 1)
	return expected, all[int(0.1*last+0.5)], all[int(0.9*last+0.5)]
}
