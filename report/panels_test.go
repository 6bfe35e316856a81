package report

import (
	"math"
	"strings"
	"testing"
	"time"
)

func TestPanelCurveIsReadBetweenItsPoints(t *testing.T) {
	w := PanelWindow{Curve: []CutChance{{Hours: 4, Ready: 0, Cracked: 0}, {Hours: 6, Ready: 0.8, Cracked: 0.1}, {Hours: 20, Ready: 1, Cracked: 0.9}}}
	ready, cracked, ok := w.at(5)
	if !ok || math.Abs(ready-0.4) > 1e-12 || math.Abs(cracked-0.05) > 1e-12 {
		t.Errorf("at 5 h: %g, %g, %v", ready, cracked, ok)
	}
	for _, h := range []float64{3, 12, 21} {
		if _, _, ok := w.at(h); ok {
			t.Errorf("at %g h nothing is known", h)
		}
	}
}

func TestPanelsStandInTheOrderToCut(t *testing.T) {
	c := fixture()
	p := &c.Pours[0]
	rows := panelsTable(c, p, newRefs(c, nil)).rows
	var order []string
	for _, row := range rows {
		order = append(order, row[1].String())
	}
	if got := strings.Join(order, " "); got != "P3 P2 P1" {
		t.Errorf("got %s", got)
	}
	// the chance beside a cut is the panel's own curve read at that hour
	for _, w := range p.Panels {
		when, cracked := panelCuts(c, p, w)
		for _, cut := range cutsOf(c, p, w.Panel) {
			_, chance, ok := w.at(cut.At.Sub(w.Placed).Hours())
			if !ok || !strings.Contains(when, cut.Joint+" ") || !strings.Contains(cracked, cut.Joint+" "+chanceFigure(chance)) {
				t.Errorf("%s: %q, %q lacks %s with %g", w.Panel, when, cracked, cut.Joint, chance)
			}
		}
	}
	if from, to := panelHours(c, p); from > 5 || to < 16.6 {
		t.Errorf("drawn from %g to %g h; windows open at 8.1 h and J3 was cut at 16.5 h", from, to)
	}
}

func TestChancesWithoutARange(t *testing.T) {
	for p, want := range map[float64]string{0: "under 1 in 100", 0.03: "3 in 100", 0.31: "3 in 10", 0.93: "93 in 100", 0.9999: "over 99 in 100"} {
		if got := chanceFigure(p); got != want {
			t.Errorf("%g: got %q, want %q", p, got, want)
		}
	}
}

// What nobody worked out is not drawn, and one panel without a window does not stop
// the others.
func TestPourWithLittle(t *testing.T) {
	c := fixture()
	p := &c.Pours[0]
	p.Panels = append(p.Panels, PanelWindow{Panel: "P4", Placed: p.Start.Add(time.Hour), Order: 9})
	p.Profiles[0].Humidity, p.Profiles[1].Stress = nil, []float64{1}
	if PanelsChart(c, p) == nil || ProfilesChart(c, p) == nil {
		t.Error("what is known is drawn")
	}
	if s := WindowText(c, 80); !strings.Contains(s, "4") || !strings.Contains(s, "panel P4") || !strings.Contains(s, "a time not found") {
		t.Errorf("the panel without a window is not told:\n%s", s)
	}
	p.Panels, p.Profiles, p.Plastic, p.Moves, p.WhatIfs, p.Measured = nil, nil, nil, nil, nil, nil
	if PanelsChart(c, p) != nil || ProfilesChart(c, p) != nil || PlasticChart(c, p) != nil || MovesChart(p) != nil || measuredBlocks(p, newRefs(c, nil)) != nil {
		t.Error("something was drawn of nothing")
	}
	if got := WhatIfText(c, "S1", 80); !strings.Contains(got, "No alternatives were worked out for this pour.") {
		t.Errorf("got %s", got)
	}
	if got := WhatIfText(c, "S9", 80); !strings.Contains(got, `There is no pour "S9". There are: S1, S2, S3.`) {
		t.Errorf("got %s", got)
	}
	if _, err := PDF(c); err != nil {
		t.Error(err)
	}
}
