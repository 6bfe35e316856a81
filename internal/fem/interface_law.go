package fem

import "math"

// Elastic is a law of two springs: stiffness across and along, N/m³.
func Elastic(across, along float64) Law {
	return func(_ int, _ Place, gap, slip float64) Traction {
		return Traction{across * gap, along * slip, [3]float64{across, 0, along}}
	}
}

// Touching is a law of two sides that push but do not pull: stiffness across when
// closed, and along, N/m³, while closed.
func Touching(across, along float64) Law {
	return func(_ int, _ Place, gap, slip float64) Traction {
		if gap > 0 {
			return Traction{}
		}
		return Traction{across * gap, along * slip, [3]float64{across, 0, along}}
	}
}

// Cohesive is a law of a crack that pulls less the wider it opens. It starts with the
// stiffness k, N/m³, up to the strength, N/m², then falls linearly to nothing where
// the work spent is energy, J/m². Going back it unloads towards the origin; closing
// it pushes with k. Along the crack it has a share of k that goes with what is left.
//
// The zero value is not ready; use [NewCohesive].
//
// Source: Hillerborg, Modéer and Petersson, Cement and Concrete Research 6 (1976),
// with a linear fall.
type Cohesive struct {
	Stiffness, Strength, Energy float64
	Shear                       float64 // stiffness along, share of Stiffness
	Widest                      []float64
}

// NewCohesive returns a law for an interface of so many points. Energy must be more
// than the elastic work up to the strength.
func NewCohesive(points int, stiffness, strength, energy, shear float64) *Cohesive {
	if !(stiffness > 0 && strength > 0 && energy > strength*strength/(2*stiffness)) {
		panic("fem: a cohesive law needs energy above strength²/2·stiffness")
	}
	return &Cohesive{stiffness, strength, energy, shear, make([]float64, points)}
}

// Left returns the share of the stiffness that is left after the widest opening.
func (c *Cohesive) Left(widest float64) float64 {
	first, last := c.Strength/c.Stiffness, 2*c.Energy/c.Strength
	switch {
	case widest <= first:
		return 1
	case widest >= last:
		return 0
	}
	return c.Strength * (last - widest) / (last - first) / (c.Stiffness * widest)
}

// Law is the law to hand to [Interface]. While the crack opens its growth is negative,
// the fall of the law; that the shear stiffness falls with the opening is left out of
// the growth.
func (c *Cohesive) Law(point int, _ Place, gap, slip float64) Traction {
	widest := math.Max(c.Widest[point], gap)
	left := c.Left(widest)
	across, growth := c.Stiffness, c.Stiffness
	if gap > 0 {
		across *= left
		growth = across
		if gap >= c.Widest[point] && left < 1 {
			growth = 0
			if left > 0 {
				growth = -c.Strength / (2*c.Energy/c.Strength - c.Strength/c.Stiffness)
			}
		}
	}
	along := c.Stiffness * c.Shear * left
	return Traction{across * gap, along * slip, [3]float64{growth, 0, along}}
}

// Accepted remembers the widest opening; hand it to [Interface].
func (c *Cohesive) Accepted(point int, across, _ float64) {
	c.Widest[point] = math.Max(c.Widest[point], across)
}
