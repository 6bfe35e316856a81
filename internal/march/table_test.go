package march

import (
	"math"
	"testing"
)

func TestTables(t *testing.T) {
	f := func(x float64) (float64, float64) { return math.Exp(-x * x), -2 * x * math.Exp(-x*x) }
	table := NewTable(f, -2, 3, 500)
	for x := -1.99; x < 3; x += 0.0137 {
		v, s := table.At(x)
		want, slope := f(x)
		if math.Abs(v-want) > 1e-9 || math.Abs(s-slope) > 1e-6 {
			t.Fatalf("x=%g: %g and %g, want %g and %g", x, v, s, want, slope)
		}
	}
	edge, slope := f(3)
	if v, s := table.At(4); math.Abs(v-(edge+slope)) > 1e-12 || math.Abs(s-slope) > 1e-12 {
		t.Errorf("above the range %g and %g, want the line %g and %g", v, s, edge+slope, slope)
	}
	g := func(x float64) (float64, float64) {
		p := math.Pow(50400/x, 0.9)
		return math.Exp(-p), math.Exp(-p) * p * 0.9 / x
	}
	octaves := NewOctaves(g, 60, 1e9)
	for x := 100.0; x < 1e9; x *= 1.0173 {
		v, s := octaves.At(x)
		want, slope := g(x)
		if math.Abs(v-want) > 2e-8 || math.Abs(s-slope) > 2e-4*slope+1e-13 {
			t.Fatalf("x=%g: %g and %g, want %g and %g", x, v, s, want, slope)
		}
	}
	if v, s := octaves.At(-3); v != 0 || s != 0 {
		t.Errorf("below the range %g and %g", v, s)
	}
}
