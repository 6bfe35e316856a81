package earlyage

import (
	"math"
	"strings"
	"testing"
	"time"
)

// The water of the fresh stage is all accounted for, at every time, under every
// cover and in dew: film = bled + dew - evaporated + drawn from the concrete.
func TestFreshWaterBalance(t *testing.T) {
	for _, key := range append(Covers(), "") {
		for name, c := range map[string]Column{"hot": hot(t), "mild": mild(t), "cold": cold(t)} {
			c.Until = 30
			if key != "" {
				cover, _ := TypicalCover(key)
				cover.On, cover.Off = 1.1, 9.3
				c.Covers = []Cover{cover}
			}
			h := runOf(t, c)
			for i := range h.Hours {
				if off := h.Bled[i] + h.Gained[i] - h.Lost[i] + h.Drawn[i] - h.BleedFilm[i]; math.Abs(off) > 1e-12 {
					t.Fatalf("%s under %q, %.2f h: %.3g kg/m2 of water unaccounted for", name, key, h.Hours[i], off)
				}
				if i > 0 && (h.Bled[i] < h.Bled[i-1] || h.Lost[i] < h.Lost[i-1]-1e-12 || h.Drawn[i] < h.Drawn[i-1]) {
					t.Fatalf("%s under %q, %.2f h: a sum fell", name, key, h.Hours[i])
				}
			}
			if all := c.Concrete.Bleed.Total(); h.Bled[len(h.Hours)-1] > all+1e-9 {
				t.Errorf("%s: bled %.3f of %.3f kg/m2", name, h.Bled[len(h.Hours)-1], all)
			}
		}
	}
}

// What stands over the slab acts together with what lies on it, each by itself and
// only between its clock times.
func TestCoversActTogether(t *testing.T) {
	wind, _ := TypicalCover("windbreak")
	compound, _ := TypicalCover("compound")
	shade, _ := TypicalCover("awning")
	wind.Off, compound.On, shade.On, shade.Off = 6, 3, 4, 5
	c := hot(t)
	c.Covers = []Cover{wind, compound, shade}
	r := newRun(c)
	for _, at := range []struct{ hours, wind, sunKept, evaporation, absorptivity float64 }{
		{1, 0.5, 0, 1, DefaultAbsorptivity},
		{3.5, 0.5, 0, compound.Evaporation, compound.Absorptivity},
		{4.5, 0.5 * 0.9, 0.7, compound.Evaporation, compound.Absorptivity},
		{7, 1, 0, compound.Evaporation, compound.Absorptivity},
	} {
		r.surface.lay(at.hours)
		r.surface.look(at.hours * 3600)
		open := r.sampled.at(at.hours)
		cover, feel := r.surface.cover, r.surface.feel
		if math.Abs(feel.Wind-at.wind*open.Wind) > 1e-12 || math.Abs(feel.Sun-(1-at.sunKept)*open.Sun) > 1e-9 ||
			cover.Evaporation != at.evaporation || cover.Absorptivity != at.absorptivity {
			t.Errorf("%g h: wind %.2f of %.2f, sun %.0f of %.0f, cover %+v", at.hours, feel.Wind, open.Wind, feel.Sun, open.Sun, cover)
		}
	}
}

// Each measure against drying lowers what is drawn out of the fresh concrete, and
// the surface is cooler in shade and warmer behind a windbreak in the sun.
func TestMeasuresAgainstDrying(t *testing.T) {
	open := runOf(t, hot(t))
	for _, key := range []string{"windbreak", "fog", "awning", "tent", "evaporation-retarder", "hessian-wet", "hessian-dry", "plastic", "compound", "water"} {
		cover, ok := TypicalCover(key)
		if !ok {
			t.Fatalf("no cover %q", key)
		}
		cover.On = 0.5
		c := hot(t)
		c.Covers = []Cover{cover}
		h := runOf(t, c)
		if !(h.PlasticDeficit < open.PlasticDeficit) {
			t.Errorf("%s: drawn out %.3f kg/m2, open %.3f", key, h.PlasticDeficit, open.PlasticDeficit)
		}
		switch at := h.At(4).Surface - open.At(4).Surface; key {
		case "awning":
			if at > -1 {
				t.Errorf("in shade %.1f K warmer than open", at)
			}
		case "windbreak":
			if at < 0.3 {
				t.Errorf("behind a windbreak in the sun %.1f K warmer than open", at)
			}
		}
	}
}

func TestCoverByTheClock(t *testing.T) {
	placed := time.Date(2026, 7, 10, 6, 0, 0, 0, time.UTC)
	clock := func(hour int) time.Time { return placed.Truncate(24 * time.Hour).Add(time.Duration(hour) * time.Hour) }
	sheet, _ := TypicalCover("plastic")
	got, err := sheet.By(placed, clock(9), clock(30))
	if err != nil || got.On != 3 || got.Off != 24 {
		t.Errorf("on %g off %g, %v; want 3 and 24 h after placing", got.On, got.Off, err)
	}
	stays, err := sheet.By(placed, clock(9), time.Time{})
	if err != nil || stays.Off != 0 {
		t.Errorf("off %g, %v; want it to stay", stays.Off, err)
	}
	wind, _ := TypicalCover("windbreak")
	if got, err := wind.By(placed, clock(3), clock(12)); err != nil || got.On != 0 || got.Off != 6 {
		t.Errorf("set up before placing: on %g off %g, %v", got.On, got.Off, err)
	}
	if _, err := sheet.By(placed, time.Time{}, clock(9)); err == nil || !strings.Contains(err.Error(), "no time") {
		t.Errorf("without a time: %v", err)
	}
	for want, c := range map[string]struct {
		cover   Cover
		on, off time.Time
	}{
		"not after it went on": {sheet, clock(9), clock(8)},
		"only what stands":     {sheet, clock(5), clock(9)},
		"never covers":         {wind, clock(1), clock(5)},
	} {
		if _, err := c.cover.By(placed, c.on, c.off); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v does not say %q", err, want)
		}
	}
}
