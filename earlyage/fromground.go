package earlyage

import (
	"time"

	"slabwright/climate"
	"slabwright/ground"
)

// leastSoil is how deep the soil is followed below the last layer, m.
const leastSoil = 2.2

// FromSupport returns the layers under a slab and how they hold it, over an uncut
// length in metres under a slab of a unit weight in kN/m3. The last layer goes
// down to 2.2 m at least.
//
// The bed's shear stiffness before slip is that of full slip within half a
// millimetre under the slab's own weight on an ordinary base (own judgement).
func FromSupport(s ground.Support, uncutLength, unitWeight float64) ([]Layer, Restraint) {
	const bed = 0.05 // N/mm3
	var below []Layer
	for i, l := range s.Layers {
		thickness := l.Thickness
		if i == len(s.Layers)-1 {
			thickness = max(thickness, leastSoil)
		}
		below = append(below, Layer{Name: l.Soil.Name, Thickness: thickness,
			Conductivity: l.Soil.Conductivity.Value, Capacity: l.Soil.HeatCapacity()})
	}
	return below, Restraint{UncutLength: uncutLength, Friction: s.Friction.Value, FrictionLow: s.Friction.Low, FrictionHigh: s.Friction.High,
		UnitWeight: unitWeight, BedStiffness: bed, Subgrade: s.Modulus / 1000}
}

// YearGround is the temperature of ground that only knows the seasons.
type YearGround struct {
	Mean, Amplitude float64 // of the surface through the year, °C and K
	Coldest         float64 // day of the year
	Diffusivity     float64 // of the soil, m2/s
}

// At returns the temperature by depth, °C, on a day. See
// [climate.GroundTemperature].
func (y YearGround) At(date time.Time) func(depth float64) float64 {
	day := climate.DayOfYear(date)
	const perDay = 86400
	return func(depth float64) float64 {
		return climate.GroundTemperature(depth, day, y.Mean, y.Amplitude, y.Coldest, y.Diffusivity*perDay)
	}
}
