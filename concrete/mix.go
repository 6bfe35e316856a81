package concrete

import (
	"errors"
	"fmt"
	"math"
)

// Mix is a concrete as delivered: plain numbers in the units of the fields.
type Mix struct {
	Name   string
	Cement string // key of the typical cement it was made from, "" for a mill certificate
	Binder Binder // composition and shares

	BinderContent float64 // all binder [kg/m³]
	Water         float64 // [kg/m³]
	Aggregate     float64 // fine and coarse [kg/m³]
	FinesShare    float64 // fine over all aggregate [-]
	Air           float64 // [-]
	Slump         float64 // [mm]

	Characteristic float64     // fck, cylinder [MPa]
	Class          CementClass // S, N, R
	CementStrength string      // 42.5N and so on, for fib Model Code
	AggregateKind  string      // row of aggregates.csv: quartzite, limestone ...

	SetShift     float64 // how much later admixtures bring final set [h at 21.1 °C]; negative with an accelerator
	SetShiftLow  float64 // range of the shift to sample [h]
	SetShiftHigh float64

	PlacingTemperature float64 // [°C]

	Expansion            float64 // coefficient of thermal expansion [1/K]
	ExpansionLow         float64
	ExpansionHigh        float64
	UltimateConductivity float64 // of mature concrete [W/(m K)]
	ConductivityLow      float64
	ConductivityHigh     float64

	BleedShare float64 // of depth that settles and comes up as bleed water [-], usual 0.005 to 0.02
}

// DefaultMix returns a usual floor mix for an ordered cylinder strength in MPa, to
// be shown as a default wherever it is used: 100 mm slump, water for 20 mm stone,
// the water-binder ratio that commonly gives the strength (see
// [WaterBinderFor]).
//
//	characteristic   fck, 12 to 60 [MPa]
//	cement           key of the table, such as "CEM I 42.5N" or "I"
func DefaultMix(characteristic float64, cement string) (Mix, error) {
	c, ok := TypicalCement(cement)
	if !ok {
		return Mix{}, fmt.Errorf("cement %q is not in the table; choose one of %q or enter the mill certificate", cement, cementKeys)
	}
	if !(characteristic >= 12 && characteristic <= 60) {
		return Mix{}, fmt.Errorf("fck %g MPa is outside 12 to 60 MPa for a default mix; is it in psi or a cube strength?", characteristic)
	}
	const slump, air, most = 100, 0.02, 450 // mm; share; kg/m³ of binder before water is cut instead
	water := 180.0                          // kg/m³ for this slump and 20 mm stone
	ratio := WaterBinderFor(MeanStrengthEN(characteristic)) * c.Binder.EfficientShare()
	binder := water / ratio
	if binder > most {
		binder, water = most, most*ratio
	}
	m := Mix{
		Name: fmt.Sprintf("default mix, fck %g MPa, %s", characteristic, c.Name), Cement: cement, Binder: c.Binder,
		BinderContent: binder, Water: water, FinesShare: 0.42, Air: air, Slump: slump,
		Characteristic: characteristic, Class: c.Class, CementStrength: c.Strength, PlacingTemperature: 20,
		BleedShare: 0.01,
	}
	m.Aggregate = aggregateFor(binder, water, air)
	return m.WithAggregate("unknown")
}

// aggregateFor returns the aggregate in kg/m³ that fills what binder (3100 kg/m³),
// water and air leave, at 2650 kg/m³.
func aggregateFor(binder, water, air float64) float64 {
	return 2650 * (1 - binder/3100 - water/1000 - air)
}

// WaterBinderFor returns the water-cement ratio at which plain-cement concretes
// commonly reach a mean 28-day strength in MPa, held to 0.30 to 0.75: the inverse
// of [MeanStrengthFor].
func WaterBinderFor(mean float64) float64 {
	return math.Min(0.75, math.Max(0.30, (4.899-math.Log(mean))/2.603))
}

// WaterBinder returns w/cm.
func (m Mix) WaterBinder() float64 { return m.Water / m.BinderContent }

// Density returns the fresh density, kg/m³.
func (m Mix) Density() float64 { return m.BinderContent + m.Water + m.Aggregate }

// Hydration returns the heat and hydration curve of the mix.
func (m Mix) Hydration() Hydration {
	return NewHydration(m.Binder, m.BinderContent, m.WaterBinder(), m.SetShift)
}

// Young returns the mix from final set on, by a strength model.
func (m Mix) Young(model StrengthModel) Young { return NewYoung(m.Hydration(), model) }

// EN1992 returns the mix's strength model of EN 1992-1-1.
func (m Mix) EN1992() EN1992 {
	model := NewEN1992(m.Characteristic, m.Class)
	if a, ok := aggregateOf(m.AggregateKind); ok {
		model.AggregateFactor = a.Modulus
	}
	return model
}

// Conductivity returns W/(m K) at a degree of hydration.
func (m Mix) Conductivity(degree float64) float64 {
	return Conductivity(m.UltimateConductivity, degree)
}

// SpecificHeat returns J/(kg K) at a degree of hydration and a temperature in °C,
// with 740, 840 and 4184 J/(kg K) for cement, aggregate and water.
func (m Mix) SpecificHeat(degree, temperature float64) float64 {
	return SpecificHeat(Contents{m.BinderContent, m.Aggregate, m.Water, m.Density()},
		SpecificHeats{Cement: 740, Aggregate: 840, Water: 4184}, degree, temperature)
}

// Check returns everything in the mix that cannot be right, all at once, or nil.
func (m Mix) Check() error {
	var faults []error
	within := func(field string, value, low, high float64, unit, mend string) {
		if !(value >= low && value <= high) {
			faults = append(faults, fmt.Errorf("mix %q, %s: %g %s is outside %g to %g %s; %s", m.Name, field, value, unit, low, high, unit, mend))
		}
	}
	within("binder", m.BinderContent, 200, 600, "kg/m³", "is it in lb/yd³ (1 lb/yd³ = 0.593 kg/m³)?")
	within("water", m.Water, 100, 260, "kg/m³", "count the water in admixtures and wet aggregate")
	within("water over binder", m.WaterBinder(), 0.25, 0.9, "", "check binder and water")
	within("density", m.Density(), 2100, 2600, "kg/m³", "check the aggregate; light and heavy concretes are outside this model")
	within("fck", m.Characteristic, 8, 90, "MPa", "is it in psi (145 psi = 1 MPa)?")
	within("slump", m.Slump, 0, 260, "mm", "is it in inches or centimetres?")
	within("air", m.Air, 0, 0.12, "", "enter a share, 0.05 for 5 %")
	within("placing temperature", m.PlacingTemperature, 2, 45, "°C", "is it in °F?")
	within("set shift", m.SetShift, -6, 24, "h", "enter hours later than without admixture")
	within("thermal expansion", m.Expansion, 5e-6, 16e-6, "1/K", "enter 10e-6 for 10 microstrain per K")
	b := m.Binder
	within("C3S", b.C3S, 0.2, 0.8, "", "enter shares of cement mass, 0.60 for 60 %")
	within("C3A", b.C3A, 0.005, 0.16, "", "a cement without C3A is outside the heat model")
	within("C4AF", b.C4AF, 0.005, 0.2, "", "enter a share")
	within("SO3", b.SO3, 0.01, 0.06, "", "enter a share")
	within("Blaine", b.Blaine, 200, 800, "m²/kg", "is it in cm²/g (1 cm²/g = 0.1 m²/kg)?")
	within("shares of binder", b.Cement+b.Slag+b.Ash+b.SilicaFume+b.Filler, 0.999, 1.001, "", "cement, slag, ash, silica fume and filler must make 1")
	return errors.Join(faults...)
}
