package climate

import (
	"math"
	"strings"
	"testing"
	"time"

	"slabwright/plan"
)

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
