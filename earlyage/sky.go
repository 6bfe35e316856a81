package earlyage

import (
	"math"

	"slabwright/climate"
	"slabwright/internal/march"
)

// changed returns the record with so much added to the humidity and so much more of
// the sky covered; less where negative.
func (r *record) changed(moister, cloudier float64) *record {
	if moister == 0 && cloudier == 0 {
		return r
	}
	out := *r
	out.moister, out.cloudier = moister, cloudier
	out.sunThrough = climate.CloudedSun(math.Abs(cloudier))
	if cloudier < 0 {
		out.sunThrough = 1 / out.sunThrough
	}
	return &out
}

// change puts the change into a feel. More cloud lets less sun through and makes
// the sky radiate more like a black body at the temperature of the air; less cloud is the
// opposite, no clearer than a very dry clear sky.
func (r *record) change(f Feel) Feel {
	if r.moister != 0 {
		f.Humidity = math.Min(math.Max(f.Humidity+r.moister, math.Min(f.Humidity, 0.02)), 1)
	}
	if r.cloudier == 0 {
		return f
	}
	f.Sun *= r.sunThrough
	absolute := f.Air + march.Kelvin
	black := march.StefanBoltzmann * absolute * absolute * absolute * absolute
	emissivity := f.Longwave / black
	if r.cloudier > 0 {
		emissivity = climate.CloudedEmissivity(emissivity, r.cloudier)
	} else {
		const clearest = 0.65
		emissivity = math.Max(math.Min(emissivity, clearest), 1-(1-emissivity)/(1+r.cloudier))
	}
	f.Longwave = emissivity * black
	return f
}
