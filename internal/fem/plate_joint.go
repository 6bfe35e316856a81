package fem

import (
	"math"

	"slabwright/internal/sparse"
)

// StepLaw gives the shear force per length, N/m, that answers a step between the two
// sides of a joint, m, and how fast it grows.
type StepLaw func(point int, at Place, step float64) (force, growth float64)

// PlateJoint is a line across which two plates may step against each other: an edge
// with aggregate interlock or dowels spread along it. Nodes are as for [Interface];
// the step is the deflection of the second side less that of the first. Moment does
// not pass.
type PlateJoint struct {
	X, Y      []float64
	Node      []int32 // a, b, c, d of each element
	Unknowns  int     // per node, as the plates'
	Law       StepLaw
	LinearLaw bool   // Law's growth never changes
	Title     string // "plate joint" if empty
}

func (j *PlateJoint) Name() string                      { return orElse(j.Title, "plate joint") }
func (j *PlateJoint) Linear() bool                      { return j.LinearLaw }
func (j *PlateJoint) Connectivity() sparse.Connectivity { return sparse.Uniform(4, j.Node) }

// Spread is a law of springs spread along the joint, stiffness N/m².
func Spread(stiffness float64) StepLaw {
	return func(_ int, _ Place, step float64) (float64, float64) { return stiffness * step, stiffness }
}

// Element adds up the force at both ends, each over half the length.
func (j *PlateJoint) Element(e int, u, ke, fe []float64) {
	a, b := j.Node[4*e], j.Node[4*e+1]
	half := math.Hypot(j.X[b]-j.X[a], j.Y[b]-j.Y[a]) / 2
	width := 4 * j.Unknowns
	for p := range 2 {
		first, second := p*j.Unknowns, (2+p)*j.Unknowns
		n := j.Node[4*e+p]
		force, growth := j.Law(2*e+p, Place{Element: e, X: j.X[n], Y: j.Y[n]}, u[second]-u[first])
		fe[first] -= half * force
		fe[second] += half * force
		ke[first*width+first] += half * growth
		ke[second*width+second] += half * growth
		ke[second*width+first] -= half * growth
		ke[first*width+second] -= half * growth
	}
}
