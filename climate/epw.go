package climate

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"time"
)

// typicalHour is one line of a weather year before it is laid on a calendar.
type typicalHour struct {
	line                   int
	year, month, day, hour int // hour 1 ends at 01:00
	hourOf                 Hour
}

// The places of the columns of an EPW line that are read, from 0.
const (
	epwYear, epwMonth, epwDay, epwHour = 0, 1, 2, 3
	epwAir, epwDew, epwHumidity        = 6, 7, 8
	epwSky, epwSun                     = 12, 13
	epwWind, epwCloud                  = 21, 22
	epwRain, epwRainHours              = 33, 34
	epwColumns, epwColumnsLeast        = 35, 29 // older files stop before the rain
)

// ReadEPW reads a weather year in the EnergyPlus weather form: eight head lines,
// then 35 columns. Hour 1 runs from 00:00 to 01:00 in the standard time of the
// place and is stamped at its end; sun is the mean over it. Codes for missing
// values are read as not known.
//
//	year  the calendar year to lay the record on, as the months of a typical year
//	      come from different years; 0: keep the years of the file if they are one,
//	      else that of its first line
//
// Every error of the file comes back at once as [*ReadErrors].
func ReadEPW(r io.Reader, name string, year int) (Series, error) {
	bad := &ReadErrors{Name: name}
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, 1<<20)
	s := Series{Source: Origin{Name: name, Kind: Typical}, WindHeight: StationWindHeight, MeanOver: time.Hour}
	zone := time.UTC
	var rows []typicalHour
	n := 0
	for lines.Scan() {
		n++
		cells := strings.Split(strings.TrimSuffix(lines.Text(), "\r"), ",")
		switch {
		case n == 1:
			zone = epwLocation(cells, &s.Source, bad)
		case n <= 8 || strings.TrimSpace(lines.Text()) == "":
		case len(cells) < epwColumnsLeast:
			bad.add(n, "", "", fmt.Sprintf("found %d columns, an EPW line has %d", len(cells), epwColumns))
		default:
			rows = append(rows, epwLine(n, cells, bad))
		}
	}
	if err := lines.Err(); err != nil {
		return Series{}, fmt.Errorf("%s: %w", name, err)
	}
	if len(rows) == 0 && len(bad.List) == 0 {
		bad.add(0, "", "", "no hours below the eight head lines")
	}
	layOut(&s, rows, zone, year, bad)
	if err := bad.orNil(); err != nil {
		return Series{}, err
	}
	return s, nil
}

// epwLocation reads the first line: place, latitude, longitude, hours from UTC,
// altitude.
func epwLocation(cells []string, o *Origin, bad *ReadErrors) *time.Location {
	if len(cells) < 10 || strings.TrimSpace(cells[0]) != "LOCATION" {
		bad.add(1, "", "", "the first line of an EPW file starts with LOCATION and has ten cells: is this another kind of file?")
		return time.UTC
	}
	o.Name = strings.TrimSpace(cells[1])
	return stationPlace(o, cells[6], cells[7], cells[9], cells[8], bad)
}

// stationPlace reads where a station is and its standard time.
func stationPlace(o *Origin, latitude, longitude, altitude, zone string, bad *ReadErrors) *time.Location {
	read := func(text, what string, low, high float64) float64 {
		v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
		if err != nil || !(v >= low && v <= high) {
			bad.add(1, what, "", fmt.Sprintf("found %q, a number from %g to %g is expected", text, low, high))
		}
		return v
	}
	lat, lon := read(latitude, "latitude", -90, 90), read(longitude, "longitude", -180, 180)
	alt, hours := read(altitude, "altitude", -500, 9000), read(zone, "hours from UTC", -12, 14)
	o.Latitude, o.Longitude, o.Altitude = &lat, &lon, &alt
	location := time.FixedZone(fmt.Sprintf("UTC%+g", hours), int(math.Round(hours*3600)))
	o.Zone = location.String()
	return location
}

// epwLine reads one hour.
func epwLine(n int, cells []string, bad *ReadErrors) typicalHour {
	read := func(i int, what string, missing float64) float64 {
		if i >= len(cells) {
			return math.NaN()
		}
		return stationNumber(n, cells[i], what, func(v float64) bool { return v >= missing }, bad)
	}
	whole := func(i int, what string) int {
		return int(read(i, what, 1e9))
	}
	h := NewHour(time.Time{}, read(epwAir, "dry bulb", 99.9), read(epwHumidity, "relative humidity", 999)/100, read(epwWind, "wind speed", 999))
	if dew := read(epwDew, "dew point", 99.9); math.IsNaN(h.Humidity) && !math.IsNaN(dew) && !math.IsNaN(h.Air) {
		h.Humidity = HumidityFromDewPoint(h.Air, dew)
	}
	h.Cloud = read(epwCloud, "total sky cover", 99) / 10
	h.Sun, h.Sky = read(epwSun, "global horizontal", 9999), read(epwSky, "infrared from sky", 9999)
	h.Rain = read(epwRain, "liquid precipitation depth", 999)
	if hours := read(epwRainHours, "liquid precipitation quantity", 99); hours > 1 {
		h.Rain /= hours
	}
	return typicalHour{n, whole(epwYear, "year"), whole(epwMonth, "month"), whole(epwDay, "day"), whole(epwHour, "hour"), h}
}

// stationNumber reads a cell of a station file; a code for missing is NaN.
func stationNumber(line int, cell, what string, missing func(float64) bool, bad *ReadErrors) float64 {
	v, err := strconv.ParseFloat(strings.TrimSpace(cell), 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		bad.add(line, what, "not a number", fmt.Sprintf(": found %q", cell))
		return math.NaN()
	}
	if missing(v) {
		return math.NaN()
	}
	return v
}

// layOut puts the hours of a weather year on the calendar, checks that each is
// possible and later than the one before.
func layOut(s *Series, rows []typicalHour, zone *time.Location, year int, bad *ReadErrors) {
	oneYear := true
	for _, r := range rows {
		oneYear = oneYear && r.year == rows[0].year
	}
	if year == 0 && len(rows) > 0 {
		year = rows[0].year
	}
	if !oneYear {
		s.Source.Notes = append(s.Source.Notes, fmt.Sprintf("a typical year: its months come from different years and are laid on %d", year))
	} else if len(rows) > 0 && year != rows[0].year {
		s.Source.Notes = append(s.Source.Notes, fmt.Sprintf("the record of %d is laid on %d", rows[0].year, year))
	}
	lines := make([]int, 0, len(rows))
	for _, r := range rows {
		if t := time.Date(year, time.Month(r.month), r.day, 0, 0, 0, 0, time.UTC); r.month < 1 || r.month > 12 || r.day < 1 || r.hour < 1 || r.hour > 24 || t.Day() != r.day {
			bad.add(r.line, "date", "no such hour in the calendar", fmt.Sprintf(": found month %d, day %d, hour %d; hours run from 1 to 24", r.month, r.day, r.hour))
			continue
		}
		h := r.hourOf
		h.Time = time.Date(year, time.Month(r.month), r.day, r.hour, 0, 0, 0, zone).UTC()
		if k := len(s.Hours); k > 0 && !h.Time.After(s.Hours[k-1].Time) {
			bad.add(r.line, "date", "this hour is not later than the one before it", fmt.Sprintf(": found month %d, day %d, hour %d", r.month, r.day, r.hour))
		}
		s.Hours, lines = append(s.Hours, h), append(lines, r.line)
	}
	bad.check(s.Hours, lines, func(name string) string { return name })
}
