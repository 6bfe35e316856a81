package fem

import (
	"encoding/csv"
	"flag"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// large makes the tests solve the finest meshes of the tables too; they take a minute
// and 2 GB.
var large = flag.Bool("large", false, "solve the finest meshes of the tables too")

// tableRow is one value of a table in testdata/tables. Head of a table: # source,
// then id,quantity,inputs,expected,unit,tol,kind,known,note as for the published
// tables of the other packages.
type tableRow struct {
	id, quantity  string
	in            map[string]string
	expected, tol float64
	unit, known   string
	note          string
}

func (r tableRow) num(t *testing.T, name string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r.in[name], 64)
	if err != nil {
		t.Fatalf("row %s: input %s: %v", r.id, name, err)
	}
	return v
}

// readTable reads a table; every row must say how it is known.
func readTable(t *testing.T, name string) []tableRow {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "tables", name))
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(string(text), "# source:") {
		t.Fatalf("%s does not name its source", name)
	}
	c := csv.NewReader(strings.NewReader(string(text)))
	c.Comment = '#'
	records, err := c.ReadAll()
	if err != nil || len(records) < 2 {
		t.Fatalf("%s: %d records, %v", name, len(records), err)
	}
	var rows []tableRow
	for _, rec := range records[1:] {
		r := tableRow{id: rec[0], quantity: rec[1], unit: rec[4], known: rec[7], note: rec[8], in: map[string]string{}}
		for _, pair := range strings.Fields(rec[2]) {
			k, v, _ := strings.Cut(pair, "=")
			r.in[k] = v
		}
		var e1, e2 error
		r.expected, e1 = strconv.ParseFloat(rec[3], 64)
		r.tol, e2 = strconv.ParseFloat(rec[5], 64)
		if e1 != nil || e2 != nil || r.known == "" {
			t.Fatalf("%s: row %s: %v %v, known %q", name, r.id, e1, e2, r.known)
		}
		if rec[6] == "rel" {
			r.tol *= math.Abs(r.expected)
		}
		rows = append(rows, r)
	}
	return rows
}

// compare checks one value against its row. A row noted as doubted or open is not met
// and not claimed: it is shown beside what we get.
func (r tableRow) compare(t *testing.T, got float64) {
	t.Helper()
	met := math.Abs(got-r.expected) <= r.tol
	if strings.HasPrefix(r.note, "doubted:") || strings.HasPrefix(r.note, "open:") {
		t.Logf("%s: not claimed, got %.8g, expected %.8g %s, tolerance %.2g, met %v; %s", r.id, got, r.expected, r.unit, r.tol, met, r.note)
		return
	}
	if !met {
		t.Errorf("%s (%s %v): got %.8g, expected %.8g %s, off by %.2g, tolerance %.2g", r.id, r.quantity, r.in, got, r.expected, r.unit, got-r.expected, r.tol)
	}
}
