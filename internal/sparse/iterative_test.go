package sparse

import (
	"errors"
	"math"
	"testing"
)

// sheetOn returns the stiffness of a sheet of square cells on weak springs: the
// bilinear element with unit modulus, Poisson's ratio 0 and springs of the given
// stiffness, by the closed form.
func sheetOn(t testing.TB, nx, ny int, spring float64) (a *Matrix, x, y []float64) {
	t.Helper()
	c, x, y := gridCells(nx, ny)
	a = NewPattern(len(x), 2, c).NewMatrix()
	// ∫ of products of slopes of the four bilinear functions on the unit square.
	sign := [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}
	slopes := func(i, j, p, q int) float64 { // ∫ ∂p Ni ∂q Nj
		si, sj := sign[i], sign[j]
		if p == q {
			o := 1 - p
			return si[p] * sj[p] * (1 + si[o]*sj[o]/3) / 4
		}
		return si[p] * sj[q] / 4
	}
	a.Assemble(1, nil, func(_ int, ke, _ []float64) {
		for i := range 4 {
			for j := range 4 {
				mass := (1 + sign[i][0]*sign[j][0]/3) * (1 + sign[i][1]*sign[j][1]/3) / 16 * spring
				xx, yy := slopes(i, j, 0, 0), slopes(i, j, 1, 1)
				ke[(2*i)*8+2*j] = xx + yy/2 + mass
				ke[(2*i+1)*8+2*j+1] = yy + xx/2 + mass
				ke[(2*i)*8+2*j+1] = slopes(i, j, 1, 0) / 2
				ke[(2*i+1)*8+2*j] = slopes(i, j, 0, 1) / 2
			}
		}
	})
	return a, x, y
}

// rigid returns the movements of a sheet that cost no energy.
func rigid(x, y []float64) [][]float64 {
	modes := [][]float64{make([]float64, 2*len(x)), make([]float64, 2*len(x)), make([]float64, 2*len(x))}
	for i := range x {
		modes[0][2*i], modes[1][2*i+1] = 1, 1
		modes[2][2*i], modes[2][2*i+1] = -y[i], x[i]
	}
	return modes
}

func TestSheetHasRigidModes(t *testing.T) {
	a, x, y := sheetOn(t, 7, 5, 0)
	out := make([]float64, a.Unknowns())
	for k, m := range rigid(x, y) {
		a.Multiply(out, m)
		if largest(out) > 1e-13 {
			t.Errorf("movement %d meets a force of %g", k, largest(out))
		}
	}
}

// Every preconditioner must lead to the answer of the factor; with multigrid the
// rounds must hardly grow with the mesh.
func TestConjugateGradients(t *testing.T) {
	var rounds []int
	for _, n := range []int{50, 100, 200} {
		a, x, y := sheetOn(t, n, n, 1e-4)
		rhs := randomVector(a.Unknowns(), 1)
		f, err := Analyse(a.Pattern, x, y).Factor(a, 1)
		if err != nil {
			t.Fatal(err)
		}
		want := f.Solve(rhs)[0]
		m, err := NewMultigrid(a, rigid(x, y))
		if err != nil {
			t.Fatal(err)
		}
		got := make([]float64, len(rhs))
		k, err := ConjugateGradients(a, got, rhs, m, Goal{Left: 1e-12})
		if err != nil {
			t.Fatal(err)
		}
		if off := farthest(got, want); off > 1e-8*largest(want) {
			t.Errorf("%d cells: multigrid off by %g of %g", n, off, largest(want))
		}
		rounds = append(rounds, k)
		m.Use(2)
		both := make([]float64, len(rhs))
		if _, err := ConjugateGradients(a, both, rhs, m, Goal{Left: 1e-12}); err != nil || farthest(got, both) != 0 {
			t.Errorf("on two cores %v, off by %g", err, farthest(got, both))
		}
		if again, err := ConjugateGradients(a, got, rhs, m, Goal{Left: 1e-10}); err != nil || again != 0 {
			t.Errorf("from the solution %d rounds, %v", again, err)
		}
		if n == 50 {
			clear(got)
			slow, err := ConjugateGradients(a, got, rhs, NewBlockDiagonal(a), Goal{Left: 1e-12, Rounds: 5000})
			if err != nil || farthest(got, want) > 1e-8*largest(want) || slow < 3*k {
				t.Errorf("block diagonal: %d rounds (%d by multigrid), off by %g, %v", slow, k, farthest(got, want), err)
			}
		}
	}
	t.Log("rounds by multigrid", rounds)
	if rounds[2] > 2*rounds[0] {
		t.Errorf("rounds grow with the mesh: %v", rounds)
	}
}

func farthest(a, b []float64) float64 {
	most := 0.0
	for i := range a {
		most = math.Max(most, math.Abs(a[i]-b[i]))
	}
	return most
}

// A factor of the matrix before a cut across a few elements still leads there in
// about as many rounds as unknowns along the cut.
func TestOldFactorAsStart(t *testing.T) {
	a, x, y := sheetOn(t, 80, 60, 1e-3)
	f, err := Analyse(a.Pattern, x, y).Factor(a, 1)
	if err != nil {
		t.Fatal(err)
	}
	b := a.Copy()
	for i := range x {
		if x[i] == 40 && y[i] < 10 {
			b.AddDiagonal(2*i, 5)
		}
	}
	rhs := randomVector(a.Unknowns(), 2)
	got := make([]float64, len(rhs))
	rounds, err := ConjugateGradients(b, got, rhs, f, Goal{Left: 1e-11})
	if err != nil || rounds > 14 {
		t.Errorf("%d rounds, %v", rounds, err)
	}
	g, err := Analyse(b.Pattern, x, y).Factor(b, 1)
	if err != nil {
		t.Fatal(err)
	}
	if want := g.Solve(rhs)[0]; farthest(got, want) > 1e-8*largest(want) {
		t.Errorf("off by %g of %g", farthest(got, want), largest(want))
	}
}

func TestConjugateGradientsGivesUp(t *testing.T) {
	a, _, _ := sheetOn(t, 30, 30, 1e-6)
	rhs := randomVector(a.Unknowns(), 3)
	got := make([]float64, len(rhs))
	_, err := ConjugateGradients(a, got, rhs, NewBlockDiagonal(a), Goal{Rounds: 3})
	var not *NotSettled
	if !errors.As(err, &not) || not.Rounds != 3 {
		t.Errorf("after three rounds: %v", err)
	}
	a.AddDiagonal(100, -1e3)
	clear(got)
	if _, err = ConjugateGradients(a, got, rhs, NewBlockDiagonal(a), Goal{}); !errors.As(err, &not) {
		t.Errorf("an indefinite matrix: %v", err)
	}
	for _, v := range got {
		if math.IsNaN(v) {
			t.Fatal("not a number in what is left")
		}
	}
}
