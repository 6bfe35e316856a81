package climate

import (
	"math"
	"strings"
	"testing"
	"time"
)

var melbourneSlab = Place{Latitude: -37.8, Longitude: 145, Altitude: 30}

func zoneOf(t *testing.T, name string) *time.Location {
	t.Helper()
	zone, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return zone
}

// A made day meets its least at sunrise and its greatest two hours after solar
// noon, keeps between them, and holds its dew point.
func TestMakeDay(t *testing.T) {
	zone := zoneOf(t, "Australia/Melbourne")
	dew := 9.0
	date := time.Date(2026, 1, 15, 0, 0, 0, 0, zone)
	s, err := MakeDay(date, melbourneSlab, DaySketch{Min: 16, Max: 36, DewPoint: &dew, WindCalm: 1, WindBlown: 7})
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Hours) != 25 || s.Source.Kind != Made || len(s.Source.Notes) == 0 {
		t.Fatalf("%d hours, origin %+v", len(s.Hours), s.Source)
	}
	rise, noon, _, _ := SunTimes(date, melbourneSlab.Latitude, melbourneSlab.Longitude)
	for _, h := range s.Hours {
		if h.Air < 16 || h.Air > 36 || h.Wind < 1 || h.Wind > 7 {
			t.Errorf("%v: air %g, wind %g leave the day's range", h.Time, h.Air, h.Wind)
		}
		if got := DewPoint(h.Air, h.Humidity); math.Abs(got-dew) > 1e-9 {
			t.Errorf("%v: dew point %g, want %g", h.Time, got, dew)
		}
		if !math.IsNaN(h.Sun) {
			t.Errorf("%v: a made day knows no measured sun", h.Time)
		}
	}
	coldest, warmest := s.Hours[0], s.Hours[0]
	for _, h := range s.Hours {
		if h.Air < coldest.Air {
			coldest = h
		}
		if h.Air > warmest.Air {
			warmest = h
		}
	}
	// hours stand up to 30 min from the turn, and the flatter of its two waves may win by up to 40
	if d := coldest.Time.Sub(rise).Abs(); d > 40*time.Minute {
		t.Errorf("coldest %v is %v from sunrise", coldest.Time.In(zone), d)
	}
	if d := warmest.Time.Sub(noon.Add(afternoonLag)).Abs(); d > 40*time.Minute {
		t.Errorf("warmest %v is %v from two hours past noon", warmest.Time.In(zone), d)
	}
}

// Without a dew point the air is saturated at the coldest hour.
func TestMakeDayDewIsLeast(t *testing.T) {
	date := time.Date(2026, 6, 1, 0, 0, 0, 0, time.UTC)
	s, err := MakeDay(date, Place{Latitude: 51, Longitude: 0}, DaySketch{Min: 8, Max: 20, WindCalm: 2, WindBlown: 4})
	if err != nil {
		t.Fatal(err)
	}
	most := 0.0
	for _, h := range s.Hours {
		most = math.Max(most, h.Humidity)
	}
	if most < 0.97 || most > 1 {
		t.Errorf("greatest humidity %g, want near 1", most)
	}
}

// Days in a row run on without a jump, also over the night the clock is put back.
func TestMakeDaysRunOn(t *testing.T) {
	zone := zoneOf(t, "Australia/Melbourne")
	days := []DaySketch{{Min: 14, Max: 30, WindBlown: 5}, {Min: 19, Max: 24, WindBlown: 3}, {Min: 9, Max: 18, WindBlown: 8}}
	s, err := MakeDays(time.Date(2026, 4, 4, 0, 0, 0, 0, zone), melbourneSlab, days)
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Hours) != 3*24+1+1 { // one hour twice, both midnights
		t.Errorf("%d hours, want 74", len(s.Hours))
	}
	for i := 1; i < len(s.Hours); i++ {
		if d := math.Abs(s.Hours[i].Air - s.Hours[i-1].Air); d > 4 {
			t.Errorf("%v: air jumps by %g K", s.Hours[i].Time, d)
		}
	}
	if d := s.Doubtful(); len(d) != 0 {
		t.Errorf("a made record is doubted: %v", d)
	}
}

func TestMakeDayErrors(t *testing.T) {
	_, err := MakeDays(noon, Place{Latitude: 145, Longitude: -37}, []DaySketch{{Min: 30, Max: 10, Cloud: 40}, {Min: math.NaN(), Max: 2, WindCalm: -1}})
	for _, want := range []string{"latitude 145", "swapped", "day 1: least temperature 30", "day 1: cloud 40", "day 2: ", "wind -1"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q is missing in\n%v", want, err)
		}
	}
	if _, err := MakeDays(noon, melbourneSlab, nil); err == nil {
		t.Error("no days, no error")
	}
}
