package sparse

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// gridCells returns the nodes of nx by ny square cells, four a cell, and the places
// of the nodes.
func gridCells(nx, ny int) (c Connectivity, x, y []float64) {
	var node []int32
	for j := range ny + 1 {
		for i := range nx + 1 {
			x, y = append(x, float64(i)), append(y, float64(j))
			if i < nx && j < ny {
				n := int32(j*(nx+1) + i)
				node = append(node, n, n+1, n+int32(nx)+2, n+int32(nx)+1)
			}
		}
	}
	return Uniform(4, node), x, y
}

// randomMatrix returns a positive definite matrix: each element a random Gram matrix
// and a little on the diagonal.
func randomMatrix(p *Pattern, seed uint64) *Matrix {
	r := rand.New(rand.NewPCG(seed, 1))
	a := p.NewMatrix()
	a.Assemble(1, nil, func(e int, ke, _ []float64) {
		m := int(math.Sqrt(float64(len(ke))))
		g := make([]float64, len(ke))
		for i := range g {
			g[i] = r.Float64() - 0.5
		}
		for i := range m {
			for j := range m {
				for k := range m {
					ke[i*m+j] += g[i*m+k] * g[j*m+k]
				}
			}
		}
	})
	for u := range p.Unknowns() {
		a.AddDiagonal(u, 0.1)
	}
	return a
}

func randomVector(n int, seed uint64) []float64 {
	r := rand.New(rand.NewPCG(seed, 2))
	v := make([]float64, n)
	for i := range v {
		v[i] = r.Float64() - 0.5
	}
	return v
}

func dense(a *Matrix) *mat.SymDense {
	n := a.Unknowns()
	d := mat.NewSymDense(n, nil)
	for i := range n {
		for j := range i + 1 {
			d.SetSym(i, j, a.At(i, j))
		}
	}
	return d
}

// randomCells joins random nodes, some elements folded onto themselves, some nodes
// in no element.
func randomCells(nodes, elements int, seed uint64) Connectivity {
	r := rand.New(rand.NewPCG(seed, 3))
	c := Connectivity{Start: []int32{0}}
	for range elements {
		for range 2 + r.IntN(4) {
			c.Node = append(c.Node, int32(r.IntN(nodes)))
		}
		c.Start = append(c.Start, int32(len(c.Node)))
	}
	return c
}

// The dense Cholesky of gonum is the second way to the same answer.
func TestSolveAgainstDense(t *testing.T) {
	for block := 1; block <= 4; block++ {
		for _, c := range []struct {
			name    string
			connect Connectivity
			nodes   int
			places  bool
		}{
			{"grid", first(gridCells(17, 9)), 18 * 10, true},
			{"grid without places", first(gridCells(12, 12)), 169, false},
			{"one row", first(gridCells(40, 1)), 82, true},
			{"random", randomCells(90, 60, 5), 90, false},
			{"one node", Uniform(1, []int32{0}), 1, true},
		} {
			p := NewPattern(c.nodes, block, c.connect)
			a := randomMatrix(p, 7)
			var x, y []float64
			if c.places {
				x, y = randomVector(c.nodes, 8), randomVector(c.nodes, 9)
				if c.name != "one node" && c.name != "grid without places" {
					_, x, y = gridCells(map[string]int{"grid": 17, "one row": 40}[c.name], map[string]int{"grid": 9, "one row": 1}[c.name])
				}
			}
			f, err := Analyse(p, x, y).Factor(a, 1)
			if err != nil {
				t.Fatalf("%s, block %d: %v", c.name, block, err)
			}
			rhs := randomVector(p.Unknowns(), 10)
			got := f.Solve(rhs)[0]
			var chol mat.Cholesky
			if !chol.Factorize(dense(a)) {
				t.Fatalf("%s: dense factor", c.name)
			}
			var want mat.VecDense
			if err := chol.SolveVecTo(&want, mat.NewVecDense(len(rhs), rhs)); err != nil {
				t.Fatal(err)
			}
			for i := range got {
				if math.Abs(got[i]-want.AtVec(i)) > 1e-11 {
					t.Fatalf("%s, block %d: x[%d] = %.15g, dense %.15g", c.name, block, i, got[i], want.AtVec(i))
				}
			}
		}
	}
}

func first(c Connectivity, _, _ []float64) Connectivity { return c }

func TestMultiply(t *testing.T) {
	for block := 1; block <= 5; block++ {
		p := NewPattern(60, block, randomCells(60, 40, 11))
		a := randomMatrix(p, 12)
		x := randomVector(p.Unknowns(), 13)
		got := make([]float64, len(x))
		a.Multiply(got, x)
		var want mat.VecDense
		want.MulVec(dense(a), mat.NewVecDense(len(x), x))
		for i := range got {
			if math.Abs(got[i]-want.AtVec(i)) > 1e-13 {
				t.Fatalf("block %d: y[%d] = %g, dense %g", block, i, got[i], want.AtVec(i))
			}
		}
	}
}

// Both cores must give what one gives, to the last bit, in assembly and factor.
func TestSameOnAnyNumberOfCores(t *testing.T) {
	c, x, y := gridCells(70, 60)
	p := NewPattern(len(x), 2, c)
	element := func(e int, ke, _ []float64) {
		r := rand.New(rand.NewPCG(uint64(e), 4))
		for i := range 8 {
			for j := range i {
				ke[i*8+j] = (r.Float64() - 0.5) / 8
			}
			ke[i*9] = 1 + r.Float64()
		}
	}
	s := Analyse(p, x, y)
	rhs := randomVector(p.Unknowns(), 14)
	var solutions [][]float64
	for _, workers := range []int{1, 2, 5} {
		a := p.NewMatrix()
		a.Assemble(workers, nil, element)
		f, err := s.Factor(a, workers)
		if err != nil {
			t.Fatal(err)
		}
		solutions = append(solutions, f.Solve(rhs)[0])
	}
	for k, other := range solutions[1:] {
		for i := range other {
			if other[i] != solutions[0][i] {
				t.Fatalf("run %d: x[%d] = %g, on one core %g", k+1, i, other[i], solutions[0][i])
			}
		}
	}
}

func TestRefactorAndRefine(t *testing.T) {
	c, x, y := gridCells(50, 40)
	p := NewPattern(len(x), 2, c)
	f, err := Analyse(p, x, y).Factor(randomMatrix(p, 1), 2)
	if err != nil {
		t.Fatal(err)
	}
	a := randomMatrix(p, 2)
	if err := f.Refactor(a, 2); err != nil {
		t.Fatal(err)
	}
	rhs, got := randomVector(p.Unknowns(), 3), make([]float64, p.Unknowns())
	if left := f.SolveRefined(a, got, rhs); left > 1e-14 {
		t.Errorf("%g of the right-hand side left over", left)
	}
	if left := f.SolveRefined(a, got, make([]float64, len(rhs))); left != 0 || largest(got) != 0 {
		t.Error("no load must give no movement")
	}
}

// A chain held at one end is positive definite; let go, or with a pivot made
// negative, it is not, and the error names the place.
func TestNotPositive(t *testing.T) {
	c, x, y := gridCells(30, 1)
	p := NewPattern(len(x), 1, c)
	laplace := func(e int, ke, _ []float64) {
		for i := range 4 {
			for j := range 4 {
				ke[i*4+j] = -1
			}
			ke[i*5] = 3
		}
	}
	s := Analyse(p, x, y)
	for _, workers := range []int{1, 2} {
		a := p.NewMatrix()
		a.Assemble(1, nil, laplace)
		_, err := s.Factor(a, workers)
		var not *NotPositive
		if !errors.As(err, &not) {
			t.Fatalf("a chain nothing holds: %v", err)
		}
		a.AddDiagonal(0, 1)
		if _, err := s.Factor(a, workers); err != nil {
			t.Errorf("held at one end: %v", err)
		}
		a.AddDiagonal(17, -1000)
		if _, err := s.Factor(a, workers); !errors.As(err, &not) || not.Node != 17 {
			t.Errorf("negative stiffness at node 17: %v", err)
		}
		a.Value[0] = math.NaN()
		if _, err := s.Factor(a, workers); !errors.As(err, &not) {
			t.Errorf("not a number at node 0: %v", err)
		}
	}
}

func TestOrderIsComplete(t *testing.T) {
	c, x, y := gridCells(60, 45)
	p := NewPattern(len(x), 2, c)
	s := Analyse(p, x, y)
	seen := make([]bool, p.Nodes)
	for _, i := range s.order {
		if seen[i] {
			t.Fatalf("node %d twice", i)
		}
		seen[i] = true
	}
	if len(s.order) != p.Nodes {
		t.Fatalf("%d of %d nodes", len(s.order), p.Nodes)
	}
	for f, rows := range s.rows {
		for k, i := range rows {
			if i < s.first[f+1] || k > 0 && rows[k-1] >= i {
				t.Fatalf("rows of front %d are out of order", f)
			}
		}
	}
}
