package earlyage

import (
	"context"
	"fmt"
	"sort"

	"slabwright/internal/sample"
)

// PlasticRange is what the plastic stage comes to over the members of a pour: as
// expected, and the tenth and nine-tenth points.
type PlasticRange struct {
	Expected, Low, High float64
}

// PlasticRanges returns how far the doubtful facts of a pour (see [Pour.Unknowns])
// move the fresh slab: the chance of plastic shrinkage cracks at final set, the water
// drawn out by then, kg/m2, and the hour of final set of the surface. The chance of
// each member already counts the scatter of strength and of the drying formulas. What
// was observed at the slab weighs nothing here.
func PlasticRanges(ctx context.Context, p Pour, in PlasticInput) (chance, drawn, finalSet PlasticRange, err error) {
	if err = in.Check(); err != nil {
		return
	}
	if p, err = p.ready(); err != nil {
		return
	}
	unknowns := p.Unknowns()
	points := sample.Latin(p.Count, len(unknowns), p.Seed)
	chances, waters, sets := make([]float64, p.Count+1), make([]float64, p.Count+1), make([]float64, p.Count+1)
	err = p.onAllCores(p.Count+1, func(i int) error {
		values := make([]float64, len(unknowns))
		for k, u := range unknowns {
			values[k] = u.Value
			if i > 0 {
				values[k] = sample.Uniform(points[i-1][k], u.Low, u.High)
			}
		}
		h, err := p.vary(values).column.Run(ctx)
		if err != nil {
			return err
		}
		hours := h.PlasticHours(in)
		last := hours[len(hours)-1]
		chances[i], waters[i], sets[i] = last.ShrinkageChance, last.Deficit, last.Hours
		return nil
	})
	return rangeOf(chances), rangeOf(waters), rangeOf(sets), err
}

// rangeOf is the range of values of which the first is the expected one.
func rangeOf(values []float64) PlasticRange {
	r := PlasticRange{Expected: values[0]}
	sort.Float64s(values)
	last := float64(len(values) - 1)
	r.Low, r.High = values[int(0.1*last+0.5)], values[int(0.9*last+0.5)]
	return r
}

// Measure is what one measure against drying does to the fresh slab.
type Measure struct {
	Cover           Cover   // of zero value for the slab left as it is
	Worst           float64 // largest drying rate of a wet surface before final set, kg/m2/h, without the cover's own share
	Drawn           float64 // water drawn out of the concrete by final set, kg/m2
	FinalSet        float64 // of the surface, h
	ShrinkageChance float64
	Saved           float64 // chance taken off the slab left as it is
}

// Measures runs a column as it is and with each measure added by itself, in order:
// what a windbreak, fog, an evaporation retarder or a sheet at its clock time is worth
// on this day. See [Cover.By] for clock times.
func Measures(ctx context.Context, c Column, in PlasticInput, measures ...Cover) ([]Measure, error) {
	if err := in.Check(); err != nil {
		return nil, err
	}
	out := make([]Measure, 0, len(measures)+1)
	for i := -1; i < len(measures); i++ {
		with := c
		m := Measure{}
		if i >= 0 {
			m.Cover = measures[i]
			with.Covers = append(append([]Cover(nil), c.Covers...), m.Cover)
		}
		h, err := with.Run(ctx)
		if err != nil {
			return nil, fmt.Errorf("measure %q: %w", m.Cover.Name, err)
		}
		hours := h.PlasticHours(in)
		last := hours[len(hours)-1]
		m.Worst, m.Drawn, m.FinalSet, m.ShrinkageChance = h.Plastic(in.Limit).Worst, last.Deficit, last.Hours, last.ShrinkageChance
		if i >= 0 {
			m.Saved = out[0].ShrinkageChance - m.ShrinkageChance
		}
		out = append(out, m)
	}
	return out, nil
}
