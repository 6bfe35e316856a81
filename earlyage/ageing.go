package earlyage

import "slabwright/concrete"

// ageing is all that a layer's concrete becomes by its equivalent age, tabulated
// so that a look-up is cheap: linear between points that divide every doubling of
// the hours since final set into 16.
type ageing struct {
	concrete Concrete
	set      float64 // equivalent age at final set, h
	base     float64 // autogenous shrinkage then
	points   octaves
	rows     []aged
	filled   []bool // rows are worked out when they are first asked for
}

// aged is a layer's concrete at one age.
type aged struct {
	concrete.Properties
	compliance float64 // final creep coefficient over the modulus it refers to, 1/MPa
	autogenous float64 // shrinkage since final set
}

// Hours since final set between which the table runs. Before the first the
// concrete is taken to grow from nothing in a straight line.
const firstSince, lastSince = 0.01, 5e5

func newAgeing(c Concrete) *ageing {
	t := &ageing{concrete: c, set: c.Hydration.FinalSet(), points: newOctaves(firstSince, lastSince)}
	t.rows, t.filled = make([]aged, t.points.count), make([]bool, t.points.count)
	t.base = c.Autogenous(c.Hydration.DaysAt20(t.set))
	return t
}

// row returns a row of the table.
func (t *ageing) row(i int) *aged {
	if !t.filled[i] {
		c := &t.concrete
		te := t.set + t.points.point(i)
		days := c.Hydration.DaysAt20(te)
		t.rows[i] = aged{c.Properties(te), c.Creep.Ageing(days) / c.CreepModulus, c.Autogenous(days) - t.base}
		t.filled[i] = true
	}
	return &t.rows[i]
}

// at returns the concrete at an equivalent age in hours; nothing at final set.
func (t *ageing) at(equivalentAge float64) aged {
	since := equivalentAge - t.set
	if since <= 0 {
		return aged{}
	}
	i, s := t.points.place(since)
	a, b := t.row(i), t.row(i+1)
	mix := func(x, y float64) float64 { return x + s*(y-x) }
	out := aged{concrete.Properties{
		Strength: mix(a.Strength, b.Strength), Tensile: mix(a.Tensile, b.Tensile), Modulus: mix(a.Modulus, b.Modulus)},
		mix(a.compliance, b.compliance), mix(a.autogenous, b.autogenous)}
	if since < firstSince {
		share := since / firstSince
		out.Strength, out.Tensile, out.Modulus, out.autogenous = out.Strength*share, out.Tensile*share, out.Modulus*share, out.autogenous*share
	}
	return out
}
