package earlyage

import (
	"math"

	"slabwright/climate"
	"slabwright/concrete"
	"slabwright/internal/march"
	"slabwright/source"
)

// dryingQuantities are water on the slab and in its pores.
var dryingQuantities = map[string]source.Func{
	"humidity diffusivity": func(in source.Inputs) float64 {
		return HumidityDiffusivity(in.Num("h"), SaturatedDiffusivity(in.Num("fck")))
	},
	"water given up per unit of humidity": func(in source.Inputs) float64 {
		return WaterCapacity(in.Num("h"), in.Num("degree"), in.Num("ultimate"), in.Num("water"), in.Num("binder"))
	},
	"diffusivity over that at 28 days": func(in source.Inputs) float64 { return DiffusivityAgeing(in.Num("days")) },
	"humidity diffusivity mm2/day": func(in source.Inputs) float64 {
		return HumidityDiffusivity(in.Num("h"), SaturatedDiffusivity(in.Num("fck"))) * 86400e6
	},
	"drying humidity": func(in source.Inputs) float64 { return valueAt(dried(in), in.Num("x")*1e-3) },
	"drying mean humidity": func(in source.Inputs) float64 {
		m := dried(in)
		return m.Grid.Mean(m.Value, 0, len(m.Grid)-1)
	},
	"film gone": func(in source.Inputs) float64 {
		film := bleeding{bleed: climate.Bleed{Rate: in.Num("b0"), End: in.Num("T")}, Gone: math.NaN()}
		const dt = 1.0 / 60
		for i := 0; math.IsNaN(film.Gone); i++ {
			film.step(float64(i)*dt, dt, in.Num("E"), 0, 0)
		}
		return film.Gone
	},
	"bleed total": func(in source.Inputs) float64 {
		film := bleeding{bleed: climate.Bleed{Rate: in.Num("b0"), End: in.Num("T")}, Gone: math.NaN()}
		const dt = 1.0 / 60
		for hours := 0.0; hours < in.Num("T"); hours += dt {
			film.step(hours, dt, 0, 0, 0)
		}
		return film.Film
	},
	"bleed of mix": func(in source.Inputs) float64 {
		m, err := concrete.DefaultMix(30, "CEM I 42.5N")
		if err != nil {
			panic("earlyage: " + err.Error())
		}
		m.PlacingTemperature, m.BleedShare = 20, in.Num("percent")/100
		h := in.Num("h") / 1000
		return FromMix(m, m.EN1992(), ENLongTerm(m, h, 0.6, 3), h).Bleed.Total()
	},
}

// dried is a layer that has dried from its held face.
func dried(in source.Inputs) *march.Marcher {
	length, saturated := in.Num("L")*1e-3, SaturatedDiffusivity(in.Num("fck"))
	g := march.Graded(0, length, 80, 1.03)
	p := march.Layered(g, march.Layer{To: length, Conductivity: 1, Capacity: 1})
	p.Potential = march.Integrated(func(h float64) float64 { return HumidityDiffusivity(h, saturated) }, 0.4, 1, 600)
	p.Top = march.Held(march.Constant(in.Num("hs")))
	m := march.New(p, 0, constant(g, 1))
	if _, err := m.Advance(in.Num("t")*86400, march.Control{Error: 2e-4, First: 1, Min: 0.01, Max: 86400}, nil); err != nil {
		panic("earlyage: " + err.Error())
	}
	return m
}

// slabQuantities are strains and stresses of the slab.
var slabQuantities = map[string]source.Func{
	"equivalent of linear": func(in source.Inputs) float64 {
		e := in.Num("d") * 1e-6
		return EquivalentDifference([]float64{0, 0.05, 0.15}, []float64{e, e * 2 / 3, 0}, in.Num("a"))
	},
	"equivalent of parabola": func(in source.Inputs) float64 {
		depth, strain := parabola(in)
		return -EquivalentDifference(depth, strain, in.Num("a"))
	},
	"mean of parabola": func(in source.Inputs) float64 {
		depth, strain := parabola(in)
		return -depth.Mean(strain, 0, len(depth)-1) * 1e6
	},
	"cut depth": func(in source.Inputs) float64 { return CutDepth(in.Num("h"), 1/in.Num("parts")) },
	"spacing rule": func(in source.Inputs) float64 {
		return SpacingRule(in.Num("h"), in.Num("times"), in.Num("cap"))
	},
	"curl share": func(in source.Inputs) float64 { return CurlShare(in.Num("B")) },
	"relative stiffness": func(in source.Inputs) float64 {
		return RelativeStiffness(in.Num("E"), in.Num("h"), in.Num("mu"), in.Num("k"))
	},
	"curl share of slab": func(in source.Inputs) float64 {
		return CurlShare(in.Num("B") * 1000 / RelativeStiffness(in.Num("E"), in.Num("h"), in.Num("mu"), in.Num("k")))
	},
	"drag stress": func(in source.Inputs) float64 { return DragStress(in.Num("mu"), in.Num("gamma"), in.Num("L")) },
	"bed stress": func(in source.Inputs) float64 {
		return in.Num("E") * in.Num("eps") * 1e-6 * BedShare(in.Num("E"), in.Num("h"), in.Num("ks"), in.Num("L"))
	},
	"relaxation modulus": func(in source.Inputs) float64 {
		creep, _ := benchmarkCreep()
		return 1 / creep.Compliance(concrete.Member{Humidity: 0.5, VolumeSurface: 150}, in.Num("t"), in.Num("t"))
	},
	"relaxation": func(in source.Inputs) float64 {
		creep, member := benchmarkCreep()
		modulus := func(age float64) float64 { return concrete.TangentOverSecantEN * creep.Modulus(age) }
		c := NewCreep(func(age, loaded float64) float64 { return creep.Coefficient(member, loaded, age) })
		return Relaxation(c, modulus, modulus(28), 7, []float64{in.Num("t")})[0]
	},
}

// parabola is the shrinkage eps0 (1 - d/h)^2 through a slab, in a fine grid.
func parabola(in source.Inputs) (depth march.Grid, strain []float64) {
	h := in.Num("h") / 1000
	depth = march.Uniform(0, h, 100)
	for _, d := range depth {
		left := 1 - d/h
		strain = append(strain, -in.Num("eps0")*1e-6*left*left)
	}
	return depth, strain
}

// benchmarkCreep is the creep of the relaxation benchmark.
func benchmarkCreep() (concrete.CreepEN, concrete.Member) {
	return concrete.CreepEN{EN1992: concrete.NewEN1992(30, concrete.Normal)}, concrete.Member{Humidity: 0.5, VolumeSurface: 150}
}
