package earlyage

import (
	"context"
	"math"
	"slices"
	"testing"
	"time"

	"slabwright/climate"
	"slabwright/concrete"
	"slabwright/internal/march"
)

// measuredQuantities answer the measured sets.
var measuredQuantities = map[string]func(testing.TB, measuredRow) float64{
	"difference at final set":                                          differenceAtSet,
	"departure from a straight line":                                   departureFromLine,
	"rest of a quadratic":                                              restOfQuadratic,
	"setting time over that at 21 °C":                                  setRatio,
	"strength share":                                                   func(t testing.TB, r measuredRow) float64 { return iowa().Strength(r.num("days")) / iowa().Mean28 },
	"splitting strength":                                               func(testing.TB, measuredRow) float64 { return iowa().Tensile(28) / axialOverSplitting },
	"modulus":                                                          func(testing.TB, measuredRow) float64 { return iowa().Modulus(28) / 1000 },
	"water lost by two hours after initial set":                        waterLost,
	"rate of an even chance":                                           rateOfEvenChance,
	"onset in dry air over that in damp air":                           onsetInDryAir,
	"days to 14.6 g/m2 a day":                                          func(t testing.TB, _ measuredRow) float64 { d, _ := dryingSlab(t); return d },
	"water lost by then":                                               func(t testing.TB, _ measuredRow) float64 { _, l := dryingSlab(t); return l },
	"share of the mixing water lost by then":                           func(t testing.TB, _ measuredRow) float64 { _, l := dryingSlab(t); return l / mixingWater },
	"humidity of a cube":                                               cubeHumidity,
	"largest difference in the first 24 h":                             func(t testing.TB, _ measuredRow) float64 { return singleSlab(t).largest },
	"curvature at day 28 over day 141":                                 func(t testing.TB, _ measuredRow) float64 { s := singleSlab(t); return s.at28 / s.at141 },
	"free lift of a corner at day 141":                                 func(t testing.TB, _ measuredRow) float64 { return singleSlab(t).lift },
	"share of strength used by day 3: morning over afternoon":          morningOverAfternoon,
	"share of shrinkage in the shortening: afternoon pour":             shareOfShrinkage,
	"hour at which the surface tears (even chance): hot wind":          hourOfTearing,
	"hour by which half the chance of cracks over bars has come: hot":  hourOfSinking(hot),
	"hour by which half the chance of cracks over bars has come: mild": hourOfSinking(mild),
	"hour by which half the chance of cracks over bars has come: cold": hourOfSinking(cold),
	"largest lead of curl over shrinkage from day 7 to 180":            paceOfCurl,
}

// differenceAtSet is the median over likely hours, thicknesses and skies.
func differenceAtSet(t testing.TB, r measuredRow) float64 {
	skies := []Weather{day(22, 6, 0.6, 2, 44)}
	if r.num("month") > 9 {
		skies = []Weather{day(7, 4, 0.75, 2.5, 44), overcast(day(7, 2, 0.85, 2.5, 44))}
	}
	var all []float64
	for _, sky := range skies {
		for _, hour := range []int{6, 7, 8} {
			for _, thickness := range []float64{0.23, 0.27, 0.30} {
				c := pourOn(t, time.Date(2026, time.Month(r.num("month")), 5, hour, 0, 0, 0, time.UTC), r.num("placing"), r.num("ground"), sky)
				c.Thickness, c.Until = thickness, 48
				all = append(all, runOf(t, c).BuiltIn().Difference)
			}
		}
	}
	return median(all)
}

func median(values []float64) float64 {
	slices.Sort(values)
	n := len(values)
	return (values[(n-1)/2] + values[n/2]) / 2
}

// hardened runs a slab in Florida for a week in May and returns the profiles from
// day 3 on.
func hardened(t testing.TB, thickness float64) (h *History, from int) {
	c := pourOn(t, may, 26, 25, day(25, 6, 0.65, 2.5, 29))
	c.Thickness, c.Until, c.Profiles = thickness, 7*24, true
	h = runOf(t, c)
	return h, slices.IndexFunc(h.Hours, func(t float64) bool { return t >= 72 })
}

// departureFromLine is the mean over whole days of the distance, K, of the profile
// from the line between top and bottom at a depth.
func departureFromLine(t testing.TB, r measuredRow) float64 {
	h, from := hardened(t, r.num("h")/1000)
	sum, n := 0.0, 0.0
	for i := from; i < len(h.Hours); i++ {
		p := h.Temperature[i]
		share := r.num("depth") / r.num("h")
		line := p[0] + share*(p[len(p)-1]-p[0])
		sum, n = sum+math.Abs(interpolated(h.Depth, p, r.num("depth")/1000)-line), n+1
	}
	return sum / n
}

func interpolated(xs, ys []float64, x float64) float64 {
	for i := 1; i < len(xs); i++ {
		if x <= xs[i] {
			return ys[i-1] + (ys[i]-ys[i-1])*(x-xs[i-1])/(xs[i]-xs[i-1])
		}
	}
	return ys[len(ys)-1]
}

// restOfQuadratic is the largest rms distance of a profile from its best quadratic.
func restOfQuadratic(t testing.TB, r measuredRow) float64 {
	h, from := hardened(t, r.num("h")/1000)
	worst := 0.0
	const n = 21 // points evenly through the depth
	for i := from; i < len(h.Hours); i++ {
		var a [3][4]float64
		value := func(k int) (z, v float64) {
			z = float64(k)/(n-1)*2 - 1
			return z, interpolated(h.Depth, h.Temperature[i], (z+1)/2*h.Depth[len(h.Depth)-1])
		}
		for k := range n {
			z, v := value(k)
			row := [4]float64{1, z, z * z, v}
			for p := range 3 {
				for q := range 4 {
					a[p][q] += row[p] * row[q]
				}
			}
		}
		c := eliminate([][]float64{a[0][:], a[1][:], a[2][:]})
		sum := 0.0
		for k := range n {
			z, v := value(k)
			sum += math.Pow(v-c[0]-c[1]*z-c[2]*z*z, 2)
		}
		worst = math.Max(worst, math.Sqrt(sum/n))
	}
	return worst
}

// setRatio is that of the plain default mix held at each temperature.
func setRatio(_ testing.TB, r measuredRow) float64 {
	mix, err := concrete.DefaultMix(30, "I")
	if err != nil {
		panic(err)
	}
	h := mix.Hydration()
	return h.ClockHours(h.InitialSet(), r.num("T")) / h.ClockHours(h.InitialSet(), 21.1)
}

// axialOverSplitting is EN 1992-1-1 3.1.2(8), from memory.
const axialOverSplitting = 0.9

// iowa is the paving concrete by EN 1992-1-1 from its mean strength of 42.4 MPa.
func iowa() concrete.EN1992 { return concrete.NewEN1992(42.4-8, concrete.Normal) }

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

// mixingWater is that of the drying slab, kg/m2: 118 kg/m3 in 100 mm, the 1.46 kg/m2
// lost being 12.4 % of it.
const mixingWater = 1.46 / 0.124

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

// morningOverAfternoon is on 300 mm of pavement on a summer day in Korea.
func morningOverAfternoon(t testing.TB, _ measuredRow) float64 {
	used := func(hour int) float64 {
		c := pourOn(t, time.Date(2026, 7, 10, hour, 0, 0, 0, time.UTC), 25, 20, day(24, 6, 0.6, 2, 37))
		c.Thickness = 0.3
		m, err := RunMembers(context.Background(), Pour{Column: c, Restraint: usualRestraint(), Count: 1})
		if err != nil {
			t.Fatal(err)
		}
		share, _, _ := m.Share(72)
		return share
	}
	return used(8) / used(15)
}

// shareOfShrinkage is the share of drying and self-drying in the shortening since
// set, daily means of the section; all of it while the slab is warmer than at set.
func shareOfShrinkage(t testing.TB, r measuredRow) float64 {
	c := pourOn(t, time.Date(2026, 7, 10, 15, 0, 0, 0, time.UTC), 25, 20, day(24, 6, 0.6, 2, 37))
	c.Thickness = 0.3
	h := runOf(t, c)
	end := r.num("day") * 24
	var shrunk, cooled float64
	for i := 1; i < len(h.Hours); i++ {
		if h.Hours[i] > end-24 && h.Hours[i] <= end {
			own := h.Autogenous[i] + h.Drying[i]
			shrunk -= own * (h.Hours[i] - h.Hours[i-1])
			cooled -= (h.MeanStrain[i] - own) * (h.Hours[i] - h.Hours[i-1])
		}
	}
	return shrunk / (shrunk + math.Max(cooled, 0))
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
