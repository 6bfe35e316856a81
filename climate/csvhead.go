package climate

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"
	"time"
	"unicode"

	_ "time/tzdata" // zones named in a head must be known on every machine, and in the browser
)

//go:embed column_words.csv
var columnWordsCSV string

//go:embed column_units.csv
var columnUnitsCSV string

var columnWords = readColumnWords(columnWordsCSV)

var columnUnits = readColumnUnits(columnUnitsCSV)

// scale turns a number as written into our unit.
type scale struct{ factor, offset float64 }

func readColumnWords(text string) map[string]string {
	words := map[string]string{}
	for _, row := range tableRows(text) {
		words[row[0]] = row[1]
	}
	return words
}

func readColumnUnits(text string) map[[2]string]scale {
	units := map[[2]string]scale{}
	for _, row := range tableRows(text) {
		factor, err := strconv.ParseFloat(row[2], 64)
		if err != nil {
			panic("climate: column_units.csv: " + err.Error())
		}
		offset, err := strconv.ParseFloat(row[3], 64)
		if err != nil {
			panic("climate: column_units.csv: " + err.Error())
		}
		units[[2]string{row[0], row[1]}] = scale{factor, offset}
	}
	return units
}

func tableRows(text string) [][]string {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		panic("climate: embedded table: " + err.Error())
	}
	return rows[1:]
}

// column is one column of a weather table as its head describes it.
type column struct {
	head    string // as written
	means   string // air, humidity, dew, wind, cloud, sun, sky, rain, time, date, other, ""
	unit    string // as found, "" when the head names none
	scale   scale
	zone    *time.Location // of a time column that names one
	badUnit string         // rest of the head that was not understood
}

// readHead works out what a column holds from its head: "wind (km/h)", "rh_%",
// "air_C", "time (Australia/Melbourne)".
func readHead(head string) column {
	c := column{head: strings.TrimSpace(head), scale: scale{1, 0}}
	words := headWords(head)
	var rest []string
	for _, w := range words {
		means, ok := columnWords[w]
		switch {
		case !ok:
			rest = append(rest, w)
		case means == "other":
			c.means = "other"
		case c.means == "" || c.means == "air" && means == "dew" || c.means == "dew" && means == "air":
			c.means = moreTelling(c.means, means)
		case c.means == "date" && means == "time": // "date time" in one column
			c.means = "time"
		case c.means == "sky" && means != "sky": // "sky cover", "sky cloud"
			c.means = means
		}
	}
	if c.means == "time" || c.means == "date" {
		c.zone = zoneIn(head)
		return c
	}
	c.findUnit(rest)
	return c
}

// moreTelling keeps "dew" over "air" in "dew point temperature".
func moreTelling(a, b string) string {
	if a == "dew" || b == "dew" {
		return "dew"
	}
	return b
}

// findUnit takes the longest run of words that is a unit, the last one of equal
// length ("rain in mm" is in mm).
func (c *column) findUnit(rest []string) {
	for length := len(rest); length > 0; length-- {
		for i := len(rest) - length; i >= 0; i-- {
			joined := strings.Join(rest[i:i+length], "")
			if s, ok := columnUnits[[2]string{c.means, joined}]; ok {
				c.unit, c.scale = joined, s
				return
			}
		}
	}
	if _, inside, ok := strings.Cut(c.head, "("); ok && c.means != "" && c.means != "other" {
		c.badUnit = strings.TrimRight(inside, ") ")
	}
}

// headWords cuts a head into lower-case words at every sign that is not a letter,
// a digit, % or °.
func headWords(head string) []string {
	return strings.FieldsFunc(strings.ToLower(head), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '%' && r != '°' && r != '²'
	})
}

// zoneIn finds a zone in a head such as "time (UTC)", "time [UTC+10:00]" or
// "time Australia/Melbourne".
func zoneIn(head string) *time.Location {
	for _, word := range strings.FieldsFunc(head, func(r rune) bool { return strings.ContainsRune(" ()[],;", r) }) {
		if zone := zoneNamed(word); zone != nil {
			return zone
		}
	}
	return nil
}

// zoneNamed returns the zone of a name ("UTC", "Europe/Berlin") or an offset
// ("UTC+9:30", "+10", "-07:00"), nil when the word is neither.
func zoneNamed(word string) *time.Location {
	upper := strings.ToUpper(word)
	if upper == "UTC" || upper == "GMT" || upper == "Z" {
		return time.UTC
	}
	offset := strings.TrimPrefix(strings.TrimPrefix(upper, "UTC"), "GMT")
	if len(offset) >= 2 && (offset[0] == '+' || offset[0] == '-') {
		h, m, _ := strings.Cut(offset[1:], ":")
		if len(h) == 4 && m == "" {
			h, m = h[:2], h[2:]
		}
		hours, err := strconv.Atoi(h)
		minutes, err2 := strconv.Atoi("0" + m)
		if err != nil || err2 != nil || hours > 14 || minutes > 59 {
			return nil
		}
		seconds := hours*3600 + minutes*60
		if offset[0] == '-' {
			seconds = -seconds
		}
		return time.FixedZone("UTC"+offset, seconds)
	}
	if strings.Contains(word, "/") && !strings.Contains(word, ".") {
		if zone, err := time.LoadLocation(word); err == nil {
			return zone
		}
	}
	return nil
}
