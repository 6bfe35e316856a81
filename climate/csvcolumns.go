package climate

import (
	"fmt"
	"strings"
)

// columns reads the head and says what is missing from it.
func (t sheet) columns(bad *ReadErrors) []column {
	columns := make([]column, len(t.rows[0]))
	first := map[string]string{}
	for i, head := range t.rows[0] {
		c := readHead(head)
		columns[i] = c
		if c.means == "" || c.means == "other" {
			continue
		}
		if twice, ok := first[c.means]; ok {
			bad.add(t.lines[0], c.head, "", fmt.Sprintf("this column and %q both hold the %s: keep one, or rename the other", twice, nameOf(c.means)))
		}
		first[c.means] = c.head
		if c.badUnit != "" {
			bad.add(t.lines[0], c.head, "", fmt.Sprintf("unit %q of the %s is not known: %s", c.badUnit, nameOf(c.means), unitsOf(c.means)))
		}
	}
	for _, need := range [][]string{{"time", "date"}, {"air"}, {"humidity", "dew"}, {"wind"}} {
		have := false
		for _, means := range need {
			_, ok := first[means]
			have = have || ok
		}
		if !have {
			bad.add(t.lines[0], "", "", fmt.Sprintf("no column holds the %s: name one %q. Found: %s",
				nameOf(need[0]), need[0], strings.Join(t.rows[0], " | ")))
		}
	}
	return columns
}

// notesOn says which columns were left and which were read without a unit.
func notesOn(columns []column) []string {
	var notes []string
	for _, c := range columns {
		switch {
		case c.means == "" || c.means == "other":
			notes = append(notes, fmt.Sprintf("column %q was not read", c.head))
		case c.unit == "" && c.means != "time" && c.means != "date":
			notes = append(notes, fmt.Sprintf("column %q names no unit and was read as %s", c.head, plainUnit[c.means]))
		}
	}
	return notes
}

// plainUnit is the unit of a column that names none.
var plainUnit = map[string]string{"air": "°C", "dew": "°C", "humidity": "a fraction 0–1", "wind": "m/s",
	"cloud": "a fraction 0–1", "sun": "W/m²", "sky": "W/m²", "rain": "mm/h"}

// headOf returns the head of the column that holds a quantity.
func headOf(columns []column, name string) string {
	for _, c := range columns {
		if c.means != "" && nameOf(c.means) == name {
			return c.head
		}
	}
	if name == "humidity" {
		return headOf(columns, "dew point")
	}
	return ""
}

// nameOf returns the word used in messages for what a column holds.
func nameOf(means string) string {
	switch means {
	case "air":
		return "air temperature"
	case "dew":
		return "dew point"
	case "sky":
		return "sky radiation"
	}
	return means
}

// unitsOf lists the units a column may be written in.
func unitsOf(means string) string {
	var units []string
	for _, row := range tableRows(columnUnitsCSV) {
		if row[0] == means {
			units = append(units, row[1])
		}
	}
	return "write one of " + strings.Join(units, ", ")
}
