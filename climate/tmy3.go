package climate

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strings"
	"time"
)

// tmy3Heads are the columns of a TMY3 table that are read, by the start of their
// heads.
var tmy3Heads = []string{"Date", "Time", "GHI (", "TotCld (", "Dry-bulb (", "RHum (", "Wspd (", "Lprecip depth", "Lprecip quantity"}

// ReadTMY3 reads a weather year in the comma form of the third typical
// meteorological year: the station on line 1, column names on line 2, then a line
// for each hour, stamped 01:00 to 24:00 at its end in the standard time of the
// place. Year is as in [ReadEPW].
//
// Every error of the file comes back at once as [*ReadErrors].
func ReadTMY3(r io.Reader, name string, year int) (Series, error) {
	bad := &ReadErrors{Name: name}
	c := csv.NewReader(r)
	c.FieldsPerRecord, c.LazyQuotes = -1, true
	s := Series{Source: Origin{Name: name, Kind: Typical}, WindHeight: StationWindHeight, MeanOver: time.Hour}
	zone := time.UTC
	var places []int
	var rows []typicalHour
	for n := 1; ; n++ {
		cells, err := c.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			bad.add(n, "", "the line cannot be cut into cells", ": "+err.Error())
			if _, torn := err.(*csv.ParseError); !torn {
				return Series{}, fmt.Errorf("%s: %w", name, err)
			}
			continue
		}
		switch n {
		case 1:
			zone = tmy3Station(cells, &s.Source, bad)
		case 2:
			places = tmy3Places(cells, bad)
		default:
			if places != nil {
				if row, ok := tmy3Line(n, cells, places, bad); ok {
					rows = append(rows, row)
				}
			}
		}
	}
	if len(rows) == 0 && len(bad.List) == 0 {
		bad.add(0, "", "", "no hours below the two head lines")
	}
	layOut(&s, rows, zone, year, bad)
	if err := bad.orNil(); err != nil {
		return Series{}, err
	}
	return s, nil
}

// tmy3Station reads line 1: number, name, state, hours from UTC, latitude,
// longitude, altitude.
func tmy3Station(cells []string, o *Origin, bad *ReadErrors) *time.Location {
	if len(cells) < 7 {
		bad.add(1, "", "", fmt.Sprintf("found %d cells, the station line has seven: is this another kind of file?", len(cells)))
		return time.UTC
	}
	o.Name = strings.TrimSpace(cells[1])
	return stationPlace(o, cells[4], cells[5], cells[6], cells[3], bad)
}

// tmy3Places finds the columns; nil when one is missing.
func tmy3Places(cells []string, bad *ReadErrors) []int {
	places := make([]int, len(tmy3Heads))
	for i, head := range tmy3Heads {
		places[i] = -1
		for j, cell := range cells {
			if strings.HasPrefix(strings.TrimSpace(cell), head) {
				places[i] = j
				break
			}
		}
		if places[i] < 0 && i < 7 { // the rain columns came later
			bad.add(2, head, "", "this column is missing")
			return nil
		}
	}
	return places
}

// tmy3Line reads one hour; not ok when its date cannot be read.
func tmy3Line(n int, cells []string, places []int, bad *ReadErrors) (row typicalHour, ok bool) {
	cell := func(i int) string {
		if places[i] < 0 || places[i] >= len(cells) {
			return "-9900"
		}
		return cells[places[i]]
	}
	read := func(i int) float64 {
		return stationNumber(n, cell(i), tmy3Heads[i], func(v float64) bool { return v <= -900 }, bad)
	}
	row.line = n
	if _, err := fmt.Sscanf(cell(0)+" "+cell(1), "%d/%d/%d %d:00", &row.month, &row.day, &row.year, &row.hour); err != nil {
		bad.add(n, "Date", "the date is not MM/DD/YYYY with an hour from 01:00 to 24:00", fmt.Sprintf(": found %q %q", cell(0), cell(1)))
		return row, false
	}
	h := NewHour(time.Time{}, read(4), read(5)/100, read(6))
	h.Sun, h.Cloud = read(2), read(3)/10
	if hours := read(8); hours >= 1 && !math.IsNaN(hours) {
		h.Rain = read(7) / hours
	}
	row.hourOf = h
	return row, true
}
