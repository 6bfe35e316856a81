package poursheet

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"slabwright/internal/page"
)

func at(s string) *time.Time {
	t, err := time.Parse(time.RFC3339, s)
	if err != nil {
		panic(err)
	}
	return &t
}

func number(v float64) *float64 { return &v }

// cuts is a cut sheet of n joints over the night in which the clocks go back (25
// October 2026, 02:00 to 01:00 in London).
func cuts(n int) CutSheet {
	s := yardSlab()
	c := CutSheet{Title: yardTitle(), Pour: "Strip 1", Slab: s, Area: s.Outline, Start: at("2026-10-24T13:00:00Z"), End: at("2026-10-24T15:00:00Z"), Saw: "a wet saw",
		Decide: "B. Sawyer", Ring: "C. Engineer 0700"}
	for i := range n {
		c.Lines = append(c.Lines, CutLine{Joints: []string{fmt.Sprintf("S%d", i+1)}, Length: 9, Depth: number(0.0375), Placed: *at("2026-10-24T14:00:00Z"),
			Opens: at("2026-10-24T23:30:00Z"), Closes: at("2026-10-25T02:00:00Z")})
	}
	return c
}

// The crew reads weekday, clock and hours after placing, also when the clocks go back:
// 23:30 UTC is Sunday 00:30 summer time, 9.5 h after; 02:00 UTC is 02:00 winter time,
// 12 h after.
func TestCutSheet(t *testing.T) {
	data, err := cuts(2).PDF()
	if err != nil {
		t.Fatal(err)
	}
	text := pdfText(t, data)
	wantWords(t, text, "CUT SHEET · Strip 1", "Placed Sat 24 Oct 14:00 to 16:00", "Sun 00:30", "9.5 h", "Sun 02:00", "12 h", "38", "Trial cut first", "stop, wait 30 min",
		"C. Engineer 0700", "B. Sawyer", "Stone dust", "pipes and cables", "UNASSIGNED")
	if n := pages(text); n != 1 {
		t.Errorf("%d pages, want 1", n)
	}
	for _, on := range []page.Paper{page.A4, page.Letter} {
		c := cuts(14)
		c.Paper = on
		if data, err = c.PDF(); err != nil {
			t.Fatal(err)
		}
		if n := pages(pdfText(t, data)); n != 1 {
			t.Errorf("14 joints on %s: %d pages, want 1", on.Name, n)
		}
	}
}

func TestCutSheetWithoutTimes(t *testing.T) {
	c := cuts(3)
	c.Lines[0].Never = true
	c.Lines[1].Opens = nil
	c.Lines[2].Closes, c.Lines[2].Depth = nil, nil
	data, err := c.PDF()
	if err != nil {
		t.Fatal(err)
	}
	wantWords(t, pdfText(t, data), "ring first", "no safe time", "trial cut", "not known: ring", "no limit found", "ask")
	if _, err := (CutSheet{}).PDF(); err == nil || !strings.Contains(err.Error(), "sawn joint") {
		t.Errorf("%v", err)
	}
}

func goSheet() GoSheet {
	return GoSheet{Title: yardTitle(), Pour: "Strip 1", Start: at("2026-10-24T06:00:00Z"), Decides: "C. Engineer", Weather: "Forecast, 4 km away.",
		Limits: []Limit{
			{What: "Drying", Unit: "kg/m²·h", Expected: number(0.8), Most: number(1), Decimals: 1, Then: Measures, Measure: "fog"},
			{What: "Concrete", Unit: "°C", Expected: number(12), Least: number(5), Then: Hold, Measure: "another day"},
			{What: "Rain", Unit: "mm", Most: number(0), Then: Hold},
		},
		Triggers: []Trigger{{When: "rain comes", Ring: ""}},
		Ready:    []Ready{{What: "spare saw"}},
		Hours:    []ForecastHour{{At: *at("2026-10-24T06:00:00Z"), Air: 8, Humidity: 0.8, Wind: 2, Concrete: 12, Dry: 0.1, Doing: "placing"}},
	}
}

func TestDecision(t *testing.T) {
	cases := []struct {
		name   string
		change func(*GoSheet)
		want   Decision
	}{
		{"nothing passed; rain not known", func(*GoSheet) {}, Go},
		{"drying", func(g *GoSheet) { g.Limits[0].Expected = number(1.2) }, Measures},
		{"at the limit", func(g *GoSheet) { g.Limits[0].Expected = number(1) }, Go},
		{"cold concrete", func(g *GoSheet) { g.Limits[1].Expected = number(4) }, Hold},
		{"both", func(g *GoSheet) { g.Limits[0].Expected, g.Limits[1].Expected = number(1.2), number(4) }, Hold},
		{"no spare saw", func(g *GoSheet) { no := false; g.Ready[0].Here = &no }, Measures},
	}
	for _, c := range cases {
		g := goSheet()
		c.change(&g)
		if got := g.Decide(); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
		reasons := strings.Join(g.Reasons(), "; ")
		if passed := strings.Contains(reasons, "passed") || strings.Contains(reasons, "not there"); passed != (c.want != Go) || !strings.Contains(reasons, "Rain is not known") {
			t.Errorf("%s: because %s", c.name, reasons)
		}
	}
}

func TestGoSheet(t *testing.T) {
	g := goSheet()
	g.Limits[0].Expected = number(1.2)
	data, err := g.PDF()
	if err != nil {
		t.Fatal(err)
	}
	text := pdfText(t, data)
	wantWords(t, text, "GO WITH MEASURES", "Measure: fog", "not above 1.0 kg/m²·h", "1.2", "PASSED", "not known", "Ring UNASSIGNED if rain comes", "NOT AGREED", "Forecast as seen, data abababababab", "Sat 07:00", "[ ] spare saw")
	if strings.Contains(text, "another day") {
		t.Error("a measure is asked for though its threshold is kept")
	}
	if n := pages(text); n != 1 {
		t.Errorf("%d pages, want 1", n)
	}
	if _, err := (GoSheet{}).PDF(); err == nil {
		t.Error("no start, no sheet")
	}
}

func TestDutySheet(t *testing.T) {
	all := Duties()
	if len(all) < 10 {
		t.Fatalf("%d duties", len(all))
	}
	for i := range all {
		if all[i].Key == "water" {
			all[i].Name, all[i].Ring = "D. Checker", "0711"
		}
	}
	s := DutySheet{Title: yardTitle(), Pour: "Yard", Duties: all}
	if s.Open() != len(all)-1 || Holder(all, "water") != "D. Checker" || Holder(all, "saw") != "" {
		t.Errorf("%d open", s.Open())
	}
	data, err := s.PDF()
	if err != nil {
		t.Fatal(err)
	}
	text := pdfText(t, data)
	wantWords(t, text, "D. Checker", "0711", "UNASSIGNED", "may have water added", "usually saw crew")
	if n := strings.Count(text, "UNASSIGNED"); n != len(all) { // once in the heading
		t.Errorf("UNASSIGNED %d times for %d open duties", n, len(all)-1)
	}
}

// Every word in braces of the list is a key that the list of minimum information or
// the job gives; what is not given is said.
func TestInspectionSheet(t *testing.T) {
	s := InspectionSheet{Title: yardTitle(), Pour: "Yard", Given: Given{"thickness": "150 mm", "cure": "compound"}}
	data, err := s.PDF()
	if err != nil {
		t.Fatal(err)
	}
	text := pdfText(t, data)
	wantWords(t, text, "150 mm of concrete", "compound within NOT STATED of finishing", "HOLD", "trial cut", "EN 206 5.2.8")
	if strings.ContainsAny(text, "{}") {
		t.Error("a brace is left")
	}
}

func TestMinimumInformation(t *testing.T) {
	given := Given{"thickness": "150 mm", "dowels": "25 mm", "tolerance": "no such key"}
	stated := 0
	for _, m := range MinimumInformation(given) {
		if m.Says != "" {
			stated++
		}
		if m.Item == "" || m.Why == "" || !m.Place && m.Says != "" {
			t.Errorf("%+v", m)
		}
	}
	if stated != 2 {
		t.Errorf("%d stated, want 2", stated)
	}
	// what joints need to be priced and built: place, kind, transfer, depth, time; and curing
	list := fmt.Sprint(MinimumInformation(nil))
	for _, want := range []string{"where every joint lies", "load transfer", "depth of sawing", "when sawing must be done", "curing: how", "of what kind"} {
		if !strings.Contains(list, want) {
			t.Errorf("%q is not on the list", want)
		}
	}
	data, err := NotesSheet{Title: yardTitle(), Given: given}.PDF()
	if err != nil {
		t.Fatal(err)
	}
	wantWords(t, pdfText(t, data), "2 of", "Open: not stated", "state it in the specification", "give it in the job", "from memory")
}

func TestGivenFill(t *testing.T) {
	g := Given{"a": "1"}
	for in, want := range map[string]string{"{a} of {b}": "1 of NOT STATED", "plain": "plain", "{a": "{a", "}{": "}{"} {
		if got := g.fill(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}
