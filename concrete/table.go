package concrete

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

// readTable reads an embedded csv table: rows by their first column, each a map of
// the other columns' text. A fault in it is a programmer's mistake.
func readTable(name, text string) (keys []string, rows map[string]map[string]string) {
	head, body := headAndRecords(name, text)
	rows = map[string]map[string]string{}
	for _, record := range body {
		if rows[record[0]] != nil {
			panic("concrete: table " + name + " has " + record[0] + " twice")
		}
		row := map[string]string{}
		for i, column := range head {
			row[column] = record[i]
		}
		keys = append(keys, record[0])
		rows[record[0]] = row
	}
	return keys, rows
}

// records reads the rows of an embedded table below its head.
func records(name, text string) [][]string {
	_, body := headAndRecords(name, text)
	return body
}

func headAndRecords(name, text string) (head []string, body [][]string) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil || len(all) < 2 {
		panic(fmt.Sprintf("concrete: table %s cannot be read: %v", name, err))
	}
	return all[0], all[1:]
}

// number reads one cell of an embedded table.
func number(table string, row map[string]string, column string) float64 {
	v, err := strconv.ParseFloat(row[column], 64)
	if err != nil {
		panic("concrete: table " + table + " column " + column + ": " + row[column] + " is not a number")
	}
	return v
}

// curve reads an embedded table of two columns as points of a line.
func curve(name, text, x, y string) (xs, ys []float64) {
	keys, rows := readTable(name, text)
	for _, k := range keys {
		xs = append(xs, number(name, rows[k], x))
		ys = append(ys, number(name, rows[k], y))
	}
	return xs, ys
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
