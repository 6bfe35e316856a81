package climate

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

func readStation(t *testing.T, path string, year int) Series {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	read := ReadTMY3
	if strings.HasSuffix(path, ".epw") {
		read = ReadEPW
	}
	s, err := read(f, filepath.Base(path), year)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The first line of the cut-out reads 17 June 2001, hour 1 at UTC-7.
func TestReadEPW(t *testing.T) {
	s := readStation(t, "testdata/weather/tucson-three-days.epw", 0)
	first := s.Hours[0]
	if want := time.Date(2001, 6, 17, 8, 0, 0, 0, time.UTC); len(s.Hours) != 72 || !first.Time.Equal(want) {
		t.Fatalf("%d hours, first %v, want 72 from %v", len(s.Hours), first.Time, want)
	}
	if *s.Source.Latitude != 32.13 || *s.Source.Longitude != -110.95 || *s.Source.Altitude != 777 || s.Source.Kind != Typical || s.WindHeight != 10 {
		t.Errorf("station %+v", s.Source)
	}
	// against the columns of that line, read by eye
	text, _ := os.ReadFile("testdata/weather/tucson-three-days.epw")
	cells := strings.Split(strings.Split(string(text), "\n")[8+13], ",")
	h := s.Hours[13]
	for i, got := range map[int]float64{6: h.Air, 8: h.Humidity * 100, 12: h.Sky, 13: h.Sun, 21: h.Wind, 22: h.Cloud * 10} {
		want, err := strconv.ParseFloat(cells[i], 64)
		if err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("column %d: got %g, the file says %s", i, got, cells[i])
		}
	}
	moved := readStation(t, "testdata/weather/tucson-three-days.epw", 2026)
	if got := moved.Hours[0].Time.Year(); got != 2026 || len(moved.Source.Notes) == 0 {
		t.Errorf("laid on %d, notes %v", got, moved.Source.Notes)
	}
}

func TestReadTMY3(t *testing.T) {
	s := readStation(t, "testdata/weather/miami-three-days.tmy3.csv", 0)
	last := s.Hours[71]
	if want := time.Date(1990, 7, 20, 5, 0, 0, 0, time.UTC); len(s.Hours) != 72 || !last.Time.Equal(want) {
		t.Fatalf("%d hours, last %v, want 72 to %v (24:00 at UTC-5)", len(s.Hours), last.Time, want)
	}
	if s.Source.Name != "MIAMI INTL AP" || *s.Source.Longitude != -80.3 {
		t.Errorf("station %+v", s.Source)
	}
}

// Damaged station files get every error with its line and give no record.
func TestStationErrors(t *testing.T) {
	good, err := os.ReadFile("testdata/weather/tucson-three-days.epw")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(good), "\n")
	lines[9] = strings.Replace(lines[9], ",6,17,2,", ",6,31,2,", 1)
	lines[10] = "2001,6,17,3,0"
	cells := strings.Split(lines[11], ",")
	cells[8] = "x"
	cells[21] = "-3"
	lines[11] = strings.Join(cells, ",")
	_, err = ReadEPW(strings.NewReader(strings.Join(lines, "\n")), "bad.epw", 0)
	for _, want := range []string{"line 10", "no such hour", "line 11", "found 5 columns", `line 12, column "relative humidity"`, `line 12, column "wind"`} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q is missing in\n%v", want, err)
		}
	}
	if _, err := ReadEPW(strings.NewReader("a,b\n"), "x.epw", 0); err == nil || !strings.Contains(err.Error(), "LOCATION") {
		t.Errorf("other file: %v", err)
	}
	if _, err := ReadTMY3(strings.NewReader("1,X,FL,-5,25,-80,11\nDate,Time\n"), "x.csv", 0); err == nil || !strings.Contains(err.Error(), "GHI") {
		t.Errorf("missing columns: %v", err)
	}
}

// Codes for missing values are not known, never numbers.
func TestEPWMissingCodes(t *testing.T) {
	good, _ := os.ReadFile("testdata/weather/tucson-three-days.epw")
	lines := strings.Split(string(good), "\n")
	cells := strings.Split(lines[20], ",")
	cells[6], cells[8], cells[12], cells[13], cells[21], cells[22] = "99.9", "999", "9999", "9999", "999", "99"
	lines[20] = strings.Join(cells, ",")
	s, err := ReadEPW(strings.NewReader(strings.Join(lines, "\n")), "m.epw", 0)
	if err != nil {
		t.Fatal(err)
	}
	h := s.Hours[12]
	for _, q := range quantitiesOfHour {
		if v := *q.get(&h); !math.IsNaN(v) && q.name != "rain" {
			t.Errorf("%s: got %g, the file does not know it", q.name, v)
		}
	}
	if g := s.Gaps(s.Hours[0].Time, s.Hours[71].Time, 90*time.Minute); len(g) != 3 {
		t.Errorf("gaps %v, want one of each", g)
	}
}

// weatherYears finds the folder of whole weather years that is kept beside the
// checkout, by SLABWRIGHT_WEATHER or a folder shared/data/weather further up.
func weatherYears(t *testing.T) string {
	if dir := os.Getenv("SLABWRIGHT_WEATHER"); dir != "" {
		return dir
	}
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for ; dir != filepath.Dir(dir); dir = filepath.Dir(dir) {
		try := filepath.Join(dir, "shared", "data", "weather")
		if _, err := os.Stat(filepath.Join(try, "summary.json")); err == nil {
			return try
		}
	}
	t.Skip("no whole weather years here; set SLABWRIGHT_WEATHER to their folder")
	return ""
}

type extremes struct{ Min, Mean, Max float64 }

// Whole years read and summed against sums made by another program. The drying
// takes concrete as warm as the air and the 10 m wind as it stands: a check of
// reading and arithmetic.
func TestWeatherYears(t *testing.T) {
	dir := weatherYears(t)
	data, err := os.ReadFile(filepath.Join(dir, "summary.json"))
	if err != nil {
		t.Fatal(err)
	}
	var summary map[string]struct {
		Hours   int      `json:"hours"`
		Air     extremes `json:"dry_bulb_c"`
		Dew     extremes `json:"dew_point_c"`
		RH      extremes `json:"rh_pct"`
		Wind    extremes `json:"wind_m_s"`
		Sun     float64  `json:"global_horizontal_kwh_m2_year"`
		Over1   int      `json:"hours_evaporation_over_1.0"`
		OverHal int      `json:"hours_evaporation_over_0.5"`
		Most    float64  `json:"evaporation_max"`
	}
	if err := json.Unmarshal(data, &summary); err != nil {
		t.Fatal(err)
	}
	for name, want := range summary {
		s := readStation(t, filepath.Join(dir, name), 0)
		if len(s.Hours) != want.Hours {
			t.Errorf("%s: %d hours, want %d", name, len(s.Hours), want.Hours)
		}
		compare := func(what string, of func(Hour) float64, want extremes, tolerance float64) {
			got := extremesOf(s.Hours, of)
			if math.Abs(got.Min-want.Min) > tolerance || math.Abs(got.Mean-want.Mean) > tolerance || math.Abs(got.Max-want.Max) > tolerance {
				t.Errorf("%s %s: got %+v, want %+v within %g", name, what, got, want, tolerance)
			}
		}
		const printed = 0.00051 // the sums are printed to three places
		compare("air", func(h Hour) float64 { return h.Air }, want.Air, printed)
		compare("humidity", func(h Hour) float64 { return 100 * h.Humidity }, want.RH, printed)
		compare("wind", func(h Hour) float64 { return h.Wind }, want.Wind, printed)
		dew := extremesOf(s.Hours, func(h Hour) float64 { return DewPoint(h.Air, h.Humidity) })
		// humidity is printed to whole percent: half a percent in 38 is 0.2 K in the mean
		if math.Abs(dew.Mean-want.Dew.Mean) > 0.2 {
			t.Errorf("%s: mean dew point %g, want %g", name, dew.Mean, want.Dew.Mean)
		}
		if sun := extremesOf(s.Hours, func(h Hour) float64 { return h.Sun }).Mean * float64(len(s.Hours)) / 1000; math.Abs(sun-want.Sun) > 0.051 {
			t.Errorf("%s: sun of the year %g kWh/m2, want %g", name, sun, want.Sun)
		}
		over1, overHalf, most := 0, 0, 0.0
		for _, h := range s.Hours {
			e := Drying(DryingUno, h.Air, h.Air, h.Humidity, h.Wind)
			most = math.Max(most, e)
			if e > DryingLimit {
				over1++
			}
			if e > DryingLimitLowBleed {
				overHalf++
			}
		}
		if over1 != want.Over1 || overHalf != want.OverHal || math.Abs(most-want.Most) > 0.00051 {
			t.Errorf("%s: %d hours over 1.0, %d over 0.5, most %.4f; want %d, %d, %.3f", name, over1, overHalf, most, want.Over1, want.OverHal, want.Most)
		}
	}
}

func extremesOf(hours []Hour, of func(Hour) float64) extremes {
	e := extremes{Min: math.Inf(1), Max: math.Inf(-1)}
	for _, h := range hours {
		v := of(h)
		e.Min, e.Max, e.Mean = math.Min(e.Min, v), math.Max(e.Max, v), e.Mean+v/float64(len(hours))
	}
	return e
}
