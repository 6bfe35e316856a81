package earlyage

import (
	"context"
	"math"
	"slices"
	"testing"
	"time"

	"slabwright/concrete"
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

// mixingWater is that of the drying slab, kg/m2: 118 kg/m3 in 100 mm, the 1.46 kg/m2
// lost being 12.4 % of it.
const mixingWater = 1.46 / 0.124

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
