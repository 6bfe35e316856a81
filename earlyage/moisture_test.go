package earlyage

import (
	"math"
	"testing"
)

// The capacity summed over all humidities is the water that the paste holds at
// humidity 1: what was mixed in less what hydration has bound.
func TestWaterCapacityAddsUp(t *testing.T) {
	const water, binder, ultimate = 175.0, 350.0, 0.8
	for _, degree := range []float64{0.05, 0.3, 0.6, 0.8} {
		sum, parts := 0.0, 2000
		for i := range parts {
			sum += WaterCapacity((float64(i)+0.5)/float64(parts), degree, ultimate, water, binder) / float64(parts)
		}
		if want := water - 0.188*degree*binder; math.Abs(sum-want) > 0.01*want {
			t.Errorf("degree %.2f: holds %.1f kg/m3, want %.1f", degree, sum, want)
		}
	}
	// Young paste gives up more near saturation, and less when it is dry.
	if young, old := WaterCapacity(0.98, 0.3, ultimate, water, binder), WaterCapacity(0.98, 0.75, ultimate, water, binder); young < 2*old {
		t.Errorf("near saturation %.0f young, %.0f old", young, old)
	}
	// The mean of a mature paste between 50 and 100 % is about what drying slabs gave
	// (poreWater), from another route.
	sum := 0.0
	for h := 0.505; h < 1; h += 0.01 {
		sum += WaterCapacity(h, 0.75, ultimate, water, binder) / 50
	}
	if sum < 0.7*poreWater || sum > 1.4*poreWater {
		t.Errorf("mature paste gives up %.0f kg/m3 per unit of humidity, drying slabs %.0f", sum, poreWater)
	}
}

func TestDiffusivityAgeing(t *testing.T) {
	if v := DiffusivityAgeing(28); math.Abs(v-1) > 1e-12 {
		t.Errorf("at 28 days %.4f, want 1", v)
	}
	// C7 itself stands at 7 days: 0.05 + sqrt(0.9) is 0.9987 of it.
	if v := DiffusivityAgeing(7) * (0.05 + math.Sqrt(6.3/28)); math.Abs(v-0.99868) > 1e-5 {
		t.Errorf("at 7 days %.5f of C7", v)
	}
	previous := math.Inf(1)
	for _, age := range []float64{0.5, 1, 3, 7, 28, 90, 365, 3650} {
		v := DiffusivityAgeing(age)
		if v >= previous || v <= 0 {
			t.Errorf("%g d: %.3f after %.3f", age, v, previous)
		}
		previous = v
	}
	if DiffusivityAgeing(0.01) != DiffusivityAgeing(0.5) {
		t.Error("below half a day it must hold")
	}
}
