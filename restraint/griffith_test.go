package restraint

import (
	"math"
	"testing"

	"slabwright/plan"
)

// coupled returns the stress far off at which a crack of half length a in a wide plate
// runs on by a stretch d, and d: tension ahead reaches the strength on the mean,
// σ·√(1 + 2a/d) = f, and the work set free is what tearing takes, σ²·π·(a + d/2) = E·G.
// Source: Cornetti, Pugno, Carpinteri and Taylor, Engineering Fracture Mechanics 73, 2006, from
// memory; stress ahead by Westergaard.
func coupled(modulus, fracture, strength, a float64) (stress, d float64) {
	low, high := 0.0, 100.0
	for range 100 {
		d = (low + high) / 2
		if strength/math.Sqrt(1+2*a/d) < math.Sqrt(modulus*fracture/math.Pi/(a+d/2)) {
			low = d
		} else {
			high = d
		}
	}
	return math.Sqrt(modulus * fracture / math.Pi / (a + d/2)), d
}

// A crack across the pull in a wide plate runs on between the stress of the coupled
// criterion, which counts the crowded tension at the tip in full where the model takes
// its mean over a reach, and that of Griffith (1921), at which it runs whatever the
// strength.
func TestGriffith(t *testing.T) {
	const e, g, pulled = 25e9, 100.0, 60e-6
	for _, a := range []float64{0.8, 1.4} {
		strength := 1.2 * math.Sqrt(e*g/math.Pi/a)
		want, stretch := coupled(e, g, strength, a)
		at := func(hour float64) Concrete {
			return Concrete{Strain: -pulled * hour, Modulus: e, Strength: strength}
		}
		sound := func(hour float64) Concrete { return Concrete{Strain: -pulled * hour, Modulus: e, Strength: 40e6} }
		m := Model{Slab: plan.Slab{Outline: rectangle(-14, -7, 14, 7)}, Base: Base{Stiffness: 1e3, UnitWeight: 24000},
			Pours: []Pour{{ID: "middle", Area: rectangle(-4, -4, 4, 4), Thickness: 0.15, At: at}, {ID: "ends", Thickness: 0.15, At: sound}}, Settings: Settings{Size: 0.7, Over: 1.05, Poisson: 1e-9},
			Lines: []Line{{ID: "K", Kind: CrackLine, Path: path(0, -a, 0, a), From: 0.01}},
			Holds: []Hold{{ID: "W", Path: path(-14, -7, -14, 7), Bond: 1e12}, {ID: "E", Path: path(14, -7, 14, 7), Bond: 1e12}}}
		var hours []float64
		for share := 0.0; share < 1.5; share += 0.04 {
			hours = append(hours, share*want/e/pulled)
		}
		r := replay(t, m, hours...)
		if len(r.Events) == 0 || r.Events[0].Line != "K" {
			t.Fatalf("a %.1f: %d events", a, len(r.Events))
		}
		got := e * pulled * r.Events[0].Hour
		t.Logf("a %.1f: it runs by %.2f m at %.3f MPa, by hand by %.2f m at %.3f, Griffith %.3f", a, r.Events[0].Length, got/1e6, stretch, want/1e6, math.Sqrt(e*g/math.Pi/a)/1e6)
		if got < 0.97*want || got > 1.05*math.Sqrt(e*g/math.Pi/a) {
			t.Errorf("a %.1f: it runs at %.3f MPa", a, got/1e6)
		}
	}
}
