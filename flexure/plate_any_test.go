package flexure

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"slabwright/plan"
)

// Any plate either says what is wrong with it or comes to rest: forces balance, the
// ground nowhere pulls, and every figure is a number.
func TestAnyPlate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		long, wide := in(1, 9, "length"), in(1, 6, "width")
		p := Plate{Thickness: in(0.08, 0.4, "h"), Modulus: in(2e9, 45e9, "E"), Poisson: in(0, 0.3, "nu"), Support: in(5e6, 3e8, "k"), UnitWeight: in(15e3, 26e3, "weight"),
			Warp: Warp{Difference: in(-40, 40, "dT"), Expansion: 1e-5}, Slab: plan.Slab{ID: "S", Outline: rectangle(0, 0, long, wide)}}
		p.Size = math.Max(long, wide) / rapid.Float64Range(6, 14).Draw(t, "parts")
		p.Triangles = rapid.Bool().Draw(t, "triangles")
		if rapid.Bool().Draw(t, "thick") {
			p.Theory = Thick
		}
		if rapid.Bool().Draw(t, "joint") {
			x := in(0.2*long, 0.8*long, "joint at")
			p.Slab.Joints = []plan.Joint{{ID: "J", Kind: plan.Sawn, Path: []plan.Point{pt(x, 0), pt(x, wide)}}}
			kind := rapid.SampledFrom([]TransferKind{FreeJoint, Interlock, Dowelled, Tied, WholeJoint}).Draw(t, "kind")
			p.Joints = []Transfer{{Joint: "J", Kind: kind, Opening: in(0, 0.004, "opening"), Bars: UsualBars(p.Thickness)}}
		}
		if rapid.Bool().Draw(t, "void") {
			p.Zones = []Zone{{ID: "V", Area: rectangle(0, 0, in(0.1, 0.6, "void x")*long, in(0.1, 0.6, "void y")*wide)}}
		}
		if rapid.Bool().Draw(t, "load") {
			p.Loads = []Load{Patch("L", pt(in(0.15, long-0.15, "x"), in(0.15, wide-0.15, "y")), in(0, 80e3, "force"), 0.2, 0.2, 0)}
		}
		b, err := p.Solve(t.Context())
		var wrong plan.Problem
		if errors.As(err, &wrong) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(b.Reaction/(b.Weight+b.Applied)-1) > 1e-8 {
			t.Fatalf("reaction %g for %g", b.Reaction, b.Weight+b.Applied)
		}
		for _, v := range append([]float64{b.Contact, b.Bottom.Value, b.Top.Value, b.Pressure.Value, b.Highest.Value}, b.u...) {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatal("not a number")
			}
		}
		if b.Pressure.Value < 0 || b.Contact < 0 || b.Contact > 1 {
			t.Fatalf("pressure %g, contact %g", b.Pressure.Value, b.Contact)
		}
		b.Working()
	})
}
