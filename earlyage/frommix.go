package earlyage

import (
	"time"

	"slabwright/climate"
	"slabwright/concrete"
)

// usualPoisson is Poisson's ratio of uncracked concrete, EN 1992-1-1 3.1.3(4);
// from memory.
const usualPoisson = 0.2

// FromMix returns the concrete of a mix for a slab of a thickness in metres, with
// strength by one code's model and shrinkage and creep by one (see [ENLongTerm]).
//
// Bleeding: all the mix's bleed water comes by a rate that falls evenly to nothing
// at initial set of concrete at the placing temperature (own reading).
func FromMix(m concrete.Mix, model concrete.StrengthModel, long LongTerm, thickness float64) Concrete {
	h := m.Hydration()
	young := m.Young(model)
	end := h.ClockHours(h.InitialSet(), m.PlacingTemperature)
	return Concrete{
		Hydration:    h,
		Density:      m.Density(),
		Conductivity: m.Conductivity,
		SpecificHeat: m.SpecificHeat,
		Properties:   young.At,
		Expansion:    m.Expansion,
		Poisson:      usualPoisson,
		Creep: NewCreep(func(age, loaded float64) float64 {
			return long.Creep.Coefficient(long.Member, loaded, age)
		}),
		CreepModulus: long.creepModulus(),
		Autogenous:   long.Shrink.Autogenous,
		DryToZero:    long.DryToZero(),
		Diffusion:    SaturatedDiffusivity(m.Characteristic),
		Bleed:        climate.Bleed{Rate: 2 * concrete.BleedWater(thickness, m.BleedShare) / end, End: end},
	}
}

// FromExposure returns the weather of an exposure. A time that the record does not
// cover comes back as an impossible feel, which [Column.Check] reports; ask
// climate for the reason.
func FromExposure(e climate.Exposure) Weather {
	return func(t time.Time) Feel {
		f, err := e.At(t)
		if err != nil {
			return Feel{Air: noWeather}
		}
		return Feel{Air: f.Air, Humidity: f.Humidity, Wind: f.WindAtSlab, Sun: f.SolarDown, Longwave: f.SkyDown}
	}
}

// noWeather marks a time without weather: no air is that cold.
const noWeather = -999
