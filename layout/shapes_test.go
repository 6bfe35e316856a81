package layout

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"reflect"
	"testing"

	"slabwright/plan"
)

// shape is one outline of testdata/shapes.json.
type shape struct {
	Name string    `json:"name"`
	Note string    `json:"note"`
	Slab plan.Slab `json:"slab"`
}

func shapes(t testing.TB) []shape {
	t.Helper()
	data, err := os.ReadFile("testdata/shapes.json")
	if err != nil {
		t.Fatal(err)
	}
	var all []shape
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	return all
}

// Every shape tried: the hard rules are looked at by routes of their own, not by the
// examination that steers the search.
func TestShapes(t *testing.T) {
	all := shapes(t)
	if len(all) < 30 {
		t.Fatalf("only %d shapes", len(all))
	}
	for _, s := range all {
		t.Run(s.Name, func(t *testing.T) {
			alternatives := proposed(t, s.Name)
			if len(alternatives) < 3 {
				t.Errorf("%d alternatives", len(alternatives))
			}
			for _, a := range alternatives {
				m := a.Measure
				t.Logf("%-16s panels %3d joint %6.1f longest %.2f long %d worst %.2f over %.2f | sliver %d sharp %d unmet %d tee %d loose %d parted %.1f pours %d", a.Name, m.Panels, m.Joint, m.Longest, m.Long, m.Worst, m.Over, m.Slivers, m.Sharp, m.Unmet, m.Tees, m.Loose, m.Parted, m.Pours)
				sound(t, a)
				if musts(a.Warnings) > 0 {
					t.Errorf("%s: a warning that must not be: %+v", a.Name, a.Warnings[0])
				}
				if m.Bare > 0 {
					t.Errorf("%s: %d inside corners get bars though a joint would make no narrow strip", a.Name, m.Bare)
				}
			}
			if dir := os.Getenv("LAYOUT_SVG"); dir != "" {
				sketchSVG(t, dir, s.Name, alternatives)
			}
		})
	}
}

// sound holds one alternative against the hard rules.
func sound(t *testing.T, a Alternative) {
	t.Helper()
	if bad := a.Slab.Check(); len(bad) > 0 {
		t.Errorf("%s: %v", a.Name, bad)
	}
	panels, err := a.Slab.Panels()
	if err != nil {
		t.Fatalf("%s: %v", a.Name, err)
	}
	covered(t, a, panels)
	for _, p := range panels {
		noSharpCorner(t, a, p)
	}
	for i, j := range a.Slab.Joints {
		if len(a.Slab.Joints) > 150 && i%7 > 0 {
			continue // a sample of a large yard
		}
		noNarrowStrip(t, a.Slab, j)
		endsWell(t, a.Slab, j)
		dowelsKeepClear(t, a.Slab, j)
	}
	cornersMet(t, a)
}

// covered: the panels make up the slab.
func covered(t *testing.T, a Alternative, panels []plan.Panel) {
	t.Helper()
	sum := 0.0
	for _, p := range panels {
		sum += p.Area
	}
	whole := plan.Ring(a.Slab.Outline).Area()
	for _, f := range a.Slab.Fixtures {
		if f.Opening {
			whole -= plan.OverlapArea(f.Shape, a.Slab.Outline)
		}
	}
	length := plan.Ring(a.Slab.Outline).Perimeter()
	for _, j := range a.Slab.Joints {
		length += plan.Polyline(j.Path).Length()
	}
	// a panel leaves out points within half a snap tolerance of a straight side: half of
	// that on the mean, over all sides
	if math.Abs(sum-whole) > length*plan.SnapTolerance/4 {
		t.Errorf("%s: panels make up %.6f m² of %.6f", a.Name, sum, whole)
	}
}

// noSharpCorner: angles of the panel's ring under 60 degrees stand only where the
// outline itself has them or in a block-out, which is small and goes round a fixture.
func noSharpCorner(t *testing.T, a Alternative, p plan.Panel) {
	t.Helper()
	if p.Area < 3 && aroundFixture(a.Slab, p) {
		return
	}
	for i := range p.Ring {
		if p.Ring.AngleAt(i) >= 60-1e-6 {
			continue
		}
		own := false
		outline := plan.Ring(a.Slab.Outline).Anticlockwise()
		for k, q := range outline {
			own = own || q.To(p.Ring[i]) < 0.002 && outline.AngleAt(k) < 60
		}
		if !own {
			t.Errorf("%s: %s has %.1f degrees at %v", a.Name, p.ID, p.Ring.AngleAt(i), p.Ring[i])
		}
	}
}

func aroundFixture(s plan.Slab, p plan.Panel) bool {
	for _, f := range s.Fixtures {
		for _, at := range f.Shape {
			if p.Ring.Contains(at) || p.Ring.Distance(at) < 0.01 {
				return true
			}
		}
	}
	return false
}

// noNarrowStrip: from places along a joint, square to it, the next side that runs its
// way is 0.6 m off or more. Isolation rings belong to the fixture and are left out.
func noNarrowStrip(t *testing.T, s plan.Slab, j plan.Joint) {
	t.Helper()
	if j.Kind == plan.Isolation {
		return
	}
	sides := plan.Ring(s.Outline).Sides()
	for _, f := range s.Fixtures {
		if f.Opening {
			sides = append(sides, plan.Ring(f.Shape).Sides()...)
		}
	}
	for _, o := range s.Joints {
		if o.ID != j.ID {
			sides = append(sides, plan.Polyline(o.Path).Pieces()...)
		}
	}
	path := plan.Polyline(j.Path)
	for at := 0.1; at < path.Length()-0.1; at += 0.2 {
		p, d := path.At(at)
		for _, sign := range []float64{1, -1} {
			ray := plan.Segment{A: p.Plus(d.Left().Times(sign * 0.001)), B: p.Plus(d.Left().Times(sign * 0.595))}
			nearest, beside := 2.0, false
			for _, o := range sides {
				e, ok := o.B.Minus(o.A).Unit()
				if t, _, hit := ray.Cross(o); ok && hit && t < nearest {
					nearest, beside = t, math.Abs(d.Cross(e)) < 0.25
				}
			}
			if beside {
				t.Errorf("%s at %v runs %.2f m beside a side", j.ID, p, 0.595*nearest)
				return
			}
		}
	}
}

// endsWell: a joint ends on an edge, an opening or an isolation joint, or where another
// joint ends or starts too.
func endsWell(t *testing.T, s plan.Slab, j plan.Joint) {
	t.Helper()
	if j.Path[0] == j.Path[len(j.Path)-1] {
		return
	}
	for _, end := range []plan.Point{j.Path[0], j.Path[len(j.Path)-1]} {
		ok := plan.Ring(s.Outline).Distance(end) < 0.002
		for _, f := range s.Fixtures {
			ok = ok || f.Opening && plan.Ring(f.Shape).Distance(end) < 0.002
		}
		for _, o := range s.Joints {
			if o.ID == j.ID {
				continue
			}
			_, _, d := plan.Polyline(o.Path).Nearest(end)
			ok = ok || o.Kind == plan.Isolation && d < 0.002 || o.Path[0].To(end) < 0.002 || o.Path[len(o.Path)-1].To(end) < 0.002
		}
		if !ok {
			t.Errorf("%s ends at %v in a panel or at its side", j.ID, end)
		}
	}
}

// dowelsKeepClear: no dowel within 0.3 m of another joint, all square to their own.
func dowelsKeepClear(t *testing.T, s plan.Slab, j plan.Joint) {
	t.Helper()
	if len(s.Joints) > 100 {
		return // the same code as on the small ones
	}
	for _, b := range s.DowelBars(j) {
		middle := b.Segment().At(0.5)
		for _, o := range s.Joints {
			if o.ID == j.ID {
				continue
			}
			for _, x := range meets(plan.Polyline(j.Path), o.Path) {
				at, _ := plan.Polyline(j.Path).At(x)
				if d := at.To(middle); d < 0.28 { // along a bend it is a little less than along the joint
					t.Errorf("a dowel of %s lies %.3f m from %s", j.ID, d, o.ID)
				}
			}
		}
	}
}

// cornersMet: every inside corner is met by a joint, or bars cross it, or it is in a
// block-out or so near to the edge that there is nothing to joint.
func cornersMet(t *testing.T, a Alternative) {
	t.Helper()
	for _, c := range a.Slab.InsideCorners() {
		met := c.Round || !c.Edge && plan.Ring(a.Slab.Outline).Distance(c.At) < plan.CornerReach
		for _, j := range a.Slab.Joints {
			_, _, d := plan.Polyline(j.Path).Nearest(c.At)
			met = met || d < 0.005 || isRing(j) && plan.Ring(j.Path).Contains(c.At) || j.Kind == plan.Isolation && surroundsPoint(a.Slab, j, c)
		}
		for _, tr := range a.Trimmers {
			met = met || tr.At.To(c.At) < 0.005
		}
		if !met {
			t.Errorf("%s: nothing meets the inside corner %v of %q", a.Name, c.At, c.Fixture)
		}
	}
}

func surroundsPoint(s plan.Slab, j plan.Joint, c plan.Corner) bool {
	for _, f := range s.Fixtures {
		if f.ID == c.Fixture {
			return surrounds(j, f, s)
		}
	}
	return false
}

// The same brief gives the same layout, whatever was laid out before.
func TestSameSeedSameLayout(t *testing.T) {
	for _, name := range []string{"yard of the study", "round slab", "columns off the grid", "turned pit"} {
		once := proposed(t, name)
		again, err := Propose(context.Background(), brief(named(t, name).Slab), nil)
		if err != nil {
			t.Fatal(err)
		}
		for i := range once {
			if !reflect.DeepEqual(once[i].Slab, again[i].Slab) || !reflect.DeepEqual(once[i].Strips, again[i].Strips) {
				t.Errorf("%s: %s differs from one time to the next", name, once[i].Name)
			}
		}
	}
}

// Panels keep within the limit wherever the outline has right angles only.
func TestLimitIsKeptOnSquareOutlines(t *testing.T) {
	for _, s := range shapes(t) {
		square := true
		for _, side := range plan.Ring(s.Slab.Outline).Sides() {
			d := side.B.Minus(side.A)
			square = square && (math.Abs(d.X) < 1e-9 || math.Abs(d.Y) < 1e-9)
		}
		if !square || s.Name == "large yard" {
			continue
		}
		in := brief(s.Slab)
		for _, a := range proposed(t, s.Name) {
			// a line bent to meet two corners lengthens the panel on one side of it
			if a.Measure.Longest > in.Spacing.Panel*1.03 {
				t.Errorf("%s, %s: a panel of %.2f m, limit %.2f", s.Name, a.Name, a.Measure.Longest, in.Spacing.Panel)
			}
		}
	}
}
