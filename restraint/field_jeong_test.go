package restraint

import (
	"context"
	"fmt"
	"math"
	"sort"
	"sync"
	"testing"
	"time"

	"slabwright/climate"
	"slabwright/concrete"
	"slabwright/earlyage"
	"slabwright/internal/sample"
)

// koreanSummer is a summer's day in Korea; while it rains the sky is shut, the air damp
// and 4 K cooler.
func koreanSummer(placed time.Time, rains func(hour float64) bool) earlyage.Weather {
	return func(t time.Time) earlyage.Feel {
		clock := float64(t.Hour()) + float64(t.Minute())/60
		air, humidity, sun := 24+6*math.Sin(2*math.Pi*(clock-9)/24), 0.6, 1.0
		if rains(t.Sub(placed).Hours()) {
			air, humidity, sun = 20+1.5*math.Sin(2*math.Pi*(clock-9)/24), 0.97, 0.15
		}
		zenith, _ := climate.SunPosition(t, 37, 0)
		sky := climate.SkyBrunt(climate.VapourPressure(air, humidity))
		return earlyage.Feel{Air: air, Humidity: humidity, Wind: 2, Sun: sun * climate.ClearSkyHaurwitz(zenith), Longwave: climate.SkyRadiation(sky, air)}
	}
}

// pavementHistory follows 300 mm of pavement placed at an hour of the day.
func pavementHistory(t testing.TB, hour float64, rain bool) (earlyage.Column, *earlyage.History) {
	t.Helper()
	mix, err := concrete.DefaultMix(30, "CEM I 42.5N")
	if err != nil {
		t.Fatal(err)
	}
	mix.PlacingTemperature = 25
	const thickness = 0.3
	placed := time.Date(2026, 7, 10, 0, 0, 0, 0, time.UTC).Add(time.Duration(hour * float64(time.Hour)))
	c := earlyage.Column{Concrete: earlyage.FromMix(mix, mix.EN1992(), earlyage.ENLongTerm(mix, thickness, 0.6, 3), thickness), Thickness: thickness,
		Below:  []earlyage.Layer{{Name: "crushed stone", Thickness: 0.15, Conductivity: 1.4, Capacity: 1.8e6}, {Name: "soil", Thickness: 2, Conductivity: 1.5, Capacity: 2e6}},
		Placed: placed, PlacingTemperature: 25, Ground: func(float64) float64 { return 20 },
		Weather:    koreanSummer(placed, func(h float64) bool { return rain && h >= 24 && h < 96 }),
		WindFactor: 1, Absorptivity: earlyage.DefaultAbsorptivity, Emissivity: earlyage.DefaultEmissivity, Drying: climate.DryingUno, Until: 21 * 24}
	h, err := c.Run(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	return c, h
}

// inPlan reads a history as the concrete of a pour. Creep is that of the code from a
// strain held since the section first carried stress. Curl held by the weight uses a
// share of the strength at a face, and gives the energy of the hinge that lets it go to
// a crack: half the moment times the turn of both ends (Hetényi, 1946, from memory).
// What tears at once is 1/2.5 of the whole energy (Bažant and Planas, 1998, from memory).
func inPlan(c earlyage.Column, h *earlyage.History, panel float64) func(hour float64) Concrete {
	creep := creepOf(c, h)
	return func(hour float64) Concrete {
		i := min(max(sort.SearchFloat64s(h.Hours, hour), 1), len(h.Hours)-1)
		share := math.Min(1, math.Max(0, (hour-h.Hours[i-1])/(h.Hours[i]-h.Hours[i-1])))
		mix := func(v []float64) float64 { return v[i-1] + share*(v[i]-v[i-1]) }
		out := Concrete{Strain: mix(h.MeanStrain), Modulus: mix(h.E) * 1e6, Strength: mix(h.Fct) * 1e6, Creep: mix(creep)}
		if out.Modulus < 1 || out.Strength < 1 {
			return Concrete{Strain: out.Strain, Creep: out.Creep}
		}
		radius := earlyage.RelativeStiffness(mix(h.E), 1000*c.Thickness, 0.2, 0.05) / 1000
		curl := 1e6 * math.Min(earlyage.WeightStress(24, c.Thickness, panel), math.Abs(mix(h.FullCurl))*earlyage.CurlShare(panel/radius))
		moment := curl * c.Thickness * c.Thickness / 6
		bending := out.Modulus * math.Pow(c.Thickness, 3) / 12 / (1 - 0.04)
		hinge := moment * moment * math.Sqrt2 * radius / bending / c.Thickness
		whole := FractureEnergy2010(math.Max(mix(h.Fc), 0.1))
		out.Fracture = math.Max(1, whole/2.5-hinge)
		out.Face = out.Strength * math.Min(curl/out.Strength, math.Sqrt(hinge/whole))
		return out
	}
}

func creepOf(c earlyage.Column, h *earlyage.History) []float64 {
	var ages, modulus []float64
	var at []int
	for i, e := range h.E {
		age := c.Concrete.Hydration.DaysAt20(h.EquivalentAge[i])
		if e > 0 && (len(ages) == 0 || age > ages[len(ages)-1]+1e-6) {
			ages, modulus, at = append(ages, age), append(modulus, e), append(at, i)
		}
	}
	left := earlyage.Relaxation(c.Concrete.Creep, func(age float64) float64 {
		return math.Max(1, modulus[min(sort.SearchFloat64s(ages, age), len(ages)-1)])
	}, c.Concrete.CreepModulus, ages[0], ages[1:])
	creep := make([]float64, len(h.Hours))
	last, next := 0.0, 1
	for i := range creep {
		if next < len(at) && at[next] == i {
			last = math.Max(last, -math.Log(math.Max(left[next-1], 1e-3)))
			next++
		}
		creep[i] = last
	}
	return creep
}

var pavements sync.Map // histories by name, each run once

func pavement(t testing.TB, hour float64, rain bool) func(float64) Concrete {
	key := fmt.Sprint(hour, rain)
	if v, ok := pavements.Load(key); ok {
		return v.(func(float64) Concrete)
	}
	c, h := pavementHistory(t, hour, rain)
	v := inPlan(c, h, 6)
	pavements.Store(key, v)
	return v
}

// jointsOpen returns the share of joints of a row that have opened by each of some
// hours, over likely values of what the source does not say: friction, saw at 8 to 18
// hours, scatter.
func jointsOpen(t testing.TB, placed []float64, rain bool, by ...float64) []float64 {
	const members, panels, length = 8, 6, 6.0
	points := sample.Latin(members, 3, 16)
	out := make([]float64, len(by))
	for i, p := range points {
		m := row(panels, length, 8+10*p[0])
		m.Slab.Outline = rectangle(0, 0, panels*length, 3.6)
		for k := range m.Lines {
			x := m.Lines[k].Path[0].X
			m.Lines[k].Path = path(x, 0, x, 3.6)
		}
		m.Base = Base{Stiffness: 100e6, Friction: 0.9 + 1.1*p[1], UnitWeight: 24000}
		m.Pours = []Pour{{ID: "P", Thickness: 0.3, At: pavement(t, placed[i%len(placed)], rain)}}
		m.Settings.Seed, m.Settings.Scatter = uint64(i), 0.1
		r, err := m.Quick().Replay(context.Background(), steps(by[len(by)-1], int(by[len(by)-1]/3)), nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		for k, hour := range by {
			open := map[string]bool{}
			for _, e := range r.Events {
				if e.Kind == SawnLine && e.Hour <= hour {
					open[e.Line] = true
				}
			}
			out[k] += float64(len(open)) / (panels - 1) / members
		}
	}
	return out
}
