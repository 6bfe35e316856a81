package climate

import (
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/plan"
)

// rect is a rectangle from one corner to the other.
func rect(x0, y0, x1, y1 float64) plan.Ring {
	return plan.Ring{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

// circle is a ring of many points about the origin.
func circle(radius float64) (r plan.Ring) {
	for i := range 360 {
		r = append(r, plan.Direction(float64(i)).Times(radius))
	}
	return r
}

// A wall of 3 m on the south side: with the sun in the south 45° up its shadow is
// 3 m long, at 60° up 1.73 m; with the sun in the north it casts none on the slab.
func TestShadowOfAWall(t *testing.T) {
	s := Surroundings{Obstacles: []Obstacle{{Name: "wall", Outline: rect(-50, -0.2, 60, 0), Height: 3}}}
	for _, c := range []struct{ y, zenith, azimuth, want float64 }{
		{2.99, 45, 180, 0}, {3.01, 45, 180, 1}, {1.72, 30, 180, 0}, {1.74, 30, 180, 1},
		{0.5, 45, 0, 1}, {0.5, 89.9, 180, 0}, {0.5, 90.1, 180, 0},
		{3 * math.Cos(math.Pi/3) * 0.99, 45, 240, 0}, {3 * math.Cos(math.Pi/3) * 1.01, 45, 240, 1}, // sun 60° off square
	} {
		if got := s.SunAt(plan.Point{X: 5, Y: c.y}, c.zenith, c.azimuth); got != c.want {
			t.Errorf("y %.2f m, zenith %g°, azimuth %g°: %g of the sun, want %g", c.y, c.zenith, c.azimuth, got, c.want)
		}
	}
	if got := s.SunOn(rect(0, 0, 10, 10), 45, 180); math.Abs(got-0.7) > 0.035 {
		t.Errorf("%.3f of a 10 m square is in the sun, want 0.7", got)
	}
	s.Obstacles[0].Through = 0.4
	if got := s.SunAt(plan.Point{X: 5, Y: 1}, 45, 180); got != 0.4 {
		t.Errorf("through a fence %g", got)
	}
}

// A canopy 4 m square with its underside 3 m up and its top at 3.2 m: straight
// below it at noon overhead, moved by 3 m with the sun at 45°, and clear sun below it
// when the sun is low.
func TestShadowOfACanopy(t *testing.T) {
	s := Surroundings{Obstacles: []Obstacle{{Name: "canopy", Outline: rect(-2, -2, 2, 2), Height: 3.2, Under: 3}}}
	for _, c := range []struct{ x, y, zenith, azimuth, want float64 }{
		{0, 0, 0, 0, 0}, {2.1, 0, 0, 0, 1},
		{0, 0, 45, 180, 1}, {0, 1.01, 45, 180, 0}, {0, 5.19, 45, 180, 0}, {0, 5.21, 45, 180, 1}, {0, 0.99, 45, 180, 1},
		{0, 0, 80, 180, 1}, {-4.5, 0, 45, 90, 0}, {4.5, 0, 45, 90, 1},
	} {
		if got := s.SunAt(plan.Point{X: c.x, Y: c.y}, c.zenith, c.azimuth); got != c.want {
			t.Errorf("(%g, %g), zenith %g°, azimuth %g°: %g of the sun, want %g", c.x, c.y, c.zenith, c.azimuth, got, c.want)
		}
	}
	// the shadow's area is that of the canopy and the sweep of its edge
	area := rect(-10, -10, 10, 10)
	if got, want := (1-s.SunOn(area, 45, 180))*400, 4*(4+0.2); math.Abs(got-want) > 0.12*want {
		t.Errorf("shadow of %.1f m2, want %.1f", got, want)
	}
}

// The sky in view against closed forms: a long wall, a wall all round, a disc
// overhead, a lean-to roof without end.
func TestSkyView(t *testing.T) {
	origin := plan.Point{}
	long := Obstacle{Outline: rect(-1e5, -3, 1e5, -2), Height: 2}
	if got := SkyView(origin, []Obstacle{long}); math.Abs(got-(1+math.Cos(math.Pi/4))/2) > 0.003 {
		t.Errorf("long wall at 45°: %.4f, want %.4f", got, (1+math.Cos(math.Pi/4))/2)
	}
	disc := Obstacle{Outline: circle(4), Height: 3.0001, Under: 3}
	if got, want := SkyView(origin, []Obstacle{disc}), 1-16.0/25; math.Abs(got-want) > 0.002 {
		t.Errorf("under a disc: %.4f, want %.4f", got, want)
	}
	// a wall all round as the two halves of a ring
	var half plan.Ring
	for i := range 181 {
		half = append(half, plan.Direction(float64(i)).Times(5))
	}
	for i := 180; i >= 0; i-- {
		half = append(half, plan.Direction(float64(i)).Times(6))
	}
	var other plan.Ring
	for _, p := range half {
		other = append(other, plan.Point{X: p.X, Y: -p.Y})
	}
	round := []Obstacle{{Outline: half, Height: 5}, {Outline: other, Height: 5}}
	if got, want := SkyView(origin, round), SkyBehind(45); math.Abs(got-want) > 0.002 || math.Abs(want-0.5) > 1e-12 {
		t.Errorf("wall all round at 45°: %.4f, want %.4f", got, want)
	}
	if a, b := SkyView(origin, []Obstacle{long}), SkyView(origin, []Obstacle{long, {Outline: rect(-1e5, -9, 1e5, -8), Height: 4}}); math.Abs(a-b) > 1e-12 {
		t.Errorf("a wall hidden behind another changes the sky from %.5f to %.5f", a, b)
	}
	if got := SkyView(origin, nil); got != 1 {
		t.Errorf("open: %g", got)
	}
	if got := SkyView(origin, []Obstacle{{Outline: rect(-9, -9, 9, 9), Height: 6}}); got > 1e-9 {
		t.Errorf("inside a building: %g", got)
	}
	tree := long
	tree.Through = 0.5
	if got, want := 1-SkyView(origin, []Obstacle{tree}), (1-SkyView(origin, []Obstacle{long}))/2; math.Abs(got-want) > 1e-12 {
		t.Errorf("half a wall hides %.4f, want %.4f", got, want)
	}
}

func TestWindShelter(t *testing.T) {
	north := 0.0
	s := Surroundings{Obstacles: []Obstacle{{Name: "wall", Outline: rect(-500, 20, 500, 20.3), Height: 2}}, WindFrom: &north}
	at := func(y, from float64) float64 { return s.WindAt(plan.Point{Y: y}, from) }
	if near, far, beyond := at(16, 0), at(-10, 0), at(-60, 0); !(near < 0.4 && near < far && far < 1 && beyond == 1) {
		t.Errorf("wind 2, 15 and 40 heights behind the wall: %.2f, %.2f, %.2f", near, far, beyond)
	}
	if got := at(16, 180); got != 1 {
		t.Errorf("in front of the wall %.2f", got)
	}
	if got := s.WindOn(rect(-5, 10, 5, 18)); !(got > 0.29 && got < 0.6) {
		t.Errorf("on an area behind the wall %.2f", got)
	}
	s.WindFrom = nil
	if got := s.WindOn(rect(-5, 10, 5, 18)); !(got > 0.6 && got < 1) {
		t.Errorf("wind from anywhere %.2f", got)
	}
	s.Obstacles[0].Under = 1
	if got := at(16, 0); got != 1 {
		t.Errorf("blown under %.2f", got)
	}
	previous := 0.0
	for d := 5.0; d < 40; d++ {
		if w := WindBehind(d, 0); w < previous || w > 1 {
			t.Errorf("%g heights: %.2f after %.2f", d, w, previous)
		} else {
			previous = w
		}
	}
	if WindBehind(0, 0) != 0.3 || WindBehind(5, 0.5) != 0.4 || WindBehind(5, 0.9) != 0.4 {
		t.Error("rows of the table are not met")
	}
}

// The shade by a second route: walking from the point toward the sun in small steps
// and asking at each whether it is within an obstacle.
func TestShadeAgainstWalking(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	shaded, tried := 0, 0
	for range 400 {
		var r plan.Ring // a star about a centre: any shape, never crossing itself
		centre, turn := plan.Point{X: 20*random.Float64() - 10, Y: 20*random.Float64() - 10}, 360*random.Float64()
		n := 3 + random.IntN(6)
		for k := range n {
			r = append(r, centre.Plus(plan.Direction(turn+360*float64(k)/float64(n)).Times(1+5*random.Float64())))
		}
		o := Obstacle{Outline: r, Height: 2 + 6*random.Float64()}
		if random.IntN(2) == 0 {
			o.Under = o.Height * random.Float64()
		}
		s := Surroundings{Obstacles: []Obstacle{o}, Bearing: 360 * random.Float64()}
		zenith, azimuth := 5+80*random.Float64(), 360*random.Float64()
		got := s.SunAt(plan.Point{}, zenith, azimuth)
		angle := (azimuth - s.Bearing) * math.Pi / 180 // clockwise from +y
		walked := func(spread float64) float64 {
			const step = 0.005
			for d := step; d < 20; d += step {
				p := plan.Point{X: d * math.Sin(angle), Y: d * math.Cos(angle)}
				z := d / math.Tan(zenith*math.Pi/180)
				if r.Contains(p) && z >= o.Under-spread && z <= o.Height+spread {
					return 0
				}
			}
			return 1
		}
		if walked(0.05) != walked(-0.05) {
			continue // grazing: the steps cannot tell
		}
		tried++
		if want := walked(0); got != want {
			t.Errorf("%+v, zenith %.1f°, azimuth %.1f°: %g of the sun, walked %g", o, zenith, azimuth, got, want)
		} else if got == 0 {
			shaded++
		}
	}
	if tried < 300 || shaded < 40 {
		t.Errorf("%d tried, %d of them in shade", tried, shaded)
	}
}
