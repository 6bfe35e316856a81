package fem

import (
	"math"

	"slabwright/internal/sparse"
)

// still is what does not change during one search for balance: the stiffness of the
// linear parts and springs, and their residual where nothing has moved.
type still struct {
	matrix   *sparse.Matrix
	residual []float64
	force    float64 // largest within an element
}

// newStill adds up the linear parts; nil if there are none.
func newStill(s *System, workers int) *still {
	some := false
	for _, p := range s.parts {
		some = some || linear(p)
	}
	if !some {
		return nil
	}
	c := &still{matrix: s.pattern.NewMatrix(), residual: make([]float64, len(s.held))}
	zero := make([]float64, len(s.held))
	s.force.Store(0)
	s.addSingle(c.matrix, c.residual, zero)
	for k, p := range s.parts {
		if linear(p) {
			s.addPart(k, c.matrix, c.residual, zero, workers)
		}
	}
	c.force = math.Float64frombits(s.force.Load())
	return c
}

// evaluate adds up stiffness and residual at u, the linear parts by a product.
func (c *still) evaluate(w *newton, u []float64) {
	copy(w.matrix.Value, c.matrix.Value)
	c.matrix.Multiply(w.r, u)
	for i, r := range c.residual {
		w.r[i] += r
	}
	w.force.Store(math.Float64bits(max(c.force, c.largestForce(u))))
	for k, p := range w.parts {
		if !linear(p) {
			w.addPart(k, w.matrix, w.r, u, w.Workers)
		}
	}
}

// largestForce returns the largest force with which one unknown's own movement meets
// the linear parts: what cancels in the residual, and so where rounding comes from.
func (c *still) largestForce(u []float64) float64 {
	b, most := c.matrix.Block, 0.0
	for j := range c.matrix.Nodes {
		v := c.matrix.Value[int(c.matrix.Start[j])*b*b:]
		for k := range b {
			if f := math.Abs(v[k*(b+1)] * u[j*b+k]); f > most {
				most = f
			}
		}
	}
	return most
}
