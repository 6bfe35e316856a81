package earlyage

import (
	"math"
	"sync"
	"testing"
	"time"

	"slabwright/climate"
	"slabwright/concrete"
)

// cubeHumidity dries one eighth of a 305 mm cube from three faces in air of 50 % by
// simple steps: the column of the model has one direction only, its diffusivity is
// the same.
func cubeHumidity(_ testing.TB, r measuredRow) float64 {
	const n, half, air, strength = 12, 0.1525, 0.5, 25.0
	dx := half / n
	saturated := SaturatedDiffusivity(strength)
	var h [n][n][n]float64 // index 0 at the centre of the cube
	for i := range n {
		for j := range n {
			for k := range n {
				h[i][j][k] = 1
			}
		}
	}
	dt := dx * dx / (6 * saturated) * 0.9
	end := r.num("days") * 86400
	for t := 0.0; t < end; t += dt {
		next := h
		for i := range n {
			for j := range n {
				for k := range n {
					at := [3]int{i, j, k}
					u, sum := h[i][j][k], 0.0
					for axis := range 3 {
						for _, way := range [2]int{-1, 1} {
							b := at
							b[axis] += way
							switch {
							case b[axis] < 0: // the middle of the cube: no flow
							case b[axis] == n: // half a cell and the skin to the air
								d := HumidityDiffusivity((u+air)/2, saturated)
								sum += (air - u) / (dx/2/d + 1/(saturated/surfaceSkin)) / dx
							default:
								v := h[b[0]][b[1]][b[2]]
								sum += HumidityDiffusivity((u+v)/2, saturated) * (v - u) / (dx * dx)
							}
						}
					}
					next[i][j][k] = u + dt*sum
				}
			}
		}
		h = next
	}
	if r.inputs["at"] == "centre" {
		return h[0][0][0]
	}
	outer := h[n-1][0][0] // middle of a face, its outer cell
	return air + (outer-air)*0.0025/(dx/2)
}

// single is the instrumented slab of 2003.
type single struct{ largest, at28, at141, lift float64 }

var singleOnce struct {
	sync.Once
	single
}

// singleSlab runs 279 mm of 60 % class C ash concrete indoors on a slab, wet for 28
// days and then drying for 113.
func singleSlab(t testing.TB) single {
	singleOnce.Do(func() { singleOnce.single = runSingleSlab(t) })
	return singleOnce.single
}

func runSingleSlab(t testing.TB) single {
	mix, err := concrete.DefaultMix(30, "I")
	if err != nil {
		t.Fatal(err)
	}
	mix.Binder = mix.Binder.WithSCM(0, 0.60, 0.25, 0)
	mix.PlacingTemperature = 21
	const thickness = 0.279
	c := mild(t)
	c.Concrete = FromMix(mix, mix.EN1992(), ENLongTerm(mix, thickness, 0.55, 28), thickness)
	c.Placed = time.Date(2003, 6, 2, 9, 0, 0, 0, time.UTC)
	c.Thickness, c.PlacingTemperature, c.Ground = thickness, 21, func(float64) float64 { return 20 }
	c.Below = []Layer{{"old slab", 0.248, 2.0, 2.2e6}, {"soil", 2.2, 1.5, 2.0e6}}
	c.Weather = func(at time.Time) Feel {
		air := 21 + 1.5*math.Sin(2*math.Pi*(float64(at.Hour())-9)/24)
		return Feel{Air: air, Humidity: 0.55, Wind: 0.2, Longwave: climate.SkyRadiation(1, air)}
	}
	wet, _ := TypicalCover("hessian-plastic")
	wet.On, wet.Off = 8, 28*24
	c.Covers, c.Until = []Cover{wet}, 141*24
	h := runOf(t, c)
	var s single
	for i, hours := range h.Hours {
		if hours <= 24 {
			s.largest = math.Max(s.largest, math.Abs(h.Surface[i]-h.Bottom[i]))
		}
	}
	mean := func(day float64) float64 { // over a day, free of its wave
		sum := 0.0
		for k := range 24 {
			sum += h.At((day-0.5)*24 + float64(k)).Gradient
		}
		return sum / 24
	}
	s.at28, s.at141 = mean(27.4), mean(140.4)
	// a free plate of this curvature stands up by its half diagonal squared over two
	curvature := -s.at141 * c.Concrete.Expansion / thickness
	const halfDiagonal2 = 2 * 2.29 * 2.29
	s.lift = curvature * halfDiagonal2 / 2 * 1000
	return s
}
