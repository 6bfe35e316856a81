package concrete

import (
	"math"
	"strconv"
	"strings"

	"slabwright/source"
)

// binderIn reads the binder of a row.
func binderIn(in source.Inputs) Binder {
	b := Binder{Composition: Composition{C3S: in.NumOr("C3S", 0), C2S: in.NumOr("C2S", 0), C3A: in.Num("C3A"), C4AF: in.Num("C4AF"),
		SO3: in.Num("SO3"), FreeCaO: in.NumOr("CaO", 0), MgO: in.NumOr("MgO", 0), Na2Oeq: in.NumOr("Na2Oeq", 0), Blaine: in.Num("Blaine")},
		Ash: in.NumOr("ash", 0), AshCaO: in.NumOr("ashCaO", 0), Slag: in.NumOr("slag", 0)}
	b.Cement = 1 - b.Ash - b.Slag
	return b
}

func hydrationIn(in source.Inputs) Hydration {
	return NewHydration(binderIn(in), in.NumOr("binder", 0), in.Num("w"), 0)
}

// ofHydration answers a quantity from the hydration curve of a row.
func ofHydration(f func(Hydration, source.Inputs) float64) source.Func {
	return func(in source.Inputs) float64 { return f(hydrationIn(in), in) }
}

var hydrationQuantities = map[string]source.Func{
	"age rate": func(in source.Inputs) float64 { return AgeRate(in.Num("Ea"), in.Num("T"), in.Num("Tr")) },
	"equivalent age": func(in source.Inputs) float64 {
		return in.Num("hours") * AgeRate(in.Num("Ea"), in.Num("T"), in.Num("Tr"))
	},
	"activation energy by temperature": func(in source.Inputs) float64 { return ActivationEnergyByTemperature(in.Num("T")) },
	"age rate by temperature": func(in source.Inputs) float64 {
		return AgeRate(ActivationEnergyByTemperature(in.Num("T")), in.Num("T"), in.Num("Tr"))
	},
	"equivalent age in a daily swing": func(in source.Inputs) float64 {
		return swing(in, func(temperature float64) float64 { return AgeRate(in.Num("Ea"), temperature, in.Num("Tr")) })
	},
	"maturity in a daily swing": func(in source.Inputs) float64 {
		return swing(in, func(temperature float64) float64 { return NurseSaulRate(temperature, in.Num("datum")) })
	},
	"adjusted age": func(in source.Inputs) float64 {
		sum, days := 0.0, numbersOf(in.Word("days"))
		for i, temperature := range numbersOf(in.Word("T")) {
			sum += days[i] * AdjustedAgeRate(temperature)
		}
		return sum
	},
	"bogue": func(in source.Inputs) float64 {
		c3s, c2s, c3a, c4af, _ := Bogue(in.Num("CaO"), in.Num("SiO2"), in.Num("Al2O3"), in.Num("Fe2O3"), in.Num("SO3"))
		return map[string]float64{"C3S": c3s, "C2S": c2s, "C3A": c3a, "C4AF": c4af}[in.Word("of")]
	},
	"cement heat":             func(in source.Inputs) float64 { return CementHeat(binderIn(in).Composition) },
	"activation energy Poole": func(in source.Inputs) float64 { return ActivationEnergyPoole(binderIn(in)) },
	"binder heat":             ofHydration(func(h Hydration, _ source.Inputs) float64 { return h.Heat }),
	"activation energy":       ofHydration(func(h Hydration, _ source.Inputs) float64 { return h.ActivationEnergy }),
	"ultimate degree":         ofHydration(func(h Hydration, _ source.Inputs) float64 { return h.Ultimate }),
	"tau":                     ofHydration(func(h Hydration, _ source.Inputs) float64 { return h.Tau }),
	"beta":                    ofHydration(func(h Hydration, _ source.Inputs) float64 { return h.Beta }),
	"degree":                  ofHydration(func(h Hydration, in source.Inputs) float64 { return h.Degree(in.Num("te")) }),
	"initial set":             ofHydration(func(h Hydration, _ source.Inputs) float64 { return h.InitialSet() }),
	"final set":               ofHydration(func(h Hydration, _ source.Inputs) float64 { return h.FinalSet() }),
	"heat rate":               ofHydration(func(h Hydration, in source.Inputs) float64 { return h.HeatRate(in.Num("te"), in.Num("T")) }),
	"adiabatic rise": ofHydration(func(h Hydration, in source.Inputs) float64 {
		return AdiabaticRise(h.Heat, in.Num("alpha"), h.Binder, in.Num("rho"), in.Num("cp"))
	}),
	"adiabatic equivalent age": ofHydration(func(h Hydration, in source.Inputs) float64 {
		age, _ := Adiabatic(h, in.Num("T0"), in.Num("rho")*in.Num("cp"), in.Num("hours"))
		return age
	}),
	"adiabatic temperature": ofHydration(func(h Hydration, in source.Inputs) float64 {
		_, temperature := Adiabatic(h, in.Num("T0"), in.Num("rho")*in.Num("cp"), in.Num("hours"))
		return temperature
	}),
	"conductivity": func(in source.Inputs) float64 { return Conductivity(in.Num("kult"), in.Num("alpha")) },
	"specific heat": func(in source.Inputs) float64 {
		return SpecificHeat(Contents{in.Num("Wc"), in.Num("Wa"), in.Num("Ww"), in.Num("rho")},
			SpecificHeats{in.Num("cc"), in.Num("ca"), in.Num("cw")}, in.Num("alpha"), in.Num("T"))
	},
}

// swing integrates a rate over a daily sine of temperature.
func swing(in source.Inputs, rate func(float64) float64) float64 {
	var hours, temperatures []float64
	n := int(math.Round(in.Num("hours") / in.Num("step")))
	for i := range n + 1 {
		t := float64(i) * in.Num("step")
		hours = append(hours, t)
		temperatures = append(temperatures, in.Num("mean")+in.Num("swing")*math.Sin(2*math.Pi*t/24))
	}
	return Accumulate(hours, temperatures, rate)
}

// numbersOf reads "5,15,25".
func numbersOf(text string) (list []float64) {
	for _, word := range strings.Split(text, ",") {
		v, err := strconv.ParseFloat(word, 64)
		if err != nil {
			panic("concrete: a published row lists " + word)
		}
		list = append(list, v)
	}
	return list
}
