package earlyage

import (
	"math"
	"testing"
	"time"
)

// Heat and water must close whatever lies on the slab: what is stored is what the
// cement released and what came in, every kilogram that left took its latent heat,
// and all water is found again.
func TestHeatAndWaterClose(t *testing.T) {
	cover := func(c Column, key string, on, off float64) Column {
		k, ok := TypicalCover(key)
		if !ok {
			t.Fatalf("no cover %q", key)
		}
		k.On, k.Off = on, off
		c.Covers = append(c.Covers, k)
		return c
	}
	dewy := cold(t)
	inner := dewy.Weather
	dewy.Weather = func(at time.Time) Feel { f := inner(at); f.Humidity = 0.97; return f }
	for name, c := range map[string]Column{
		"hot": hot(t), "mild": mild(t), "cold": cold(t), "dew": dewy,
		"plastic for a day": cover(hot(t), "plastic", 1, 24), "wet hessian for two days": cover(hot(t), "hessian-wet", 3, 50),
		"compound": cover(mild(t), "compound", 3, 0), "blanket": cover(cold(t), "blanket", 2, 40),
		"fog, then compound": cover(cover(hot(t), "fog", 0, 4), "compound", 4, 0),
	} {
		c.Until = 168
		b := runOf(t, c).Balance
		if math.Abs(b.HeatError) > 1e-6 || math.Abs(b.WaterError) > 1e-6 || math.Abs(b.LatentError) > 1e-6 {
			t.Errorf("%s: heat off by %.1e, water by %.1e, latent heat by %.1e: %+v", name, b.HeatError, b.WaterError, b.LatentError, b)
		}
		if b.Hydration < 1e6 || b.Bled <= 0 {
			t.Errorf("%s: nothing moved: %+v", name, b)
		}
		if name == "dew" && b.Dew <= 0 || name == "wet hessian for two days" && b.Added <= 0 {
			t.Errorf("%s: no dew or no added water: %+v", name, b)
		}
	}
}
