package earlyage

import (
	"math"
	"testing"
	"time"

	"slabwright/climate"
	"slabwright/concrete"
	"slabwright/internal/march"
)

// waterLost is over a fresh slab in still air.
func waterLost(t testing.TB, r measuredRow) float64 {
	c := mild(t)
	air := r.num("T")
	c.Weather = func(time.Time) Feel {
		return Feel{Air: air, Humidity: r.num("RH") / 100, Longwave: climate.SkyRadiation(1, air)}
	}
	c.Ground, c.Until = func(float64) float64 { return air }, 24
	h := runOf(t, c)
	return h.seriesAt(h.Lost, h.InitialSet.Surface+2)
}

// rateOfEvenChance is the median, over likely mixes, thicknesses and temperatures of
// small slabs, of the steady drying rate at which the surface tears in one of two.
func rateOfEvenChance(testing.TB, measuredRow) float64 {
	var all []float64
	for _, mixed := range [][2]float64{{0.4, 0.005}, {0.5, 0.0075}, {0.6, 0.01}} { // the wetter mix bleeds more
		for _, thickness := range []float64{0.05, 0.075, 0.1} {
			for _, air := range []float64{30, 37, 45} {
				mix, err := concrete.DefaultMix(30, "I")
				if err != nil {
					panic(err)
				}
				mix.Water, mix.BleedShare = mixed[0]*mix.BinderContent, mixed[1]
				h := mix.Hydration()
				initial, final := h.ClockHours(h.InitialSet(), air), h.ClockHours(h.FinalSet(), air)
				low, high := 0.01, 5.0
				for range 40 {
					middle := (low + high) / 2
					if tornAt(middle, concrete.BleedWater(thickness, mix.BleedShare), initial, final) < 0.5 {
						low = middle
					} else {
						high = middle
					}
				}
				all = append(all, high)
			}
		}
	}
	return median(all)
}

// onsetInDryAir is the time to a chance of one in ten in air of 25 % over that in
// air of 70 %, 75 mm slabs in a breeze at 35 °C.
func onsetInDryAir(t testing.TB, _ measuredRow) float64 {
	onset := func(humidity float64) float64 {
		c := hot(t)
		c.Weather = func(time.Time) Feel {
			return Feel{Air: 35, Humidity: humidity, Wind: 3.5, Longwave: climate.SkyRadiation(1, 35)}
		}
		c.PlacingTemperature, c.Thickness, c.Until = 33, 0.075, 12
		c.Concrete.Bleed.Rate /= 2 // half the depth
		h := runOf(t, c)
		for _, p := range h.PlasticHours(PlasticInput{}) {
			if p.ShrinkageChance > 0.1 {
				return p.Hours
			}
		}
		return h.FinalSet.Surface + 1 // not before set: later than any that tears
	}
	return onset(0.25) / onset(0.70)
}

// dryingSlab dries 100 mm of concrete of w/c 0.40 from one face in air of 50 % until
// it gives off 14.6 g/m2 a day.
func dryingSlab(t testing.TB) (days, lost float64) {
	m := newMoisture(march.TwoSided(0, 0.1, 8, 1.25), SaturatedDiffusivity(40))
	const step = 0.05
	for daily := 1e9; daily > 14.6e-3 && days < 200; days += step {
		loss, err := m.step(step*86400, bare(0.6, 0.9), 0.5)
		if err != nil {
			t.Fatal(err)
		}
		daily = loss / step
		lost += loss
	}
	return days, lost
}

// paceOfCurl dries 150 mm in a room of 50 % and compares the shares of curvature and
// of mean drying shrinkage reached.
func paceOfCurl(t testing.TB, _ measuredRow) float64 {
	c := mild(t)
	room := climate.SkyRadiation(1, 21)
	c.Weather = func(time.Time) Feel { return Feel{Air: 21, Humidity: 0.5, Wind: 0.2, Longwave: room} }
	c.PlacingTemperature, c.Ground = 21, func(float64) float64 { return 21 }
	wet, _ := TypicalCover("hessian-plastic")
	wet.On, wet.Off = 5, 3*24
	c.Covers, c.Until = []Cover{wet}, 184*24
	h := runOf(t, c)
	start := h.At(3 * 24)
	curl := func(days float64) float64 { return h.At((3+days)*24).Gradient - start.Gradient }
	shrunk := func(days float64) float64 { return h.seriesAt(h.Drying, (3+days)*24) - h.seriesAt(h.Drying, 3*24) }
	worst := 0.0
	for d := 7.0; d <= 180; d++ {
		if lead := curl(d)/curl(180) - shrunk(d)/shrunk(180); math.Abs(lead) > math.Abs(worst) {
			worst = lead
		}
	}
	return worst
}

// hourOfTearing is when the chance of plastic shrinkage cracks passes one half on a
// hot, dry and windy day.
func hourOfTearing(t testing.TB, _ measuredRow) float64 {
	for _, p := range runOf(t, windy(t)).PlasticHours(PlasticInput{}) {
		if p.ShrinkageChance > 0.5 {
			return p.Hours
		}
	}
	return math.NaN()
}

// hourOfSinking is when half of the settlement before initial set is over.
func hourOfSinking(column func(testing.TB) Column) func(testing.TB, measuredRow) float64 {
	return func(t testing.TB, _ measuredRow) float64 {
		h := runOf(t, column(t))
		return reached(h.Hours, h.Bled, h.seriesAt(h.Bled, h.InitialSet.Surface)/2)
	}
}
