package plan

import (
	"math"
	"strings"
	"testing"

	"slabwright/source"
)

func bars(v float64) *source.Fact { return &source.Fact{Value: v, Known: source.Assumed} }

// Bars lie across the corner, in the concrete, so far apart.
func TestCornerBarsLieInTheConcrete(t *testing.T) {
	s := Slab{ID: "S", Outline: []Point{{X: 0, Y: 0}, {X: 8, Y: 0}, {X: 8, Y: 4}, {X: 4, Y: 4}, {X: 4, Y: 8}, {X: 0, Y: 8}}}
	s.CornerBars = []CornerBars{{ID: "B1", At: Point{X: 4, Y: 4}, Angle: 135, Bars: 3, Diameter: bars(0.012), Spacing: bars(0.1), Length: bars(1)}}
	if bad := s.Check(); len(bad) > 0 {
		t.Fatal(bad)
	}
	for i, l := range s.CornerBars[0].Lines() {
		middle := l.At(0.5)
		if off := middle.To(s.CornerBars[0].At); math.Abs(off-0.05-0.1*float64(i)) > 1e-9 {
			t.Errorf("bar %d lies %.3f m from the corner", i, off)
		}
		if !s.Inside(middle, 0) || math.Abs(l.Length()-1) > 1e-9 {
			t.Errorf("bar %d from %v to %v", i, l.A, l.B)
		}
	}
	if !s.BarsAt(Point{X: 4, Y: 4}) || s.BarsAt(Point{X: 0, Y: 0}) {
		t.Error("bars are at the inside corner and nowhere else")
	}
}

func TestCornerBarsThatCannotBe(t *testing.T) {
	s := Slab{ID: "S", Outline: []Point{{X: 0, Y: 0}, {X: 8, Y: 0}, {X: 8, Y: 4}, {X: 0, Y: 4}}}
	s.CornerBars = []CornerBars{{ID: "B1", At: Point{X: 20, Y: 4}, Bars: 0, Diameter: bars(12)}, {ID: "B1", Bars: 2}}
	text := ""
	for _, p := range s.Check() {
		text += p.Error() + "\n"
	}
	for _, want := range []string{"corner_bars[0].at_m", "corner_bars[0].bars", "corner_bars[0].diameter_m", "corner_bars[1].id"} {
		if !strings.Contains(text, want) {
			t.Errorf("nothing said of %s in\n%s", want, text)
		}
	}
}
