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
	var rows [][]float64 // the unknowns from -1/2 to 1/2, then the time, then the weight
	var counts, weight float64
	mean := make([]float64, n+1)
	for i := range m.members {
		b := &m.members[i]
		t := of(b)
		if math.IsNaN(t) || b.weight == 0 {
			continue
		}
		row := make([]float64, n+2)
		for k, u := range m.unknowns {
			if u.High > u.Low {
				row[k] = (b.values[k]-u.Low)/(u.High-u.Low) - 0.5
			}
		}
		row[n], row[n+1] = t, b.weight
		for k := range mean {
			mean[k] += b.weight * row[k]
		}
		weight += b.weight
		counts += b.weight * b.weight
		rows = append(rows, row)
	}
	if len(rows) == 0 || weight*weight/counts < float64(n+5) {
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
		w, t := row[n+1]/weight, row[n]-mean[n]/weight
		spread += w * t * t
		for i := range n {
			x := row[i] - mean[i]/weight
			for k := range n {
				normal[i][k] += w * x * (row[k] - mean[k]/weight)
			}
			normal[i][n] += w * x * t
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
