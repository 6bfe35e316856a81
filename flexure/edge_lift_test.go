package flexure

import (
	"math"
	"testing"

	"slabwright/plan"
)

// Heavy slabs keep touching: the lift of a long strip on springs.
func TestEdgeLiftOfAHeavySlab(t *testing.T) {
	const d, k, curvature = 15e6, 50e6, 1e-3
	l := math.Pow(d/k, 0.25)
	e := EdgeLiftOf(curvature, d, k, 1e6)
	if want := -Strip(60).End * curvature * l * l; e.Lifted != 0 || math.Abs(e.Edge/want-1) > 1e-3 {
		t.Errorf("lift %g, as a long strip %g", e.Edge, want)
	}
	for _, x := range []float64{0.2, 1, 2} {
		if e.At(x)+EdgeLiftOf(-curvature, d, k, 1e6).At(x) != 0 {
			t.Errorf("turned over at %g m: %g", x, e.At(x))
		}
	}
}

// The lifted part hangs on the rest: along it height, slope, moment and shear go on, the
// end is free, and pressure times place carries the weight.
func TestEdgeLiftHangsTogether(t *testing.T) {
	const d, k, q, curvature = 15e6, 50e6, 4320, 1.8e-3
	e := EdgeLiftOf(curvature, d, k, q)
	if e.Lifted < 0.3 {
		t.Fatalf("lifted over %g m", e.Lifted)
	}
	const s = 1e-2
	moment := func(x float64) float64 { return d * ((e.At(x-s)-2*e.At(x)+e.At(x+s))/(s*s) - curvature) }
	if at := moment(2 * s); math.Abs(at+q*2*s*s) > 5 {
		t.Errorf("moment at the end %g", at)
	}
	for _, x := range []float64{e.Lifted - s, e.Lifted + s} {
		if want := -q * e.Lifted * e.Lifted / 2; math.Abs(moment(x)/want-1) > 0.08 {
			t.Errorf("moment where it lifts %g, of the cantilever %g", moment(x), want)
		}
	}
	carried, far := 0.0, 12.0
	for x := e.Lifted; x < far; x += s {
		carried += (q - k*e.At(x+s/2)) * s
	}
	if math.Abs(carried/(q*far)-1) > 2e-3 {
		t.Errorf("ground carries %g of %g", carried, q*far)
	}
	if math.Abs(k*e.At(e.Lifted)-q) > 1e-6*q {
		t.Errorf("pressure where it lifts is %g", q-k*e.At(e.Lifted))
	}
	if springs := curvature * math.Sqrt(d/k); e.Edge < springs {
		t.Errorf("lift %g below that on ground that pulls, %g", e.Edge, springs)
	}
}

// The plate of a wide square says the same in the middle of an edge, and a corner lifts by
// about what its two edges do together.
func TestEdgeLiftBesideThePlate(t *testing.T) {
	const h, e, nu, k, g, difference, expansion, side = 0.18, 11.3e9, 0.2, 50e6, 24000, -21, 11e-6, 16.0
	square := []plan.Point{{X: 0, Y: 0}, {X: side, Y: 0}, {X: side, Y: side}, {X: 0, Y: side}}
	bent, err := Plate{Slab: plan.Slab{Outline: square}, Thickness: h, Modulus: e, Poisson: nu, Support: k, UnitWeight: g,
		Warp: Warp{Difference: difference, Expansion: expansion}, Size: 0.5}.Solve(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	closed := EdgeLiftOf(-(1+nu)*FreeCurvature(expansion, difference, h), e*h*h*h/12/(1-nu*nu), k, g*h)
	lift := func(x, y float64) float64 {
		here, _ := bent.At(plan.Point{X: x, Y: y})
		return g*h/k - here.Deflection
	}
	if got := lift(0, side/2); math.Abs(got/closed.Edge-1) > 0.02 {
		t.Errorf("edge %.3f mm, closed form %.3f mm", 1e3*got, 1e3*closed.Edge)
	}
	if got := lift(0.5, side/2); math.Abs(got/closed.At(0.5)-1) > 0.04 {
		t.Errorf("half a metre in %.3f mm, closed form %.3f mm", 1e3*got, 1e3*closed.At(0.5))
	}
	if got := lift(0, 0); math.Abs(got/(2*closed.Edge)-1) > 0.1 {
		t.Errorf("corner %.3f mm, two edges %.3f mm", 1e3*got, 2e3*closed.Edge)
	}
}
