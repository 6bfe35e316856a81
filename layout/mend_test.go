package layout

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"slabwright/plan"
	"slabwright/source"
)

// spoilt are slabs with joints that break rules, from the proposals for some shapes.
func spoilt(t *testing.T) map[string]plan.Slab {
	t.Helper()
	out := map[string]plan.Slab{}
	for _, name := range []string{"L", "yard of the study", "one column", "rectangle", "pit in the middle", "wedge, blunt", "two corners nearly in line"} {
		s := proposed(t, name)[0].Slab
		bare := s
		bare.Joints = nil
		out[name+", no joints"] = bare
		for k, j := range s.Joints {
			if k%6 != 0 {
				continue
			}
			if cut, err := RemoveJoint(s, j.ID); err == nil {
				out[fmt.Sprintf("%s, without %s", name, j.ID)] = cut
			}
			if moved, err := MoveJoint(s, j.ID, plan.Point{X: 0.9, Y: 0.9}); err == nil {
				out[fmt.Sprintf("%s, %s moved", name, j.ID)] = moved
			}
			short := withJoints(s)
			path := plan.Polyline(j.Path)
			short.Joints[k].Path = part(path, 0, path.Length()*0.6)
			out[fmt.Sprintf("%s, %s short", name, j.ID)] = short
		}
		tied := withJoints(s)
		for i := range tied.Joints {
			if tied.Joints[i].Dowels != nil {
				d := *tied.Joints[i].Dowels
				d.Clear, d.FreeSide = nil, nil
				tied.Joints[i].Dowels = &d
			}
			tied.Joints[i].Kind = plan.Formed
		}
		tied.Joints[0].Dowels, tied.Joints[0].Transfer = nil, nil
		tied.Fixtures = append([]plan.Fixture{}, s.Fixtures...)
		for i := range tied.Fixtures {
			tied.Fixtures[i].Isolated = nil
		}
		tied.Steel = []plan.BarZone{{ID: "M", AtJoints: &source.Choice{Value: "continuous", Known: source.Assumed}}}
		out[name+", tied"] = tied
	}
	out["strip"] = plan.Slab{ID: "S", Outline: poly(0, 0, 8, 0, 8, 4, 0, 4), Thickness: thick(0.15), Joints: []plan.Joint{
		{ID: "J1", Kind: plan.Sawn, Path: poly(4, 0, 4, 4)}, {ID: "J2", Kind: plan.Sawn, Path: poly(4.4, 0, 4.4, 4)}}}
	out["strip of a long slab"] = plan.Slab{ID: "S", Outline: poly(0, 0, 8.3, 0, 8.3, 4, 0, 4), Thickness: thick(0.15), Joints: []plan.Joint{
		{ID: "J1", Kind: plan.Sawn, Path: poly(4, 0, 4, 4)}, {ID: "J2", Kind: plan.Sawn, Path: poly(7.9, 0, 7.9, 4)}}}
	arc := named(t, "quarter round").Slab
	arc.Joints = []plan.Joint{{ID: "J1", Kind: plan.Sawn, Path: poly(0, 9.5, math.Sqrt(144-9.5*9.5)-0.02, 9.5)}}
	out["sharp at an arc"] = arc
	return out
}

// A mend makes its warning go away, leaves a slab that can be as drawn, and puts no
// more that must not be than it takes away.
func TestMendsMend(t *testing.T) {
	in := Brief{Spacing: SpacingLimit(UsualSpacingFacts(0.15)), Wheels: Wheels{Cross: true}}
	mended, codes := 0, map[string]int{}
	for name, s := range spoilt(t) {
		before := Review(s, in)
		for _, w := range before {
			if w.Found == "" || w.Rule == "" || w.Source == "" {
				t.Errorf("%s: a warning without words: %+v", name, w)
			}
			if w.Mend == nil {
				codes[w.Code+" without"]++
				continue
			}
			mended++
			codes[w.Code]++
			if bad := w.Mend.Slab.Check(); len(bad) > len(s.Check()) {
				t.Errorf("%s: %s Mend %q: %v", name, w.Found, w.Mend.Words, bad)
				continue
			}
			after := Review(w.Mend.Slab, in)
			for _, x := range after {
				if x.Code == w.Code && x.At.To(w.At) < 0.01 && x.Joint == w.Joint && x.Panel == w.Panel && x.Fixture == w.Fixture {
					t.Errorf("%s: %s Mend %q leaves it", name, w.Found, w.Mend.Words)
				}
			}
			// bars that were too near to a crossing before show once the crossing joint has bars
			if a, b := musts(before), musts(after); a < b && w.Code != "transfer" {
				t.Errorf("%s: %s Mend %q makes %d musts of %d", name, w.Found, w.Mend.Words, b, a)
			}
		}
	}
	t.Log(mended, codes)
	for _, code := range []string{"sliver", "sharp", "corner", "tee", "loose", "spacing", "aspect", "isolation", "column", "dowel clear", "dowel sideways", "transfer", "steel", "shape"} {
		if codes[code] == 0 {
			t.Errorf("no mend of %q was tried", code)
		}
	}
}

func musts(all []Warning) (n int) {
	for _, w := range all {
		if w.Severity == Must {
			n++
		}
	}
	return n
}

// Every rule of the table is one that a slab can break here, and has a source.
func TestRulesAreUsed(t *testing.T) {
	for _, r := range Rules() {
		if r.Says == "" || r.Source.Title == "" {
			t.Errorf("%+v", r)
		}
		if (breach{rule: r.Key, value: 1, joint: "J1", panel: "P1", fixture: "F1", other: "J2"}).found(4) == "" {
			t.Errorf("no words for %q", r.Key)
		}
	}
}

// The review of the 350 m² yard takes less than 5 ms, so that it follows a finger. The
// best of several times counts: other work may run beside the test.
func TestReviewIsQuick(t *testing.T) {
	in := brief(named(t, "yard of the study").Slab)
	all := proposed(t, "yard of the study")
	best := time.Hour
	for range 40 {
		begin := time.Now()
		Review(all[0].Slab, in)
		best = min(best, time.Since(begin))
	}
	if best > 5*time.Millisecond {
		t.Errorf("%v", best)
	}
}

func TestEdits(t *testing.T) {
	base := plan.Slab{ID: "S", Outline: poly(0, 0, 12, 0, 12, 8, 0, 8), Thickness: thick(0.15)}
	one, err := AddJoint(base, plan.Sawn, poly(4.1, 0.3, 3.9, 7.7))
	if err != nil {
		t.Fatal(err)
	}
	if p := one.Joints[0].Path; math.Abs(p[0].Y) > 1e-9 || math.Abs(p[1].Y-8) > 1e-9 {
		t.Errorf("ends were not put on the edges: %v", p)
	}
	two, err := AddJointAt(one, plan.Sawn, plan.Point{}, 90, 4)
	if err != nil {
		t.Fatal(err)
	}
	if p := two.Joints[1].Path; len(p) != 2 || math.Abs(p[0].Y-4) > 1e-9 || math.Abs(plan.Polyline(p).Length()-12) > 1e-9 {
		t.Errorf("typed distance: %v", p)
	}
	three, err := AddPit(two, "pit", poly(7, 3, 9, 3, 9, 5, 7, 5))
	if err != nil {
		t.Fatal(err)
	}
	if len(three.Joints) != 3 {
		t.Errorf("the joint through the pit is %d joints", len(three.Joints)-1)
	}
	moved, err := MoveFixture(three, "PIT", plan.Point{Y: 2})
	if err != nil {
		t.Fatal(err)
	}
	if loose := moved.LooseEnds(); len(loose) > 0 {
		t.Errorf("loose ends after moving the pit: %v", loose)
	}
	shifted, err := MoveJoint(three, "J1", plan.Point{X: 1.5})
	if err != nil {
		t.Fatal(err)
	}
	if p := plan.Polyline(shifted.Joints[0].Path); math.Abs(p.Length()-plan.Polyline(one.Joints[0].Path).Length()) > 1e-6 {
		t.Errorf("moved joint: %v", p)
	}
	gone, err := RemoveJoint(three, "J1")
	if err != nil || len(gone.Joints) != 2 {
		t.Errorf("%v, %d joints", err, len(gone.Joints))
	}
	if len(base.Joints)+len(base.Fixtures) > 0 || len(one.Joints) != 1 || len(two.Joints) != 2 {
		t.Error("an edit changed the slab it was given")
	}
}

// A joint that another stops at takes its end along when it moves.
func TestEndsFollow(t *testing.T) {
	s := plan.Slab{ID: "S", Outline: poly(0, 0, 12, 0, 12, 8, 0, 8), Thickness: thick(0.15), Joints: []plan.Joint{
		{ID: "A", Kind: plan.Isolation, Path: poly(6, 0, 6, 8)}, {ID: "B", Kind: plan.Sawn, Path: poly(0, 4, 6, 4)}}}
	moved, err := MoveJoint(s, "A", plan.Point{X: 1})
	if err != nil {
		t.Fatal(err)
	}
	if end := moved.Joints[1].Path[1]; math.Abs(end.X-7) > 1e-9 {
		t.Errorf("B ends at %v", end)
	}
	back, err := MoveJoint(s, "A", plan.Point{X: -1})
	if err != nil {
		t.Fatal(err)
	}
	if end := back.Joints[1].Path[1]; math.Abs(end.X-5) > 1e-9 {
		t.Errorf("B ends at %v", end)
	}
	side, err := MoveJoint(s, "B", plan.Point{Y: 1})
	if err != nil {
		t.Fatal(err)
	}
	if p := side.Joints[1].Path; math.Abs(p[1].X-6) > 1e-9 || math.Abs(p[0].X) > 1e-9 || p[0].Y != 5 {
		t.Errorf("B runs %v", p)
	}
}

func TestEditsRefuse(t *testing.T) {
	s := plan.Slab{ID: "S", Outline: poly(0, 0, 12, 0, 12, 8, 0, 8), Thickness: thick(0.15),
		Joints: []plan.Joint{{ID: "J1", Kind: plan.Sawn, Path: poly(4, 0, 4, 8)}}}
	for _, c := range []struct {
		what string
		err  error
		want string
	}{
		{"too short", second(AddJoint(s, plan.Sawn, poly(5, 5, 5.1, 5))), "apart"},
		{"outside", second(AddJoint(s, plan.Sawn, poly(20, 0, 20, 8))), "edge"},
		{"kind", second(AddJoint(s, "cut", poly(5, 0, 5, 8))), "sawn"},
		{"no such joint", second(MoveJoint(s, "J9", plan.Point{X: 1})), "J9"},
		{"moved out", second(MoveJoint(s, "J1", plan.Point{X: 30})), "outline"},
		{"on another", second(AddJoint(s, plan.Sawn, poly(4.005, 0, 4.005, 8))), "J1"},
		{"distance", second(AddJointAt(s, plan.Sawn, plan.Point{}, 0, 40)), "40"},
		{"pit outside", second(AddPit(s, "", poly(20, 1, 21, 1, 21, 2, 20, 2))), "outline"},
		{"no such fixture", second(MoveFixture(s, "C1", plan.Point{X: 1})), "C1"},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("%s: %v", c.what, c.err)
		}
	}
}

func second(_ plan.Slab, err error) error { return err }
