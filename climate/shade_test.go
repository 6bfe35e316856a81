package climate

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

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

// Turning plan and bearing together changes nothing, and a court symmetric about
// the meridian has as much sun before noon as after it.
func TestShadeSymmetry(t *testing.T) {
	east := Obstacle{Name: "east", Outline: rect(6, -10, 7, 10), Height: 4}
	west := Obstacle{Name: "west", Outline: rect(-7, -10, -6, 10), Height: 4}
	s := Surroundings{Obstacles: []Obstacle{east, west}}
	area := rect(-5, -5, 5, 5)
	for zenith := 10.0; zenith < 90; zenith += 15 {
		for off := 0.0; off < 180; off += 30 {
			if a, b := s.SunOn(area, zenith, 180-off), s.SunOn(area, zenith, 180+off); math.Abs(a-b) > 1e-12 {
				t.Errorf("zenith %g°: %.4f of the sun %g° before the meridian, %.4f after", zenith, a, off, b)
			}
		}
	}
	turned := Surroundings{Bearing: 90} // +y points east: the north of the ground is on -x
	for _, o := range s.Obstacles {
		var r plan.Ring
		for _, p := range o.Outline {
			r = append(r, plan.Point{X: -p.Y, Y: p.X})
		}
		o.Outline = r
		turned.Obstacles = append(turned.Obstacles, o)
	}
	for _, azimuth := range []float64{70, 100, 180, 250, 300} {
		p := plan.Point{X: 3.1, Y: 1.7}
		if a, b := s.SunAt(p, 60, azimuth), turned.SunAt(plan.Point{X: -p.Y, Y: p.X}, 60, azimuth); a != b {
			t.Errorf("azimuth %g°: %g of the sun, turned plan %g", azimuth, a, b)
		}
		if a, b := s.WindAt(p, azimuth), turned.WindAt(plan.Point{X: -p.Y, Y: p.X}, azimuth); math.Abs(a-b) > 1e-9 {
			t.Errorf("wind from %g°: %.4f, turned plan %.4f", azimuth, a, b)
		}
	}
	place := Place{Latitude: 40, Longitude: 0}
	_, noon, _, _ := SunTimes(time.Date(2026, 6, 21, 12, 0, 0, 0, time.UTC), 40, 0)
	hours, err := s.Hours(place, area, noon.Add(-6*time.Hour), noon.Add(6*time.Hour))
	if err != nil || len(hours) != 12 {
		t.Fatalf("%d hours, %v", len(hours), err)
	}
	for i := range 6 {
		if a, b := hours[i].Sun, hours[11-i].Sun; math.Abs(a-b) > 0.02 {
			t.Errorf("%d h from noon: %.3f of the sun before it, %.3f after", 6-i, a, b)
		}
	}
	if hours[5].Sun < hours[1].Sun {
		t.Error("less sun at noon than in the morning between two walls")
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

// A roofed part of the slab gets no beam at noon; the sheltered part of an exposure
// gets what the hand sum of beam and sky says.
func TestSheltersOfAnExposure(t *testing.T) {
	place := Place{Latitude: 40, Longitude: 0}
	start := time.Date(2026, 6, 21, 0, 0, 0, 0, time.UTC)
	series, err := MakeDays(start, place, []DaySketch{{Min: 15, Max: 30, WindCalm: 1, WindBlown: 4}, {Min: 15, Max: 30, WindCalm: 1, WindBlown: 4}})
	if err != nil {
		t.Fatal(err)
	}
	s := Surroundings{Obstacles: []Obstacle{{Name: "roof", Outline: rect(-20, -20, 20, 20), Height: 4.2, Under: 4}}}
	shelters, err := s.Shelters(place, rect(-2, -2, 2, 2), start, start.Add(24*time.Hour))
	if err != nil || len(shelters) != 24 {
		t.Fatalf("%d shelters, %v", len(shelters), err)
	}
	open := Exposure{Series: series, Place: place}
	roofed := open
	roofed.Shelters = shelters
	if err := roofed.Check(); err != nil {
		t.Fatal(err)
	}
	noon := start.Add(12 * time.Hour)
	a, err1 := open.At(noon)
	b, err2 := roofed.At(noon)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	sky := s.SkyOn(rect(-2, -2, 2, 2))
	if want := 0.1 * a.SolarDown; b.SolarDown > want || b.WindAtSlab != a.WindAtSlab {
		t.Errorf("under the roof %.0f W/m2 of %.0f, wind %.2f of %.2f", b.SolarDown, a.SolarDown, b.WindAtSlab, a.WindAtSlab)
	}
	if want := sky*a.SkyDown + (1-sky)*SkyRadiation(1, a.Air); math.Abs(b.SkyDown-want) > 1e-9 {
		t.Errorf("sky %.1f W/m2, want %.1f", b.SkyDown, want)
	}
	edge := s.SkyOn(rect(16, -2, 20, 2))
	if !(edge > 1.5*sky) {
		t.Errorf("sky in view %.3f at the edge, %.3f in the middle", edge, sky)
	}
}

func TestShadeErrors(t *testing.T) {
	wind := 400.0
	s := Surroundings{Obstacles: []Obstacle{{Name: "wall", Outline: plan.Ring{{}, {X: 1}}, Height: -2, Under: 3, Through: 5, Porous: -1}}, WindFrom: &wind}
	_, err := s.Shelters(Place{Latitude: 95}, rect(0, 0, 1, 1), time.Time{}, time.Time{}.Add(time.Hour))
	for _, want := range []string{`"wall"`, "outline", "height -2", "clear height", "let through", "open to the wind", "bearing of the wind", "latitude"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error does not say %q: %v", want, err)
		}
	}
	now := time.Date(2026, 6, 1, 0, 0, 0, 0, time.UTC)
	over := Surroundings{Obstacles: []Obstacle{{Name: "roof", Outline: rect(0, 0, 1, 0.5), Height: 3}, {Name: "wall", Outline: rect(0, 0.99, 1, 1.3), Height: 3}}}
	if _, err := over.Hours(Place{}, rect(0, 0, 1, 1), now, now.Add(time.Hour)); err == nil || !strings.Contains(err.Error(), `"roof" stands on 50 %`) || strings.Contains(err.Error(), "wall") {
		t.Errorf("a roof without clear height: %v", err)
	}
	if _, err := (Surroundings{}).Hours(Place{}, rect(0, 0, 1, 1), now, now); err == nil {
		t.Error("an empty span passed")
	}
	if _, err := (Surroundings{}).Hours(Place{}, nil, now, now.Add(time.Hour)); err == nil {
		t.Error("an area without points passed")
	}
}

// The sheet gives the shadow of the highest obstacle for every hour of sun.
func TestShadeSheet(t *testing.T) {
	place := Place{Latitude: 40}
	day := time.Date(2026, 3, 21, 0, 0, 0, 0, time.UTC)
	s := Surroundings{Obstacles: []Obstacle{{Name: "hall", Outline: rect(-30, -12, 30, -2), Height: 6}, {Name: "fence", Outline: rect(-30, 20, 30, 20.1), Height: 2, Porous: 0.5}}}
	area := rect(-5, 0, 5, 8)
	hours, err := s.Hours(place, area, day, day.Add(24*time.Hour))
	if err != nil {
		t.Fatal(err)
	}
	up := 0
	for _, h := range hours {
		if h.Zenith < 90 {
			up++
		} else if h.Sun != 0 && h.Zenith > 98 {
			t.Errorf("%v: %.2f of the sun by night", h.From, h.Sun)
		}
	}
	sheet := s.ShadeSheet("shade-1", "strip 1", area, hours)
	if len(sheet.Lines) != up+2 || up < 11 || up > 13 {
		t.Errorf("%d lines for %d hours of sun", len(sheet.Lines), up)
	}
	least := math.Inf(1)
	for _, l := range sheet.Lines[2:] {
		least = math.Min(least, l.Value)
		if l.Source.Title == "" || !strings.Contains(l.What, "hall") {
			t.Errorf("line %+v", l)
		}
	}
	if want := 6 * math.Tan(radians(40)); math.Abs(least-want) > 0.15*want { // equinox noon: zenith is the latitude
		t.Errorf("shortest shadow %.2f m, want about %.2f", least, want)
	}
	for _, l := range sheet.Lines {
		if got, err := l.Rework(); err != nil || math.Abs(got-l.Value) > 1e-9*math.Max(1, math.Abs(l.Value)) {
			t.Errorf("%s reworked gives %.9g (%v), the line says %.9g", l.Formula, got, err, l.Value)
		}
	}
	if got := (Surroundings{}).ShadeSheet("shade-2", "the open", area, nil); len(got.Lines) != 0 {
		t.Errorf("%d lines without hours", len(got.Lines))
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
