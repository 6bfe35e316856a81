// Package table reads the csv tables that lie beside the code that uses them. It
// knows no concrete.
//
// A table has a head line and at least one row; lines that begin with # are
// remarks. A fault in one is a programmer's mistake, so everything here panics
// with the name of the table.
package table

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

// Table is a table read once.
type Table struct {
	Name string
	Head []string
	Rows [][]string
}

// Read reads the text of a table; the name is for its faults.
func Read(name, text string) Table {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil || len(all) < 2 {
		panic(fmt.Sprintf("table %s cannot be read: %v, %d lines", name, err, len(all)))
	}
	return Table{name, all[0], all[1:]}
}

// Text returns a cell.
func (t Table) Text(row int, column string) string {
	for i, h := range t.Head {
		if h == column {
			return t.Rows[row][i]
		}
	}
	panic("table " + t.Name + " has no column " + column)
}

// Number returns a cell as a number.
func (t Table) Number(row int, column string) float64 {
	v, err := strconv.ParseFloat(t.Text(row, column), 64)
	if err != nil {
		panic("table " + t.Name + ": " + t.Text(row, column) + " in column " + column + " is not a number")
	}
	return v
}

// Numbers returns a whole column.
func (t Table) Numbers(column string) (list []float64) {
	for i := range t.Rows {
		list = append(list, t.Number(i, column))
	}
	return list
}

// Find returns the row whose first column is the key, or -1.
func (t Table) Find(key string) int {
	for i, row := range t.Rows {
		if row[0] == key {
			return i
		}
	}
	return -1
}

// Keys returns the first column.
func (t Table) Keys() (list []string) {
	for _, row := range t.Rows {
		list = append(list, row[0])
	}
	return list
}

// Records returns every row by column.
func (t Table) Records() (all []map[string]string) {
	for _, row := range t.Rows {
		record := map[string]string{}
		for i, column := range t.Head {
			record[column] = row[i]
		}
		all = append(all, record)
	}
	return all
}
