package restraint

import (
	"context"
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"slabwright/plan"
)

// anySlab draws a slab with a notch, an opening, joints that cross, bars and holds.
func anySlab(t *rapid.T) Model {
	f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	w, h := f("width", 3, 12), f("height", 3, 9)
	nx, ny := f("notch x", 0.3, w/2), f("notch y", 0.3, h/2)
	m := Model{
		Slab: plan.Slab{Outline: path(0, 0, w, 0, w, h-ny, w-nx, h-ny, w-nx, h, 0, h)},
		Base: Base{Stiffness: math.Pow(10, f("bed", 6, 9.5)), Friction: f("friction", 0.2, 4), UnitWeight: 24000},
		Pours: []Pour{{ID: "A", Thickness: f("thickness", 0.1, 0.3), At: hot(f("set", 3, 8))},
			{ID: "B", Area: rectangle(0, 0, w/2, h), Thickness: 0.15, At: hot(f("other set", 3, 30))}},
		Settings: Settings{Size: 0.8, Scatter: f("scatter", 0, 0.2), Seed: rapid.Uint64().Draw(t, "seed"), Cracks: 60},
	}
	if rapid.Bool().Draw(t, "post") {
		x, y := f("post x", 0.5, w/2-0.3), f("post y", 0.5, h/2-0.3)
		ring := rectangle(x, y, x+0.3, y+0.25)
		m.Slab.Fixtures = []plan.Fixture{{ID: "P", Opening: true, Shape: ring}}
		m.Holds = append(m.Holds, Hold{ID: "P", Path: append(ring, ring[0]), Give: f("strip", 0, 0.004)})
	}
	if rapid.Bool().Draw(t, "wall") {
		m.Holds = append(m.Holds, Hold{ID: "W", Path: path(0, 0, 0, h), Bond: math.Pow(10, f("bond", 8, 13))})
	}
	bars := &Bars{Along: f("along", 0, 5e8), Across: f("across", 0, 1e8), Room: f("room", 0, 1e-3), Clear: f("clear", 0, 0.4)}
	x, y := f("joint x", 0.5, w-0.5), f("joint y", 0.5, h-0.5)
	m.Lines = []Line{
		{ID: "F", Kind: FormedLine, Path: path(w/2, 0, w/2, h), Bars: bars},
		{ID: "S", Kind: SawnLine, Path: path(x, -0.02, x+f("lean", -0.4, 0.4), h-0.01), From: f("sawn", 6, 200), Share: 0.7, FaceShare: 0.5},
		{ID: "T", Kind: SawnLine, Path: path(0.02, y, w-0.03, y), From: f("sawn too", 6, 200), Share: 0.8, FaceShare: 0.6, Bars: bars},
	}
	return m
}

// Whatever the slab, a replay ends with numbers, or says what did not settle; the work
// balances within 3 %, nothing opens without the work that it takes, and no side of a line
// passes through the other.
func TestAnySlab(t *testing.T) {
	hours := append(steps(48, 16), 96, 200, 500, 2000)
	for seed := range 12 {
		m := rapid.Custom(anySlab).Example(seed)
		r, err := m.Replay(context.Background(), hours, []float64{48, 2000}, nil)
		var not *NotSettled
		if err != nil && !errors.As(err, &not) && (r == nil || len(r.Events) < 50) {
			t.Fatal(err)
		}
		if not != nil {
			t.Fatalf("seed %d did not settle: %v", seed, err)
		}
		for _, f := range r.Fields {
			for i, v := range f.Most {
				if math.IsNaN(v) || math.Abs(v) > 200e6 || math.IsNaN(f.Share[i]) {
					t.Fatalf("stress %g, share %g at hour %g", v, f.Share[i], f.Hour)
				}
			}
		}
		for _, o := range r.Openings {
			if math.IsNaN(o.Mean) || o.Mean < -1e-3 || o.Widest > 0.03 {
				t.Fatalf("%s stands %g mm open", o.Line, 1e3*o.Mean)
			}
		}
		for _, e := range r.Events {
			if e.Freed < 0.999*e.Needed {
				t.Fatalf("%s opened with %.3g J set free of %.3g needed", e.Line, e.Freed, e.Needed)
			}
		}
		if l := r.Ledger; math.Abs(l.Left) > 0.03*(l.Supplied+1) || l.Released < -0.01*l.Supplied {
			t.Fatalf("work: %+v", l)
		}
	}
}

// The same coarsely, and looked at for one hour.
func TestAnySlabQuickly(t *testing.T) {
	hours := append(steps(48, 16), 96, 200, 500, 2000)
	for seed := range 12 {
		m := rapid.Custom(anySlab).Example(seed + 100).Quick()
		r, err := m.Replay(context.Background(), hours, nil, nil)
		if err != nil && len(r.Events) < 50 {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if l := r.Ledger; math.Abs(l.Left) > 0.1*(l.Supplied+1) {
			t.Errorf("seed %d: work %+v", seed, l)
		}
		f, err := m.Stress(context.Background(), 300)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		for _, v := range f.Most {
			if math.IsNaN(v) || math.Abs(v) > 200e6 {
				t.Fatalf("seed %d: stress %g", seed, v)
			}
		}
	}
}
