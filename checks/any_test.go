package checks

import (
	"context"
	"testing"

	"pgregory.net/rapid"

	"slabwright/source"
)

// anyInput draws a slab with every kind of load from the whole of the ranges that can
// be worked.
func anyInput(t *rapid.T) Input {
	code := rapid.SampledFrom([]string{"EN", "ACI", "AS"}).Draw(t, "code")
	in := warehouse(code)
	in.Quick = true
	for _, g := range in.givens() {
		low, high := g.number("min"), g.number("max")
		g.fact.Value = rapid.Float64Range(low, high).Draw(t, g.Key)
	}
	if in.Slab.Width.Value > in.Slab.Length.Value {
		in.Slab.Width, in.Slab.Length = in.Slab.Length, in.Slab.Width
	}
	in.Joint.Transfer = rapid.SampledFrom([]Transfer{NoTransfer, Interlock, Dowelled, Tied, Keyed}).Draw(t, "transfer")
	return in
}

// Whatever the numbers, a run either says what is wrong with them or gives finite
// checks whose lines can be worked again; it never panics.
func TestAnySlabComesOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := anyInput(t)
		r, err := Run(context.Background(), in)
		if _, bad := err.(Problems); bad {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range r.Rows {
			if !finite(row.Utilisation) || row.Utilisation < 0 || !finite(row.Capacity) || row.Capacity <= 0 {
				t.Fatalf("%s: %g of %g", row.ID, row.Demand, row.Capacity)
			}
		}
		for _, s := range r.Sheets {
			for _, l := range s.Lines {
				if !finite(l.Value) {
					t.Fatalf("%s %s is %g", s.ID, l.Symbol, l.Value)
				}
			}
		}
	})
}

// More load is never easier, more thickness never harder, for the checks of the load.
func TestMoreLoadIsHarder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := warehouse(rapid.SampledFrom([]string{"EN", "ACI", "AS"}).Draw(t, "code"))
		in.Quick, in.Steel, in.Joint.Share = true, nil, &source.Fact{Value: 0.2, Known: source.Assumed}
		// Contacts closer than twice the thickness count as one by the rule: kept clear of
		// where that changes, since the check of one then becomes the check of two.
		in.Loads[1].Back, in.Loads[2].Pair = at(0.7), at(0.25)
		in.Slab.Thickness.Value = rapid.Float64Range(0.15, 0.3).Draw(t, "thickness")
		base, err := Run(context.Background(), in)
		if err != nil {
			t.Fatal(err)
		}
		heavier, thicker := in.clone(), in.clone()
		for i := range heavier.Loads {
			for _, f := range []*source.Fact{heavier.Loads[i].Force, heavier.Loads[i].PerMetre, heavier.Loads[i].PerArea} {
				if f != nil {
					f.Value *= 1.1
				}
			}
		}
		thicker.Slab.Thickness.Value *= 1.05
		more, err := Run(context.Background(), heavier)
		if err != nil {
			t.Fatal(err)
		}
		thick, err := Run(context.Background(), thicker)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range base.Rows {
			if row.Group != Thickness && row.Group != Punching && row.Group != Fatigue {
				continue
			}
			if m := more.Find(row.ID); m != nil && m.Utilisation < row.Utilisation*(1-1e-9) {
				t.Fatalf("%s: 10 %% more load takes it from %.4f to %.4f", row.ID, row.Utilisation, m.Utilisation)
			}
			if h := thick.Find(row.ID); h != nil && h.Utilisation > row.Utilisation*(1+1e-9) {
				t.Fatalf("%s: 5 %% more thickness takes it from %.4f to %.4f", row.ID, row.Utilisation, h.Utilisation)
			}
		}
	})
}
