package plan

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"slabwright/source"
	"slabwright/working"
)

func yes(v string) *source.Choice { return &source.Choice{Value: v, Known: source.Recorded} }

// apron is 10 x 4 m in two panels of 5 x 4, a dowelled joint between, a tee below
// the long edge, a pit, bars, a duct and a wheel path, all at round distances.
func apron() Slab {
	return Slab{Outline: box(0, 0, 10, 4),
		Fixtures: []Fixture{
			{ID: "PIT", Kind: Pit, Shape: box(7, 1, 8, 2), Opening: true, Isolated: yes("no")},
			{ID: "DUCT", Kind: Duct, Shape: []Point{{0, 3}, {5, 3}}},
			{ID: "SHOP", Kind: Building, Shape: []Point{{0, 4}, {10, 4}}},
		},
		Joints: []Joint{
			{ID: "J1", Kind: Sawn, Path: []Point{{5, 0}, {5, 4}}, Transfer: yes("dowelled"), Dowels: &Dowels{Length: fact(0.4), Spacing: fact(0.3)}},
			{ID: "J2", Kind: Formed, Path: []Point{{5, 2.5}, {10, 2.5}}, Transfer: yes("dowelled")},
		},
		Steel:  []BarZone{{ID: "A252", Angle: 0, PitchX: fact(0.2), PitchY: fact(0.2), First: &Point{0.1, 0.1}}},
		Wheels: []WheelPath{{ID: "W1", Path: []Point{{0, 1}, {10, 1}}, Width: 0.8}},
	}
}

func relate(t interface{ Fatal(...any) }, s Slab, lines ...[]Point) Relation {
	return Relate(s, mustPanels(t, s), lines, nil)
}

func wantNear(t *testing.T, what string, got *float64, want, tol float64) {
	t.Helper()
	if got == nil {
		t.Errorf("%s: not known, want %g", what, want)
	} else if !near(*got, want, tol) {
		t.Errorf("%s: got %.4f, want %g within %g", what, *got, want, tol)
	}
}

// A crack straight across the 5 x 4 m panel at x = 2.2, midway between bars.
func TestRelateMidPanel(t *testing.T) {
	r := relate(t, apron(), []Point{{2.2, 0}, {2.2, 4}})
	if r.Panel != "P1" || r.Pieces != 1 {
		t.Errorf("panel %s, pieces %d; want P1, 1", r.Panel, r.Pieces)
	}
	wantNear(t, "length", r.Length, 4, 1e-9)
	wantNear(t, "straightness", r.Straight, 1, 1e-9)
	wantNear(t, "angle to long side", r.Angle, 90, 1e-9)
	wantNear(t, "along", r.Along, 0.44, 1e-9)
	wantNear(t, "from centre", r.FromCentre, 0.3, 1e-9)
	wantNear(t, "aspect", r.PanelAspect, 1.25, 1e-9)
	if r.Reaching == nil || *r.Reaching != 2 || r.Ends[0].Reaches != "edge" || r.Ends[1].ID != "SHOP" {
		t.Errorf("ends %+v, want the edge and the workshop reached", r.Ends)
	}
	if r.Joint == nil || r.Joint.ID != "J1" || !near(r.Joint.Distance, 2.8, 1e-9) || !near(r.Joint.Mean, 2.8, 1e-9) || !near(r.Joint.Overlap, 4, 1e-9) {
		t.Errorf("nearest joint %+v, want J1 at 2.8 all along", r.Joint)
	}
	if r.Bars == nil || r.Bars.Share != 0 || !near(*r.Bars.Mean, 0.1, 1e-9) {
		t.Errorf("bars %+v, want none under, 0.1 m off", r.Bars)
	}
	if r.Ducts == nil || !near(r.Ducts.Share, 0.1/4, 0.01) {
		t.Errorf("duct %+v, want only where it is crossed", r.Ducts)
	}
	if r.Wheels == nil || !near(r.Wheels.Share, 0.8/4, 0.01) {
		t.Errorf("wheels %+v, want 0.2 in the path", r.Wheels)
	}
}

// A crack 0.2 m beside the dowelled joint lies on the line of dowel ends.
func TestRelateBesideJoint(t *testing.T) {
	r := relate(t, apron(), []Point{{4.8, 0}, {4.8, 4}})
	if r.Beside == nil || r.Beside.ID != "J1" || !near(r.Beside.Mean, 0.2, 1e-9) || !near(*r.Beside.Angle, 0, 1e-9) {
		t.Errorf("beside %+v, want J1 at 0.2", r.Beside)
	}
	if r.DowelEnd == nil || !near(r.DowelEnd.Mean, 0, 1e-9) || r.DowelEnd.Share != 1 || r.DowelEnd.Half != 0.2 {
		t.Errorf("dowel ends %+v, want on them", r.DowelEnd)
	}
	if square := relate(t, apron(), []Point{{5, 1}, {3, 1}}); square.DowelEnd != nil {
		t.Errorf("a line square to the joint only passes its bar ends: %+v", square.DowelEnd)
	}
	if *r.Reaching != 2 || r.Ends[0].Reaches == "joint" {
		t.Errorf("ends %+v must reach the edges, not the joint beside", r.Ends)
	}
	if r.Crossing == nil || !near(r.Crossing.Distance, 0.2, 0.02) || r.Crossing.Dowelled == nil || !*r.Crossing.Dowelled || !r.Crossing.Tee {
		t.Errorf("crossing %+v, want the dowelled tee 0.2 m off", r.Crossing)
	}
}

// A crack from J1 at the height of the tee points at J2.
func TestRelateInLine(t *testing.T) {
	r := relate(t, apron(), []Point{{5, 2.6}, {3.5, 2.6}})
	if r.InLine == nil || r.InLine.ID != "J2" || r.InLine.Shared != "J1" || !near(r.InLine.Distance, 0.1, 1e-9) || !near(r.InLine.Angle, 0, 1e-9) {
		t.Errorf("in line %+v, want J2 across J1, 0.1 off", r.InLine)
	}
	if *r.Reaching != 1 {
		t.Errorf("reaching %d, want 1", *r.Reaching)
	}
	// the same line on J2's own side has nothing across
	r = relate(t, apron(), []Point{{5, 2.6}, {6.5, 2.6}})
	if r.InLine != nil {
		t.Errorf("in line %+v, want none: J2 lies on the same side", r.InLine)
	}
	s := apron()
	r = Relate(s, mustPanels(t, s), [][]Point{{{5, 1}, {3.5, 1}}}, nil, []Point{{5, 1.05}, {6.9, 1.05}})
	if r.InLine == nil || r.InLine.ID != "crack" || !near(r.InLine.Distance, 0.05, 1e-9) {
		t.Errorf("in line %+v, want the other crack 0.05 off", r.InLine)
	}
}

// A crack from the pit's corner at 45 degrees.
func TestRelateInsideCorner(t *testing.T) {
	r := relate(t, apron(), []Point{{6.95, 0.95}, {6.4, 0.4}})
	c := r.Corner
	if c == nil || c.Fixture != "PIT" || !c.Starts || !near(c.Distance, 0.05*math.Sqrt2, 1e-9) || c.Angles == nil || !near(c.Angles[0], 135, 1e-6) || !near(c.Angles[1], 135, 1e-6) {
		t.Fatalf("corner %+v, want the pit's at 71 mm, 135 degrees to both sides", c)
	}
	if r.Fixture == nil || r.Fixture.ID != "PIT" || r.Fixture.Isolated != "no" || !near(r.Fixture.Distance, 0.05*math.Sqrt2, 0.001) {
		t.Errorf("fixture %+v", r.Fixture)
	}
}

func TestRelateBars(t *testing.T) {
	over := relate(t, apron(), []Point{{2.32, 0.5}, {2.32, 3.5}})
	if over.Bars == nil || over.Bars.Share != 1 || !near(*over.Bars.Mean, 0.02, 1e-9) {
		t.Errorf("20 mm beside a bar: %+v, want share 1", over.Bars)
	}
	skew := relate(t, apron(), []Point{{1, 1}, {2, 2}})
	if skew.Bars == nil || skew.Bars.Share != 0 || skew.Bars.Mean != nil {
		t.Errorf("at 45 degrees to the bars: %+v, want share 0 and no distance", skew.Bars)
	}
	set := relate(t, apron(), []Point{{1.1, 1}, {1.1, 2}}, []Point{{1.3, 1}, {1.3, 2}}, []Point{{1.5, 1}, {1.5, 2}}, []Point{{1.5, 2.2}, {1.5, 2.6}})
	if sp := set.Spacing; sp == nil || sp.Lines != 3 || !near(sp.Mean, 0.2, 1e-9) || !near(*sp.CoV, 0, 1e-9) || !near(*sp.Ratio, 1, 1e-9) {
		t.Errorf("three lines on the pitch of the bars: %+v", set.Spacing)
	}
	if set.Pieces != 4 || !near(*set.Order, 1, 1e-9) {
		t.Errorf("pieces %d, order %v", set.Pieces, *set.Order)
	}
}

func TestRelateCornerCut(t *testing.T) {
	r := relate(t, apron(), []Point{{0.8, 0}, {0, 0.6}})
	if r.Cut == nil || !near(r.Cut.Legs[0], 0.8, 1e-9) || !near(r.Cut.Legs[1], 0.6, 1e-9) || !near(r.Cut.Area, 0.24, 1e-9) {
		t.Errorf("corner cut %+v, want legs 0.8 and 0.6", r.Cut)
	}
	if r := relate(t, apron(), []Point{{2, 0}, {2, 4}}); r.Cut != nil {
		t.Errorf("a line from side to opposite side cuts no corner: %+v", r.Cut)
	}
}

func TestRelateArea(t *testing.T) {
	s := apron()
	r := Relate(s, mustPanels(t, s), nil, box(1, 1, 3, 2))
	wantNear(t, "share of panel", r.AreaShare, 2.0/20, 1e-9)
	wantNear(t, "area", r.Area, 2, 1e-9)
	if r.Panel != "P1" || r.Reaching != nil || r.Angle != nil || !near(r.Centre.X, 2, 1e-9) || !near(r.Centre.Y, 1.5, 1e-9) {
		t.Errorf("patch %+v", r)
	}
	whole := Relate(s, mustPanels(t, s), nil, s.Outline)
	if len(whole.Panels) != 3 {
		t.Errorf("patch over all runs through %v", whole.Panels)
	}
}

func TestRelateOddities(t *testing.T) {
	s := apron()
	panels := mustPanels(t, s)
	for name, lines := range map[string][][]Point{
		"nothing": nil, "a point": {{{1, 1}}}, "no length": {{{1, 1}, {1, 1}}}, "ring": {{{1, 1}, {2, 1}, {2, 2}, {1, 2}, {1, 1}}},
		"outside": {{{20, 20}, {21, 21}}},
	} {
		r := Relate(s, panels, lines, nil)
		if name == "ring" && r.Direction != nil {
			t.Errorf("a ring runs no way, got %g", *r.Direction)
		}
		if name == "outside" && r.Panel != "" {
			t.Errorf("outside lies in %q", r.Panel)
		}
		if name == "a point" && (r.Panel != "P1" || !near(r.Joint.Distance, 4, 1e-9)) {
			t.Errorf("point: %s, joint %+v", r.Panel, r.Joint)
		}
		wantFinite(t, name, r)
	}
}

func wantFinite(t *testing.T, name string, r Relation) {
	t.Helper()
	for _, l := range r.Working("relation").Lines {
		if math.IsNaN(l.Value) || math.IsInf(l.Value, 0) {
			t.Errorf("%s: %s is %v", name, l.What, l.Value)
		}
	}
}

// move turns, shifts and (mirror -1) mirrors a slab.
type move struct {
	angle, mirror float64
	by            Point
}

func (m move) point(p Point) Point {
	p.Y *= m.mirror
	d := Direction(m.angle)
	return Point{p.X*d.X - p.Y*d.Y, p.X*d.Y + p.Y*d.X}.Plus(m.by)
}

func (m move) line(l []Point) []Point {
	out := make([]Point, len(l))
	for i, p := range l {
		out[i] = m.point(p)
	}
	return out
}

func (m move) slab(s Slab) Slab {
	s.Outline = m.line(s.Outline)
	s.Fixtures = append([]Fixture{}, s.Fixtures...)
	for i := range s.Fixtures {
		s.Fixtures[i].Shape = m.line(s.Fixtures[i].Shape)
	}
	s.Joints = append([]Joint{}, s.Joints...)
	for i := range s.Joints {
		s.Joints[i].Path = m.line(s.Joints[i].Path)
	}
	s.Wheels = append([]WheelPath{}, s.Wheels...)
	for i := range s.Wheels {
		s.Wheels[i].Path = m.line(s.Wheels[i].Path)
	}
	s.Steel = append([]BarZone{}, s.Steel...)
	for i := range s.Steel {
		first := m.point(*s.Steel[i].First)
		s.Steel[i].First, s.Steel[i].Angle = &first, m.mirror*s.Steel[i].Angle+m.angle
	}
	return s
}

// Distances and angles of a finding do not depend on where the slab lies or which
// way its axes point.
func TestRelationsDoNotMove(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := move{angle: rapid.Float64Range(-180, 180).Draw(t, "angle"), mirror: rapid.SampledFrom([]float64{1, -1}).Draw(t, "mirror"),
			by: Point{rapid.Float64Range(-100, 100).Draw(t, "x"), rapid.Float64Range(-100, 100).Draw(t, "y")}}
		coordinate := rapid.Float64Range(0.2, 3.8)
		var line []Point
		for range rapid.IntRange(2, 4).Draw(t, "points") {
			line = append(line, Point{coordinate.Draw(t, "px"), coordinate.Draw(t, "py")})
		}
		if Polyline(line).Length() < 0.5 {
			t.Skip("too short to have a course")
		}
		a := relate(t, apron(), line)
		b := relate(t, m.slab(apron()), m.line(line))
		same := func(what string, x, y *float64, tol float64) {
			if (x == nil) != (y == nil) || x != nil && !near(*x, *y, tol) {
				t.Fatalf("%s: %v here, %v moved", what, show(x), show(y))
			}
		}
		same("length", a.Length, b.Length, 1e-9)
		same("straightness", a.Straight, b.Straight, 1e-9)
		same("angle to long side", a.Angle, b.Angle, 1e-4)
		same("from centre", a.FromCentre, b.FromCentre, 1e-9)
		if !near(math.Min(*a.Along, 1-*a.Along), math.Min(*b.Along, 1-*b.Along), 1e-9) {
			t.Fatalf("along %v here, %v moved", *a.Along, *b.Along)
		}
		for what, pair := range map[string][2]*NearLine{"joint": {a.Joint, b.Joint}, "edge": {a.Edge, b.Edge}} {
			if !near(pair[0].Distance, pair[1].Distance, 1e-9) {
				t.Fatalf("nearest %s %+v here, %+v moved", what, pair[0], pair[1])
			}
		}
		if *a.Reaching != *b.Reaching || !near(a.Corner.Distance, b.Corner.Distance, 1e-9) || !near(a.Wheels.Share, b.Wheels.Share, 0.02) {
			t.Fatalf("ends %v, corner %+v here; %v, %+v moved", *a.Reaching, a.Corner, *b.Reaching, b.Corner)
		}
	})
}

func show(v *float64) any {
	if v == nil {
		return "not known"
	}
	return *v
}

// Turning a line end for end changes nothing but the order of its ends.
func TestRelationsOfReversedLine(t *testing.T) {
	line := []Point{{2.2, 0.1}, {2.4, 1}, {2.1, 3.9}}
	back := []Point{{2.1, 3.9}, {2.4, 1}, {2.2, 0.1}}
	a, b := relate(t, apron(), line), relate(t, apron(), back)
	if !near(*a.Direction, *b.Direction, 1e-9) || a.Ends[0].Reaches != b.Ends[1].Reaches || a.Joint.Mean != b.Joint.Mean && !near(a.Joint.Mean, b.Joint.Mean, 1e-12) {
		t.Errorf("forward %+v, back %+v", a, b)
	}
}

// Two pieces that meet are one line.
func TestChain(t *testing.T) {
	r := relate(t, apron(), []Point{{2.2, 2}, {2.2, 0}}, []Point{{2.2, 2.02}, {2.2, 4}})
	if r.Pieces != 1 || *r.Reaching != 2 {
		t.Errorf("pieces %d, reaching %v; want one line from edge to edge", r.Pieces, *r.Reaching)
	}
}

func TestWorkingOfRelation(t *testing.T) {
	s := relate(t, apron(), []Point{{4.8, 0}, {4.8, 4}}).Working("r1")
	if s.ID != "r1" || len(s.Lines) < 12 {
		t.Fatalf("sheet %s has %d lines", s.ID, len(s.Lines))
	}
	for _, l := range s.Lines {
		if l.What == "" || l.Unit == "" || l.Source.Title == "" {
			t.Errorf("line %+v lacks what, unit or source", l)
		}
		if l.Formula != "" && l.Numbers == working.Substitute(l.Formula, nil) {
			t.Errorf("line %s has no numbers put in", l.Symbol)
		}
	}
}
