package layout

import (
	"context"
	"encoding/json"
	"os"
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

func TestShapes(t *testing.T) {
	for _, s := range shapes(t) {
		t.Run(s.Name, func(t *testing.T) {
			if bad := s.Slab.Check(); len(bad) > 0 {
				t.Fatal(bad)
			}
			all, err := Propose(context.Background(), brief(s.Slab), nil)
			if err != nil {
				t.Fatal(err)
			}
			for _, a := range all {
				m := a.Measure
				t.Logf("%-16s panels %3d joint %6.1f longest %.2f worst %.2f over %.2f | sliver %d sharp %d unmet %d tee %d loose %d parted %.1f pours %d", a.Name, m.Panels, m.Joint, m.Longest, m.Worst, m.Over, m.Slivers, m.Sharp, m.Unmet, m.Tees, m.Loose, m.Parted, m.Pours)
			}
			if dir := os.Getenv("LAYOUT_SVG"); dir != "" {
				sketchSVG(t, dir, s.Name, all)
			}
		})
	}
}
