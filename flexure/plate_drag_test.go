package flexure

import (
	"context"
	"math"
	"testing"

	"slabwright/plan"
)

// A wheel dragged over large elements answers like the same wheel on elements made
// for it: in the interior, at an edge, at a joint and at a corner of warped panels.
func TestDraggedWheel(t *testing.T) {
	p := yard()
	p.Slab.Outline, p.Slab.Fixtures = rectangle(0, 0, 14.4, 8), nil
	p.Slab.Joints = p.Slab.Joints[:1]
	p.Slab.Joints[0].Path = []plan.Point{pt(4.8, 0), pt(4.8, 8)}
	p.Joints = p.Joints[:1]
	r, err := p.Ready(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ x, y float64 }{{9.1, 3.2}, {5.1, 0.3}, {0.3, 0.3}} {
		q := p
		q.Loads = []Load{RoundWheel("w", pt(c.x, c.y), 40e3, 0.8e6)}
		b, err := r.Bend(context.Background(), q.Loads)
		if err != nil {
			t.Fatal(err)
		}
		fine := solve(t, q)
		near(t, "deflection below the wheel", b.Under[0].Deflection/fine.Under[0].Deflection, 1, 0.01)
		near(t, "tension below the wheel", b.Under[0].Bottom, fine.Under[0].Bottom, 0.05*fine.Bottom.Value)
		near(t, "greatest tension underneath", b.Bottom.Value/fine.Bottom.Value, 1, 0.05)
		near(t, "greatest tension on top", b.Top.Value/fine.Top.Value, 1, 0.08)
		near(t, "lift", b.Highest.Value/fine.Highest.Value, 1, 0.01)
		near(t, "load transfer", b.Joints[0].LTE, fine.Joints[0].LTE, 0.02)
		near(t, "reaction over weight and loads", b.Reaction/(b.Weight+b.Applied), 1, 1e-5)
	}
}

// Two axles near each other are looked at in one box, far loads each in its own.
func TestCloseBoxes(t *testing.T) {
	p := panel()
	p.Size = 0.8
	p.Slab.Outline = rectangle(0, 0, 20, 8)
	r, err := p.Ready(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	loads := append(Axle{Force: 80e3, Track: 1.8, Pair: 0.35, Pressure: 0.8e6}.At("a", pt(4, 4), 0), RoundWheel("far", pt(17, 4), 40e3, 0.8e6))
	b, err := r.Bend(context.Background(), loads)
	if err != nil {
		t.Fatal(err)
	}
	if len(b.closer) != 3 {
		t.Errorf("%d boxes, want one for each pair of tyres and one for the far wheel", len(b.closer))
	}
	for i := range b.Under {
		if here, ok := b.At(loads[i].At); !ok || here != b.Under[i].Here || math.IsNaN(here.Bottom) {
			t.Errorf("%s: %+v", loads[i].ID, here)
		}
	}
}
