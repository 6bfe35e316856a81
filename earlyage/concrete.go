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
