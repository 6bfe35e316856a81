package earlyage

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"slabwright/climate"
	"slabwright/concrete"
)

// weatherFolder finds the folder of whole weather years going up from here.
func weatherFolder(t *testing.T) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for ; dir != filepath.Dir(dir); dir = filepath.Dir(dir) {
		if try := filepath.Join(dir, "shared", "data", "weather"); exists(filepath.Join(try, "summary.json")) {
			return try
		}
	}
	t.Skip("no whole weather years here")
	return ""
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// weatherYear reads a whole year laid on 2026.
func weatherYear(t *testing.T, name string) climate.Exposure {
	t.Helper()
	f, err := os.Open(filepath.Join(weatherFolder(t), name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	read := climate.ReadTMY3
	if strings.HasSuffix(name, ".epw") {
		read = climate.ReadEPW
	}
	s, err := read(f, name, 2026)
	if err != nil {
		t.Fatal(err)
	}
	return climate.Exposure{Series: s, Place: climate.Place{Latitude: *s.Source.Latitude, Longitude: *s.Source.Longitude, Altitude: *s.Source.Altitude}}
}

// yearPour is a pour at seven in the morning by the sun on the tenth of a month.
func yearPour(t *testing.T, e climate.Exposure, month time.Month) Pour {
	t.Helper()
	mean, amplitude, coldest, err := climate.YearlyWave(e.Series)
	if err != nil {
		t.Fatal(err)
	}
	placed := time.Date(2026, month, 10, 7, 0, 0, 0, time.UTC).Add(-time.Duration(e.Place.Longitude / 15 * float64(time.Hour))).Round(time.Hour)
	at, err := e.At(placed)
	if err != nil {
		t.Fatal(err)
	}
	mix, err := concrete.DefaultMix(30, "I")
	if err != nil {
		t.Fatal(err)
	}
	mix.PlacingTemperature = math.Min(32, math.Max(13, at.Air+4))
	const thickness = 0.15
	c := pourOn(t, placed, mix.PlacingTemperature, 0, FromExposure(e))
	c.Concrete = FromMix(mix, mix.EN1992(), ENLongTerm(mix, thickness, 0.5, 3), thickness)
	c.Ground = YearGround{Mean: mean, Amplitude: amplitude, Coldest: coldest, Diffusivity: 7e-7}.At(placed)
	c.Until = 72
	return Pour{Column: c, Restraint: usualRestraint(), Seed: 2, Count: 1}
}

// Three whole weather years, hot and dry, cold in winter, hot and damp, each drive a
// pour a month from the file to the window: all run, the windows open within two
// and a half days, summer before winter, and a dry place draws more out of a fresh slab
// than a damp one.
func TestPoursThroughThreeYears(t *testing.T) {
	saw, _ := SawFor("ordinary", "medium")
	drawn := map[string]float64{}
	rows := []string{"| year | earliest opening, h | latest, h | drawn out of the fresh slab, mean, kg/m² | most, kg/m² | in | chance of tearing then |", "|---|---|---|---|---|---|---|"}
	for _, name := range []string{"tucson-hot-dry.epw", "indianapolis-cold-winter.epw", "miami-hot-humid.tmy3.csv"} {
		e := weatherYear(t, name)
		var opens [13]float64
		pours, first, last, most, worst := 0, math.Inf(1), 0.0, -1.0, ""
		for month := time.January; month <= time.December; month++ {
			p := yearPour(t, e, month)
			m, err := RunMembers(context.Background(), p)
			if err != nil {
				t.Errorf("%s, %s: %v", name, month, err)
				continue
			}
			w, h := m.Window(saw, 0), m.Expected()
			set := lastHour(h, PlasticInput{})
			opens[month] = w.opens
			first, last = math.Min(first, w.opens), math.Max(last, w.opens)
			pours++
			drawn[name] += set.Deficit / 12
			if set.Deficit > most {
				most, worst = set.Deficit, fmt.Sprintf("%.2f | %s | %.2f", set.Deficit, month, set.ShrinkageChance)
			}
			t.Logf("%-29s %-9s placed at %4.1f °C opens %5.1f h closes %5.1f h drawn %.2f kg/m2 chance %.2f", name, month, p.Column.PlacingTemperature, w.opens, w.closes, set.Deficit, set.ShrinkageChance)
			if !(w.opens > 2 && w.opens < 60) {
				t.Errorf("%s, %s: opens %.1f h after placing", name, month, w.opens)
			}
		}
		if !(opens[time.July] < opens[time.January]) {
			t.Errorf("%s: opens %.1f h after placing in July, %.1f h in January", name, opens[time.July], opens[time.January])
		}
		rows = append(rows, fmt.Sprintf("| %s | %.1f | %.1f | %.2f | %s |", name, first, last, drawn[name], worst))
		if pours != 12 {
			t.Errorf("%s: %d pours ran", name, pours)
		}
	}
	holdsTable(t, "weather years", rows)
	if !(drawn["tucson-hot-dry.epw"] > drawn["miami-hot-humid.tmy3.csv"]) {
		t.Errorf("drawn out of the fresh slab over the year: %v kg/m2", drawn)
	}
}
