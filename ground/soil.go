package ground

import (
	_ "embed"

	"slabwright/internal/table"
)

//go:embed soils.csv
var soilsCSV string

var soils = table.Read("soils.csv", soilsCSV)

// Range is a value with the bounds it is sampled between.
type Range struct{ Value, Low, High float64 }

// Soil is how a layer under the slab leads and holds heat. From memory, with ranges.
type Soil struct {
	Name         string
	Conductivity Range // [W/(m K)]
	Density      Range // [kg/m³]
	SpecificHeat Range // [J/(kg K)]
}

// SoilOf returns a layer by its name, such as "moist sand" or "crushed rock base"; ok
// is false for another word.
func SoilOf(name string) (s Soil, ok bool) {
	i := soils.Find(name)
	if i < 0 {
		return Soil{}, false
	}
	cell := func(column string) Range {
		return Range{soils.Number(i, column), soils.Number(i, column+"_low"), soils.Number(i, column+"_high")}
	}
	return Soil{name, cell("conductivity"), cell("density"), cell("specific_heat")}, true
}

// Soils returns the names in table order.
func Soils() []string { return soils.Keys() }

// HeatCapacity returns density times specific heat, J/(m³ K).
func (s Soil) HeatCapacity() float64 { return s.Density.Value * s.SpecificHeat.Value }

// Diffusivity returns how quickly temperature moves through the layer, m²/s.
func (s Soil) Diffusivity() float64 { return s.Conductivity.Value / s.HeatCapacity() }
