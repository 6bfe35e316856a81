package plan

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"slabwright/source"
)

func box(x0, y0, x1, y1 float64) []Point {
	return []Point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}
}

func joint(id string, path ...Point) Joint { return Joint{ID: id, Kind: Sawn, Path: path} }

// yard is a 12 x 8 m slab with a pit, three joints and a tee.
func yard() Slab {
	return Slab{ID: "S1", Outline: box(0, 0, 12, 8), Fixtures: []Fixture{
		{ID: "F1", Name: "inspection pit", Kind: Pit, Shape: box(8, 5, 9, 6), Opening: true},
		{ID: "F2", Name: "workshop", Kind: Building, Shape: []Point{{0, 8}, {12, 8}}},
	}, Joints: []Joint{
		joint("J1", Point{4, 0}, Point{4, 8}),
		joint("J2", Point{8, 0}, Point{8, 5}),
		joint("J3", Point{0, 4}, Point{8, 4}),
	}}
}

func mustPanels(t interface{ Fatal(...any) }, s Slab) []Panel {
	panels, err := s.Panels()
	if err != nil {
		t.Fatal(err)
	}
	return panels
}

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

func TestPanelsOfYard(t *testing.T) {
	// By hand: J1 and J3 part off 4 x 4 m at lower left, above and right of it; J2
	// runs on from J3 only to the pit and stops there, so what is right of J1 and
	// above J3 stays one with what is right of J2.
	panels := mustPanels(t, yard())
	want := []float64{16, 16, 16, 16 + 32 - 1}
	if len(panels) != 4 {
		t.Fatalf("got %d panels, want 4: %+v", len(panels), panels)
	}
	var got []float64
	for _, p := range panels {
		got = append(got, p.Area)
	}
	for i, p := range []string{"P1", "P2", "P3", "P4"} {
		if panels[i].ID != p {
			t.Errorf("panel %d is %s, want %s", i, panels[i].ID, p)
		}
	}
	if !near(sum(got), 95, 1e-9) {
		t.Errorf("areas %v add up to %g, want 95", got, sum(got))
	}
	big := panels[2]
	for _, p := range panels {
		if p.Area > big.Area {
			big = p
		}
	}
	if !near(big.Area, want[3], 1e-9) || len(big.Openings)+len(big.InsideCorners) == 0 {
		t.Errorf("largest panel %.3f m² with %d openings, want 47 with the pit's corners", big.Area, len(big.Openings))
	}
}

func sum(v []float64) (s float64) {
	for _, x := range v {
		s += x
	}
	return s
}

func TestPanelSides(t *testing.T) {
	p := mustPanels(t, yard())[0]
	want := map[string]bool{FreeEdge: true, "J1": true, "J3": true}
	for _, s := range p.Sides {
		if !want[s.On] {
			t.Errorf("P1 has a side on %q", s.On)
		}
	}
	if len(p.Sides) != 4 || p.Length != 4 || p.Width != 4 || p.Aspect != 1 {
		t.Errorf("P1 is %g x %g with %d sides, want 4 x 4 with 4", p.Length, p.Width, len(p.Sides))
	}
	on := map[string]int{}
	for _, p := range mustPanels(t, yard()) {
		for _, s := range p.Sides {
			on[s.On]++
		}
	}
	if on["F2"] != 2 {
		t.Errorf("sides on the workshop: %d, want 2 (upper left panel and the large one): %v", on["F2"], on)
	}
}

func TestPanelsCases(t *testing.T) {
	ell := []Point{{0, 0}, {6, 0}, {6, 3}, {3, 3}, {3, 6}, {0, 6}}
	for _, c := range []struct {
		name   string
		slab   Slab
		panels int
		inside int // corners left inside panels
	}{
		{"L-shape alone", Slab{Outline: ell}, 1, 1},
		{"L-shape, joint from the corner", Slab{Outline: ell, Joints: []Joint{joint("J1", Point{3, 3}, Point{0, 3})}}, 2, 0},
		{"joint that stops in the middle", Slab{Outline: ell, Joints: []Joint{joint("J1", Point{0, 1}, Point{4, 1})}}, 1, 1},
		{"joint 40 mm short of the edge", Slab{Outline: ell, Joints: []Joint{joint("J1", Point{0.04, 1}, Point{5.96, 1})}}, 2, 1},
		{"joint 60 mm short of the edge", Slab{Outline: ell, Joints: []Joint{joint("J1", Point{0.06, 1}, Point{6, 1})}}, 1, 1},
		{"pit tied to the edge by one joint", Slab{Outline: box(0, 0, 6, 6), Fixtures: []Fixture{{ID: "F1", Kind: Pit, Shape: box(2, 2, 4, 4), Opening: true}},
			Joints: []Joint{joint("J1", Point{0, 3}, Point{2, 3})}}, 1, 4},
		{"pit with joints from both sides", Slab{Outline: box(0, 0, 6, 6), Fixtures: []Fixture{{ID: "F1", Kind: Pit, Shape: box(2, 2, 4, 4), Opening: true}},
			Joints: []Joint{joint("J1", Point{0, 3}, Point{2, 3}), joint("J2", Point{4, 3}, Point{6, 3})}}, 2, 4},
		{"pit with joints from each corner", Slab{Outline: box(0, 0, 6, 6), Fixtures: []Fixture{{ID: "F1", Kind: Pit, Shape: box(2, 2, 4, 4), Opening: true}},
			Joints: []Joint{joint("J1", Point{0, 2}, Point{6, 2}), joint("J2", Point{0, 4}, Point{6, 4}), joint("J3", Point{2, 0}, Point{2, 6}), joint("J4", Point{4, 0}, Point{4, 6})}}, 8, 0},
		{"pit touching the edge", Slab{Outline: box(0, 0, 6, 6), Fixtures: []Fixture{{ID: "F1", Kind: Pit, Shape: box(2, 0, 4, 2), Opening: true}}}, 1, 2},
		{"joint round a column stands for an island", Slab{Outline: box(0, 0, 6, 6), Joints: []Joint{{ID: "J1", Kind: Isolation,
			Path: []Point{{2, 3}, {3, 2}, {4, 3}, {3, 4}, {2, 3}}}}}, 2, 4},
		{"joint drawn along the edge, 8 mm in", Slab{Outline: box(0, 0, 6, 6), Joints: []Joint{joint("J1", Point{0, 0.008}, Point{6, 0.008})}}, 1, 0},
		{"outline given clockwise and closed", Slab{Outline: []Point{{0, 0}, {0, 6}, {6, 6}, {6, 0}, {0, 0}}, Joints: []Joint{joint("J1", Point{3, 0}, Point{3, 6})}}, 2, 0},
		{"crossing missed by half a millimetre", Slab{Outline: box(0, 0, 6, 6), Joints: []Joint{joint("J1", Point{3, 0}, Point{3, 6}), joint("J2", Point{0, 3}, Point{2.9995, 3}), joint("J3", Point{3.0005, 3}, Point{6, 3})}}, 4, 0},
	} {
		panels, err := c.slab.Panels()
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		var area float64
		inside := 0
		for _, p := range panels {
			area += p.Area
			inside += len(p.InsideCorners)
		}
		want := Ring(c.slab.Outline).Area()
		for _, f := range c.slab.openings() {
			want -= Ring(f.Shape).Area()
		}
		if len(panels) != c.panels || inside != c.inside || !near(area, want, 1e-6) {
			t.Errorf("%s: %d panels, %d inside corners, %.6f m²; want %d, %d, %.6f", c.name, len(panels), inside, area, c.panels, c.inside, want)
		}
	}
}

// Areas of panels add up to the slab whatever joints are drawn.
func TestPanelAreasAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Slab{Outline: box(0, 0, 20, 12)}
		if rapid.Bool().Draw(t, "pit") {
			s.Fixtures = []Fixture{{ID: "F1", Kind: Pit, Shape: box(7, 5, 9, 6.5), Opening: true}}
		}
		n := rapid.IntRange(0, 8).Draw(t, "joints")
		for i := range n {
			x := rapid.Float64Range(-1, 21)
			y := rapid.Float64Range(-1, 13)
			s.Joints = append(s.Joints, joint(fmt.Sprint("J", i), Point{x.Draw(t, "x"), y.Draw(t, "y")}, Point{x.Draw(t, "x"), y.Draw(t, "y")}))
		}
		want := 240.0
		if len(s.Fixtures) > 0 {
			want -= 3
		}
		var got float64
		for _, p := range mustPanels(t, s) {
			got += p.Area
			if p.Area <= 0 || p.Width <= 0 || p.Length < p.Width {
				t.Fatalf("panel %s of %g m², %g x %g", p.ID, p.Area, p.Length, p.Width)
			}
		}
		// each joint may move by the snapping tolerance over its length at a node
		if tol := 0.02 * float64(n+1); !near(got, want, tol) {
			t.Fatalf("areas add up to %.6f, want %.6f within %g", got, want, tol)
		}
	})
}

// A full grid of joints gives the rectangles between them, numbered row by row.
func TestGrid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cols := rapid.SliceOfN(rapid.Float64Range(0.5, 6), 1, 5).Draw(t, "columns")
		rows := rapid.SliceOfN(rapid.Float64Range(0.5, 6), 1, 5).Draw(t, "rows")
		w, h := sum(cols), sum(rows)
		s := Slab{Outline: box(0, 0, w, h)}
		for i := 1; i < len(cols); i++ {
			x := sum(cols[:i])
			s.Joints = append(s.Joints, joint(fmt.Sprint("X", i), Point{x, 0}, Point{x, h}))
		}
		for i := 1; i < len(rows); i++ {
			y := sum(rows[:i])
			s.Joints = append(s.Joints, joint(fmt.Sprint("Y", i), Point{0, y}, Point{w, y}))
		}
		panels := mustPanels(t, s)
		if len(panels) != len(cols)*len(rows) {
			t.Fatalf("%d panels, want %d", len(panels), len(cols)*len(rows))
		}
		for i, p := range panels {
			if want := cols[i%len(cols)] * rows[i/len(cols)]; !near(p.Area, want, 1e-6*want+1e-9) {
				t.Fatalf("panel %s has %.6f m², want %.6f", p.ID, p.Area, want)
			}
		}
	})
}

func fact(v float64) *source.Fact { return &source.Fact{Value: v, Known: source.Measured} }
