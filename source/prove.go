package source

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"path"
	"sort"
	"strconv"
	"strings"
)

// Row is one published value to compare with, as it stands in a file of
// testdata/published.
type Row struct {
	File     string  `json:"file"`     // the table's file, without folder
	Source   string  `json:"source"`   // the work and table, from the file's head
	ID       string  `json:"id"`       // row name, unique in its file
	Quantity string  `json:"quantity"` // which of our functions is asked
	Inputs   string  `json:"inputs"`   // "Tc=31 Ta=27 r=0.5"
	Expected float64 `json:"expected"`
	Unit     string  `json:"unit"`
	Tol      float64 `json:"tol"`
	Relative bool    `json:"relative"` // tolerance is a share of the expected value
	Known    string  `json:"known"`    // how the expected value is known
	Note     string  `json:"note,omitempty"`
}

// Result is a row beside what our code gives.
type Result struct {
	Row
	Got  float64 `json:"got"`
	Off  float64 `json:"off"` // got - expected
	OK   bool    `json:"ok"`
	Fail string  `json:"fail,omitempty"` // why nothing was computed
}

// String returns the line a person reads to judge the row without opening a file.
func (r Result) String() string {
	kind := "abs"
	if r.Relative {
		kind = "rel"
	}
	if r.Fail != "" {
		return fmt.Sprintf("%s %s %s(%s): %s", r.File, r.ID, r.Quantity, r.Inputs, r.Fail)
	}
	return fmt.Sprintf("%s %s %s(%s): got %.6g, expected %.6g %s, off by %.3g, tolerance %g %s",
		r.File, r.ID, r.Quantity, r.Inputs, r.Got, r.Expected, r.Unit, r.Off, r.Tol, kind)
}

// Inputs are the named inputs of a row.
type Inputs map[string]string

// Num returns a numeric input. It panics when the row lacks it; [Prove] turns
// that into a failed row.
func (in Inputs) Num(name string) float64 {
	text, ok := in[name]
	if !ok {
		panic(missingInput("no input " + name))
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(missingInput("input " + name + " is not a number: " + text))
	}
	return v
}

// NumOr returns a numeric input, or fallback when the row lacks it.
func (in Inputs) NumOr(name string, fallback float64) float64 {
	if _, ok := in[name]; !ok {
		return fallback
	}
	return in.Num(name)
}

// Word returns a text input.
func (in Inputs) Word(name string) string {
	text, ok := in[name]
	if !ok {
		panic(missingInput("no input " + name))
	}
	return text
}

type missingInput string

// Func is the function of ours that answers a quantity of the tables.
type Func func(Inputs) float64

// Together joins the functions of several subjects; a quantity that two of them
// answer is a programmer's mistake.
func Together(subjects ...map[string]Func) map[string]Func {
	all := map[string]Func{}
	for _, subject := range subjects {
		for quantity, f := range subject {
			if all[quantity] != nil {
				panic("source: two functions answer " + quantity)
			}
			all[quantity] = f
		}
	}
	return all
}

// Prove compares every row of every .csv file in dir with our functions, one
// function a quantity. A row whose quantity has no function, or whose inputs are
// wrong, is a failed result; nothing is left out.
//
// A file starts with "# source: ..." and may go on with other # lines; then comes
// the head "id,quantity,inputs,expected,unit,tol,kind,known,note" where kind is
// rel or abs and inputs is "name=value name=value".
func Prove(files fs.FS, dir string, funcs map[string]Func) []Result {
	names, err := fs.Glob(files, path.Join(dir, "*.csv"))
	if err != nil || len(names) == 0 {
		panic("source: no published tables in " + dir)
	}
	sort.Strings(names)
	var results []Result
	for _, name := range names {
		f, err := files.Open(name)
		if err != nil {
			panic("source: " + err.Error())
		}
		rows, err := ReadRows(f, path.Base(name))
		f.Close()
		if err != nil {
			panic("source: " + err.Error())
		}
		for _, row := range rows {
			results = append(results, compare(row, funcs))
		}
	}
	return results
}

// ReadRows reads one table of published values.
func ReadRows(r io.Reader, file string) ([]Row, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	var cite string
	for _, line := range strings.Split(string(text), "\n") {
		if after, ok := strings.CutPrefix(line, "# source:"); ok && cite == "" {
			cite = strings.TrimSpace(after)
		}
	}
	if cite == "" {
		return nil, fmt.Errorf("%s: first comment must be \"# source: ...\"", file)
	}
	c := csv.NewReader(strings.NewReader(string(text)))
	c.Comment = '#'
	records, err := c.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	const head = "id,quantity,inputs,expected,unit,tol,kind,known,note"
	if len(records) < 2 || strings.Join(records[0], ",") != head {
		return nil, fmt.Errorf("%s: head must be %q with rows below", file, head)
	}
	var rows []Row
	seen := map[string]bool{}
	for _, rec := range records[1:] {
		row, err := parseRow(rec)
		if err == nil && seen[row.ID] {
			err = errors.New("id used twice")
		}
		if err != nil {
			return nil, fmt.Errorf("%s: row %s: %w", file, rec[0], err)
		}
		seen[row.ID] = true
		row.File, row.Source = file, cite
		rows = append(rows, row)
	}
	return rows, nil
}

func parseRow(rec []string) (Row, error) {
	row := Row{ID: rec[0], Quantity: rec[1], Inputs: rec[2], Unit: rec[4], Known: rec[7], Note: rec[8]}
	var err error
	if row.Expected, err = strconv.ParseFloat(rec[3], 64); err != nil {
		return row, fmt.Errorf("expected %q is not a number", rec[3])
	}
	if row.Tol, err = strconv.ParseFloat(rec[5], 64); err != nil || row.Tol < 0 {
		return row, fmt.Errorf("tolerance %q is not a number from 0 up", rec[5])
	}
	if rec[6] != "rel" && rec[6] != "abs" {
		return row, fmt.Errorf("kind %q is neither rel nor abs", rec[6])
	}
	row.Relative = rec[6] == "rel"
	if row.Known == "" {
		return row, errors.New("known is empty: say how the value is known")
	}
	return row, nil
}

func compare(row Row, funcs map[string]Func) (res Result) {
	res.Row = row
	fn, ok := funcs[row.Quantity]
	if !ok {
		res.Fail = "no function answers this quantity"
		return res
	}
	in := Inputs{}
	for _, pair := range strings.Fields(row.Inputs) {
		name, value, ok := strings.Cut(pair, "=")
		if !ok {
			res.Fail = "input " + pair + " is not name=value"
			return res
		}
		in[name] = value
	}
	defer func() {
		if p := recover(); p != nil {
			m, ok := p.(missingInput)
			if !ok {
				panic(p)
			}
			res.Fail = string(m)
		}
	}()
	res.Got = fn(in)
	res.Off = res.Got - row.Expected
	limit := row.Tol
	if row.Relative {
		limit = row.Tol * math.Abs(row.Expected)
	}
	res.OK = math.Abs(res.Off) <= limit // false for NaN
	return res
}
