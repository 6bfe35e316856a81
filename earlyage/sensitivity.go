package earlyage

import (
	"math"
	"sort"
)

// Sensitivity is what one unknown does to a window.
type Sensitivity struct {
	Unknown
	// Minutes by which opening and closing come later when the unknown goes from its
	// low to its high end with all others held. NaN where too few members open or close.
	Opens, Closes float64
	// Share of the spread of opening and closing that comes from it, 0 to 1; all are
	// less than one together where the spread is not linear in the unknowns.
	OpensShare, ClosesShare float64
}

// Sensitivities returns what each unknown does to the opening and closing of a
// saw at an accepted risk (0: [DefaultRisk]), the one that moves them most first.
// They come from the members that are there by weighted least squares on the
// unknowns, each over its range; nothing is run again. Members that never open or
// close within the run are left out of that column.
//
// Source: standardised regression coefficients; textbook.
func (m *Members) Sensitivities(saw Saw, risk float64) []Sensitivity {
	if risk <= 0 {
		risk = DefaultRisk
	}
	opens, opensShare := m.regress(func(b *member) float64 { return m.opening(b, saw) })
	closes, closesShare := m.regress(func(b *member) float64 { return m.closing(b, risk) })
	out := make([]Sensitivity, len(m.unknowns))
	for k, u := range m.unknowns {
		out[k] = Sensitivity{u, 60 * opens[k], 60 * closes[k], opensShare[k], closesShare[k]}
	}
	whole := func(s Sensitivity) float64 {
		sum := 0.0
		for _, share := range []float64{s.OpensShare, s.ClosesShare} {
			if !math.IsNaN(share) {
				sum += share
			}
		}
		return sum
	}
	sort.SliceStable(out, func(i, k int) bool { return whole(out[i]) > whole(out[k]) })
	return out
}

// regress returns the change of a time, h, over the range of each unknown, and the
// share of the time's variance that each accounts for.
func (m *Members) regress(of func(*member) float64) (change, share []float64) {
	n := len(m.unknowns)
	change, share = make([]float64, n), make([]float64, n)
	rows, count := m.rows(of)
	if count < float64(n+5) {
		for k := range change {
			change[k], share[k] = math.NaN(), math.NaN()
		}
		return change, share
	}
	normal, spread := make([][]float64, n), 0.0
	for k := range normal {
		normal[k] = make([]float64, n+1)
	}
	for _, row := range rows {
		w, t := row[n+1], row[n]
		spread += w * t * t
		for i := range n {
			for k := range n + 1 {
				normal[i][k] += w * row[i] * row[k]
			}
		}
	}
	variance := make([]float64, n)
	for k := range n {
		variance[k] = normal[k][k]
		normal[k][k] += 1e-9 // an unknown without a range does nothing
	}
	copy(change, eliminate(normal))
	for k := range share {
		if spread > 0 {
			share[k] = change[k] * change[k] * variance[k] / spread
		}
	}
	return change, share
}

// rows returns, for each member that has the time, its unknowns over their ranges, the
// time, both about their means, and its weight; and for how many members the weights
// count.
func (m *Members) rows(of func(*member) float64) (rows [][]float64, count float64) {
	n := len(m.unknowns)
	mean := make([]float64, n+1)
	var weight, squares float64
	for i := range m.members {
		b := &m.members[i]
		t := of(b)
		if math.IsNaN(t) || b.weight == 0 {
			continue
		}
		row := make([]float64, n+2)
		for k := range n {
			row[k] = m.unit(b, k)
		}
		row[n], row[n+1] = t, b.weight
		for k := range mean {
			mean[k] += b.weight * row[k]
		}
		weight += b.weight
		squares += b.weight * b.weight
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		return nil, 0
	}
	for _, row := range rows {
		for k := range mean {
			row[k] -= mean[k] / weight
		}
		row[n+1] /= weight
	}
	return rows, weight * weight / squares
}
