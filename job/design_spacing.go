package job

import (
	"math"

	"slabwright/concrete"
	"slabwright/layout"
	"slabwright/source"
)

// Defaults of a joint plan where the job gives nothing.
const (
	panelRisk    = 0.05 // chance that one panel cracks away from its joints; our own choice
	panelScatter = 0.20 // coefficient of variation of strength over stress; our own judgement
)

// spacingFacts are what the spacing of joints follows from, from the concrete, ground
// and weather of the job: the strength of 28 days, the movement of the first year, and
// the curl of the sharpest night of the first days.
func (d *diagnosis) spacingFacts() (layout.SpacingFacts, error) {
	run := d.firstRun()
	if run == nil {
		return layout.SpacingFacts{}, NotKnown{"a joint plan needs the concrete and the weather of at least one pour that can be followed"}
	}
	const year = 365.0
	thickness := d.slab.Thickness.Value
	long := d.longTerm(run.mix)
	coldest, _ := d.year()
	placed := d.use(run.pour.Concrete, 20, "concrete temperature at placing", " °C", "not given", "movement of the joints")
	mu, _, _ := d.friction()
	f := layout.UsualSpacingFacts(thickness)
	f.Modulus = 1e6 * d.hold.modulus / (1 + usualAgeing*long.Creep.Coefficient(long.Member, 7, year))
	f.Poisson, f.Support, f.UnitWeight = poisson, 1e6*d.support(), 1000*d.unitWeight()
	f.Expansion, f.Friction, f.ShearStiffness = run.mix.Expansion, mu, bedStiffness*1e9
	f.Strain = long.Shrinkage(year) + run.mix.Expansion*math.Max(0, placed-coldest)
	f.Tensile = 1e6 * d.hold.tensile
	f.Flexural = f.Tensile * concrete.FlexuralRatioEN(1000*thickness)
	f.Difference = math.Min(d.hold.curlDifference, f.Difference)
	f.Scatter, f.Risk = panelScatter, panelRisk
	f.Known = map[string]string{"E": "from the mix", "ν": "default", "k": "as the ground", "α": "from the mix", "ΔT": "from the weather, no less than usual",
		"γ": "from the mix", "μ": "as the ground", "k_s": "default", "ε": "from the mix and the climate", "f_ct": "from the mix", "f": "from the mix", "V": "default", "p": "default"}
	d.assume("chance that one panel may crack away from its joints", "1 in 20", string(source.Default), "our own choice for paved yards", "the spacing of the joints")
	if bad := f.Check(); len(bad) > 0 {
		return f, bad[0]
	}
	return f, nil
}
