package steel

import (
	"math"
	"testing"
)

// The bearing stress must follow from the beam on an elastic bed solved another way:
// the deflection of a half-infinite beam with a force and a moment at its end is
// 2β(P + βM)/K per width, with M = P·z/2 from the middle of the gap.
func TestBearingByHalfInfiniteBeam(t *testing.T) {
	for _, c := range []struct{ force, support, opening, diameter float64 }{
		{10000, 400, 2, 20}, {15000, 100, 10, 32}, {5000, 250, 0, 25},
	} {
		const modulus = 2e5
		beta := RelativeStiffness(c.support, c.diameter, modulus)
		line := c.support * c.diameter // N/mm per mm
		y := 2 * beta / line * (c.force + beta*c.force*c.opening/2)
		want := c.support * y
		got := BearingStress(c.force, c.support, c.opening, c.diameter, modulus)
		if math.Abs(got/want-1) > 1e-12 {
			t.Errorf("force %g N, K %g, z %g, d %g: bearing %.6g MPa, by the other route %.6g", c.force, c.support, c.opening, c.diameter, got, want)
		}
	}
}

// The greatest moment must be the largest value of the moment along the dowel.
func TestGreatestMomentIsTheGreatest(t *testing.T) {
	beta, opening, force := 0.0336, 2.0, 1e4
	largest := 0.0
	for x := 0.0; x < 4/beta; x += 0.001 / beta {
		m := math.Exp(-beta*x) / (2 * beta) * (force*math.Sin(beta*x)*2 + beta*force*opening*(math.Cos(beta*x)+math.Sin(beta*x)))
		largest = math.Max(largest, math.Abs(m))
	}
	if got := GreatestMoment(force, beta, opening); math.Abs(got/largest-1) > 1e-5 {
		t.Errorf("greatest moment %.2f N mm, largest along the bar %.2f", got, largest)
	}
}

func TestDowelForcesCarryTheLoad(t *testing.T) {
	places := DowelRow(20, 300)
	loads := []WheelLoad{{40000, 1000}, {30000, 2800}, {5000, 5700}}
	sum := 0.0
	for _, f := range DowelForces(places, loads, 900, 0.5) {
		if f < 0 {
			t.Errorf("a dowel force of %g N", f)
		}
		sum += f
	}
	if math.Abs(sum-0.5*75000) > 1e-6 {
		t.Errorf("the dowels carry %.3f N, half the loads is %.3f", sum, 0.5*75000.0)
	}
	for i, f := range DowelForces(places, []WheelLoad{{1000, -5000}}, 900, 0.5) {
		if f != 0 {
			t.Errorf("dowel %d carries %g N of a load out of reach", i, f)
		}
	}
}

func TestJointSpring(t *testing.T) {
	last := math.Inf(1)
	for z := 0.1; z < 30; z *= 1.3 { // wider joints are softer
		d := DowelShearStiffness(300, 25, 2e5, 0.3, z)
		if !(d < last && d > 0) {
			t.Fatalf("opening %.2f mm: spring %g N/mm after %g", z, d, last)
		}
		if d > BeddingStiffness(300, 25, 2e5, z) || d > GapStiffness(25, 2e5, 0.3, z) {
			t.Errorf("opening %.2f mm: two springs in line stiffer than one of them", z)
		}
		last = d
	}
	closed := DowelShearStiffness(300, 25, 2e5, 0.3, 0)
	if math.Abs(closed-BeddingStiffness(300, 25, 2e5, 0)) > 1e-9*closed {
		t.Errorf("closed joint: spring %g N/mm is not that of the bedding", closed)
	}
}

func TestCrackedSectionInBalance(t *testing.T) {
	const b, d, area, ratio, moment = 1000.0, 115, 565.5, 6.35, 15e6
	x := NeutralAxis(b, d, area, ratio)
	if left, right := b*x*x/2, ratio*area*(d-x); math.Abs(left/right-1) > 1e-12 {
		t.Errorf("first moments %g and %g mm³ differ", left, right)
	}
	// by the second moment of the cracked section
	inertia := b*x*x*x/3 + ratio*area*(d-x)*(d-x)
	want := ratio * moment * (d - x) / inertia
	if got := SteelStress(moment, d, x, area); math.Abs(got/want-1) > 1e-12 {
		t.Errorf("steel stress %.6g MPa, by second moment %.6g", got, want)
	}
}

func TestCrackWidthFloor(t *testing.T) {
	if got := MeanStrainEN(100, 0.4, 3, 0.005, 6, 2e5); got != 0.6*100/2e5 {
		t.Errorf("a lightly reinforced section has strain %g, want the floor %g", got, 0.6*100/2e5)
	}
}

func TestTablesRefuse(t *testing.T) {
	for name, ok := range map[string]bool{
		"bar": second(FindBar("13")), "mesh": second(FindMesh("SL99")), "exposure": second(CrackLimitFor("XC9")),
		"control": second(RestrainedSteelAS("some", 150)), "bar at 500 MPa": second(LargestBarEN(500)), "spacing at 400 MPa": second(WidestSpacingEN(400)),
	} {
		if ok {
			t.Errorf("%s: found what is not in the table", name)
		}
	}
	if _, err := DowelSizeFor("aci", 90); err == nil {
		t.Error("a 90 mm slab got a dowel")
	}
	if _, err := DowelSizeFor("mine", 150); err == nil {
		t.Error("an unknown rule got a dowel")
	}
	if s, err := DowelSizeFor("aci", 150); err != nil || s.Length != nil {
		t.Errorf("aci 150 mm: %+v, %v; the length is not known", s, err)
	}
	if d, ok := LargestBarEN(220); !ok || d != 20.5 {
		t.Errorf("largest bar at 220 MPa %g mm, want 20.5", d)
	}
}

func second[T any](_ T, ok bool) bool { return ok }

func TestAlignmentScalesWithLength(t *testing.T) {
	if v, why := CheckAlignment(Alignment{Skew: 9, Length: 225}); v != Outside || len(why) != 1 {
		t.Errorf("9 mm over 225 mm is 18 mm over 450 mm: %s %q", v, why)
	}
	if v, why := CheckAlignment(Alignment{Skew: 30, Tilt: 30, Length: 450}); v != Assess || len(why) != 3 {
		t.Errorf("30 mm both ways: %s %q", v, why)
	}
}
