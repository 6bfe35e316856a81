package earlyage

import (
	"context"
	"fmt"
	"math"
	"os"
	"testing"

	"slabwright/internal/table"
)

// clockCase is a day of the battery beside one published rule.
type clockCase struct {
	day, saw        string
	rule            ClockRule
	opens, finished float64
}

// clockCases set plain concrete of every day beside every rule.
func clockCases(t *testing.T) (out []clockCase) {
	t.Helper()
	for _, d := range sanityDays {
		p := sanityPour(t, sanityMixes[0], d)
		p.Count, p.Column.Until = 1, 40
		m, err := RunMembers(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range []string{"ordinary", "early-entry"} {
			saw, _ := SawFor(key, "medium")
			for _, rule := range ClockRules(key) {
				out = append(out, clockCase{d.name, key, rule, m.Window(saw, 0).opens, m.Expected().InitialSet.Surface})
			}
		}
	}
	return out
}

func (c clockCase) beyond() float64 { return c.rule.Beyond(c.opens, c.finished) }

// Plain concrete against every published clock rule: within two hours of it, or on
// record with the hours and the reason.
func TestSanityAgainstClockRules(t *testing.T) {
	text, err := os.ReadFile("testdata/sanity/clock-rules.csv")
	if err != nil {
		t.Fatal(err)
	}
	onRecord := map[[2]string]float64{}
	for _, row := range table.Read("clock-rules.csv", string(text)).Records() {
		onRecord[[2]string{row["day"], row["rule"]}] = number(row["beyond_h"])
	}
	within := 0
	cases := clockCases(t)
	for _, c := range cases {
		key := [2]string{c.day, c.rule.Key}
		want, recorded := onRecord[key]
		switch b := c.beyond(); {
		case b == 0:
			within++
			if recorded {
				t.Errorf("%s, %s: within the rule; take it off the record", c.day, c.rule.Name)
			}
		case recorded && math.Abs(b-want) > 1:
			t.Errorf("%s, %s: %.1f h beyond it, on record %.1f h", c.day, c.rule.Name, b, want)
		case !recorded && math.Abs(b) > 2.2:
			t.Errorf("%s, %s: opens %.1f h after placing, %.1f h beyond it, not on record", c.day, c.rule.Name, c.opens, b)
		}
	}
	if within < len(cases)/2 {
		t.Errorf("%d of %d within the rules", within, len(cases))
	}
}

func TestPageOfClockRules(t *testing.T) {
	rows := []string{"| day | saw | opens, h | rule | hours | from | beyond it by, h |", "|---|---|---|---|---|---|---|"}
	for _, c := range clockCases(t) {
		rows = append(rows, fmt.Sprintf("| %s | %s | %.1f | %s | %g to %g | %s | %.1f |", c.day, c.saw, c.opens, c.rule.Name, c.rule.Hot, c.rule.Cold, c.rule.From, c.beyond()))
	}
	holdsTable(t, "clock rules", rows)
}

func TestBeyondAClockRule(t *testing.T) {
	r := ClockRule{From: "finishing", Hot: 1, Cold: 4}
	for _, c := range [][3]float64{{5, 3, 0}, {3.5, 3, -0.5}, {9, 3, 2}, {4, 3, 0}, {7, 3, 0}} {
		if got := r.Beyond(c[0], c[1]); math.Abs(got-c[2]) > 1e-12 {
			t.Errorf("cut at %g h, finished at %g h: %g h beyond, want %g", c[0], c[1], got, c[2])
		}
	}
	r.From = "placing"
	if got := r.Beyond(5, 3); got != 1 {
		t.Errorf("from placing: %g h beyond, want 1", got)
	}
}
