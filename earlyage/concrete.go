package earlyage

import (
	"slabwright/climate"
	"slabwright/concrete"
)

// Concrete is what the column must know of a mix. [FromMix] makes it.
type Concrete struct {
	Hydration    concrete.Hydration
	Density      float64                                   // kg/m3
	Conductivity func(degree float64) float64              // W/mK
	SpecificHeat func(degree, temperature float64) float64 // J/kgK
	Properties   func(equivalentAge float64) concrete.Properties

	Expansion float64 // coefficient of thermal expansion, 1/K
	Poisson   float64

	Creep        Creep
	CreepModulus float64 // modulus that the creep coefficient refers to, MPa

	Autogenous func(age float64) float64 // shrinkage without drying at an age in days at 20 °C, positive
	DryToZero  float64                   // drying shrinkage in air without any humidity, positive
	Diffusion  float64                   // of humidity in saturated concrete, m2/s

	Bleed climate.Bleed
}

// faster returns the strength of a concrete whose cement goes speed times as fast:
// what it has at an age the slower one has at speed times that age.
func faster(c Concrete, speed float64) func(float64) concrete.Properties {
	old := c.Properties
	delay := c.Hydration.Delay
	return func(equivalentAge float64) concrete.Properties {
		return old(delay + (equivalentAge-delay)*speed)
	}
}
