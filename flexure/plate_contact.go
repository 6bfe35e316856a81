package flexure

import (
	"errors"
	"fmt"

	"slabwright/internal/sparse"
	"slabwright/plan"
)

// contact is a frame on its bed in one state: where the ground pushes, the stiffness
// that goes with it, and a factor of that or of a state near it.
type contact struct {
	*frame
	pushes []bool // by point of the bed
	held   []bool // unknowns that stay as they are; nil for none
	matrix *sparse.Matrix
	factor *sparse.Factor
	own    *sparse.Factor // memory for a factor of its own; nil if there is none yet
}

// keptShare is the share of stiffness that a point without contact keeps while a step is
// sought, so that a panel that lifts off everywhere still has a place. It changes
// the way, not where it ends.
const keptShare = 1e-7

// newContact starts with ground that pushes everywhere it is. Like, if not nil, is a
// contact on the same pattern, whose factor serves to start with.
func newContact(f *frame, like *contact) (*contact, error) {
	c := &contact{frame: f, pushes: make([]bool, len(f.bed.stiff)), matrix: f.bedded}
	for i := range c.pushes {
		c.pushes[i] = true
	}
	if like != nil {
		c.factor = like.factor
		return c, nil
	}
	var err error
	c.factor, err = sparse.Analyse(f.pattern, f.net.mesh.X, f.net.mesh.Y).Factor(c.matrix, 0)
	c.own = c.factor
	return c, c.explained(err)
}

// explained says in the engineer's words why there is no factor.
func (c *contact) explained(err error) error {
	var not *sparse.NotPositive
	if !errors.As(err, &not) {
		return err
	}
	at := c.net.at(int32(not.Node))
	return plan.Problem{Field: "support", Place: &at, Found: "a panel that nothing holds up",
		Want: "ground under some of every panel, or joints that hold it", Mend: "Look at the zones without support around it."}
}

// refactor makes the factor that of the present state.
func (c *contact) refactor() (err error) {
	if c.own == nil {
		c.own, err = c.factor.Symbolic.Factor(c.matrix, 0)
	} else {
		err = c.own.Refactor(c.matrix, 0)
	}
	c.factor = c.own
	return c.explained(err)
}

// copyOf returns a contact to go on from without changing this one, whose factor it
// uses until it makes one of its own in spare memory.
func (c *contact) copyOf(spare *sparse.Factor) *contact {
	return &contact{frame: c.frame, pushes: append([]bool(nil), c.pushes...), matrix: c.matrix.Copy(), factor: c.factor, own: spare}
}

// Unsettled says that contact between slab and ground did not settle. Last is the
// state that came nearest.
type Unsettled struct {
	Rounds int
	Left   float64    // largest force out of balance as a share of the largest force
	At     plan.Point // where
	Last   *Bent      // nil if there was none yet
	Cause  error      // what stopped it; nil if the rounds ran out
}

func (e *Unsettled) Error() string {
	text := fmt.Sprintf("contact with the ground did not settle in %d rounds; %.2g of the largest force is out of balance near (%.2f, %.2f) m. Look whether weight and loads can hold the slab down there, or take larger elements",
		e.Rounds, e.Left, e.At.X, e.At.Y)
	if e.Cause != nil {
		text += ": " + e.Cause.Error()
	}
	return text
}

func (e *Unsettled) Unwrap() error { return e.Cause }
