package plan

import (
	"fmt"
	"testing"
)

func TestNeighbours(t *testing.T) {
	panels := mustPanels(t, yard())
	// P1 lower left, P2 beside it, P3 the large one; P4 upper left
	if got := fmt.Sprint(Neighbours(panels, "P1")); got != "[P2 P4]" {
		t.Errorf("neighbours of P1: %s", got)
	}
	island := Slab{Outline: box(0, 0, 6, 6), Joints: []Joint{{ID: "J1", Kind: Isolation, Path: []Point{{2, 3}, {3, 2}, {4, 3}, {3, 4}, {2, 3}}}}}
	two := mustPanels(t, island)
	if got := fmt.Sprint(Neighbours(two, "P1"), Neighbours(two, "P2")); got != "[P2] [P1]" {
		t.Errorf("panel and island: %s", got)
	}
	if got := fmt.Sprint(PanelAt(two, Point{3, 3}).Joints()); got != "[J1]" {
		t.Errorf("joints of the island: %s", got)
	}
	if PanelAt(two, Point{-1, 0}) != nil || PanelByID(two, "P9") != nil || Neighbours(two, "P9") != nil {
		t.Error("nothing there must be nothing found")
	}
}

func TestWithoutClosedJoints(t *testing.T) {
	s := yard()
	s.Joints[0].Opened = yes("no")
	panels := mustPanels(t, s.WithoutClosedJoints())
	if len(panels) != 2 || len(s.Joints) != 3 {
		t.Errorf("%d panels, want 2; the slab itself keeps %d joints", len(panels), len(s.Joints))
	}
	// J3 runs 8 m from the left edge to J2's foot, J2 from there down: 32 m² parted off
	if !near(panels[0].Area, 32, 1e-9) {
		t.Errorf("lower left panel %.3f m², want 32", panels[0].Area)
	}
}

// A crack 1.2 m in from the short edge runs along it, though its ends are nearer to
// the long edges.
func TestBesideEdge(t *testing.T) {
	r := relate(t, apron(), []Point{{1.2, 0.02}, {1.2, 3.98}})
	if r.BesideEdge == nil || !near(r.BesideEdge.Mean, 1.2, 1e-9) || !near(*r.BesideEdge.Share, 0.24, 1e-9) || !near(r.Edge.Distance, 0.02, 1e-9) {
		t.Errorf("edge %+v, beside %+v", r.Edge, r.BesideEdge)
	}
}

// A yard of 350 m² with a 5 x 4 grid.
func bigYard() Slab {
	s := Slab{Outline: box(0, 0, 25, 14), Fixtures: []Fixture{{ID: "F1", Kind: Pit, Shape: box(11, 6, 12, 7), Opening: true}},
		Steel: []BarZone{{ID: "A1", PitchX: fact(0.2), PitchY: fact(0.2), First: &Point{0.1, 0.1}}}}
	for i := 1; i < 5; i++ {
		s.Joints = append(s.Joints, joint(fmt.Sprint("X", i), Point{5 * float64(i), 0}, Point{5 * float64(i), 14}))
	}
	for i := 1; i < 4; i++ {
		s.Joints = append(s.Joints, joint(fmt.Sprint("Y", i), Point{0, 3.5 * float64(i)}, Point{25, 3.5 * float64(i)}))
	}
	return s
}

func BenchmarkPanels(b *testing.B) {
	s := bigYard()
	for b.Loop() {
		if _, err := s.Panels(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRelate(b *testing.B) {
	s := bigYard()
	panels, _ := s.Panels()
	for b.Loop() {
		Relate(s, panels, [][]Point{{{2, 0.1}, {2.3, 3}, {2.2, 8}}}, nil)
	}
}
