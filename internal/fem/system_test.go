package fem

import (
	"errors"
	"testing"

	"slabwright/internal/sparse"
)

// Every way of solving must lead to the same displacements.
func TestMethodsAgree(t *testing.T) {
	mesh := standardMesh(Q4, 1)
	var want []float64
	for _, method := range []Method{Direct, Multigrid, OldFactor, Automatic} {
		sheet := &Sheet{Mesh: mesh, Law: shrinking}
		s := NewSystem(mesh.X, mesh.Y, 2, sheet)
		s.Hold(nodeAt(mesh, 0, 0), 0, 1e-3)
		if method == OldFactor { // of a sheet a little stiffer in one corner
			sheet.Law = func(p Place) Layer {
				l := shrinking(p)
				if p.X < 2 && p.Y < 2 {
					l.Bed *= 1.5
				}
				return l
			}
			if _, err := s.Solve(Settings{}); err != nil {
				t.Fatal(err)
			}
			sheet.Law = shrinking
		}
		sol, err := s.Solve(Settings{Method: method})
		if err != nil {
			t.Fatal(err)
		}
		if want == nil {
			want = sol.U
		}
		for i := range want {
			if d := sol.U[i] - want[i]; d > 1e-11 || d < -1e-11 {
				t.Fatalf("method %d: displacement %d off by %g m", method, i, d)
			}
		}
	}
}

// Plates too come out the same without a factor.
func TestPlatesByMultigrid(t *testing.T) {
	bending, shear := IsotropicPlate(plateModulus, platePoisson, plateThickness)
	for _, kind := range []*PlateShape{MITC4, BFS, DKT} {
		mesh := standardMesh(kind.Mesh, 1)
		p := &Plate{Mesh: mesh, Kind: kind, Ground: TwoWay(plateGround), LinearGround: true, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending, Shear: shear} }}
		s := NewSystem(mesh.X, mesh.Y, kind.Unknowns, p)
		force, _ := p.PatchForce(wheelPatch, wheelPressure)
		s.PushAll(force)
		factored, err := s.Solve(Settings{Method: Direct})
		if err != nil {
			t.Fatal(err)
		}
		got, err := s.Solve(Settings{Method: Multigrid})
		if err != nil {
			t.Fatalf("%s: %v", kind.Name, err)
		}
		for i := 0; i < len(got.U); i += kind.Unknowns { // of 0.6 mm
			if d := got.U[i] - factored.U[i]; d > 1e-12 || d < -1e-12 {
				t.Fatalf("%s: deflection %d off by %g m", kind.Name, i/kind.Unknowns, d)
			}
		}
	}
}

// Automatic takes multigrid on an even mesh, and where slender elements make that
// slow it factors; both lead to the same displacements as factoring does.
func TestAutomatic(t *testing.T) {
	defer func(n int) { multigridUnknowns = n }(multigridUnknowns)
	multigridUnknowns = 4000
	for want, mesh := range map[Method]*Mesh{Multigrid: standardMesh(Q4, 1), Direct: gradedMesh(Q4, 1e-4, 1.4, 0.4)} {
		sheet := &Sheet{Mesh: mesh, Law: shrinking}
		s := NewSystem(mesh.X, mesh.Y, 2, sheet)
		got, err := s.Solve(Settings{})
		if err != nil || got.Method != want {
			t.Errorf("%d unknowns: %v, %v, want %v", len(s.held), got.Method, err, want)
		}
		factored, err := s.Solve(Settings{Method: Direct})
		if err != nil {
			t.Fatal(err)
		}
		for i, v := range factored.U {
			if d := got.U[i] - v; d > 1e-11 || d < -1e-11 {
				t.Fatalf("%v: displacement %d off by %g m", want, i, d)
			}
		}
	}
}

// Multigrid that is stopped early says so and hands back how far it came.
func TestMultigridGivesUp(t *testing.T) {
	defer func(n int) { mostRounds = n }(mostRounds)
	mostRounds = 3
	mesh := standardMesh(Q4, 1)
	sheet := &Sheet{Mesh: mesh, Law: shrinking}
	s := NewSystem(mesh.X, mesh.Y, 2, sheet)
	got, err := s.Solve(Settings{Method: Multigrid})
	var not *sparse.NotSettled
	if !errors.As(err, &not) || not.Rounds != 3 || got.Left != not.Left || got.Left > 0.1 {
		t.Fatalf("left %g, %v", got.Left, err)
	}
	right, err := s.Solve(Settings{Method: Direct})
	if err != nil {
		t.Fatal(err)
	}
	far, off := 0.0, 0.0
	for i, v := range right.U {
		far, off = max(far, v, -v), max(off, got.U[i]-v, v-got.U[i])
	}
	if !(off > 0) || off > 0.01*far { // max passes on what is not a number
		t.Errorf("off by %g of %g", off, far)
	}
}
