package fem

import (
	"slabwright/internal/sparse"
)

// Method is how the linear equations of each round are solved.
type Method int

const (
	// Automatic factors the stiffness, or goes by multigrid where that is quicker and
	// needs far less memory: on sheets of simple elements with many unknowns. If
	// multigrid takes too many rounds, as on a mesh of slender elements, it factors.
	Automatic Method = iota
	// Direct factors the stiffness.
	Direct
	// OldFactor goes by conjugate gradients from the factor of an earlier solve, if it
	// gets there in few rounds, and factors anew if not: for a small change.
	OldFactor
	// Multigrid goes by conjugate gradients. Plates on ground take about twice as many
	// rounds as sheets.
	Multigrid
)

func (m Method) String() string {
	return [...]string{"automatic", "direct", "old factor", "multigrid"}[m]
}

// multigridUnknowns is where multigrid begins to be quicker than a factor on one core.
// Found by trial on problem M with triangles and with quadrilaterals.
var multigridUnknowns = 250_000

// mostRounds is how long multigrid goes on where it was asked for.
var mostRounds = 500

const (
	// oldFactorRounds is how many rounds with an old factor cost about as much as a new one.
	oldFactorRounds = 12
	// simpleBlocks is the most blocks of the lower half of the stiffness to a node that
	// Automatic gives to multigrid: elements with corner nodes only.
	simpleBlocks = 6
	// patientRounds is after how many rounds Automatic gives multigrid up: 11 to 16 are
	// needed on even meshes, and a factor costs about as much as 40.
	patientRounds = 40
	// equationsLeft is the residual at which conjugate gradients end, as a share of the
	// right-hand side. On problem M displacements are then right to 1e-11.
	equationsLeft = 1e-10
)

// solveLinear sets x to the solution of the stiffness and rhs; x holds a guess.
func (s *System) solveLinear(x, rhs []float64, set Settings) error {
	if s.holding > 0 {
		s.matrix.Hold(s.held)
	}
	switch {
	case set.Method == Multigrid:
		return s.byMultigrid(x, rhs, mostRounds, set.Workers)
	case set.Method == Automatic && s.suitsMultigrid():
		if s.byMultigrid(x, rhs, patientRounds, set.Workers) == nil {
			return nil
		}
		s.tooSlow = true
	case set.Method == OldFactor && s.factored:
		s.method = OldFactor
		if _, err := sparse.ConjugateGradients(s.matrix, x, rhs, s.factor, sparse.Goal{Left: 1e-11, Rounds: oldFactorRounds}); err == nil {
			return nil
		}
	}
	s.method = Direct
	if err := s.factorise(set.Workers); err != nil {
		return err
	}
	s.factor.SolveTo(x, rhs)
	return nil
}

func (s *System) suitsMultigrid() bool {
	n := s.pattern.Unknowns()
	return s.Block == 2 && n >= multigridUnknowns && len(s.pattern.Row) <= simpleBlocks*s.pattern.Nodes && !s.tooSlow
}

func (s *System) byMultigrid(x, rhs []float64, rounds, workers int) error {
	s.method = Multigrid
	m, err := sparse.NewMultigrid(s.matrix, RigidModes(s.X, s.Y, s.Block))
	if err != nil {
		return err
	}
	m.Use(workers)
	_, err = sparse.ConjugateGradients(s.matrix, x, rhs, m, sparse.Goal{Left: equationsLeft, Rounds: rounds})
	return err
}
