package earlyage

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"slabwright/concrete"
	"slabwright/internal/march"
)

// anyColumn draws a slab of 75 to 400 mm in some mix and weather.
func anyColumn(t testing.TB, random *rand.Rand) Column {
	between := func(low, high float64) float64 { return low + (high-low)*random.Float64() }
	cement := []string{"CEM I 42.5N", "CEM I 52.5R", "III", "CEM III/A"}[random.IntN(4)]
	mix, err := concrete.DefaultMix(between(20, 45), cement)
	if err != nil {
		t.Fatal(err)
	}
	if random.IntN(3) == 0 {
		mix.Binder = mix.Binder.WithSCM(0, between(0, 0.4), 0.15, 0)
	}
	mix.PlacingTemperature = between(6, 33)
	mix.BleedShare = between(0, 0.02)
	thickness := between(0.075, 0.4)
	air := mix.PlacingTemperature + between(-9, 6)
	sky := day(air, between(0, 10), between(0.15, 1), between(0, 9), between(20, 60))
	if random.IntN(2) == 0 {
		sky = overcast(sky)
	}
	at := time.Date(2026, time.Month(1+random.IntN(12)), 10, random.IntN(24), 0, 0, 0, time.UTC)
	c := pourOn(t, at, mix.PlacingTemperature, air-between(-4, 6), sky)
	c.Concrete = FromMix(mix, mix.EN1992(), ENLongTerm(mix, thickness, 0.5, 3), thickness)
	c.Thickness, c.Until = thickness, 48
	if random.IntN(3) == 0 {
		cover, _ := TypicalCover("hessian-plastic")
		cover.On = between(2, 12)
		cover.Off = cover.On + between(6, 30)
		c.Covers = []Cover{cover}
	}
	return c
}

// Any slab of 75 to 400 mm settles at every step and keeps its accounts of heat and
// water, and no node leaves the temperatures there are.
func TestAnyColumnSettles(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 5))
	count := 300
	if testing.Short() {
		count = 60
	}
	for i := range count {
		c := anyColumn(t, random)
		h, err := c.Run(context.Background())
		if err != nil {
			t.Errorf("column %d, %.0f mm: %v", i, 1000*c.Thickness, err)
			continue
		}
		b := h.Balance
		for name, off := range map[string]float64{"heat": b.HeatError, "water": b.WaterError, "latent heat": b.LatentError} {
			if !(math.Abs(off) < 1e-6) {
				t.Errorf("column %d, %.0f mm: %s off by %.2g", i, 1000*c.Thickness, name, off)
			}
		}
		for k, u := range h.Surface {
			if !(u > -25 && u < 85) {
				t.Errorf("column %d, %.0f mm: surface at %.1f °C after %.2f h", i, 1000*c.Thickness, u, h.Hours[k])
				break
			}
		}
	}
}

// The surface does not jump between neighbouring times of a step of minutes: what a
// step owes is not paid in one of seconds. Here the end of the film leaves such a step.
func TestShortStepsDoNotFreezeTheSurface(t *testing.T) {
	for _, seed := range []uint64{1, 2, 3} {
		random := rand.New(rand.NewPCG(seed, 9))
		for range 20 {
			c := anyColumn(t, random)
			c.Covers = nil
			h, err := c.Run(context.Background())
			if err != nil {
				t.Fatal(err)
			}
			for k := 2; k < len(h.Hours); k++ {
				if jump := math.Abs(h.Surface[k] - h.Surface[k-1]); jump > 6 {
					t.Errorf("surface moves %.1f K between %.2f and %.2f h, %.0f mm", jump, h.Hours[k-1], h.Hours[k], 1000*c.Thickness)
				}
			}
		}
	}
}

// The column that once had no answer: surface set ends seconds before a step of a quarter
// of an hour, and the end of the film with it.
func TestSetSecondsBeforeALongStep(t *testing.T) {
	c := anyColumn(t, rand.New(rand.NewPCG(2808, 77)))
	c.Until = 30
	h, err := c.Run(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for k, u := range h.Surface {
		if !(u > -10 && u < 60) {
			t.Fatalf("surface at %.1f °C after %.2f h", u, h.Hours[k])
		}
	}
}

func TestUnsettledNamesHourAndPlace(t *testing.T) {
	err := placed(&march.Unsettled{Time: 45900, Step: 264, Correction: 183}, 12.5, 0.25, "heat of slab and ground")
	var own *Unsettled
	var below *march.Unsettled
	if !errors.As(err, &own) || !errors.As(err, &below) {
		t.Fatalf("%T", err)
	}
	if text := err.Error(); !strings.Contains(text, "12.50 h") || !strings.Contains(text, "heat of slab and ground") {
		t.Error(text)
	}
	if other := errors.New("other"); placed(other, 1, 1, "") != other {
		t.Error("any other error must stay as it is")
	}
}
