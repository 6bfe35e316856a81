package climate

import (
	"math"
	"strings"
	"testing"
	"time"
)

// hotDay is a clear hot day in Melbourne, nothing measured but air, humidity, wind.
func hotDay(t *testing.T) Exposure {
	t.Helper()
	dew := 8.0
	s, err := MakeDay(time.Date(2026, 1, 15, 0, 0, 0, 0, zoneOf(t, "Australia/Melbourne")), melbourneSlab,
		DaySketch{Min: 18, Max: 38, DewPoint: &dew, WindCalm: 2, WindBlown: 8})
	if err != nil {
		t.Fatal(err)
	}
	return Exposure{Series: s, Place: melbourneSlab}
}

// solarNoon of the hot day, 13:29 on the clock.
var solarNoon = time.Date(2026, 1, 15, 2, 29, 0, 0, time.UTC)

func feel(t *testing.T, e Exposure, at time.Time) Feel {
	t.Helper()
	f, err := e.At(at)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestExposureOpenSlab(t *testing.T) {
	e := hotDay(t)
	if err := e.Check(); err != nil {
		t.Fatal(err)
	}
	f := feel(t, e, solarNoon)
	h, _ := e.Series.At(solarNoon)
	if want := h.Wind * WindReduction(0.5, 10, 0.03); f.WindAtSlab != want {
		t.Errorf("wind at the slab %g, want %g", f.WindAtSlab, want)
	}
	clear := ClearSkyIneichen(f.Zenith, 30, AirPressure(30), 3, SolarConstant*SunDistanceFactor(DayOfYear(solarNoon)))
	if math.Abs(f.SolarDown-clear.Global) > 1e-9 || f.SunFrom != FromClearSky {
		t.Errorf("sun %g (%s), want the clear sky's %g", f.SolarDown, f.SunFrom, clear.Global)
	}
	// Haurwitz beside it, within the 5 % the two are apart under a high sun
	if h := ClearSkyHaurwitz(f.Zenith); math.Abs(f.SolarDown/h-1) > 0.05 {
		t.Errorf("sun %g, Haurwitz %g", f.SolarDown, h)
	}
	black := SkyRadiation(1, f.Air)
	if f.SkyDown >= black || f.SkyDown < 0.7*black {
		t.Errorf("sky %g, a black sky sends %g", f.SkyDown, black)
	}
	if math.Abs(f.DewPoint-8) > 0.05 {
		t.Errorf("dew point %g, want 8", f.DewPoint)
	}
	if night := feel(t, e, solarNoon.Add(-12*time.Hour+30*time.Minute)); night.SolarDown != 0 || night.Zenith < 90 {
		t.Errorf("sun at midnight %g, zenith %g", night.SolarDown, night.Zenith)
	}
}

// Cloud makes the day darker and the sky warmer, all the way.
func TestExposureCloud(t *testing.T) {
	e := hotDay(t)
	last := feel(t, e, solarNoon)
	for cloud := 0.1; cloud <= 1.0; cloud += 0.1 {
		for i := range e.Series.Hours {
			e.Series.Hours[i].Cloud = cloud
		}
		f := feel(t, e, solarNoon)
		if f.SolarDown >= last.SolarDown || f.SkyDown <= last.SkyDown {
			t.Errorf("cloud %.1f: sun %g after %g, sky %g after %g", cloud, f.SolarDown, last.SolarDown, f.SkyDown, last.SkyDown)
		}
		if f.CloudFrom != FromRecord {
			t.Errorf("cloud from %q", f.CloudFrom)
		}
		last = f
	}
}

// Sun measured is used as it is, tells the cloud by day and, after dusk, by night.
func TestExposureMeasuredSun(t *testing.T) {
	e := hotDay(t)
	for i := range e.Series.Hours {
		h := &e.Series.Hours[i]
		h.Cloud = math.NaN()
		z, _ := SunPosition(h.Time, e.Place.Latitude, e.Place.Longitude)
		h.Sun = 0.6 * ClearSkyIneichen(z, 30, AirPressure(30), 3, 1361*SunDistanceFactor(DayOfYear(h.Time))).Global
	}
	noonHour := solarNoon.Truncate(time.Hour)
	f := feel(t, e, noonHour)
	h, _ := e.Series.At(noonHour)
	if math.Abs(f.SolarDown-h.Sun) > 1e-9 || f.SunFrom != FromRecord {
		t.Errorf("sun %g (%s), measured %g", f.SolarDown, f.SunFrom, h.Sun)
	}
	if math.Abs(f.Cloud-0.4) > 1e-9 || f.CloudFrom != FromSun {
		t.Errorf("cloud %g (%s), want 0.4 from the sun", f.Cloud, f.CloudFrom)
	}
	if night := feel(t, e, noonHour.Add(10*time.Hour)); night.CloudFrom != FromDusk || math.Abs(night.Cloud-0.4) > 0.05 {
		t.Errorf("cloud at night %g (%s), want that of dusk", night.Cloud, night.CloudFrom)
	}
	e.Series.Hours[0].Sky, e.Series.Hours[1].Sky = 350, 350
	if f := feel(t, e, e.Series.Hours[0].Time.Add(20*time.Minute)); f.SkyDown != 350 {
		t.Errorf("sky %g, measured 350", f.SkyDown)
	}
}

// A roof takes the beam, keeps the slab's own warmth in and stills the wind, only
// while it is there.
func TestExposureShelter(t *testing.T) {
	e := hotDay(t)
	open := feel(t, e, solarNoon)
	e.Shelters = []Shelter{{From: solarNoon.Add(-time.Hour), To: solarNoon.Add(time.Hour), Beam: 0, Sky: 0.4, Wind: 0.5, Note: "tent"}}
	under := feel(t, e, solarNoon)
	if under.SolarDown >= 0.1*open.SolarDown || under.SkyDown <= open.SkyDown || under.WindAtSlab != open.WindAtSlab/2 {
		t.Errorf("under the tent %+v, open %+v", under, open)
	}
	if later := feel(t, e, solarNoon.Add(time.Hour)); later.SolarDown < 800 {
		t.Errorf("the tent is gone, sun %g", later.SolarDown)
	}
	e.Shelters = []Shelter{Roof(0, 1)}
	if f := feel(t, e, solarNoon); f.SolarDown != 0 || math.Abs(f.SkyDown-SkyRadiation(1, f.Air)) > 1e-9 {
		t.Errorf("under a roof without sides: sun %g, sky %g", f.SolarDown, f.SkyDown)
	}
}

func TestExposureErrors(t *testing.T) {
	e := hotDay(t)
	e.Place.Latitude, e.Roughness, e.CloudElse, e.Series.WindHeight = 91, 0.4, 3, 0
	e.Shelters = []Shelter{{Beam: 50, Note: "shade cloth"}}
	e.Series.Hours[3].Humidity = 55
	err := e.Check()
	for _, want := range []string{"latitude 91", "roughness 0.4", "cloud 3", "wind height 0", `shelter "shade cloth"`, "humidity 55"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q is missing in\n%v", want, err)
		}
	}
	if _, err := e.At(solarNoon.Add(100 * time.Hour)); err == nil {
		t.Error("weather is stretched past its end")
	}
}
