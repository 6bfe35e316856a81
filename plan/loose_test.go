package plan

import (
	"encoding/json"
	"math"
	"sort"
	"testing"

	"pgregory.net/rapid"
)

func TestLooseEnds(t *testing.T) {
	s := yard()
	if loose := s.LooseEnds(); len(loose) != 0 {
		t.Errorf("every joint of the yard meets something: %+v", loose)
	}
	s.Joints = append(s.Joints, joint("J4", Point{6, 0}, Point{6, 3.8}))
	loose := s.LooseEnds()
	if len(loose) != 1 || loose[0].Joint != "J4" || !near(loose[0].Short, 0.2, 1e-9) {
		t.Errorf("got %+v, want J4 0.2 m short of J3", loose)
	}
}

// Turning, moving and mirroring a slab leaves its panels the same: coordinates that
// no longer meet exactly are still joined.
func TestPanelsDoNotMove(t *testing.T) {
	want := measures(mustPanels(t, yard()))
	rapid.Check(t, func(t *rapid.T) {
		m := move{angle: rapid.Float64Range(-180, 180).Draw(t, "angle"), mirror: rapid.SampledFrom([]float64{1, -1}).Draw(t, "mirror"),
			by: Point{rapid.Float64Range(-1000, 1000).Draw(t, "x"), rapid.Float64Range(-1000, 1000).Draw(t, "y")}}
		got := measures(mustPanels(t, m.slab(yard())))
		if len(got) != len(want) {
			t.Fatalf("%d numbers, want %d: %v, %v", len(got), len(want), got, want)
		}
		for i := range want {
			if !near(got[i], want[i], 0.01) {
				t.Fatalf("got %v, want %v", got, want)
			}
		}
	})
}

// measures returns area, length, width and number of sides and corners of each
// panel, smallest first.
func measures(panels []Panel) []float64 {
	sort.Slice(panels, func(i, j int) bool {
		a, b := panels[i], panels[j]
		if math.Abs(a.Area-b.Area) > 0.1 {
			return a.Area < b.Area
		}
		return len(a.Sides) < len(b.Sides)
	})
	var all []float64
	for _, p := range panels {
		all = append(all, p.Area, p.Length, p.Width, float64(len(p.Sides)), float64(len(p.InsideCorners)))
	}
	return all
}

// Whatever was traced, the relations can be written down: no infinity, no NaN.
func TestRelationsCanBeWritten(t *testing.T) {
	s := apron()
	panels := mustPanels(t, s)
	rapid.Check(t, func(t *rapid.T) {
		coordinate := rapid.OneOf(rapid.Float64Range(-2, 12), rapid.SampledFrom([]float64{0, 1, 2.5, 4, 5, 10}), rapid.Just(math.NaN()), rapid.Just(math.Inf(1)))
		draw := func(name string) []Point {
			var l []Point
			for range rapid.IntRange(0, 5).Draw(t, name) {
				l = append(l, Point{coordinate.Draw(t, "x"), coordinate.Draw(t, "y")})
			}
			return l
		}
		var lines [][]Point
		for range rapid.IntRange(0, 4).Draw(t, "lines") {
			lines = append(lines, draw("line"))
		}
		r := Relate(s, panels, lines, draw("area"), draw("other"))
		if _, err := json.Marshal(r); err != nil {
			t.Fatal(err)
		}
		for _, l := range r.Working("r").Lines {
			if math.IsNaN(l.Value) || math.IsInf(l.Value, 0) {
				t.Fatalf("%s is %v", l.What, l.Value)
			}
		}
	})
}
