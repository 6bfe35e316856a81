package fem

import (
	"testing"
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
