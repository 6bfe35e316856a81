package layout

import (
	"math"
	"strings"
	"testing"

	"slabwright/flexure"
)

// C of Bradbury first comes to 1 at L/l = 6.689 (Westergaard 1927, worked from the
// equation): from there on curl in the middle of a panel is that of a panel held flat,
// within the tenth that C passes 1 by.
func TestHeldFlat(t *testing.T) {
	if c := flexure.Bradbury(fullyHeld); math.Abs(c-1) > 0.001 {
		t.Errorf("C is %.4f where a panel counts as held flat", c)
	}
	f := UsualSpacingFacts(0.18)
	share, from := f.Held()
	for _, length := range []float64{2 * from, 4 * from} {
		curl, _ := f.Use(length, length)
		if math.Abs(curl/share-1) > 0.1 {
			t.Errorf("at %.1f m curl uses %.3f, held flat %.3f", length, curl, share)
		}
	}
}

// The stress that counts is no less than that of a plate on springs that push and
// cannot pull, its weight counted: 1.744 MPa for 5 m and 0.652 MPa for 3 m at E 30 GPa,
// h 150 mm, k 50 MN/m³, 10 K, 24 kN/m³ (finite elements, converged; Kirchhoff plate with
// contact). Bradbury, who lets the ground pull, gives 2.00 for 5 m.
func TestCurlIsOnTheSafeSideOfAPlateThatLifts(t *testing.T) {
	f := UsualSpacingFacts(0.15)
	f.Modulus, f.Support, f.Difference, f.UnitWeight = 30e9, 50e6, -10, 24000
	for _, c := range []struct{ length, lifts float64 }{{5, 1.744e6}, {3, 0.652e6}} {
		curl, _ := f.Use(c.length, c.length)
		if got := curl * f.Flexural; got < c.lifts || got > 1.8*c.lifts {
			t.Errorf("%.0f m: %.3f MPa beside %.3f of the plate that lifts", c.length, got/1e6, c.lifts/1e6)
		}
	}
}

func TestLimitSaysWhy(t *testing.T) {
	strong := UsualSpacingFacts(0.18)
	strong.Flexural, strong.Friction = 5e6, 0.9
	if l := SpacingLimit(strong); l.Model < 20 || !strings.Contains(l.Words(), "set no near limit") {
		t.Errorf("%.1f m: %s", l.Model, l.Words())
	}
	weak := UsualSpacingFacts(0.18)
	weak.Flexural = 2.5e6
	if l := SpacingLimit(weak); l.Model > 10 || !strings.Contains(l.Words(), "so short") {
		t.Errorf("%.1f m: %s", l.Model, l.Words())
	}
}
