package fem

import (
	"math"
	"testing"
)

// standardMesh is the plan of the model problems: 24 m by 15 m, a notch at the
// corner (24, 15) and a pit, k steps of lines.
func standardMesh(shape *Shape, k int) *Mesh {
	xs := EqualLines([]float64{0, 9, 10.2, 21, 24}, []int{24 * k, 3 * k, 27 * k, 8 * k})
	ys := EqualLines([]float64{0, 6, 6.9, 13, 15}, []int{15 * k, 2 * k, 15 * k, 5 * k})
	return GridMesh(shape, xs, ys, onSlab)
}

// gradedMesh is the same plan with lines crowding towards the inside corners.
func gradedMesh(shape *Shape, least, ratio, most float64) *Mesh {
	finest := []float64{0, least, least, least, 0}
	xs := GradedLines([]float64{0, 9, 10.2, 21, 24}, finest, ratio, most)
	ys := GradedLines([]float64{0, 6, 6.9, 13, 15}, finest, ratio, most)
	return GridMesh(shape, xs, ys, onSlab)
}

func onSlab(x, y float64) bool {
	pit := x > 9 && x < 10.2 && y > 6 && y < 6.9
	notch := x > 21 && y > 13
	return !pit && !notch
}

// shrinking is the law of model M.
func shrinking(Place) Layer {
	return Layer{Thickness: 0.15, Stiffness: Isotropic(20e9, 0.2), FreeStrain: [3]float64{-300e-6, -300e-6, 0}, Bed: 10e6}
}

type modelM struct {
	sheet *Sheet
	u     []float64
	at    *Locator
	e     Energy
}

func solveM(t testing.TB, mesh *Mesh) *modelM {
	t.Helper()
	sheet := &Sheet{Mesh: mesh, Law: shrinking}
	sol, err := NewSystem(mesh.X, mesh.Y, 2, sheet).Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	return &modelM{sheet, sol.U, NewLocator(mesh), sheet.Energy(sol.U)}
}

// nodeAt returns the node at a place, −1 if none.
func nodeAt(m *Mesh, x, y float64) int {
	for i := range m.X {
		if math.Hypot(m.X[i]-x, m.Y[i]-y) < 1e-9 {
			return i
		}
	}
	return -1
}

func (m *modelM) answer(t *testing.T, r tableRow) float64 {
	t.Helper()
	switch r.quantity {
	case "sheet energy":
		return m.e.Sheet
	case "bed energy":
		return m.e.Bed
	case "whole energy":
		return m.e.Sheet + m.e.Bed
	}
	x, y := r.num(t, "x"), r.num(t, "y")
	switch r.quantity {
	case "displacement x":
		return m.u[2*nodeAt(m.sheet.Mesh, x, y)] * 1e3
	case "displacement y":
		return m.u[2*nodeAt(m.sheet.Mesh, x, y)+1] * 1e3
	}
	s, _ := m.sheet.StressAt(m.at, x, y, m.u)
	most, least, _ := s.Principal()
	switch r.quantity {
	case "largest stress":
		return most / 1e6
	case "least stress":
		return least / 1e6
	case "stress xx":
		return s.XX / 1e6
	case "stress yy":
		return s.YY / 1e6
	case "stress xy":
		return s.XY / 1e6
	}
	t.Fatalf("row %s: no answer to %q", r.id, r.quantity)
	return 0
}

var shapesByName = map[string]*Shape{"q4": Q4, "t3": T3, "q8": Q8, "t6": T6}

// The same elements on the same meshes must give all printed digits. The finest
// meshes are solved with -large only.
func TestModelMElements(t *testing.T) {
	solved := map[string]*modelM{}
	compared := 0
	for _, r := range readTable(t, "model_m_elements.csv") {
		shape, k := shapesByName[r.in["element"]], int(r.num(t, "k"))
		if nodes := 2352 * k * k * len(gridOffsets[shape.Name]) * shape.Nodes; nodes > 250_000 && !*large {
			continue
		}
		key := r.in["element"] + r.in["k"]
		if solved[key] == nil {
			clear(solved)
			solved[key] = solveM(t, standardMesh(shape, k))
		}
		r.compare(t, solved[key].answer(t, r))
		compared++
	}
	if compared < 80 {
		t.Errorf("only %d rows compared", compared)
	}
	t.Logf("%d rows compared", compared)
}

func TestModelMConverged(t *testing.T) {
	if testing.Short() {
		t.Skip("600 000 unknowns")
	}
	m := solveM(t, gradedMesh(Q25, 1e-6, 1.6, 0.4))
	t.Log(len(m.u), "unknowns")
	for _, r := range readTable(t, "model_m_converged.csv") {
		r.compare(t, m.answer(t, r))
	}
}
