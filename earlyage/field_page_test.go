package earlyage

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"slabwright/climate"
)

// measuredPage is the page that tells people how the model stands against
// measurement. Its tables are written by the tests of this file when
// SLABWRIGHT_WRITE_PAGES is set, and compared otherwise.
var measuredPage = filepath.Join("..", "docs", "measured.md")

// holdsTable compares the table of a name on the page with its rows, or writes it.
// Figures may be a tenth old; words may not.
func holdsTable(t *testing.T, name string, rows []string) {
	t.Helper()
	text, err := os.ReadFile(measuredPage)
	if err != nil {
		t.Fatal(err)
	}
	start, end := fmt.Sprintf("<!-- %s: written by go test ./earlyage -->\n", name), "<!-- end -->"
	before, rest, ok := strings.Cut(string(text), start)
	old, after, ok2 := strings.Cut(rest, end)
	if !ok || !ok2 {
		t.Fatalf("%s has no place for the table %q", measuredPage, name)
	}
	want := strings.Join(rows, "\n") + "\n"
	if os.Getenv("SLABWRIGHT_WRITE_PAGES") != "" {
		if err := os.WriteFile(measuredPage, []byte(before+start+want+end+after), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	oldRows := strings.Split(strings.TrimSuffix(old, "\n"), "\n")
	if len(oldRows) != len(rows) {
		t.Fatalf("%s, table %q: %d rows, now %d; set SLABWRIGHT_WRITE_PAGES=1 and run again", measuredPage, name, len(oldRows), len(rows))
	}
	for i := range rows {
		if !sameRow(oldRows[i], rows[i]) {
			t.Errorf("%s, table %q says\n%s\nnow\n%s\nset SLABWRIGHT_WRITE_PAGES=1, run again and read what the page says about it", measuredPage, name, oldRows[i], rows[i])
		}
	}
}

// sameRow compares two rows of a table cell by cell.
func sameRow(a, b string) bool {
	as, bs := strings.Split(a, "|"), strings.Split(b, "|")
	if len(as) != len(bs) {
		return false
	}
	for i := range as {
		x, errA := strconv.ParseFloat(strings.TrimSpace(as[i]), 64)
		y, errB := strconv.ParseFloat(strings.TrimSpace(bs[i]), 64)
		switch {
		case errA == nil && errB == nil:
			if math.Abs(x-y) > 0.1*math.Max(math.Abs(x), math.Abs(y))+0.05 {
				return false
			}
		case as[i] != bs[i]:
			return false
		}
	}
	return true
}

// figure writes a value with three digits, as people would.
func figure(v float64) string {
	if math.IsNaN(v) {
		return ""
	}
	digits := 2 - int(math.Floor(math.Log10(math.Max(math.Abs(v), 1e-9))))
	return strconv.FormatFloat(v, 'f', min(max(digits, 0), 3), 64)
}

// bound writes an end of a band; one far away is none.
func bound(low, high float64) string {
	switch {
	case low == 1.0001:
		return "above 1"
	case high == 0.99:
		return "below 1"
	}
	return fmt.Sprintf("%g to %g", low, high)
}

func TestPageOfMeasuredValues(t *testing.T) {
	rows := []string{"| source | quantity | unit | measured | got | off by | band (ours) | inside |", "|---|---|---|---|---|---|---|---|"}
	for _, r := range measuredRows(t) {
		got, _ := r.got(t)
		inside := "yes"
		if !(got >= r.low && got <= r.high) {
			inside = "**no**"
		}
		what := r.quantity
		for _, name := range []string{"month", "depth", "T", "days", "at", "day"} {
			if v, ok := r.inputs[name]; ok {
				what += fmt.Sprintf(", "+map[string]string{"month": "month %s", "depth": "%s mm down", "T": "at %s °C", "days": "%s days", "at": "at the %s", "day": "day %s"}[name], v)
			}
		}
		rows = append(rows, fmt.Sprintf("| %s | %s | %s | %s | %s | %s | %s | %s |", r.short, what, strings.ReplaceAll(r.unit, "m2", "m²"), r.measured, figure(got), figure(got-r.value), bound(r.low, r.high), inside))
	}
	holdsTable(t, "measured values", rows)
}

func TestPageOfPractice(t *testing.T) {
	head, line := "| day | practice, h |", "|---|---|"
	for _, m := range sanityMixes {
		head += " " + m.name + " |"
		line += "---|"
	}
	rows := []string{head, line}
	for _, d := range sanityDays {
		row := fmt.Sprintf("| %s | %g to %g |", d.name, d.opens[0], d.opens[1])
		for _, m := range sanityMixes {
			p := sanityPour(t, m, d)
			p.Count, p.Column.Until = 1, 48
			row += fmt.Sprintf(" %.1f |", sanityWindow(t, p).opens)
		}
		rows = append(rows, row)
	}
	holdsTable(t, "first cut", rows)
}

func TestPageOfPlasticLimits(t *testing.T) {
	rates := []float64{0.25, 0.5, 0.75, 1.0, 1.5}
	rows := []string{"| bleed water, kg/m² | final set, h | 0.25 | 0.5 | 0.75 | 1.0 | 1.5 kg/m²h |", "|---|---|---|---|---|---|---|"}
	for _, bled := range []float64{1.5, 0.75, 0.4} {
		for _, set := range [][2]float64{{2.5, 3.75}, {5, 7.5}} {
			row := fmt.Sprintf("| %g | %g |", bled, set[1])
			for _, rate := range rates {
				row += fmt.Sprintf(" %.2f |", tornAt(rate, bled, set[0], set[1]))
			}
			rows = append(rows, row)
		}
	}
	holdsTable(t, "plastic limits", rows)
	if rates[3] != climate.DryingLimit || rates[1] != climate.DryingLimitLowBleed {
		t.Error("the limits have moved")
	}
}
