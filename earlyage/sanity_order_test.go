package earlyage

import (
	"math"
	"os"
	"testing"
	"time"

	"slabwright/climate"
	"slabwright/internal/table"
)

// front lets the air fall and the wind rise from an hour of the first day on.
func front(w Weather, from time.Time, fall, wind float64) Weather {
	return func(t time.Time) Feel {
		f := w(t)
		share := held(t.Sub(from).Hours())
		f.Air -= fall * share
		f.Longwave -= 4.5 * fall * share // about what a sky of that air sends less
		f.Wind *= 1 + (wind-1)*share
		return f
	}
}

// after counts a window that never closes as closing after all others.
func after(hours float64) float64 {
	if math.IsNaN(hours) {
		return math.Inf(1)
	}
	return hours
}

// A retarder opens the window later and an accelerator earlier on every day, by more
// in the cold.
func TestSanityOfAdmixtures(t *testing.T) {
	opens := func(d sanityDay, shift float64) float64 {
		p := sanityPour(t, sanityMix{"plain", "CEM I 42.5N", 30, shift}, d)
		p.Count, p.Column.Until = 1, 48
		return sanityWindow(t, p).opens
	}
	var late []float64
	for _, d := range sanityDays {
		plain, retarded, quick := opens(d, 0), opens(d, 3), opens(d, -1.5)
		if !(quick < plain-0.4 && plain < retarded-0.8) {
			t.Errorf("%s: accelerated %.1f h, plain %.1f h, retarded %.1f h", d.name, quick, plain, retarded)
		}
		late = append(late, retarded-plain)
	}
	if !(late[0] < late[3] && late[3] < late[5]) {
		t.Errorf("three hours of retarder at 21 °C come to %.1f h in the heat, %.1f h in mild, %.1f h in cold weather", late[0], late[3], late[5])
	}
}

// A cold front at dusk, or a wind that rises then, never closes the window later and
// closes it earlier wherever it closes that evening. A pour of the cool evening
// closes later than the morning pour of the same day.
func TestSanityOfTheEvening(t *testing.T) {
	const dusk, change, ramp = 18.0, 0.05, 0.3 // h
	for _, d := range []sanityDay{sanityDays[1], sanityDays[3], sanityDays[4], sanityDays[5]} {
		for _, m := range []sanityMix{sanityMixes[0], sanityMixes[1], sanityMixes[4]} {
			evening := d.placed.Truncate(24 * time.Hour).Add(time.Duration(dusk * float64(time.Hour)))
			closes := func(d sanityDay) float64 {
				p := sanityPour(t, m, d)
				p.Column.Until = 40
				return sanityCloses(t, p)
			}
			steady, cold, wind, late := closes(d), d, d, d
			cold.weather = front(d.weather, evening, 8, 1)
			wind.weather = front(d.weather, evening, 0, 3)
			late.placed = evening
			c, w, e := closes(cold), closes(wind), closes(late)
			if c > steady || w > steady {
				t.Errorf("%s, %s: closes %.2f h after placing, with a cold front at dusk %.2f h, with wind %.2f h", d.name, m.name, steady, c, w)
			}
			afterDusk := steady > evening.Sub(d.placed).Hours()+ramp && steady < 24
			if afterDusk && !(c < steady-change && w < steady-change) {
				t.Errorf("%s, %s: closes %.2f h after placing; a cold front at dusk (%.2f h) and wind (%.2f h) change nothing", d.name, m.name, steady, c, w)
			}
			if !math.IsInf(steady, 1) && !(e > steady) {
				t.Errorf("%s, %s: placed in the morning closes %.2f h after placing, in the evening %.2f h", d.name, m.name, steady, e)
			}
		}
	}
}

// Drying at dawn can pass that of midday: the air is far colder than the concrete
// that comes off the truck, and the wind gets up with the sun and drops by noon.
func TestSanityOfDryingAtDawn(t *testing.T) {
	base := overcast(day(11, 5, 0.6, 2.5, 45))
	breeze := func(t time.Time) Feel {
		f := base(t)
		if clock := float64(t.Hour()) + float64(t.Minute())/60; clock > 4 && clock < 9 {
			f.Wind = 6
		}
		f.Humidity = climate.HumidityFromDewPoint(f.Air, 2)
		return f
	}
	first := func(hour int) (rate float64) {
		c := pourOn(t, time.Date(2026, 4, 10, hour, 0, 0, 0, time.UTC), 22, 12, breeze)
		c.Until = 3
		for _, p := range runOf(t, c).PlasticHours(PlasticInput{}) {
			rate = math.Max(rate, p.Open)
		}
		return rate
	}
	dawn, noon := first(5), first(12)
	t.Logf("worst hour of drying: placed at 5 h %.2f kg/m2/h, placed at 12 h %.2f", dawn, noon)
	if !(dawn > noon) {
		t.Errorf("worst hour of drying at dawn %.2f kg/m2/h, at midday %.2f", dawn, noon)
	}
	// In still air of one humidity the sun still makes midday the worse: the model
	// does not simply favour dawn.
	clear := day(20, 6, 0.5, 2, 40)
	dry := func(hour int) float64 {
		c := pourOn(t, time.Date(2026, 7, 10, hour, 0, 0, 0, time.UTC), 22, 18, clear)
		c.Until = 3
		return runOf(t, c).Plastic(climate.DryingLimit).Worst
	}
	if a, b := dry(4), dry(11); !(a < b) {
		t.Errorf("clear steady day: %.2f kg/m2/h at dawn, %.2f at midday", a, b)
	}
}

// Slag opens later than plain cement of the same grade, most in the cold, as practice
// knows it. Siliceous fly ash should too (common practice, no source), and the model
// has it earlier in mild and cold weather: the difference is on record, with its
// reason, and a change of more than an hour must be looked at.
func TestSanityOfSlagAndAsh(t *testing.T) {
	text, err := os.ReadFile("testdata/sanity/ash-against-plain.csv")
	if err != nil {
		t.Fatal(err)
	}
	onRecord := map[string]float64{}
	for _, row := range table.Read("ash-against-plain.csv", string(text)).Records() {
		onRecord[row["day"]] = number(row["ash_later_h"])
	}
	var slower []float64
	for _, d := range []sanityDay{sanityDays[0], sanityDays[3], sanityDays[5]} {
		opens := func(cement string) float64 {
			p := sanityPour(t, sanityMix{cement, cement, 30, 0}, d)
			p.Count, p.Column.Until = 1, 72
			return sanityWindow(t, p).opens
		}
		plain, ash, slag := opens("CEM I 42.5N"), opens("CEM II/B-V"), opens("CEM III/A")
		t.Logf("%s: plain %.1f h, fly ash %.1f h, slag %.1f h", d.name, plain, ash, slag)
		slower = append(slower, slag-plain)
		if want, ok := onRecord[d.name]; !ok || math.Abs(ash-plain-want) > 1 {
			t.Errorf("%s: fly ash %.1f h after plain cement, on record %.1f h", d.name, ash-plain, want)
		}
	}
	if !(slower[0] > 0 && slower[1] > slower[0] && slower[2] > slower[1]) {
		t.Errorf("slag opens %.1f, %.1f and %.1f h after plain cement in heat, mild and cold weather", slower[0], slower[1], slower[2])
	}
}
