package fem

import "testing"

const (
	plateModulus   = 20e9
	platePoisson   = 0.2
	plateThickness = 0.15
	plateGround    = 50e6
	freeCurl       = 10e-6 * 10 / 0.15 // of w, upwards at the edges
	selfWeight     = 24e3 * 0.15
	wheelPressure  = 40e3 / (0.25 * 0.25)
)

var wheelPatch = [][2]float64{{11.875, 0.125}, {12.125, 0.125}, {12.125, 0.375}, {11.875, 0.375}}

type modelP struct {
	plate  *Plate
	u      []float64
	at     *Locator
	rounds int
	e      PlateEnergy
}

// solveP solves case P1, P2 or P3.
func solveP(t testing.TB, which string, kind *PlateShape, mesh *Mesh) modelP {
	t.Helper()
	return solvePSplit(t, which, kind, mesh, 0)
}

// solvePSplit does so with elements that lift partly split for the ground.
func solvePSplit(t testing.TB, which string, kind *PlateShape, mesh *Mesh, split int) modelP {
	t.Helper()
	bending, shear := IsotropicPlate(plateModulus, platePoisson, plateThickness)
	layer := PlateLayer{Bending: bending, Shear: shear}
	p := &Plate{Mesh: mesh, Kind: kind, Ground: TwoWay(plateGround), LinearGround: true, GroundSplit: split}
	if which != "P1" {
		layer.FreeCurvature = [3]float64{-freeCurl, -freeCurl, 0}
		layer.Load = selfWeight
		p.Ground, p.LinearGround = PushOnly(plateGround), false
	}
	p.Law = func(Place) PlateLayer { return layer }
	if err := p.Check(); err != nil {
		t.Fatal(err)
	}
	s := NewSystem(mesh.X, mesh.Y, kind.Unknowns, p)
	if which != "P2" {
		force, _ := p.PatchForce(wheelPatch, wheelPressure)
		s.PushAll(force)
	}
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	return modelP{p, sol.U, NewLocator(mesh), sol.Rounds, p.Energy(sol.U)}
}

func (m modelP) bottom(x, y float64) float64 {
	_, v, _ := m.plate.At(m.at, x, y, m.u)
	most, _, _ := v.Bottom(plateThickness).Principal()
	return most / 1e6
}

func (m modelP) top(x, y float64) float64 {
	_, v, _ := m.plate.At(m.at, x, y, m.u)
	most, _, _ := v.Top(plateThickness).Principal()
	return most / 1e6
}

func (m modelP) w(x, y float64) float64 {
	w, _, _ := m.plate.At(m.at, x, y, m.u)
	return w * 1e3
}

func (m modelP) answer(t *testing.T, r tableRow) float64 {
	t.Helper()
	switch r.quantity {
	case "plate energy":
		return m.e.Plate
	case "ground energy":
		return m.e.Ground
	case "contact share":
		return m.e.Contact
	}
	x, y := r.num(t, "x"), r.num(t, "y")
	switch r.quantity {
	case "deflection":
		return m.w(x, y)
	case "bottom stress":
		return m.bottom(x, y)
	case "top stress":
		return m.top(x, y)
	}
	t.Fatalf("row %s: no answer to %q", r.id, r.quantity)
	return 0
}

// The same elements on the same meshes must give all printed digits. The finest
// meshes are solved with -large only.
func TestModelPElements(t *testing.T) {
	kinds := map[string]*PlateShape{"acm": ACM, "mitc4": MITC4}
	solved := map[string]modelP{}
	compared := 0
	for _, r := range readTable(t, "model_p_elements.csv") {
		k := int(r.num(t, "k"))
		if (k > 2 || k == 2 && r.in["case"] == "P2") && !*large {
			continue
		}
		key := r.in["case"] + r.in["element"] + r.in["k"]
		m, ok := solved[key]
		if !ok {
			clear(solved)
			kind := kinds[r.in["element"]]
			m = solveP(t, r.in["case"], kind, standardMesh(kind.Mesh, k))
			solved[key] = m
		}
		r.compare(t, m.answer(t, r))
		compared++
	}
	if compared < 70 {
		t.Errorf("only %d rows compared", compared)
	}
	t.Logf("%d rows compared", compared)
}

func TestModelPConverged(t *testing.T) {
	if !*large {
		t.Skip("solves three cases on fine meshes; run with -large")
	}
	for _, c := range []struct {
		table string
		kind  *PlateShape
		mesh  *Mesh
		split int
	}{
		{"model_p_kirchhoff.csv", BFS, plateMesh(Q4, 0.002, 0.006, 0.06, 1.2, 0.06), 4},
		{"model_p_mindlin.csv", Quartic, plateMesh(Q25, 0.002, 0.1, 0.03, 1.6, 0.3), 8},
	} {
		solved := map[string]modelP{}
		rows := readTable(t, c.table)
		if c.kind == Quartic {
			rows = append(rows, readTable(t, "model_p_agreed.csv")...)
		}
		for _, r := range rows {
			m, ok := solved[r.in["case"]]
			if !ok {
				m = solvePSplit(t, r.in["case"], c.kind, c.mesh, c.split)
				solved[r.in["case"]] = m
				t.Log(len(m.u), "unknowns", m.rounds, "rounds")
			}
			r.compare(t, m.answer(t, r))
		}
	}
}

// plateMesh crowds lines towards the inside corners, and less so towards the wheel
// and the outline.
func plateMesh(shape *Shape, corner, wheel, edge, ratio, most float64) *Mesh {
	xs := GradedLines([]float64{0, 9, 10.2, 11.875, 12, 12.125, 21, 24}, []float64{edge, corner, corner, wheel, wheel, wheel, corner, edge}, ratio, most)
	ys := GradedLines([]float64{0, 0.125, 0.25, 0.375, 6, 6.9, 13, 15}, []float64{wheel, wheel, wheel, wheel, corner, corner, corner, edge}, ratio, most)
	return GridMesh(shape, xs, ys, onSlab)
}
