package flexure

import (
	"context"
	"math"
	"slices"

	"slabwright/internal/sparse"
	"slabwright/plan"
)

// closeUp is the neighbourhood of some loads bent again with small elements, its rim
// held as the whole slab has it. Deflections of the whole are good with large elements;
// the peak of stress below a small load is not.
type closeUp struct {
	*Bent
	low, high plan.Point // where it is to be believed
}

func (c *closeUp) covers(at plan.Point) bool {
	return at.X >= c.low.X && at.X <= c.high.X && at.Y >= c.low.Y && at.Y <= c.high.Y
}

const (
	closeReach = 0.5 // around a load that is believed, over l
	closeRim   = 0.9 // beyond that, over l
	mostClose  = 2500
)

// lookCloser bends the neighbourhood of the loads again and puts the finer figures in
// place of the coarse ones.
func (b *Bent) lookCloser(ctx context.Context) error {
	for _, box := range b.closeBoxes() {
		c, err := b.closeUpOf(ctx, box[0], box[1])
		if err != nil {
			return err
		}
		if c != nil {
			b.closer = append(b.closer, c)
		}
	}
	for i, l := range b.Plate.Loads {
		b.Under[i].Here, _ = b.At(l.middle())
	}
	b.peaks()
	return nil
}

// closeBoxes returns the boxes around loads smaller than the elements; those that touch
// are one.
func (b *Bent) closeBoxes() (boxes [][2]plan.Point) {
	reach := plan.Point{X: closeReach * b.Stiff, Y: closeReach * b.Stiff}
	for _, l := range b.Plate.Loads {
		low, high := l.box()
		if len(l.Line) > 0 || math.Min(high.X-low.X, high.Y-low.Y) > 3*b.Plate.size() {
			continue
		}
		box := [2]plan.Point{low.Minus(reach), high.Plus(reach)}
		for i := 0; i < len(boxes); i++ {
			o := boxes[i]
			if box[0].X <= o[1].X && box[1].X >= o[0].X && box[0].Y <= o[1].Y && box[1].Y >= o[0].Y {
				box[0] = plan.Point{X: math.Min(box[0].X, o[0].X), Y: math.Min(box[0].Y, o[0].Y)}
				box[1] = plan.Point{X: math.Max(box[1].X, o[1].X), Y: math.Max(box[1].Y, o[1].Y)}
				boxes = slices.Delete(boxes, i, i+1)
				i = -1
			}
		}
		boxes = append(boxes, box)
	}
	return boxes
}

// closeUpOf bends what lies in a box and a rim around it. It is nil where the box is so
// large that small elements would be too many.
func (b *Bent) closeUpOf(ctx context.Context, low, high plan.Point) (*closeUp, error) {
	rim := plan.Point{X: closeRim * b.Stiff, Y: closeRim * b.Stiff}
	within := b.elementsIn(low.Minus(rim), high.Plus(rim))
	count := 0
	for _, in := range within {
		if in {
			count++
		}
	}
	parts := int(math.Min(6, math.Sqrt(mostClose/math.Max(1, float64(count)))))
	if count == 0 || parts < 2 {
		return nil, nil
	}
	cut := newFiner(b, within, parts)
	f := newFrame(b.Plate, cut.net, nil)
	force := append([]float64(nil), f.dead...)
	for _, l := range b.Plate.Loads {
		for i, v := range f.loadForce(l) {
			force[i] += v
		}
	}
	c := &contact{frame: f, pushes: make([]bool, len(f.bed.stiff)), matrix: f.bedded, held: cut.held}
	for i := range c.pushes {
		c.pushes[i] = true
	}
	c.matrix.Hold(c.held)
	symbolic := sparse.Analyse(f.pattern, cut.net.mesh.X, cut.net.mesh.Y)
	s := &search{contact: c, u: cut.u, w: make([]float64, len(c.pushes))}
	s.look() // the coarse state is near: its contact is the one to start from
	var err error
	if c.factor, err = symbolic.Factor(c.matrix, 0); err != nil {
		return nil, c.explained(err)
	}
	c.own = c.factor
	rounds, err := c.settle(ctx, force, cut.u, dragged)
	if err != nil {
		return nil, (&Ready{frame: f, dead: cut.dead}).withState(err, b.Plate.Loads, cut.u, c)
	}
	near := &Bent{Plate: b.Plate, Theory: b.Theory, Rounds: rounds, Stiff: b.Stiff, frame: f, u: cut.u, dead: cut.dead}
	free := b.Plate.freeCurvature()
	near.moment, near.still = f.nodeMoments(cut.u, free), f.nodeMoments(cut.dead, free)
	return &closeUp{near, low, high}, nil
}

// elementsIn marks the elements whose middle lies in a box, and those across a joint
// from them.
func (b *Bent) elementsIn(low, high plan.Point) []bool {
	m := b.frame.net.mesh
	in := make([]bool, m.Elements())
	touched := map[int32]bool{}
	for e := range in {
		of := m.Of(e)
		x, y := (m.X[of[0]]+m.X[of[2]])/2, (m.Y[of[0]]+m.Y[of[2]])/2
		if in[e] = x >= low.X && x <= high.X && y >= low.Y && y <= high.Y; in[e] {
			for _, n := range of {
				touched[n] = true
			}
		}
	}
	across := map[[2]int32]bool{}
	for _, f := range b.frame.net.faces {
		if touched[f.node[0]] && touched[f.node[1]] || touched[f.node[2]] && touched[f.node[3]] {
			across[sideOf(f.node[0], f.node[1])], across[sideOf(f.node[2], f.node[3])] = true, true
		}
	}
	for e := range in {
		for k, n := range m.Of(e) {
			if across[sideOf(n, m.Of(e)[(k+1)%4])] {
				in[e] = true
			}
		}
	}
	return in
}
