package earlyage

import (
	"math"
	"strings"
	"testing"
	"time"

	"slabwright/concrete"
)

// windy is a hot, dry and windy day: the case plastic cracks come in.
func windy(t testing.TB) Column {
	c := pourOn(t, july, 30, 24, day(33, 6, 0.25, 5, 37))
	c.Until = 24
	return c
}

func lastHour(h *History, in PlasticInput) PlasticHour {
	hours := h.PlasticHours(in)
	return hours[len(hours)-1]
}

// The hours add up to the history: water, times, and the chances never fall.
func TestPlasticHoursAddUp(t *testing.T) {
	for name, c := range map[string]Column{"hot": hot(t), "mild": mild(t), "cold": cold(t), "windy": windy(t)} {
		h := runOf(t, c)
		hours := h.PlasticHours(PlasticInput{Bar: 12, Cover: 30, Slump: 100})
		var rate, bleed, at float64
		for i, p := range hours {
			span := p.Hours - at
			rate, bleed, at = rate+p.Rate*span, bleed+p.Bleed*span, p.Hours
			if i > 0 && (p.ShrinkageChance < hours[i-1].ShrinkageChance || p.SettlementChance < hours[i-1].SettlementChance) {
				t.Errorf("%s %.1f h: a chance fell", name, p.Hours)
			}
			if p.ShrinkageChance < 0 || p.ShrinkageChance > 1 || p.Suction < 0 || p.Pull > p.Suction || p.Film > 0 && p.Suction > 0 {
				t.Errorf("%s: %+v", name, p)
			}
			if i < len(hours)-1 && math.Abs(p.Hours-float64(i+1)) > 1e-6 {
				t.Errorf("%s: entry %d at %.4f h", name, i, p.Hours)
			}
			if !p.Time.Equal(h.Clock(p.Hours)) || p.AfterSet != (p.Hours >= h.InitialSet.Surface) {
				t.Errorf("%s: %+v", name, p)
			}
		}
		last := hours[len(hours)-1]
		m := h.seriesAt(h.Lost, last.Hours)
		if math.Abs(rate-m) > 1e-9 || math.Abs(bleed-h.seriesAt(h.Bled, last.Hours)) > 1e-9 {
			t.Errorf("%s: evaporated %.4f, history %.4f; bled %.4f", name, rate, m, bleed)
		}
		if want := concrete.SettlementCracking(30, 100, 12); math.Abs(last.SettlementChance-want) > 1e-9 {
			t.Errorf("%s: chance over bars %.3f at the end, table %.3f", name, last.SettlementChance, want)
		}
		if last.Hours < h.FinalSet.Surface-1e-9 || last.Hours > h.FinalSet.Surface+0.5 {
			t.Errorf("%s: ends at %.2f h, final set at %.2f h", name, last.Hours, h.FinalSet.Surface)
		}
	}
}

// Hot wind tears a fresh slab, a cold damp day does not, and every measure set up in
// time lowers the chance.
func TestShrinkageChance(t *testing.T) {
	open := lastHour(runOf(t, windy(t)), PlasticInput{})
	calm := lastHour(runOf(t, cold(t)), PlasticInput{})
	if !(open.ShrinkageChance > 0.5) || !(calm.ShrinkageChance < 0.01) {
		t.Errorf("chance %.2f in hot wind, %.2f on a cold damp day", open.ShrinkageChance, calm.ShrinkageChance)
	}
	low := windy(t)
	low.Concrete.Bleed.Rate /= 3
	if got := lastHour(runOf(t, low), PlasticInput{}); !(got.ShrinkageChance > open.ShrinkageChance) {
		t.Errorf("bleeding a third: chance %.2f, usual %.2f", got.ShrinkageChance, open.ShrinkageChance)
	}
	for _, key := range []string{"windbreak", "fog", "awning", "evaporation-retarder", "plastic", "hessian-wet", "compound"} {
		c := windy(t)
		cover, _ := TypicalCover(key)
		cover.On = 0.25
		c.Covers = []Cover{cover}
		if got := lastHour(runOf(t, c), PlasticInput{}); !(got.ShrinkageChance < open.ShrinkageChance-0.05) {
			t.Errorf("%s: chance %.2f, open %.2f", key, got.ShrinkageChance, open.ShrinkageChance)
		}
	}
	// after final set it is too late for any of them
	c := windy(t)
	sheet, _ := TypicalCover("plastic")
	sheet.On = 6
	c.Covers = []Cover{sheet}
	if got := lastHour(runOf(t, c), PlasticInput{}); math.Abs(got.ShrinkageChance-open.ShrinkageChance) > 1e-9 {
		t.Errorf("covered after set: chance %.3f, open %.3f", got.ShrinkageChance, open.ShrinkageChance)
	}
}

// Cracks over bars: deep bars, small bars and stiff concrete crack less; a floating
// before initial set closes what came before it, one after does nothing.
func TestSettlementChance(t *testing.T) {
	h := runOf(t, mild(t))
	base := PlasticInput{Bar: 16, Cover: 38, Slump: 76}
	usual := lastHour(h, base).SettlementChance
	if math.Abs(usual-0.477) > 0.01 {
		t.Errorf("chance %.3f, Dakhil 0.477", usual)
	}
	for name, in := range map[string]PlasticInput{
		"deeper": {Bar: 16, Cover: 50, Slump: 76}, "thinner": {Bar: 12.7, Cover: 38, Slump: 76}, "stiffer": {Bar: 16, Cover: 38, Slump: 51},
		"floated": {Bar: 16, Cover: 38, Slump: 76, Floated: []float64{2}}, "no bar": {},
	} {
		if got := lastHour(h, in).SettlementChance; !(got < usual) {
			t.Errorf("%s: chance %.3f, usual %.3f", name, got, usual)
		}
	}
	base.Floated = []float64{h.InitialSet.Surface + 0.5}
	if got := lastHour(h, base).SettlementChance; got != usual {
		t.Errorf("floated after initial set: chance %.3f, want %.3f", got, usual)
	}
	hours := h.PlasticHours(PlasticInput{Bar: 16, Cover: 38, Slump: 76})
	if hours[0].SettlementChance < 0.1 || hours[0].SettlementChance > 0.5*usual {
		t.Errorf("after an hour %.3f of %.3f", hours[0].SettlementChance, usual)
	}
}

func TestPlasticInputCheck(t *testing.T) {
	err := PlasticInput{Limit: 200, Bar: 400, Cover: 0.04, Slump: -1, Floated: []float64{-2}}.Check()
	for _, want := range []string{"limit", "bar", "cover", "slump", "floating"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error does not say %q: %v", want, err)
		}
	}
	if err := (PlasticInput{}).Check(); err != nil {
		t.Error(err)
	}
}

func TestPlasticHoursWorking(t *testing.T) {
	in := PlasticInput{Bar: 12, Cover: 30, Slump: 100}
	for name, c := range map[string]Column{"windy": windy(t), "cold": cold(t)} {
		h := runOf(t, c)
		s := h.PlasticHoursWorking(in, "plastic-hours", name)
		hours := h.PlasticHours(in)
		if len(s.Lines) < len(hours)+3 || s.ID != "plastic-hours" || len(s.Basis) < 3 {
			t.Errorf("%s: %d lines for %d hours", name, len(s.Lines), len(hours))
		}
		for _, l := range s.Lines {
			if math.IsNaN(l.Value) || l.Source.Title == "" || l.Numbers == "" {
				t.Errorf("%s: line %+v", name, l)
			}
			if got, err := l.Rework(); err != nil || math.Abs(got-l.Value) > 1e-9*math.Max(1, math.Abs(l.Value)) {
				t.Errorf("%s: %s reworked gives %.9g (%v), the line says %.9g", name, l.Formula, got, err, l.Value)
			}
			if l.Symbol == "t_dry" && l.Check != nil && l.Check.Apart > 0.1 {
				t.Errorf("%s: film gone at %.2f h, closed form %.2f h", name, l.Value, l.Check.Value)
			}
			if l.Symbol == "s" && !(l.Check.Apart < 0.5) {
				t.Errorf("%s: suction %.1f kPa, by hand %.1f kPa", name, l.Value, l.Check.Value)
			}
			if l.Symbol == "P_p" && l.Value != hours[len(hours)-1].ShrinkageChance {
				t.Errorf("%s: chance %.3f on the sheet, %.3f by the hour", name, l.Value, hours[len(hours)-1].ShrinkageChance)
			}
		}
	}
}

// A pour of the evening dries less by the hour than the same mix in the morning wind
// of the same day, and the account follows the clock.
func TestPlasticHoursFollowTheClock(t *testing.T) {
	zone := time.FixedZone("MST", -7*3600)
	c := windy(t)
	c.Placed = time.Date(2026, 7, 10, 9, 30, 0, 0, zone)
	h := runOf(t, c)
	if p := h.PlasticHours(PlasticInput{})[0]; !p.Time.Equal(c.Placed.Add(time.Hour)) || p.Time.Location() != zone {
		t.Errorf("first hour ends %v", p.Time)
	}
}

// A run that ends before set has the same hours as a longer one, as far as it goes.
func TestPlasticHoursOfAShortRun(t *testing.T) {
	whole, short := windy(t), windy(t)
	short.Until = 2
	a, b := runOf(t, whole).PlasticHours(PlasticInput{}), runOf(t, short).PlasticHours(PlasticInput{})
	if len(b) != 2 || b[1].AfterSet {
		t.Fatalf("%d hours, the last %+v", len(b), b[len(b)-1])
	}
	for i := range b {
		if math.Abs(a[i].Strength-b[i].Strength) > 0.01*a[i].Strength || math.Abs(a[i].ShrinkageChance-b[i].ShrinkageChance) > 0.01 {
			t.Errorf("hour %d: %+v, in the longer run %+v", i+1, b[i], a[i])
		}
	}
}

// A fog spray that comes late lets the suction go slack, but not what has torn.
func TestFogLetsTheSuctionGo(t *testing.T) {
	c := windy(t)
	fog, _ := TypicalCover("fog")
	fog.On = 2
	c.Covers = []Cover{fog}
	hours := runOf(t, c).PlasticHours(PlasticInput{})
	if !(hours[1].Suction > 5 && hours[2].Suction == 0 && hours[2].Rate < 0.05) {
		t.Errorf("suction %.1f kPa before the fog, %.1f kPa an hour into it", hours[1].Suction, hours[2].Suction)
	}
	if hours[2].ShrinkageChance < hours[1].ShrinkageChance {
		t.Error("fog closed a crack")
	}
}
