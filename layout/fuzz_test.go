package layout

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"slabwright/plan"
)

// wild returns an outline of random corners round a middle, and fixtures here and
// there in it.
func wild(r *rand.Rand) plan.Slab {
	s := plan.Slab{ID: "W", Thickness: thick(0.12 + 0.1*r.Float64())}
	n := 3 + r.IntN(8)
	for i := range n {
		at := 2 * math.Pi * (float64(i) + 0.6*r.Float64()) / float64(n)
		reach := 4 + 9*r.Float64()
		s.Outline = append(s.Outline, plan.Point{X: 20 + reach*math.Cos(at), Y: 20 + reach*math.Sin(at)})
	}
	for i := range r.IntN(4) {
		at := plan.Point{X: 16 + 8*r.Float64(), Y: 16 + 8*r.Float64()}
		size := 0.2 + 1.4*r.Float64()
		f := plan.Fixture{ID: []string{"A", "B", "C", "D"}[i], Kind: []plan.FixtureKind{plan.Column, plan.Pit, plan.Drain}[r.IntN(3)], Opening: true,
			Shape: []plan.Point{at, at.Plus(plan.Point{X: size}), at.Plus(plan.Point{X: size, Y: size}), at.Plus(plan.Point{Y: size})}}
		with := s
		with.Fixtures = append(append([]plan.Fixture{}, s.Fixtures...), f)
		if len(with.Check()) == 0 {
			s = with
		}
	}
	return s
}

// Outlines that nobody would build: nothing falls over, the panels make up the slab,
// every number is one, and what cannot be met is said.
func TestWildOutlines(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	tried, must := 0, 0
	for tried < 8 {
		s := wild(r)
		if len(s.Check()) > 0 {
			continue
		}
		tried++
		all, err := Propose(context.Background(), brief(s), nil)
		if err != nil {
			t.Fatalf("%v: %v", s.Outline, err)
		}
		for _, a := range all {
			if bad := a.Slab.Check(); len(bad) > 0 {
				t.Errorf("%v: %v", s.Outline, bad)
			}
			panels, err := a.Slab.Panels()
			if err != nil {
				t.Fatal(err)
			}
			covered(t, a, panels)
			if math.IsNaN(a.Score) || math.IsNaN(*a.Cost) || math.IsNaN(a.Chance.Unplanned) {
				t.Errorf("%v: score %g, cost %g, chance %g", s.Outline, a.Score, *a.Cost, a.Chance.Unplanned)
			}
			if a.Measure.Hard() > 0 {
				must++
				if musts(a.Warnings) == 0 {
					t.Errorf("%v: %+v and no warning", s.Outline, a.Measure)
				}
			}
		}
	}
	t.Logf("%d of %d alternatives have places where a hard rule is not met", must, 3*tried)
}
