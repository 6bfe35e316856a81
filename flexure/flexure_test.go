package flexure

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestPublishedValues(t *testing.T) {
	results := Checks()
	if len(results) == 0 {
		t.Fatal("no published rows")
	}
	for _, r := range results {
		if !r.OK {
			t.Error(r)
		}
	}
}

// The Kelvin functions by their power series, a second route.
func TestKelvinAgainstSeries(t *testing.T) {
	for _, x := range []float64{0.05, 0.1, 0.5, 1, 2, 4, 6} {
		ker, kei := kelvinSeries(x)
		a, b, da, db := kelvin(x)
		if math.Abs(a-ker) > 1e-11*math.Max(1, math.Abs(ker)) || math.Abs(b-kei) > 1e-11 {
			t.Errorf("x = %g: ker %.14g kei %.14g, series %.14g %.14g", x, a, b, ker, kei)
		}
		const step = 1e-5
		up, upi, _, _ := kelvin(x + step)
		down, downi, _, _ := kelvin(x - step)
		if math.Abs(da-(up-down)/(2*step)) > 1e-5*math.Max(1, math.Abs(da)) || math.Abs(db-(upi-downi)/(2*step)) > 1e-6 {
			t.Errorf("x = %g: derivatives %g %g, differences %g %g", x, da, db, (up-down)/(2*step), (upi-downi)/(2*step))
		}
	}
}

// kelvinSeries sums ker and kei by Abramowitz and Stegun 9.9.10 to 9.9.12.
func kelvinSeries(x float64) (ker, kei float64) {
	const euler = 0.57721566490153286
	q := x * x / 4
	var ber, bei float64
	term, harmonic := 1.0, 0.0 // q^n/(n!)², sum of 1/n
	for n := 0; n < 60; n++ {
		if n > 0 {
			term *= q / float64(n*n)
			harmonic += 1 / float64(n)
		}
		switch n % 4 {
		case 0:
			ber += term
			ker += harmonic * term
		case 1:
			bei += term
			kei += harmonic * term
		case 2:
			ber -= term
			ker -= harmonic * term
		case 3:
			bei -= term
			kei -= harmonic * term
		}
	}
	log := math.Log(x/2) + euler
	return ker - log*ber + math.Pi/4*bei, kei - log*bei - math.Pi/4*ber
}

// Bradbury's C is the moment of the strip, found another way.
func TestBradburyIsTheStrip(t *testing.T) {
	for r := 0.05; r < 60; r += 0.37 {
		if a, b := Bradbury(r), Strip(r).Moment; math.Abs(a-b) > 1e-9 {
			t.Errorf("length %.2f l: C %.12f, strip %.12f", r, a, b)
		}
	}
	if Bradbury(0) != 0 || Bradbury(1e6) != 1 || Strip(1e6).End != -1 {
		t.Error("limits: C 0 without length, 1 without end")
	}
}

// The strip's ground reaction must balance: no weight, so the deflections of the
// half strip add up to nothing. Integrated by Simpson's rule over the closed form.
func TestStripBalances(t *testing.T) {
	for _, r := range []float64{1, 3, 6, 10} {
		const n = 400
		var sum float64
		for i := 0; i <= n; i++ {
			w := 2.0
			if i%2 == 1 {
				w = 4
			}
			if i == 0 || i == n {
				w = 1
			}
			sum += w * stripAt(r, float64(i)/n)
		}
		if got := sum / (3 * n); math.Abs(got) > 1e-6 {
			t.Errorf("length %g l: mean deflection %g κ l², want 0", r, got)
		}
	}
}

func stripAt(r, share float64) float64 {
	u := r / (2 * math.Sqrt2)
	s := Strip(r)
	a, b := s.Middle, s.Moment-1
	x := u * share
	return a*math.Cosh(x)*math.Cos(x) + b*math.Sinh(x)*math.Sin(x)
}

// With l held, k l² w/P and h² σ/P depend on a/l and ν alone.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.Float64Range(0.1, 0.4).Draw(t, "h")
		nu := rapid.Float64Range(0, 0.3).Draw(t, "nu")
		k := rapid.Float64Range(1e7, 2e8).Draw(t, "k")
		e := rapid.Float64Range(1e10, 4e10).Draw(t, "E")
		ratio := rapid.Float64Range(0.02, 0.3).Draw(t, "a/l")
		l := RelativeStiffness(e, h, nu, k)
		unit := printed{1, ratio, 12 * (1 - nu*nu), 1, nu, 1, 1}
		c := printed{50e3, ratio * l, e, h, nu, k, l}
		pairs := map[string][2]float64{
			"interior": {ExactInteriorStress(c.load, c.radius, h, l, nu) * h * h / c.load, ExactInteriorStress(1, ratio, 1, 1, nu)},
			"edge":     {edge(EdgeStress, Circle, c) * h * h / c.load, edge(EdgeStress, Circle, unit)},
			"edge w":   {edge(EdgeDeflection, Circle, c) * k * l * l / c.load, edge(EdgeDeflection, Circle, unit)},
			"corner":   {CornerStress(c.load, c.radius, h, l) * h * h / c.load, CornerStress(1, ratio, 1, 1)},
		}
		for what, p := range pairs {
			if math.Abs(p[0]-p[1]) > 1e-9*math.Abs(p[1]) {
				t.Fatalf("%s: %g, unit slab %g", what, p[0], p[1])
			}
		}
	})
}

// The exact interior solution and Westergaard's short form part slowly.
func TestShortFormAgainstExact(t *testing.T) {
	for _, x := range []float64{0.05, 0.1, 0.2, 0.3} {
		short, exact := InteriorStress(1, x, 1, 1, 0.15), ExactInteriorStress(1, x, 1, 1, 0.15)
		if math.Abs(short/exact-1) > 0.01 {
			t.Errorf("a/l %g: short %g, exact %g", x, short, exact)
		}
	}
}

func TestCornersAreOrdered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(0.01, 0.5).Draw(t, "a/l")
		if w, b, g := CornerStress(1, x, 1, 1), CornerStressBradbury(1, x, 1, 1), CornerStressGoldbeck(1, 1); w > b || b > g {
			t.Fatalf("Westergaard %g, Bradbury %g, Goldbeck %g", w, b, g)
		}
		if CornerStressPickett(1, x, 1, 1, true) > CornerStressPickett(1, x, 1, 1, false) {
			t.Fatal("a protected corner has less stress")
		}
		if k := CornerStressKelley(1, x, 1, 1); k < CornerStress(1, x, 1, 1) {
			t.Fatalf("Kelley %g below Westergaard", k)
		}
	})
}

func TestTransferRuns(t *testing.T) {
	if TransferEfficiency(0, 0.1) != 0 {
		t.Error("no transfer without stiffness")
	}
	last := 0.0
	for g := 1e-3; g < 1e4; g *= 3 {
		v := TransferEfficiency(g, 0.2)
		if v <= last || v >= 1 {
			t.Errorf("stiffness %g: %g after %g", g, v, last)
		}
		last = v
	}
}

func TestCollapseIsContinuous(t *testing.T) {
	for _, at := range []Position{Interior, Edge, Corner} {
		below, above := CollapseLoad(at, 0.2-1e-9, 3, 5), CollapseLoad(at, 0.2, 3, 5)
		if math.Abs(below-above) > 1e-6 {
			t.Errorf("%s: %g below 0.2, %g at it", at, below, above)
		}
	}
}

func TestProfileOfStraightLine(t *testing.T) {
	mean, d := EquivalentOfProfile([]float64{0, 0.04, 0.15}, []float64{300e-6, 260e-6, 150e-6}, 1e-5)
	if math.Abs(mean-225e-6) > 1e-12 || math.Abs(d-15) > 1e-9 {
		t.Errorf("mean %g, difference %g; want 225e-6 and 15 K", mean, d)
	}
}
