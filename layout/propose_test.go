package layout

import (
	"context"
	"testing"

	"slabwright/plan"
	"slabwright/source"
)

func poly(v ...float64) (out []plan.Point) {
	for i := 0; i < len(v); i += 2 {
		out = append(out, plan.Point{X: v[i], Y: v[i+1]})
	}
	return out
}

func thick(v float64) *source.Fact { return &source.Fact{Value: v, Known: source.Assumed} }

func brief(s plan.Slab) Brief {
	return Brief{Slab: s, Spacing: SpacingLimit(UsualSpacingFacts(s.Thickness.Value)), Wheels: Wheels{Cross: true}, Steel: Steel{Mesh: "A193"},
		Rates: Rates{Currency: "EUR", Sawn: 9, Formed: 35, Isolation: 22, Dowel: 7, Steel: 2.2, StripStart: 300}}
}

func TestProposeOnAnLWithPitAndColumn(t *testing.T) {
	s := plan.Slab{ID: "S", Outline: poly(0, 0, 12, 0, 12, 6, 6, 6, 6, 14, 0, 14), Thickness: thick(0.15),
		Fixtures: []plan.Fixture{{ID: "C1", Kind: plan.Column, Opening: true, Shape: poly(7.8, 2.8, 8.2, 2.8, 8.2, 3.2, 7.8, 3.2)},
			{ID: "P1", Kind: plan.Pit, Opening: true, Shape: poly(2, 9, 4, 9, 4, 10.6, 2, 10.6)}}}
	alternatives, err := Propose(context.Background(), brief(s), nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range alternatives {
		t.Logf("%s: %+v\n%+v cost %.0f chance %.3f (%.3f-%.3f)", a.Name, a.Measure, a.Quantities, *a.Cost, a.Chance.Unplanned, *a.Chance.Low, *a.Chance.High)
		for _, w := range a.Warnings {
			t.Log(w.Severity, w.Found)
		}
		if a.Measure.Hard()+a.Measure.Bare > 0 {
			t.Errorf("%s: hard rules not met: %+v", a.Name, a.Measure)
		}
		if bad := a.Slab.Check(); len(bad) > 0 {
			t.Error(bad)
		}
	}
}

func direction(x float64) plan.Point { return plan.Point{X: x} }

// proposed returns the proposal for a shape by the usual brief, worked out once.
func proposed(t testing.TB, name string) []Alternative {
	t.Helper()
	if all, ok := once[name]; ok {
		return all
	}
	all, err := Propose(context.Background(), brief(named(t, name).Slab), nil)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	once[name] = all
	return all
}

var once = map[string][]Alternative{}
