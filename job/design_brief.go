package job

import (
	"slabwright/layout"
	"slabwright/plan"
	"slabwright/source"
)

// brief is what a joint plan of this job is asked for.
func (d *diagnosis) brief(limit layout.Limit) layout.Brief {
	return layout.Brief{
		Slab: freed(d.slab), Spacing: limit, Seed: d.job.Basis.Seed,
		Strip:  layout.Strip{Widest: widestStrip},
		Wheels: layout.Wheels{Cross: d.wheelsCross(), Movement: limit.Facts.Strain},
		Steel:  layout.Steel{Mesh: ""},
		Rates:  layoutRates(d.job.Rates),
	}
}

// widestStrip is the widest strip that a gang levels off forms by hand, m; common
// practice, no source.
const widestStrip = 6.0

// wheelsCross reports whether wheels pass over the joints: drawn on the plan, or a
// wheel that is heavier than a car's.
func (d *diagnosis) wheelsCross() bool {
	return len(d.slab.Wheels) > 0 || d.job.Wheel.Load.Or(0) > carWheel
}

// carWheel is a wheel of a car or a van, kN; common practice, no source.
const carWheel = 10.0

// freed is a slab as a joint plan is laid out on it: what stands in it is to be
// isolated, whatever was done before.
func freed(s plan.Slab) plan.Slab {
	s.Fixtures = append([]plan.Fixture(nil), s.Fixtures...)
	for i := range s.Fixtures {
		f := &s.Fixtures[i]
		if f.Kind != plan.Duct && !f.Isolated.Is("yes") {
			f.Isolated = &source.Choice{Value: "yes", Known: source.Assumed, By: "layout", Note: "the joint plan isolates what stands in the slab"}
		}
	}
	return s
}

// layoutRates picks the rates of joints and steel from the job's own.
func layoutRates(rates []Rate) layout.Rates {
	var out layout.Rates
	into := map[string]*float64{"sawn joint": &out.Sawn, "formed joint": &out.Formed, "isolation joint": &out.Isolation,
		"dowel": &out.Dowel, "mesh and bars": &out.Steel, "setting up a pour": &out.StripStart}
	for _, r := range rates {
		if at := into[r.Remedy]; at != nil {
			*at, out.Currency = r.Cost, r.Currency
		}
	}
	return out
}
