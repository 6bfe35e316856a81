package ground

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

// table is an embedded csv table, read once.
type table struct {
	name string
	head []string
	rows [][]string
}

// readTable reads an embedded table. A fault in it is a programmer's mistake.
func readTable(name, text string) table {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil || len(all) < 2 {
		panic(fmt.Sprintf("ground: table %s cannot be read: %v", name, err))
	}
	return table{name, all[0], all[1:]}
}

func (t table) text(row int, column string) string {
	for i, h := range t.head {
		if h == column {
			return t.rows[row][i]
		}
	}
	panic("ground: table " + t.name + " has no column " + column)
}

func (t table) number(row int, column string) float64 {
	v, err := strconv.ParseFloat(t.text(row, column), 64)
	if err != nil {
		panic("ground: table " + t.name + ": " + t.text(row, column) + " is not a number")
	}
	return v
}

// numbers returns a whole column.
func (t table) numbers(column string) (list []float64) {
	for i := range t.rows {
		list = append(list, t.number(i, column))
	}
	return list
}

// find returns the row whose first column is the key, or -1.
func (t table) find(key string) int {
	for i, row := range t.rows {
		if row[0] == key {
			return i
		}
	}
	return -1
}

func (t table) keys() (list []string) {
	for _, row := range t.rows {
		list = append(list, row[0])
	}
	return list
}

// bracket returns the interval of rising points that holds x and how far along it
// x is; ok is false outside the points.
func bracket(points []float64, x float64) (i int, along float64, ok bool) {
	last := len(points) - 1
	if !(x >= points[0] && x <= points[last]) {
		return 0, 0, false
	}
	for i = 0; i < last-1 && x > points[i+1]; i++ {
	}
	return i, (x - points[i]) / (points[i+1] - points[i]), true
}
