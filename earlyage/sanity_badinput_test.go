package earlyage

import (
	"context"
	"math"
	"strings"
	"testing"
	"time"

	"slabwright/climate"
	"slabwright/concrete"
)

func mustSay(t *testing.T, name string, err error, wants ...string) {
	t.Helper()
	if err == nil {
		t.Errorf("%s: passed without a word", name)
		return
	}
	for _, want := range wants {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %q does not say %q", name, err, want)
		}
	}
}

// madeHours is a record of so many hours of mild weather.
func madeHours(hours int) climate.Series {
	s := climate.Series{WindHeight: 10, Source: climate.Origin{Kind: climate.AtSite}}
	for i := range hours {
		h := climate.NewHour(may.Add(time.Duration(i)*time.Hour), 18+4*math.Sin(float64(i)*2*math.Pi/24), 0.6, 2+math.Mod(float64(i), 3))
		h.Cloud = 0.3
		s.Hours = append(s.Hours, h)
	}
	return s
}

func exposed(s climate.Series) climate.Exposure {
	return climate.Exposure{Series: s, Place: climate.Place{Latitude: 45}}
}

// A record that ends before the run is an error with the hour it ends at; one that
// ends with the run is enough.
func TestWeatherShorterThanTheRun(t *testing.T) {
	c := mild(t)
	c.Weather, c.Until = FromExposure(exposed(madeHours(40))), 60
	_, err := c.Run(context.Background())
	mustSay(t, "40 h of weather for 60 h", err, "no weather for this time", "2026-05-11 23:10", "longer record")
	for _, hours := range []int{25, 49, 61} {
		c.Weather, c.Until = FromExposure(exposed(madeHours(hours))), float64(hours-1)
		h, err := c.Run(context.Background())
		if err != nil {
			t.Errorf("%d h of weather for %d h: %v", hours, hours-1, err)
			continue
		}
		for i, air := range h.Air {
			if air < 13 || air > 23 {
				t.Fatalf("%d h: air %.1f °C at %.1f h", hours, air, h.Hours[i])
			}
		}
	}
	long := mild(t)
	long.Weather, long.Until = FromExposure(exposed(madeHours(20*24+6))), 20*24+5
	if _, err := long.Run(context.Background()); err != nil {
		t.Errorf("20 days: %v", err)
	}
}

// One bad hour is found wherever it stands.
func TestNegativeHumidity(t *testing.T) {
	for _, at := range []int{0, 7, 13, 40} {
		s := madeHours(80)
		s.Hours[at].Humidity = -0.2
		if err := exposed(s).Check(); err == nil || !strings.Contains(err.Error(), "humidity") || !strings.Contains(err.Error(), "leave the cell empty") {
			t.Errorf("hour %d: the exposure says %v", at, err)
		}
		c := mild(t)
		c.Weather, c.Until = FromExposure(exposed(s)), 72
		_, err := c.Run(context.Background())
		mustSay(t, "humidity of -0.2", err, "humidity outside 0 to 1", "2026-05-1")
		_, err = RunMembers(context.Background(), Pour{Column: c, Restraint: usualRestraint(), Count: 1})
		mustSay(t, "humidity of -0.2 in a set of members", err, "humidity outside 0 to 1")
	}
}

// Wind in km/h read as m/s: no hour is impossible, so it is a doubt with its mend,
// and a real gale is the same doubt; usual wind is none.
func TestWindInKilometresPerHour(t *testing.T) {
	with := func(factor float64) []string {
		s := madeHours(80)
		for i := range s.Hours {
			s.Hours[i].Wind = (2.5 + 1.5*math.Sin(float64(i)/4)) * factor * 1.8
		}
		if err := exposed(s).Check(); err != nil {
			t.Fatalf("wind times %g: %v", factor, err)
		}
		c := mild(t)
		c.Weather, c.Until = FromExposure(exposed(s)), 72
		return c.Doubts()
	}
	if d := with(1); len(d) != 0 {
		t.Errorf("usual wind: %v", d)
	}
	if d := with(kilometresPerHour); len(d) != 1 || !strings.Contains(d[0], "km/h") || !strings.Contains(d[0], "Then it is 2.") {
		t.Errorf("wind in km/h: %v", d)
	}
	// Single hours that no wind reaches are found by climate.
	s := madeHours(3)
	s.Hours[1].Wind = 40
	if d := s.Doubtful(); len(d) != 1 || !strings.Contains(d[0].Mend, "km/h") || !strings.Contains(d[0].Mend, "11.1 m/s") {
		t.Errorf("40 m/s: %v", d)
	}
	for name, w := range map[string]Weather{
		"drier than deserts": day(30, 5, 0.03, 2, 30),
		"There is no sun":    flat(20),
		"°F":                 day(30, 20, 0.4, 2, 30),
	} {
		c := mild(t)
		c.Weather = w
		if d := strings.Join(c.Doubts(), " "); !strings.Contains(d, name) {
			t.Errorf("doubts %q do not say %q", d, name)
		}
	}
	for _, c := range []Column{hot(t), mild(t), cold(t)} {
		if d := c.Doubts(); len(d) != 0 {
			t.Errorf("usual weather: %v", d)
		}
	}
}

// Hours after placing are hours that passed, whatever the clocks of the site did;
// clock times come back on the site's clock.
func TestClockChanges(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Skip("no time zones here")
	}
	for _, c := range []struct {
		name          string
		placed        time.Time
		on            time.Time
		passed        float64
		day           int
		clockAfter12h string
	}{
		{"put forward", time.Date(2026, 3, 28, 18, 0, 0, 0, berlin), time.Date(2026, 3, 29, 6, 0, 0, 0, berlin), 11, 29, "07:00"},
		{"put back", time.Date(2026, 10, 24, 18, 0, 0, 0, berlin), time.Date(2026, 10, 25, 6, 0, 0, 0, berlin), 13, 25, "05:00"},
		{"left alone", time.Date(2026, 5, 9, 18, 0, 0, 0, berlin), time.Date(2026, 5, 10, 6, 0, 0, 0, berlin), 12, 10, "06:00"},
	} {
		cover, _ := TypicalCover("blanket")
		cover, err := cover.By(c.placed, c.on, time.Time{})
		if err != nil || math.Abs(cover.On-c.passed) > 1e-9 {
			t.Errorf("clocks %s: cover on after %.2f h, %v; want %g h", c.name, cover.On, err, c.passed)
		}
		column := mild(t)
		made := column.Weather // of the clock it is asked in; the sun knows one only
		column.Weather = func(at time.Time) Feel { return made(at.UTC()) }
		column.Placed, column.Until, column.Covers = c.placed, 24, []Cover{cover}
		h := runOf(t, column)
		if got := h.Clock(12).Format("15:04"); got != c.clockAfter12h || h.Clock(12).Day() != c.day {
			t.Errorf("clocks %s: twelve hours after placing it is %s", c.name, got)
		}
		if !h.Clock(cover.On).Equal(c.on) {
			t.Errorf("clocks %s: cover on at %v, want %v", c.name, h.Clock(cover.On), c.on)
		}
		utc := column
		utc.Placed = c.placed.UTC()
		if a, b := h.At(20), runOf(t, utc).At(20); a != b {
			t.Errorf("clocks %s: the slab differs with the zone it is told in", c.name)
		}
		hours := h.PlasticHours(PlasticInput{})
		for i := 1; i < len(hours)-1; i++ {
			if d := hours[i].Time.Sub(hours[i-1].Time); d != time.Hour {
				t.Errorf("clocks %s: hour %d lasts %v", c.name, i, d)
			}
		}
	}
}

// A mix without water is an error of the mix, and of the column for whoever did not
// ask the mix.
func TestMixWithoutWater(t *testing.T) {
	mix, err := concrete.DefaultMix(30, "I")
	if err != nil {
		t.Fatal(err)
	}
	mix.Water = 0
	mustSay(t, "mix", mix.Check(), "water", "0 kg/m³", "100 to 260")
	c := mild(t)
	c.Concrete = FromMix(mix, mix.EN1992(), ENLongTerm(mix, 0.15, 0.6, 3), 0.15)
	_, err = c.Run(context.Background())
	mustSay(t, "column", err, "Water over binder", "Mix.Check")
	mix.Water = math.NaN()
	mustSay(t, "water of NaN", mix.Check(), "water")
	c.Concrete = FromMix(mix, mix.EN1992(), ENLongTerm(mix, 0.15, 0.6, 3), 0.15)
	_, err = c.Run(context.Background())
	mustSay(t, "column of NaN", err, "Water over binder")
}

// A cement whose composition nobody knows: the typical one of its name with ranges to
// sample and how it is known; an empty composition is an error that names every
// compound; a cement of no known name is refused with the names there are.
func TestCementWithoutComposition(t *testing.T) {
	for _, key := range concrete.Cements() {
		c, ok := concrete.TypicalCement(key)
		if !ok || c.Known == "" || len(c.Ranges) < 9 {
			t.Errorf("%s: known %q, %d ranges", key, c.Known, len(c.Ranges))
		}
		for what, r := range c.Ranges {
			if !(r.Low <= r.Value && r.Value <= r.High) || r.Low == r.High {
				t.Errorf("%s %s: %+v", key, what, r)
			}
		}
	}
	mix, err := concrete.DefaultMix(30, "I")
	if err != nil {
		t.Fatal(err)
	}
	mix.Binder.Composition = concrete.Composition{}
	mustSay(t, "no composition", mix.Check(), "C3S", "C3A", "C4AF", "SO3", "Blaine")
	_, err = concrete.DefaultMix(30, "the grey one")
	mustSay(t, "unknown cement", err, "the grey one", "CEM I 42.5N", "mill certificate")
}

// Over the whole range of a typical cement set moves by about an hour in mild
// weather: what the assumption is worth, to be shown with it.
func TestWorthOfTheComposition(t *testing.T) {
	typical, _ := concrete.TypicalCement("CEM I 42.5N")
	sets := func(blaine, c3a float64) float64 {
		mix, err := concrete.DefaultMix(30, "CEM I 42.5N")
		if err != nil {
			t.Fatal(err)
		}
		mix.Binder.Blaine, mix.Binder.C3A = blaine, c3a
		h := mix.Hydration()
		return h.ClockHours(h.FinalSet(), 18)
	}
	fine, c3a := typical.Ranges["Blaine"], typical.Ranges["C3A"]
	quick, slow := sets(fine.High, c3a.High), sets(fine.Low, c3a.Low)
	if spread := slow - quick; spread < 0.5 || spread > 3 {
		t.Errorf("final set %.1f to %.1f h over the range of the cement", quick, slow)
	}
	t.Logf("final set %.1f to %.1f h over the range of the cement", quick, slow)
}
