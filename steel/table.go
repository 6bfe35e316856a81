package steel

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
		panic(fmt.Sprintf("steel: table %s cannot be read: %v", name, err))
	}
	return table{name, all[0], all[1:]}
}

func (t table) column(name string) int {
	for i, h := range t.head {
		if h == name {
			return i
		}
	}
	panic("steel: table " + t.name + " has no column " + name)
}

// text returns a cell.
func (t table) text(row int, column string) string { return t.rows[row][t.column(column)] }

// number returns a cell as a number.
func (t table) number(row int, column string) float64 {
	v, err := strconv.ParseFloat(t.text(row, column), 64)
	if err != nil {
		panic("steel: table " + t.name + ": " + t.text(row, column) + " is not a number")
	}
	return v
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
