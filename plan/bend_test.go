package plan

import (
	"math"
	"testing"
)

// A joint that meets another 3 mm beside its bend: both panels keep the bend, and the
// two make up the slab.
func TestCrossingBesideABend(t *testing.T) {
	s := Slab{ID: "S", Outline: []Point{{0, 0}, {10, 0}, {10, 8}, {0, 8}}, Joints: []Joint{
		{ID: "A", Kind: Isolation, Path: []Point{{0, 4}, {5, 4.4}, {10, 4}}},
		{ID: "B", Kind: Sawn, Path: []Point{{5.003, 0}, {5.003, 4.39976}}},
	}}
	panels, err := s.Panels()
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, p := range panels {
		sum += p.Area
	}
	if math.Abs(sum-80) > 1e-3 {
		t.Errorf("%d panels make up %.6f m² of 80", len(panels), sum)
	}
}
