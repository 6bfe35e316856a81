package checks

import (
	"context"
	"errors"
	"strings"
	"testing"

	"slabwright/source"
)

func fact(v float64) source.Fact { return source.Fact{Value: v, Known: source.Recorded} }

func at(v float64) *source.Fact { f := fact(v); return &f }

// warehouse is a slab of 175 mm with racking, forklifts, a lorry axle, a wall and
// stacked goods: every kind of load.
func warehouse(code string) Input {
	c, _ := CodeOf(code)
	in := Input{
		Code:     c,
		Slab:     Slab{Thickness: fact(0.175), Length: fact(5), Width: fact(4.5)},
		Concrete: Concrete{Strength: fact(32), Poisson: fact(0.2), UnitWeight: fact(24), Expansion: fact(1e-5), Shrinkage: fact(400e-6)},
		Ground:   Ground{Support: fact(50), CBR: at(8), Friction: fact(1.5), Base: "granular"},
		Joint: Joint{Transfer: Dowelled, Spacing: fact(5), Cooling: fact(15), Filler: at(0.25), FillWidth: at(0.010),
			Dowels: &Dowels{Diameter: fact(0.020), Length: fact(0.5), Spacing: fact(0.3), Support: fact(300), Yield: fact(250)}},
		Steel: &Steel{Diameter: fact(0.008), Spacing: fact(0.2), Cover: fact(0.05), Yield: fact(500), Free: fact(25), Held: true},
		Use:   Use{Class: "pneumatic tyres over 3 t", Hot: at(8), Cold: at(12)},
		Loads: []Load{
			{ID: "L1", Name: "Forklift", Kind: Axle, Force: at(60), Pressure: at(1.0), Wheels: 2, Track: at(0.9), Passes: at(200000)},
			{ID: "L2", Name: "Rack", Kind: Post, Force: at(55), PlateX: at(0.12), PlateY: at(0.1), Pitch: at(2.7), Back: at(0.4)},
			{ID: "L3", Name: "Lorry", Kind: Axle, Force: at(100), Pressure: at(0.8), Wheels: 4, Track: at(1.8), Pair: at(0.33), Passes: at(50000)},
			{ID: "L4", Name: "Wall", Kind: Line, PerMetre: at(25)},
			{ID: "L5", Name: "Pallets", Kind: Spread, PerArea: at(40)},
			{ID: "L6", Name: "Truck wheel", Kind: Wheel, Force: at(30), Pressure: at(4), Places: []Place{Interior, FreeEdge, Corner}},
		},
	}
	switch c.Key {
	case "EN":
		in.Use.Exposure = "XC3"
	case "AS":
		in.Use.Exposure, in.Use.Control = "B1", "moderate"
	case "ACI":
		in.Use.Exposure = "F1"
	}
	return in
}

// run makes the closed forms only; TestPlateStandsBeside has the plate.
func run(t *testing.T, in Input) Result {
	t.Helper()
	in.Quick = true
	r, err := Run(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The plate on ground that cannot pull stands beside every check of load and curl:
// two routes that share nothing but the data. Where the panel lies flat enough they
// agree within a fifth.
func TestPlateStandsBeside(t *testing.T) {
	in := warehouse("EN")
	in.Loads = in.Loads[:2]
	r, err := Run(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	beside := 0
	for _, row := range r.Rows {
		if !strings.HasPrefix(row.ID, "curl-") {
			continue
		}
		beside++
		if row.Beside == nil || !strings.HasPrefix(row.Beside.What, "plate in plan") || row.Beside.Apart > 0.20 {
			t.Errorf("%s: %.3g MPa, beside it %+v", row.ID, row.Demand, row.Beside)
		}
	}
	if beside != 6 {
		t.Errorf("%d checks of load and curl, want 6", beside)
	}
}

func TestRunStopsWhenAsked(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Run(ctx, warehouse("EN")); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

func TestProblemsAllAtOnce(t *testing.T) {
	in := warehouse("EN")
	in.Slab.Thickness.Value = 175
	in.Slab.Width.Value = 9
	in.Loads[0].Wheels = 3
	in.Loads[4].PerArea = nil
	in.Use.Class = "lorries"
	_, err := Run(context.Background(), in)
	if err == nil {
		t.Fatal("no error")
	}
	for _, want := range []string{"Did you mean 0.175 m? That is 175 mm", "swapped", "2 or 4", "the load in kN/m²", "pneumatic tyres to 3 t"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("the error lacks %q:\n%v", want, err)
		}
	}
}

func TestLeastThickness(t *testing.T) {
	in := warehouse("EN")
	in.Loads = in.Loads[:1]
	thickness, governs, ok, err := LeastThickness(context.Background(), in)
	if err != nil || !ok {
		t.Fatal(err, ok)
	}
	in.Steel = nil
	first := in.Slab.Thickness.Value
	worst := func(h float64) float64 {
		in.Slab.Thickness.Value = h
		in.Use.Hot, in.Use.Cold = at(8*h/first), at(12*h/first)
		return worstOf(run(t, in), Thickness, Fatigue, Punching).Utilisation
	}
	if at, below := worst(thickness), worst(thickness-0.005); at > 1 || below <= 1 || governs.Utilisation != at {
		t.Errorf("least thickness %g m: used %.3f there, %.3f at 5 mm less; the row says %.3f", thickness, at, below, governs.Utilisation)
	}
}

func TestAssumptionsSayWhatMoves(t *testing.T) {
	in := warehouse("EN")
	low, high := 25.0, 80.0
	in.Ground.Support.Low, in.Ground.Support.High = &low, &high
	list, err := Assumptions(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	byKey := map[string]Assumption{}
	for _, a := range list {
		byKey[a.Key] = a
		for _, m := range append(append([]Move{}, a.Low.Moves...), a.High.Moves...) {
			if m.share() <= MovedBy && !m.Flips {
				t.Errorf("%s: %s moved by only %.3f", a.Key, m.Row, m.share())
			}
		}
	}
	k := byKey["support"]
	if !k.Low.Given || k.Low.Value != 0.025 || k.High.Value != 0.08 {
		t.Errorf("support is tried at %+v", k)
	}
	if len(k.Low.Moves) == 0 || len(byKey["thickness"].Low.Moves) < 20 {
		t.Errorf("a thinner slab or softer ground moves too little: %d, %d", len(byKey["thickness"].Low.Moves), len(k.Low.Moves))
	}
	if byKey["filler"].High.Moves[0].Row != "filler" || len(byKey["filler"].High.Moves) != 1 {
		t.Errorf("the filler moves %+v", byKey["filler"].High.Moves)
	}
}

func TestWithChangesOneNumber(t *testing.T) {
	in := warehouse("EN")
	thicker, err := in.With("thickness", 200)
	if err != nil || thicker.Slab.Thickness.Value != 0.2 || in.Slab.Thickness.Value != 0.175 {
		t.Errorf("got %v and %v, %v", thicker.Slab.Thickness.Value, in.Slab.Thickness.Value, err)
	}
	heavier, err := in.With("L2.force", 70)
	if err != nil || heavier.Loads[1].Force.Value != 70 || in.Loads[1].Force.Value != 55 {
		t.Errorf("got %v and %v, %v", heavier.Loads[1].Force.Value, in.Loads[1].Force.Value, err)
	}
	for _, m := range Compare(run(t, in), run(t, heavier)) {
		if !strings.Contains(m.Row, "L2") && !strings.HasPrefix(m.Row, "dowel") {
			t.Errorf("a heavier rack moves %s", m.Row)
		}
	}
	if _, err := in.With("thicknes", 200); err == nil || !strings.Contains(err.Error(), `did you mean "thickness"`) {
		t.Error(err)
	}
	if _, err := in.With("thickness", 5000); err == nil || !strings.Contains(err.Error(), "75 to 1000 mm") {
		t.Error(err)
	}
}
