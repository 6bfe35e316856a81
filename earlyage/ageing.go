package earlyage

import "slabwright/concrete"

// ageing is all that a layer's concrete becomes by its equivalent age, tabulated
// so that a look-up is cheap: linear between points that divide every doubling of
// the hours since final set into 16.
type ageing struct {
	set    float64 // equivalent age at final set, h
	points octaves
	rows   []aged
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
	t := &ageing{set: c.Hydration.FinalSet(), points: newOctaves(firstSince, lastSince)}
	t.rows = make([]aged, t.points.count)
	base := c.Autogenous(c.Hydration.DaysAt20(t.set))
	for i := range t.rows {
		te := t.set + t.points.point(i)
		days := c.Hydration.DaysAt20(te)
		t.rows[i] = aged{c.Properties(te), c.Creep.Ageing(days) / c.CreepModulus, c.Autogenous(days) - base}
	}
	return t
}

// at returns the concrete at an equivalent age in hours; nothing at final set.
func (t *ageing) at(equivalentAge float64) aged {
	since := equivalentAge - t.set
	if since <= 0 {
		return aged{}
	}
	i, s := t.points.place(since)
	a, b := &t.rows[i], &t.rows[i+1]
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
