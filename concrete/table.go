package concrete

import (
	"strconv"

	"slabwright/internal/table"
)

// readTable reads an embedded csv table: rows by their first column, each a map of
// the other columns' text. A fault in it is a programmer's mistake.
func readTable(name, text string) (keys []string, rows map[string]map[string]string) {
	t := table.Read(name, text)
	keys, rows = t.Keys(), map[string]map[string]string{}
	for i, row := range t.Records() {
		if rows[keys[i]] != nil {
			panic("concrete: table " + name + " has " + keys[i] + " twice")
		}
		rows[keys[i]] = row
	}
	return keys, rows
}

// number reads one cell of an embedded table.
func number(name string, row map[string]string, column string) float64 {
	v, err := strconv.ParseFloat(row[column], 64)
	if err != nil {
		panic("concrete: table " + name + " column " + column + ": " + row[column] + " is not a number")
	}
	return v
}

// curve reads an embedded table of two columns as points of a line.
func curve(name, text, x, y string) (xs, ys []float64) {
	t := table.Read(name, text)
	return t.Numbers(x), t.Numbers(y)
}

// interpolate returns the value at x of a line through points with rising xs,
// level beyond its ends.
func interpolate(xs, ys []float64, x float64) float64 {
	if x <= xs[0] {
		return ys[0]
	}
	for i := 1; i < len(xs); i++ {
		if x <= xs[i] {
			return ys[i-1] + (ys[i]-ys[i-1])*(x-xs[i-1])/(xs[i]-xs[i-1])
		}
	}
	return ys[len(ys)-1]
}
