package sparse

import "testing"

// Springs added, tied between two unknowns and taken away again: the same as a new
// factor of the changed matrix.
func TestUpdate(t *testing.T) {
	a, x, y := sheetOn(t, 20, 15, 1e-2)
	f, err := Analyse(a.Pattern, x, y).Factor(a, 1)
	if err != nil {
		t.Fatal(err)
	}
	springs := []Spring{{10, -1, 3}, {33, 35, 2}, {200, -1, 0.5}, {201, 243, 4}}
	b := a.Copy()
	for _, s := range springs {
		b.AddDiagonal(s.First, s.Stiffness)
		if s.Second >= 0 {
			b.AddDiagonal(s.Second, s.Stiffness)
			addBeside(b, s.First, s.Second, -s.Stiffness)
		}
	}
	rhs := randomVector(a.Unknowns(), 4)
	u, err := f.Update(springs)
	if err != nil {
		t.Fatal(err)
	}
	got := make([]float64, len(rhs))
	u.SolveTo(got, rhs)
	g, err := f.Symbolic.Factor(b, 1)
	if err != nil {
		t.Fatal(err)
	}
	want := g.Solve(rhs)[0]
	if off := farthest(got, want); off > 1e-11*largest(want) {
		t.Errorf("off by %g of %g", off, largest(want))
	}
	for i := range springs {
		springs[i].Stiffness *= -1
	}
	back, err := g.Update(springs)
	if err != nil {
		t.Fatal(err)
	}
	back.SolveTo(got, rhs)
	if want = f.Solve(rhs)[0]; farthest(got, want) > 1e-10*largest(want) {
		t.Errorf("taken away again: off by %g of %g", farthest(got, want), largest(want))
	}
}

// addBeside adds to an entry off the diagonal blocks or in them.
func addBeside(a *Matrix, row, col int, v float64) {
	b := a.Block
	if row/b < col/b {
		row, col = col, row
	}
	s := int(a.find(int32(row/b), int32(col/b)))
	a.Value[s*b*b+row%b*b+col%b] += v
	if row/b == col/b {
		a.Value[s*b*b+col%b*b+row%b] += v
	}
}

// What hung on a single spring is loose without it.
func TestUpdateRefuses(t *testing.T) {
	a, x, y := sheetOn(t, 4, 4, 0)
	for u := range 3 {
		a.AddDiagonal([]int{0, 1, 9}[u], 1)
	}
	f, err := Analyse(a.Pattern, x, y).Factor(a, 1)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := f.Update([]Spring{{0, -1, -1}}); err == nil {
		t.Error("a loose sheet went through")
	}
}
