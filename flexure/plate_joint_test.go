package flexure

import (
	"context"
	"encoding/json"
	"math"
	"testing"

	"slabwright/plan"
	"slabwright/steel"
	"slabwright/working"
)

// jointed is two panels of 5 m by 5 m with a joint at x = 5.
func jointed(t Transfer) Plate {
	p := panel()
	p.Slab.Outline = rectangle(0, 0, 10, 5)
	p.Slab.Joints = []plan.Joint{{ID: "J", Kind: plan.Formed, Path: []plan.Point{pt(5, 0), pt(5, 5)}}}
	t.Joint = "J"
	p.Joints = []Transfer{t}
	p.Loads = []Load{RoundWheel("w", pt(4.85, 2.5), 40e3, 0.8e6)}
	return p
}

// What a joint passes on runs from nothing to everything; both sides together go down
// as far as a free edge does, whatever the joint.
func TestJointFromFreeToWhole(t *testing.T) {
	free := solve(t, jointed(Transfer{Kind: FreeJoint}))
	if len(free.Joints) != 1 || free.Joints[0].LTE > 1e-9 {
		t.Fatalf("free joint: %+v", free.Joints)
	}
	last := 0.0
	for _, agg := range []float64{1e6, 1e7, 1e8, 1e9, 1e11} {
		p := jointed(Transfer{Kind: Interlock, Interlock: agg})
		p.Pulls = true
		b := solve(t, p)
		j := b.Joints[0]
		if j.LTE <= last {
			t.Errorf("stiffness %g: transfer %g does not rise", agg, j.LTE)
		}
		last = j.LTE
		near(t, "both sides over a free edge", (j.Loaded+j.Unloaded)/free.Joints[0].Loaded, 1, 0.01)
		closed := TransferEfficiency(agg/(p.Support*b.Stiff), p.Loads[0].Radius/b.Stiff)
		near(t, "transfer against the regression", j.LTE, closed, 0.02)
		balanced(t, b)
	}
	near(t, "a very stiff joint, 0.998 by the regression", last, 1, 2e-3)
}

// A joint tied without give is no joint: deflection and moment run through.
func TestStiffTieIsNoJoint(t *testing.T) {
	tied := solve(t, jointed(Transfer{Kind: Tied, Interlock: 1e12, Moment: 1e12}))
	whole := solve(t, jointed(Transfer{Kind: WholeJoint}))
	if len(whole.Joints) != 0 {
		t.Errorf("a joint that is whole parts the slab: %+v", whole.Joints)
	}
	for _, q := range []plan.Point{pt(4.85, 2.5), pt(5.4, 2.2), pt(3, 1)} {
		a, _ := tied.At(q)
		b, _ := whole.At(q)
		near(t, "deflection", a.Deflection, b.Deflection, 2e-3*whole.Deepest.Value)
		near(t, "moment across", a.Moment[0], b.Moment[0], 0.01*whole.Bottom.Value*0.15*0.15/6)
	}
	hinged := solve(t, jointed(Transfer{Kind: Interlock, Interlock: 1e12}))
	a, _ := hinged.At(pt(4.99, 2.5))
	b, _ := whole.At(pt(4.99, 2.5))
	if math.Abs(a.Moment[0]) > 0.1*math.Abs(b.Moment[0]) {
		t.Errorf("moment across a hinge %g, whole %g", a.Moment[0], b.Moment[0])
	}
}

// Dowels carry together what crosses the joint, the one at the wheel most, none
// beyond the law of the group by much; bearing is Friberg's.
func TestDowels(t *testing.T) {
	bars := Bars{Diameter: 0.02, Spacing: 0.3, Clear: 0.25, Support: 400e9, Modulus: 200e9}
	p := jointed(Transfer{Kind: Dowelled, Opening: 0.002, Bars: bars})
	p.Loads = []Load{RoundWheel("w", pt(4.85, 2.5), 40e3, 0.8e6)}
	b := solve(t, p)
	j := b.Joints[0]
	if len(j.Bars) != 16 {
		t.Fatalf("%d bars, want 16 at 300 mm in 5 m less 250 mm at each end", len(j.Bars))
	}
	// What the far panel carries more than its weight has crossed the joint.
	crossed, signed := 0.0, 0.0
	for _, x := range j.Bars {
		crossed += x.Force
	}
	for k, f := range b.frame.net.faces {
		for _, s := range b.frame.springs[k] {
			step := b.frame.step(k, s.at, b.u)
			if b.frame.net.at(f.node[0]).Y < b.frame.net.at(f.node[1]).Y {
				step = -step // the second side lies at smaller x
			}
			signed += s.shear * step
		}
	}
	far := carriedBeyond(b, 5) - b.Weight/2
	near(t, "what the far panel carries", far, math.Abs(signed), 0.005*far)
	if crossed < far || crossed > 1.3*far {
		t.Errorf("dowels carry %g together, %g crosses", crossed, far)
	}
	hard, _ := j.HardestBar()
	if math.Abs(hard.Along-2.5) > 0.16 {
		t.Errorf("hardest dowel at %g, the wheel is at 2.5", hard.Along)
	}
	near(t, "bearing", hard.Bearing, steel.BearingStress(hard.Force, 400e9, 0.002, 0.02, 200e9), 1)
	spread := TransferEfficiency(steel.DowelShearStiffness(400e9, 0.02, 200e9, 0.3, 0.002)/0.3/(p.Support*b.Stiff), p.Loads[0].Radius/b.Stiff)
	near(t, "transfer of dowels against the same spread along the joint", j.LTE, spread, 0.03)
	// Half of the load at most crosses, spread over the dowels within l (Tabatabaie and
	// Barenberg) for an upper value of the hardest and within 1.8 l (Friberg) for a lower.
	places := make([]float64, len(j.Bars))
	for i, x := range j.Bars {
		places[i] = x.Along
	}
	force := func(reach float64) (most float64) {
		for _, f := range steel.DowelForces(places, []steel.WheelLoad{{Force: 40e3, Place: 2.5}}, reach*b.Stiff, j.LTE/(1+j.LTE)) {
			most = math.Max(most, f)
		}
		return most
	}
	if high, low := force(steel.ReachFE), force(steel.ReachFriberg); hard.Force > 1.1*high || hard.Force < 0.9*low {
		t.Errorf("hardest dowel %g, by group action %g to %g", hard.Force, low, high)
	}
}

// carriedBeyond adds up what the ground carries beyond x.
func carriedBeyond(b *Bent, x float64) (sum float64) {
	bed := b.frame.bed
	w := make([]float64, len(bed.stiff))
	bed.deflections(b.u, w)
	for i, s := range bed.stiff {
		if px, _ := bed.place(i/bed.points, i%bed.points); px > x {
			sum += s * math.Max(w[i], 0)
		}
	}
	return sum
}

// Interlock falls as the joint opens, through the two published points.
func TestInterlockFallsWithOpening(t *testing.T) {
	const k, l = 50e6, 0.65
	last := math.Inf(1)
	for _, z := range []float64{0, 0.0003, 0.0009, 0.0015, 0.003} {
		s := InterlockStiffness(z, k, l)
		if !(s > 0 && s < last) {
			t.Errorf("stiffness %g at %g m does not fall", s, z)
		}
		last = s
	}
	near(t, "transfer at 0.9 mm", TransferEfficiency(InterlockStiffness(0.0009, k, l)/(k*l), 0.2), 0.60, 1e-9)
	near(t, "transfer at 1.5 mm", TransferEfficiency(InterlockStiffness(0.0015, k, l)/(k*l), 0.2), 0.15/0.85, 1e-9)
}

// Joints that cross, end at a pit or stop just short of an edge part the slab like
// those that do not; a wheel across a joint presses both sides.
func TestJointsOfTheYard(t *testing.T) {
	p := yard()
	p.Slab.Joints[1].Path = []plan.Point{pt(9.6, 0.03), pt(9.6, 5.97)} // a little short at both ends
	p.Loads = []Load{RoundWheel("w", pt(4.8, 0.4), 40e3, 0.8e6)}
	p.Size = 0.35
	b := solve(t, p)
	balanced(t, b)
	if len(b.Joints) != 5 {
		t.Fatalf("%d joints met", len(b.Joints))
	}
	if j := b.Joints[0]; j.LTE < 0.95 {
		t.Errorf("wheel across J1: %.3g over %.3g", j.Unloaded, j.Loaded)
	}
	tri := p
	tri.Triangles = true
	c := solve(t, tri)
	near(t, "deflection in triangles", c.Deepest.Value, b.Deepest.Value, 0.015*b.Deepest.Value)
	near(t, "lift in triangles", c.Highest.Value, b.Highest.Value, 0.02*math.Abs(b.Highest.Value))
	for i := range b.Joints {
		if len(b.Joints[i].Bars) != len(c.Joints[i].Bars) {
			t.Errorf("%s: %d bars, in triangles %d", b.Joints[i].Joint, len(b.Joints[i].Bars), len(c.Joints[i].Bars))
		}
	}
}

// A plate dragged along answers as one made anew.
func TestMovedPlate(t *testing.T) {
	p := yard()
	r, err := p.Ready(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	q := yard()
	q.Slab.Joints[0].Path = []plan.Point{pt(5.2, 0), pt(5.2, 15)}
	wheel := []Load{RoundWheel("w", pt(5.0, 0.4), 40e3, 0.8e6)}
	moved, err := r.Moved(context.Background(), q)
	if err != nil {
		t.Fatal(err)
	}
	if moved.frame.pattern != r.frame.pattern {
		t.Error("the pattern was not used again")
	}
	fresh, err := q.Ready(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	a, err := moved.Bend(context.Background(), wheel)
	if err != nil {
		t.Fatal(err)
	}
	b, err := fresh.Bend(context.Background(), wheel)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "deflection", a.Deepest.Value, b.Deepest.Value, 5e-3*b.Deepest.Value)
	near(t, "lift", a.Highest.Value, b.Highest.Value, 5e-3*math.Abs(b.Highest.Value))
	near(t, "transfer", a.Joints[0].LTE, b.Joints[0].LTE, 0.01)
	again, err := fresh.Bend(context.Background(), wheel)
	if err != nil || again.Deepest.Value != b.Deepest.Value {
		t.Errorf("the same wheel again: %v, %v", again.Deepest, b.Deepest)
	}
}

// Every line can be worked again; lines that part from their check say why; a wheel
// inside, at an edge and at a corner of a slab that lies flat agrees with its form.
func TestPlateWorking(t *testing.T) {
	p := panel()
	p.Strength = 4e6
	for _, at := range []plan.Point{pt(2.5, 2.5), pt(2.5, 0.12), pt(0.12, 0.12)} {
		q := p
		q.Loads = []Load{RoundWheel("1", at, 20e3, 0.5e6)}
		s := solve(t, q).Working()
		checkPlateSheet(t, s)
		for _, symbol := range []string{"σ_1", "w_1"} {
			if l := lineOf(t, s, symbol); l.Check.Apart > 0.12 {
				t.Errorf("wheel at %v: %s %s, %s gives %.4g", at, symbol, l.Text, l.Check.What, l.Check.Value)
			}
		}
	}
	full := yard()
	full.Strength, full.Size, full.Fine = 4e6, 0.35, 0.05
	full.Loads = append(Axle{Force: 80e3, Track: 1.8, Pair: 0.35, Pressure: 0.8e6}.At("axle", pt(4.6, 1.4), 0),
		Wall("wall", []plan.Point{pt(15, 10), pt(18, 10)}, 15e3), Post("post", pt(12, 3), 60e3, 0.12, 0))
	b := solve(t, full)
	checkPlateSheet(t, b.Working())
	field, err := json.Marshal(b.Field())
	if err != nil || len(field) < 1000 {
		t.Errorf("field: %v", err)
	}
	if _, err := json.Marshal(b); err != nil {
		t.Error(err)
	}
}

func checkPlateSheet(t *testing.T, s working.Sheet) {
	t.Helper()
	checkSheet(t, s)
	for _, l := range s.Lines {
		got, err := l.Rework()
		if err != nil || math.Abs(got-l.Value) > 1e-9*math.Max(1e-6, math.Abs(l.Value)) {
			t.Errorf("%s: %q gives %.12g (%v), sheet says %.12g", l.Symbol, l.Formula, got, err, l.Value)
		}
		if l.Check != nil && l.Check.Flag && l.Check.Reason == "" {
			t.Errorf("%s is flagged without a reason", l.Symbol)
		}
	}
}
