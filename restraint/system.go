package restraint

import (
	"fmt"
	"slices"

	"slabwright/internal/sparse"
)

// system holds the matrices of a frame. The stiffness of the sheet is a sum over the
// pours of modulus times a matrix that never changes, so that a change of age costs
// one addition.
type system struct {
	pattern  *sparse.Pattern
	symbolic *sparse.Symbolic
	unit     []*sparse.Matrix // of each pour, for a modulus of 1
	sheet    []float64        // values of the sum for the moduli below
	moduli   []float64
	matrix   *sparse.Matrix
	factor   *sparse.Factor
}

// plane returns stress by strain in plane stress for a modulus of 1: xx/xx, xx/yy,
// xy/xy.
func plane(poisson float64) [3]float64 {
	d := 1 / (1 - poisson*poisson)
	return [3]float64{d, poisson * d, d * (1 - poisson) / 2}
}

func stressOf(d [3]float64, modulus float64, e [3]float64) [3]float64 {
	return [3]float64{modulus * (d[0]*e[0] + d[1]*e[1]), modulus * (d[1]*e[0] + d[0]*e[1]), modulus * d[2] * e[2]}
}

// newSystem readies the matrices of a frame. rank says which nodes are eliminated first;
// nil leaves that to be found.
func newSystem(f *frame, pours int, poisson float64, rank []int32) *system {
	s := &system{pattern: sparse.NewPattern(f.nodes, 2, f.connectivity())}
	s.matrix = s.pattern.NewMatrix()
	s.sheet = make([]float64, len(s.matrix.Value))
	for range pours {
		s.unit = append(s.unit, s.pattern.NewMatrix())
	}
	d := plane(poisson)
	var ke [36]float64
	for t := range f.tri {
		f.stiffness(t, d, &ke)
		s.unit[f.pour[t]].AddElement(t, ke[:])
	}
	if rank == nil {
		s.symbolic = sparse.Analyse(s.pattern, f.x, f.y)
	} else {
		s.symbolic = sparse.AnalyseIn(s.pattern, byRank(rank))
	}
	return s
}

// byRank lists nodes by rank, equal ones by number.
func byRank(rank []int32) []int32 {
	start := make([]int32, slices.Max(rank)+2)
	for _, r := range rank {
		start[r+1]++
	}
	for i := 1; i < len(start); i++ {
		start[i] += start[i-1]
	}
	order := make([]int32, len(rank))
	for n, r := range rank {
		order[start[r]] = int32(n)
		start[r]++
	}
	return order
}

// again returns matrices of the same frame for another model.
func (s *system) again() *system {
	matrix := s.pattern.NewMatrix()
	return &system{pattern: s.pattern, symbolic: s.symbolic, unit: s.unit, sheet: make([]float64, len(matrix.Value)), matrix: matrix}
}

// stiffness fills thickness · area · Bᵀ·D·B of a triangle for a modulus of 1.
func (f *frame) stiffness(t int, d [3]float64, ke *[36]float64) {
	g, w := &f.grad[t], f.thick[t]*f.sheet[t]
	for i := range 3 {
		xi, yi := g[i], g[3+i]
		for j := range 3 {
			xj, yj := g[j], g[3+j]
			ke[(2*i)*6+2*j] = w * (d[0]*xi*xj + d[2]*yi*yj)
			ke[(2*i)*6+2*j+1] = w * (d[1]*xi*yj + d[2]*yi*xj)
			ke[(2*i+1)*6+2*j] = w * (d[1]*yi*xj + d[2]*xi*yj)
			ke[(2*i+1)*6+2*j+1] = w * (d[0]*yi*yj + d[2]*xi*xj)
		}
	}
}

// setModuli makes the sum for moduli of the pours.
func (s *system) setModuli(moduli []float64) {
	same := len(s.moduli) == len(moduli)
	for i := range s.moduli {
		same = same && s.moduli[i] == moduli[i]
	}
	if same {
		return
	}
	s.moduli = append(s.moduli[:0], moduli...)
	clear(s.sheet)
	for p, m := range s.unit {
		if e := moduli[p]; e != 0 {
			for i, v := range m.Value {
				s.sheet[i] += e * v
			}
		}
	}
}

// factorise readies the factor of the matrix.
func (s *system) factorise(workers int) error {
	var err error
	if s.factor == nil {
		s.factor, err = s.symbolic.Factor(s.matrix, workers)
	} else {
		err = s.factor.Refactor(s.matrix, workers)
	}
	if err != nil {
		return fmt.Errorf("nothing holds a part of the slab: %w", err)
	}
	return nil
}
