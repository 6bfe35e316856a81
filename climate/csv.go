package climate

import (
	"fmt"
	"io"
	"math"
	"sort"
	"strings"
	"time"
)

// Table tells what a weather table does not say itself.
type Table struct {
	Zone       *time.Location // of times written without one; nil: each must carry its offset, or the head
	DayFirst   *bool          // whether 03/04/2026 is 3 April; nil: find out from the file
	WindHeight float64        // m; 0 is read as StationWindHeight
	MeanOver   time.Duration  // span before each stamp over which sun and rain are means; 0: at the stamp
	Source     Origin
}

// ReadCSV reads a table of weather as people and loggers write it: comma,
// semicolon or tab; decimal point or comma; a head that names each column and, if
// it likes, its unit ("wind_km_h", "wind (km/h)", "rh_%", "air_C", "air (F)");
// times as ISO 8601, or local in the zone given or named in the head. Without a
// unit a column is in °C, 0 to 1, m/s, W/m² or mm/h. Lines may come in any order.
//
// Humidity may be given as a dew point. Columns it does not know are left and named
// in the notes of the origin. Every error of the file comes back at once as
// [*ReadErrors], with line and column; then nothing is taken.
func ReadCSV(r io.Reader, about Table) (Series, error) {
	bad := &ReadErrors{Name: about.Source.Name}
	data, err := io.ReadAll(r)
	if err != nil {
		return Series{}, err
	}
	t, ok := cut(plainText(data), bad)
	if !ok {
		return Series{}, bad.orNil()
	}
	columns := t.columns(bad)
	s := Series{Source: about.Source, WindHeight: about.WindHeight, MeanOver: about.MeanOver}
	if s.WindHeight == 0 {
		s.WindHeight = StationWindHeight
	}
	if len(bad.List) > 0 {
		return Series{}, bad.orNil()
	}
	s.Source.Notes = append(append([]string{}, s.Source.Notes...), notesOn(columns)...)
	lines := t.hours(&s, columns, about, bad)
	bad.check(s.Hours, lines, func(name string) string { return headOf(columns, name) })
	if err := bad.orNil(); err != nil {
		return Series{}, err
	}
	return s, nil
}

// hours reads every line below the head into the series, in order of time, and
// returns the line each came from.
func (t sheet) hours(s *Series, columns []column, about Table, bad *ReadErrors) []int {
	clock := clockReader{zone: about.Zone, dayFirst: about.DayFirst}
	timeAt, dateAt := -1, -1
	for i, c := range columns {
		switch c.means {
		case "time":
			timeAt = i
		case "date":
			dateAt = i
		}
		if c.zone != nil {
			clock.zone = c.zone
		}
	}
	var texts []string
	for _, row := range t.rows[1:] {
		texts = append(texts, timeText(row, timeAt, dateAt))
	}
	if clock.dayFirst == nil {
		clock.learn(texts)
	}
	var lines []int
	for i, row := range t.rows[1:] {
		line := t.lines[i+1]
		if len(row) > len(columns) && strings.Join(row[len(columns):], "") != "" {
			bad.add(line, "", "more cells than the head has columns", fmt.Sprintf(": found %d, the head has %d. With decimal commas save the table with ; between the cells", len(row), len(columns)))
		}
		at, err := clock.read(texts[i])
		if err != nil {
			kind, rest, _ := strings.Cut(err.Error(), ":")
			bad.add(line, columns[max(timeAt, dateAt)].head, kind, ":"+rest)
		}
		clock.last = at
		h := t.hour(row, line, columns, bad)
		h.Time = at
		s.Hours, lines = append(s.Hours, h), append(lines, line)
	}
	return inOrder(s, lines, bad)
}

// timeText returns the date and time of a row as one text.
func timeText(row []string, timeAt, dateAt int) string {
	cell := func(i int) string {
		if i < 0 || i >= len(row) {
			return ""
		}
		return strings.TrimSpace(row[i])
	}
	return strings.TrimSpace(cell(dateAt) + " " + cell(timeAt))
}

// hour reads the numbers of one row.
func (t sheet) hour(row []string, line int, columns []column, bad *ReadErrors) Hour {
	h := NewHour(time.Time{}, math.NaN(), math.NaN(), math.NaN())
	dew := math.NaN()
	into := map[string]*float64{"air": &h.Air, "humidity": &h.Humidity, "dew": &dew, "wind": &h.Wind,
		"cloud": &h.Cloud, "sun": &h.Sun, "sky": &h.Sky, "rain": &h.Rain}
	for i, c := range columns {
		slot, ok := into[c.means]
		if !ok || i >= len(row) {
			continue
		}
		v, err := t.number(row[i], c)
		if err != nil {
			kind, rest, _ := strings.Cut(err.Error(), ":")
			bad.add(line, c.head, kind, ":"+rest)
		}
		*slot = v
	}
	if math.IsNaN(h.Humidity) && !math.IsNaN(dew) && !math.IsNaN(h.Air) {
		if dew > h.Air+0.6 {
			bad.add(line, headOf(columns, "dew point"), "dew point is above the air temperature",
				fmt.Sprintf(": found %.4g °C in air of %.4g °C. Look whether the two columns are swapped", dew, h.Air))
		}
		h.Humidity = HumidityFromDewPoint(h.Air, dew)
	}
	return h
}

// inOrder sorts the hours by time and names times that stand twice.
func inOrder(s *Series, lines []int, bad *ReadErrors) []int {
	order := make([]int, len(s.Hours))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return s.Hours[order[a]].Time.Before(s.Hours[order[b]].Time) })
	hours, sorted := make([]Hour, len(order)), make([]int, len(order))
	moved := false
	for i, from := range order {
		hours[i], sorted[i] = s.Hours[from], lines[from]
		moved = moved || i != from
		if i > 0 && hours[i].Time.Equal(hours[i-1].Time) && !hours[i].Time.IsZero() {
			bad.add(sorted[i], "", "the time stands twice in the file", fmt.Sprintf(": %s is on line %d too. Keep one of the two lines", stamp(hours[i].Time), sorted[i-1]))
		}
	}
	if moved {
		s.Source.Notes = append(s.Source.Notes, "the lines were not in order of time and have been sorted")
	}
	s.Hours = hours
	return sorted
}
