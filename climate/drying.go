package climate

import "slabwright/source"

// DryingForm is one published formula for the drying of fresh concrete, taking and
// giving SI units so that all of them can be run side by side.
type DryingForm struct {
	Name   string          // "Uno", as named in a report
	Source source.Citation // where the formula stands
	rate   func(concrete, air, humidity, wind float64) float64
}

// Rate returns the drying rate in kg/m2/h; see [Drying] for the arguments.
func (f DryingForm) Rate(concrete, air, humidity, wind float64) float64 {
	return f.rate(concrete, air, humidity, wind)
}

// The published forms.
var (
	DryingUno = DryingForm{"Uno", source.Cite("uno1998", "SI form"),
		func(concrete, air, humidity, wind float64) float64 {
			return Uno(concrete, air, humidity, wind/kilometrePerHour)
		}}
	DryingUnoUS = DryingForm{"Uno (US units)", source.Cite("uno1998", "US form").As(source.Memory),
		func(concrete, air, humidity, wind float64) float64 {
			return poundPerSquareFoot * UnoUS(Fahrenheit(concrete), Fahrenheit(air), humidity, wind/milePerHour)
		}}
	DryingMenzel = DryingForm{"Menzel", source.Cite("menzel1954", "SI form"),
		func(concrete, air, humidity, wind float64) float64 {
			return Menzel(SaturationPressure(concrete), SaturationPressure(air), humidity, wind/kilometrePerHour)
		}}
	DryingMenzelUS = DryingForm{"Menzel (US units)", source.Cite("menzel1954", "US form"),
		func(concrete, air, humidity, wind float64) float64 {
			return poundPerSquareFoot * MenzelUS(SaturationPressure(concrete)/psi, SaturationPressure(air)/psi, humidity, wind/milePerHour)
		}}
)

// DryingForms returns every published form, the one shown first in a report first.
func DryingForms() []DryingForm {
	return []DryingForm{DryingUno, DryingUnoUS, DryingMenzel, DryingMenzelUS}
}

// Drying returns the drying rate in kg/m2/h by one of the published forms.
// Negative means dew. It holds while free water covers the surface.
//
//	form      which formula
//	concrete  temperature of the concrete surface [°C]
//	air       temperature of the air [°C]
//	humidity  relative humidity of the air [0..1]
//	wind      wind 0.5 m above the slab [m/s], see [WindReduction]
func Drying(form DryingForm, concrete, air, humidity, wind float64) float64 {
	return form.rate(concrete, air, humidity, wind)
}

// CriticalHumidity returns the relative humidity below which the drying rate
// passes a limit. Every form is linear in humidity, so two rates give it.
//
// Below 0: the limit is not reached in the driest air. Above 1: it is passed even
// in saturated air. Both are answers, so the value is not cut off.
//
//	concrete, air  temperatures [°C]
//	wind           wind 0.5 m above the slab [m/s]
//	limit          drying rate [kg/m2/h]
func CriticalHumidity(form DryingForm, concrete, air, wind, limit float64) float64 {
	dry := form.rate(concrete, air, 0, wind)
	saturated := form.rate(concrete, air, 1, wind)
	return (dry - limit) / (dry - saturated)
}
