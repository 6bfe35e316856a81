package earlyage

import (
	"math"
	"sync"

	"slabwright/concrete"
	"slabwright/internal/march"
	"slabwright/source"
)

// heatQuantities are hydrating columns and curing without loss.
var heatQuantities = map[string]source.Func{
	"model column top":    modelColumn(func(m *march.Marcher) float64 { return m.Value[0] }),
	"model column mid":    modelColumn(func(m *march.Marcher) float64 { return m.Value[15] }),
	"model column bottom": modelColumn(func(m *march.Marcher) float64 { return m.Value[30] }),
	"model column age":    modelColumn(func(m *march.Marcher) float64 { return m.Hidden[15] / 3600 }),
	"model column degree": modelColumn(func(m *march.Marcher) float64 {
		return concrete.DegreeOfHydration(m.Hidden[15]/3600, 1, modelCement.Tau, modelCement.Beta)
	}),
	"model column continuum": func(in source.Inputs) float64 {
		const refine = 3
		m := newModelColumn(refine)
		marchTo(m, in.Num("t")*3600)
		return m.Value[15*refine]
	},
	"adiabatic age marched":         func(in source.Inputs) float64 { return adiabatic(in).Hidden[0] / 3600 },
	"adiabatic temperature marched": func(in source.Inputs) float64 { return adiabatic(in).Value[0] },
	"initial set clock": func(in source.Inputs) float64 {
		h := typeOne()
		return h.ClockHours(h.InitialSet(), in.Num("T"))
	},
	"final set clock": func(in source.Inputs) float64 {
		h := typeOne()
		return h.ClockHours(h.FinalSet(), in.Num("T"))
	},
	"clock of EN strength": func(in source.Inputs) float64 {
		mean, want := in.Num("fcm"), in.Num("fc")
		low, high := 1e-3, 28.0
		for range 100 {
			middle := (low + high) / 2
			if mean*concrete.DevelopmentEN(0.25, middle) < want {
				low = middle
			} else {
				high = middle
			}
		}
		return low * 24 / concrete.AdjustedAgeRate(in.Num("T"))
	},
}

// typeOne is the hydration of the type I mix of the tables.
func typeOne() concrete.Hydration {
	b := concrete.Binder{Cement: 1, Composition: concrete.Composition{C3S: 0.60, C2S: 0.13, C3A: 0.08, C4AF: 0.10,
		SO3: 0.03, FreeCaO: 0.01, MgO: 0.015, Blaine: 370}}
	return concrete.NewHydration(b, 350, 0.45, 0)
}

// adiabatic is a sealed column of the type I mix, t hours on.
func adiabatic(in source.Inputs) *march.Marcher {
	h := typeOne()
	h.Binder = in.Num("Cc")
	g := march.Uniform(0, 1, 1)
	p := march.Layered(g, march.Layer{To: 1, Conductivity: 2, Capacity: in.Num("rhocp")})
	p.Local = newHydrating(h, newCurves(h, concrete.HydrationReference_C), g.Volumes())
	m := march.New(p, 0, constant(g, in.Num("T0")))
	marchTo(m, in.Num("t")*3600)
	return m
}

// modelCement is the cement of the model column: 350 kg/m3 of 350 J/g of which
// three quarters come, with its age counted at 20 °C.
var modelCement = concrete.Hydration{Heat: 350 * 0.75, Binder: 350, ActivationEnergy: 4500 * concrete.GasConstant, Ultimate: 1, Tau: 14, Beta: 0.9}

// modelWeather is the top of the model column, from 08:00 on.
type modelWeather struct{}

func (modelWeather) Into(t, u float64) (flow, slope float64) {
	const film, absorbed, loss = 15, 0.6 * 700, 60
	clock := 8 + t/3600
	flow = film*(20+8*math.Sin(2*math.Pi*(clock-9)/24)-u) - loss
	if hour := math.Mod(clock, 24); hour > 6 && hour < 18 {
		flow += absorbed * math.Sin(math.Pi*(hour-6)/12)
	}
	return flow, -film
}

// newModelColumn is 150 mm of hydrating concrete on 1.5 m of soil, on a grid
// refined by a whole number.
func newModelColumn(refine int) *march.Marcher {
	slab := march.Uniform(0, 0.15, 30*refine)
	g := slab.Then(march.Graded(0.15, 1.65, 29*refine, math.Pow(1.15, 1/float64(refine))))
	p := march.Layered(g, march.Layer{To: 0.15, Conductivity: 2, Capacity: 2.4e6}, march.Layer{To: 1.65, Conductivity: 1.5, Capacity: 2.0e6})
	p.Top, p.Bottom = modelWeather{}, march.Held(march.Constant(16))
	p.Local = newHydrating(modelCement, newCurves(modelCement, 20), slab.Volumes())
	start := constant(g, 16)
	for i := range slab {
		start[i] = 25
	}
	return march.New(p, 0, start)
}

// modelWeek are the states of the model column hour by hour, by backward Euler
// in steps of five minutes.
var modelWeek = sync.OnceValue(func() []*march.Marcher {
	m := newModelColumn(1)
	week := []*march.Marcher{}
	for hour := 0; hour <= 168; hour++ {
		week = append(week, &march.Marcher{Value: append([]float64(nil), m.Value...), Hidden: append([]float64(nil), m.Hidden...)})
		for range 12 {
			if err := m.Euler(300); err != nil {
				panic("earlyage: " + err.Error())
			}
		}
	}
	return week
})

func modelColumn(of func(*march.Marcher) float64) source.Func {
	return func(in source.Inputs) float64 { return of(modelWeek()[int(in.Num("t"))]) }
}
