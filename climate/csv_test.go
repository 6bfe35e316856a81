package climate

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"
	"unicode/utf16"
)

// One hour written in every way people write it must read the same.
func TestReadCSVForms(t *testing.T) {
	melbourne, err := time.LoadLocation("Australia/Melbourne")
	if err != nil {
		t.Fatal(err)
	}
	dayFirst := true
	want := NewHour(time.Date(2026, 1, 15, 3, 0, 0, 0, time.UTC), 31.5, 0.22, 5)
	for _, c := range []struct {
		name, text string
		about      Table
	}{
		{"comma, ISO with offset", "time,air_C,rh_%,wind_km_h\n2026-01-15T14:00+11:00,31.5,22,18\n", Table{}},
		{"semicolon, decimal comma", "Zeit time;Temp. (°C);RH (%);wind (km/h)\n2026-01-15T03:00Z;31,5;22,0;18,0\n", Table{}},
		{"tab, local time", "Date\tTime\tAir temperature\tHumidity\tWind speed (m/s)\n15/01/2026\t14:00\t31.5\t0.22\t5\n", Table{Zone: melbourne}},
		{"zone in the head", "time (Australia/Melbourne),air (F),relative humidity %,wind m/s\n2026-01-15 14:00,88.7,22,5\n", Table{}},
		{"offset in the head, 12-hour clock", "timestamp [UTC+11:00],temp_C,rh %,wspd kts\n15/1/2026 2:00 PM,31.5,22,9.7192\n", Table{}},
		{"percent in the cell", "time UTC,air,humidity,wind\n2026-01-15 03:00,31.5,22 %,5\n", Table{}},
		{"dew point", "time UTC,air,dew point (C),wind\n2026-01-15 03:00,31.5,7.2163,5\n", Table{}},
		{"quoted decimal comma", "time UTC,air,humidity,wind\n2026-01-15 03:00,\"31,5\",\"0,22\",5\n", Table{}},
		{"month first, told", "time,air,humidity,wind_mph\n01/15/2026 03:00,31.5,0.22,11.18468\n", Table{Zone: time.UTC}},
		{"day first, told", "time,air,humidity,wind\n15/1/2026 03:00,31.5,0.22,5\n", Table{Zone: time.UTC, DayFirst: &dayFirst}},
		{"kelvin, comment above, blank line, Windows ends", "# logger 7\r\ntime,air_K,rh_%,wind\r\n\r\n2026-01-15T03:00:00Z,304.65,22,5\r\n", Table{}},
		{"24:00", "time UTC-3,air,humidity,wind\n14.01.2026 24:00,31.5,0.22,5\n", Table{}},
		{"mark at the start", "\uFEFFtime,air,humidity,wind\n2026-01-15T03:00Z,31.5,0.22,5\n", Table{}},
		{"UTF-16", utf16Text("time,air °C,humidity,wind\n2026-01-15T03:00Z,31.5,0.22,5\n"), Table{}},
		{"Latin-1", "time,air \xb0C,humidity,wind\n2026-01-15T03:00Z,31.5,0.22,5\n", Table{}},
	} {
		s, err := ReadCSV(strings.NewReader(c.text), c.about)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		got := s.Hours[0]
		if !got.Time.Equal(want.Time) || math.Abs(got.Air-want.Air) > 1e-9 || math.Abs(got.Humidity-want.Humidity) > 1e-5 || math.Abs(got.Wind-want.Wind) > 1e-4 {
			t.Errorf("%s: got %v %g %g %g, want %v %g %g %g", c.name, got.Time, got.Air, got.Humidity, got.Wind, want.Time, want.Air, want.Humidity, want.Wind)
		}
		if s.WindHeight != StationWindHeight {
			t.Errorf("%s: wind height %g", c.name, s.WindHeight)
		}
	}
}

func utf16Text(text string) string {
	var s strings.Builder
	s.WriteString("\xFF\xFE")
	for _, u := range utf16.Encode([]rune(text)) {
		s.WriteByte(byte(u))
		s.WriteByte(byte(u >> 8))
	}
	return s.String()
}

func TestReadCSVOtherColumns(t *testing.T) {
	text := "time,air,humidity,wind_km_h,cloud (oktas),solar W/m2,rain mm/h,wind direction,gust km/h,pressure\n" +
		"2026-01-15T04:00Z,21,0.5,18,4,800,,350,40,1013\n" +
		"2026-01-15T03:00Z,20,0.5,18,NA,-,0.4,350,40,1013\n"
	s, err := ReadCSV(strings.NewReader(text), Table{Source: Origin{Name: "yard", Kind: AtSite}})
	if err != nil {
		t.Fatal(err)
	}
	early, late := s.Hours[0], s.Hours[1]
	if early.Air != 20 || !math.IsNaN(early.Cloud) || !math.IsNaN(early.Sun) || early.Rain != 0.4 {
		t.Errorf("first hour %+v", early)
	}
	if late.Cloud != 0.5 || late.Sun != 800 || !math.IsNaN(late.Rain) {
		t.Errorf("second hour %+v", late)
	}
	notes := strings.Join(s.Source.Notes, "\n")
	for _, want := range []string{`"wind direction" was not read`, `"gust km/h" was not read`, `"pressure" was not read`, `"air" names no unit and was read as °C`, "have been sorted"} {
		if !strings.Contains(notes, want) {
			t.Errorf("note %q missing among\n%s", want, notes)
		}
	}
}

// All errors at once, each with its line, column, value and mend.
func TestReadCSVErrors(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"values", "time,air,humidity,wind\n2026-01-15T03:00Z,31x,55,5\n2026-01-15T04:00Z,31,56,-5\nyesterday,31,0.5,5\n2026-01-15T04:00Z,1,1,1\n",
			[]string{`line 2, column "air": not a number: found "31x"`,
				`line 2, column "humidity": humidity is outside 0–1: found 55. Enter it as a fraction (0.55), or write 55 %`, "(and on 1 more lines)",
				`line 3, column "wind": wind is outside`, `line 4, column "time": time is not a date: found "yesterday"`, `line 5: the time stands twice`}},
		{"no zone", "time,air,humidity,wind\n2026-01-15 03:00,31,0.5,5\n", []string{"time has no zone", "+11:00"}},
		{"columns", "time,temperature,gust\n2026-01-15T03:00Z,31,5\n", []string{`no column holds the humidity`, `no column holds the wind`}},
		{"twice", "time,air in,air out,rh,wind\n2026-01-15T03:00Z,1,2,0.3,4\n", []string{`this column and "air in" both hold the air temperature`}},
		{"unit", "time,air,rh,wind (furlong)\n2026-01-15T03:00Z,1,0.2,3\n", []string{`unit "furlong" of the wind is not known`, "kmh"}},
		{"either way round", "time,air,rh,wind\n03/04/2026 10:00,1,0.2,3\n", []string{"two ways"}},
		{"decimal commas in commas", "time,air,rh,wind\n2026-01-15T03:00Z,1,5,0,22,3\n", []string{"more cells than the head has columns", ";"}},
		{"empty", "", []string{"needs a head"}},
		{"dew above air", "time,air,dew,wind\n2026-01-15T03:00Z,10,20,3\n", []string{"dew point is above the air temperature"}},
		{"calendar", "time,air,rh,wind\n2026-02-30T03:00,1,0.2,3\n2026-02-20 25:00,1,0.2,3\n", []string{"not a day of the calendar", "not a clock time"}},
	} {
		_, err := ReadCSV(strings.NewReader(c.text), Table{Source: Origin{Name: "yard.csv"}})
		if err == nil {
			t.Errorf("%s: read without a word", c.name)
			continue
		}
		for _, want := range c.want {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("%s: %q is missing in\n%v", c.name, want, err)
			}
		}
		var list *ReadErrors
		if !errors.As(err, &list) || len(list.List) == 0 {
			t.Errorf("%s: error is a %T", c.name, err)
		}
	}
}

// The clock shows 02:00 to 03:00 twice in autumn and skips it in spring.
func TestReadCSVClockChanges(t *testing.T) {
	zone, err := time.LoadLocation("Australia/Melbourne")
	if err != nil {
		t.Fatal(err)
	}
	text := "time,air,rh,wind\n"
	for _, clock := range []string{"01:30", "02:00", "02:30", "02:00", "02:30", "03:00"} {
		text += "2026-04-05 " + clock + ",20,0.5,3\n"
	}
	s, err := ReadCSV(strings.NewReader(text), Table{Zone: zone})
	if err != nil {
		t.Fatal(err)
	}
	for i, h := range s.Hours {
		if want := time.Date(2026, 4, 4, 14, 30+30*i, 0, 0, time.UTC); !h.Time.Equal(want) {
			t.Errorf("record %d: got %v, want %v", i, h.Time, want)
		}
	}
	_, err = ReadCSV(strings.NewReader("time,air,rh,wind\n2026-10-04 02:30,20,0.5,3\n"), Table{Zone: zone})
	if err == nil || !strings.Contains(err.Error(), "does not exist in Australia/Melbourne") {
		t.Errorf("skipped hour: %v", err)
	}
}
