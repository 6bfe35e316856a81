package restraint

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

// The shear-lag closed form against a direct solve of E h u” = ks u by finite
// differences: halving the step must quarter the error.
func TestElasticBedAgainstFiniteDifferences(t *testing.T) {
	const e, strain, length, h, ks = 25e9, 200e-6, 6.0, 0.15, 5e7
	exact := ElasticBedStress(e, strain, length, h, ks)
	coarse := math.Abs(bedByDifferences(e, strain, length, h, ks, 40) - exact)
	fine := math.Abs(bedByDifferences(e, strain, length, h, ks, 80) - exact)
	if rate := math.Log2(coarse / fine); math.Abs(rate-2) > 0.1 {
		t.Errorf("observed order %.2f, want 2 (errors %g, %g Pa)", rate, coarse, fine)
	}
	if fine > 1e-3*exact {
		t.Errorf("off by %g Pa of %g", fine, exact)
	}
}

// bedByDifferences solves u” = b² u on the half slab, u(0) = 0 and u'(L/2) =
// -strain (free end), and returns the stress E (u'(0) + strain).
func bedByDifferences(e, strain, length, h, ks float64, n int) float64 {
	dx := length / 2 / float64(n)
	b2 := ks / (e * h)
	// unknowns u1..un, with a ghost beyond the end; Thomas elimination
	diag, rhs := make([]float64, n+1), make([]float64, n+1)
	upper := make([]float64, n+1)
	for i := 1; i <= n; i++ {
		lower := 1.0
		diag[i], upper[i] = -2-b2*dx*dx, 1
		if i == n {
			lower, rhs[i] = 2, 2*dx*strain
		}
		if i > 1 {
			f := lower / diag[i-1]
			diag[i] -= f * upper[i-1]
			rhs[i] -= f * rhs[i-1]
		}
	}
	u := make([]float64, n+2)
	for i := n; i >= 1; i-- {
		u[i] = (rhs[i] - upper[i]*u[i+1]*boolean(i < n)) / diag[i]
	}
	slope := (4*u[1] - u[2]) / (2 * dx) // of second order at the middle
	return e * (slope + strain)
}

func boolean(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func TestBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := rapid.Float64Range(1e9, 40e9).Draw(t, "E")
		strain := rapid.Float64Range(1e-6, 1e-3).Draw(t, "strain")
		length := rapid.Float64Range(0.5, 60).Draw(t, "length")
		h := rapid.Float64Range(0.08, 0.4).Draw(t, "h")
		ks := rapid.Float64Range(1e6, 1e9).Draw(t, "ks")
		s := ElasticBedStress(e, strain, length, h, ks)
		if s < 0 || s > e*strain*(1+1e-12) {
			t.Fatalf("stress %g outside 0 to full restraint %g", s, e*strain)
		}
		if longer := ElasticBedStress(e, strain, 2*length, h, ks); longer < s*(1-1e-9) {
			t.Fatalf("a longer slab is held less: %g then %g", s, longer)
		}
		// the drag under the half slab carries the tension: integral of ks·u is s·h
		slip := ElasticBedEndSlip(e, strain, length, h, ks)
		if slip < 0 || slip > strain*length/2*(1+1e-12) {
			t.Fatalf("end slip %g above free shortening %g", slip, strain*length/2)
		}
	})
}

// At the slip length drag equals full restraint.
func TestSlipLength(t *testing.T) {
	l := SlipLength(25e9, 200e-6, 1.5, 24000)
	if got := DragStress(1.5, 24000, l); math.Abs(got-5e6) > 1 {
		t.Errorf("drag at the slip length %g Pa, want E·strain = 5 MPa", got)
	}
	if lo, hi := CrackSpacing(2.5e6, 0.15, 1.5*24000*0.15); math.Abs(lo-2.5e6/36000) > 1e-9 || hi != 2*lo {
		t.Errorf("crack spacing %g to %g", lo, hi)
	}
}

func TestNetSection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(0, 0.9).Draw(t, "depth")
		share := rapid.Float64Range(0, 1).Draw(t, "bending")
		held, free := NetSection(a, share, false), NetSection(a, share, true)
		if held <= 0 || held > 1+1e-12 || free > held+1e-12 {
			t.Fatalf("held %g, free to rotate %g", held, free)
		}
		if deeper := NetSection(a+0.05, share, false); deeper >= held {
			t.Fatalf("a deeper cut leaves more: %g then %g", held, deeper)
		}
	})
}

func TestLateralDemandIsSymmetric(t *testing.T) {
	if LateralDemand(1e-4, 3e-4, 2) != LateralDemand(3e-4, 1e-4, 2) {
		t.Error("demand must not depend on which side shortens more")
	}
}
