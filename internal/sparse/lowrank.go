package sparse

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Spring ties two unknowns together, or one to its place if the second is −1. A
// negative stiffness takes a spring away.
type Spring struct {
	First, Second int
	Stiffness     float64
}

// Updated solves with a factored matrix and a few springs added or taken away since.
// With s springs it costs s solves once and little more than one solve after; beyond
// some dozens a new factor is quicker.
//
// Source: Woodbury's identity, Golub and Van Loan, Matrix computations, section 2.1.3.
type Updated struct {
	factor  *Factor
	springs []Spring
	reach   [][]float64 // solution for a pair of unit forces at each spring
	small   mat.LU
}

// Update prepares for solving with springs added. The error says that taking springs
// away leaves something that nothing holds.
func (f *Factor) Update(springs []Spring) (*Updated, error) {
	u := &Updated{factor: f, springs: springs}
	unit := make([][]float64, len(springs))
	for k, s := range springs {
		unit[k] = make([]float64, f.Pattern.Unknowns())
		unit[k][s.First] = 1
		if s.Second >= 0 {
			unit[k][s.Second] = -1
		}
	}
	u.reach = f.Solve(unit...)
	n := len(springs)
	if n == 0 {
		return u, nil
	}
	small := mat.NewDense(n, n, nil) // I + K·Wᵀ·A⁻¹·W, K the stiffnesses, W the pairs
	scale := 0.0                     // of the entries before ones and springs taken away cancel
	for i, s := range springs {
		for j := range springs {
			small.Set(i, j, s.Stiffness*s.stretch(u.reach[j]))
			scale = math.Max(scale, 1+math.Abs(small.At(i, j)))
		}
		small.Set(i, i, small.At(i, i)+1)
	}
	u.small.Factorize(small)
	inverse := u.small.Cond() / mat.Norm(small, 1)
	if math.IsNaN(inverse) || inverse*scale > 1e-2/smallestPivot {
		return nil, errors.New("without these springs something is held by nothing")
	}
	return u, nil
}

// stretch returns how far the ends of a spring move apart.
func (s Spring) stretch(x []float64) float64 {
	if s.Second < 0 {
		return x[s.First]
	}
	return x[s.First] - x[s.Second]
}

// SolveTo solves the changed equations; x and rhs may be the same.
func (u *Updated) SolveTo(x, rhs []float64) {
	u.factor.SolveTo(x, rhs)
	if len(u.springs) == 0 {
		return
	}
	pull := mat.NewVecDense(len(u.springs), nil)
	for i, s := range u.springs {
		pull.SetVec(i, s.Stiffness*s.stretch(x))
	}
	var force mat.VecDense
	if err := u.small.SolveVecTo(&force, false, pull); err != nil {
		panic("sparse: a system found regular is singular: " + err.Error())
	}
	for k, reach := range u.reach {
		f := force.AtVec(k)
		for i, v := range reach {
			x[i] -= f * v
		}
	}
}

// Precondition solves with the changes known so far.
func (u *Updated) Precondition(z, r []float64) { u.SolveTo(z, r) }
