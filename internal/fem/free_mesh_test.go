package fem

import (
	"math"
	"strings"
	"testing"

	"slabwright/internal/mesh"
)

// freeMesh is the plan of model M in triangles that follow no grid, small at the
// inside corners.
func freeMesh(t *testing.T, least, most float64) *Mesh {
	t.Helper()
	d := mesh.Domain{
		Outline: [][]mesh.Point{{{0, 0}, {24, 0}, {24, 13}, {21, 13}, {21, 15}, {0, 15}}},
		Holes:   [][]mesh.Point{{{9, 6}, {10.2, 6}, {10.2, 6.9}, {9, 6.9}}},
		Points:  []mesh.Point{{9.6, 3}, {9.6, 10.95}, {4.5, 6.45}, {8.7, 5.7}, {20.7, 12.7}},
	}
	var small []mesh.Source
	for _, p := range d.InsideCorners(225) {
		small = append(small, mesh.Source{At: p, Size: least})
	}
	d.Size = mesh.Grade(most, 1.15, small...)
	m, err := mesh.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	if len(small) != 5 {
		t.Fatalf("%d inside corners, want 5", len(small))
	}
	return FromTriangles(m.Points, m.Triangles).Quadratic()
}

// Model M on free triangles of the second degree: the converged values by another
// mesh and another element than those of [TestModelMConverged].
func TestModelMOnFreeTriangles(t *testing.T) {
	if testing.Short() {
		t.Skip("240 000 unknowns")
	}
	m := solveM(t, freeMesh(t, 1e-5, 0.3))
	worst := map[string]float64{}
	for _, r := range readTable(t, "model_m_converged.csv") {
		kind, allowed := "energy", 1e-6
		switch {
		case strings.HasPrefix(r.quantity, "displacement"):
			kind, allowed = "displacement", 2e-6
		case strings.Contains(r.quantity, "stress"):
			kind, allowed = "stress", 1e-3
		}
		size := math.Max(math.Abs(r.expected), 1) // MPa or mm, what the largest are
		off := math.Abs(m.answer(t, r) - r.expected)
		worst[kind] = math.Max(worst[kind], off/size)
		if off > allowed*size+r.tol {
			t.Errorf("%s: got %.7g, expected %.7g %s", r.id, m.answer(t, r), r.expected, r.unit)
		}
	}
	t.Log(len(m.u), "unknowns, off by", worst)
}
