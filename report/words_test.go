package report

import (
	"strings"
	"testing"
	"unicode/utf8"

	"slabwright/source"
)

func TestNumbersAsPrinted(t *testing.T) {
	low, high := 0.0005, 0.0008
	for _, c := range []struct{ got, want string }{
		{millimetres(0.0006), "0.6"}, {millimetres(0.00055), "0.55"}, {millimetres(0.0024), "2.4"}, {millimetres(0.038), "38"}, {millimetres(-0.002), "−2"}, {millimetres(0), "0"},
		{fixed(-0.04, 1), "0.0"}, {fixed(-1.25, 1), "−1.2"}, {with("3", "m"), "3\u202fm"},
		{ranged(&source.Fact{Value: 0.0006, Low: &low, High: &high, Known: source.Measured}, millimetres, "mm"), "0.6\u202fmm (0.5 to 0.8), measured"},
		{ranged(nil, millimetres, "mm"), "not known"},
		{odds(0), "×1"}, {odds(3), "×2.0"}, {odds(-7.5), "÷5.6"}, {odds(12), "×16"}, {odds(-40), "÷>1000"},
		{Chance{P: 0.72, Low: 0.55, High: 0.84, About: "about 7 in 10"}.Words(), "about 7 in 10 (6 to 8 in 10)"},
		{Chance{P: 0.03, Low: 0.01, High: 0.06, About: "about 3 in 100"}.Words(), "about 3 in 100 (1 to 6 in 100)"},
		{Chance{P: 0.5}.Words(), "about 5 in 10"}, {Chance{P: 0.5, Low: 0.48, High: 0.52}.Words(), "about 5 in 10"},
		{Chance{P: 0.97, Low: 0.94, High: 0.99, About: "about 97 in 100"}.Words(), "about 97 in 100 (94 to 99 in 100)"}, {Chance{P: 0.7, Low: 0.5, High: 0.8, About: "about 7 in 10 (5 to 8)"}.Words(), "about 7 in 10 (5 to 8)"},
		{valued("44.3", "°"), "44.3°"}, {valued("0.64", "–"), "0.64"}, {valued("3", "m"), "3\u202fm"}, {cut("long words about a departure", 12), "long words…"},
		{workOnly("ACI 224.1R Causes (from memory)"), "ACI 224.1R Causes"}, {workOnly("B (2000), as in C (from memory)"), "B (2000), as in C"}, {workOnly("B (2000)"), "B (2000)"},
		{sentence("the saw came late"), "The saw came late."}, {sentence("µ is 1.0"), "µ is 1.0."}, {sentence("w/c rose"), "w/c rose."}, {sentence("a core"), "A core."}, {sentence("done."), "Done."}, {sentence(""), ""},
		{tidy("40 kN over 2.9 mm at -5 °C in 8 in 10"), "40\u202fkN over 2.9\u202fmm at −5\u202f°C in 8\u00a0in\u00a010"},
		{titled("Shrinkage at 389.0138888889 days"), "Shrinkage at 389 days"}, {titled("Set at 21.5 °C in 0.35 m"), "Set at 21.5\u202f°C in 0.35\u202fm"},
		{tidy("F1 and job 25-041 in 3 days"), "F1 and job 25-041 in 3 days"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestTimesAreTheSites(t *testing.T) {
	clk := clockOf(Head{Zone: fixtureZone})
	if got := clk.hour(at(18, 19, 30)); got != "Wed 18 Jun 19:30" {
		t.Errorf("got %s", got)
	}
	if got := clk.span(when(18, 22, 12), when(18, 20, 48), when(19, 0, 6), ""); got != "Wed 18 Jun 22:12 (20:48 to Thu 00:06)" {
		t.Errorf("got %s", got)
	}
}

func TestTerminalTextKeepsToTheWidth(t *testing.T) {
	c := fixture()
	for _, width := range []int{40, 72, 120} {
		for _, text := range []string{PageOneText(c, width), FindingsText(c, width), CausesText(c, "F1", width), WindowText(c, width), WhatIfText(c, "", width), WhatIfText(c, "nowhere", width)} {
			for _, line := range strings.Split(text, "\n") {
				if n := utf8.RuneCountInString(line); n > width {
					t.Errorf("width %d: %d letters in %q", width, n, line)
				}
				if strings.ContainsAny(line, "\x1b\u202f") {
					t.Errorf("control codes or special spaces in %q", line)
				}
			}
		}
	}
}
