package flexure

import (
	"context"
	"errors"
	"sync"

	"slabwright/internal/fem"
	"slabwright/internal/sparse"
)

// Ready is a plate meshed and settled under its weight and warp alone, for standing
// loads on it again and again: a wheel dragged over the plan. Its elements are large;
// the neighbourhood of loads smaller than them is bent again with small ones. On slabs
// that run along the axes, thin, stress is within about 4 % of [Plate.Solve], which is
// for the final figure; of thick ones and those in triangles stress right under a small
// load is not to be trusted. It may be used from several goroutines.
type Ready struct {
	frame  *frame
	rest   *contact
	dead   []float64 // deflections under weight and warp
	rounds int
	spare  *sparse.Factor
	still  moments // under weight and warp; nil until asked for
	within float64 // see [contact.settle]
	turn   sync.Mutex
}

// Ready meshes the plate without regard to its loads and settles it under its weight
// and warp. The error is all of [Plate.Check], one of the mesh, [Unsettled], or
// that of the context.
func (p Plate) Ready(ctx context.Context) (*Ready, error) {
	if bad := p.Check(); len(bad) > 0 {
		return nil, errors.Join(bad...)
	}
	if p.Size == 0 {
		p.Size = readySize * p.stiffness()
	}
	return p.ready(ctx, nil, nil)
}

// readySize is the size of elements for loads that move, over l.
const readySize = 0.8

// Moved meshes and settles a plate that is much like this one: a joint has been
// dragged, the support changed. Where the elements still hang together in the same way
// it starts from here and is several times quicker than [Plate.Ready]. The answer
// differs from that of Ready by what other elements would give.
func (r *Ready) Moved(ctx context.Context, p Plate) (*Ready, error) {
	if bad := p.Check(); len(bad) > 0 {
		return nil, errors.Join(bad...)
	}
	if p.Size == 0 {
		p.Size = readySize * p.stiffness()
	}
	r.turn.Lock()
	defer r.turn.Unlock()
	return p.ready(ctx, nil, r)
}

func (p Plate) ready(ctx context.Context, fineAt []Load, like *Ready) (*Ready, error) {
	if like == nil {
		like = &Ready{frame: &frame{}}
	}
	p.tell("cutting the plan into elements")
	n, err := newNet(p, fineAt, like.frame.net)
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	p.tell("setting up the stiffness")
	r := &Ready{within: settled}
	if len(fineAt) == 0 {
		r.within = dragged
	}
	if like.rest == nil {
		r.frame = newFrame(p, n, nil)
	} else {
		r.frame = newFrame(p, n, like.frame)
	}
	if r.frame.pattern != like.frame.pattern {
		like = &Ready{}
	}
	if err := r.settle(ctx, like); err != nil {
		return nil, err
	}
	return r, nil
}

// settle finds the state under weight and warp, from that of a plate alike if there
// is one.
func (r *Ready) settle(ctx context.Context, like *Ready) (err error) {
	if r.rest, err = newContact(r.frame, like.rest); err != nil {
		return err
	}
	r.frame.plate.tell("settling under weight and warp")
	r.dead = make([]float64, r.frame.pattern.Unknowns())
	copy(r.dead, like.dead)
	if r.rounds, err = r.rest.settle(ctx, r.frame.dead, r.dead, settled); err != nil {
		return r.withState(err, nil, r.dead, r.rest)
	}
	if r.within == dragged && (r.rounds > 1 || like.dead != nil) {
		return r.rest.refactor()
	}
	return nil
}

func (p Plate) tell(stage string) {
	if p.Progress != nil {
		p.Progress(stage)
	}
}

// withState puts the last state met into an error of contact.
func (r *Ready) withState(err error, loads []Load, u []float64, c *contact) error {
	var not *Unsettled
	if errors.As(err, &not) && finite(u) {
		not.Last = r.bent(loads, u, c, not.Rounds)
	}
	return err
}

// Solve bends the slab under its loads, weight and warp, with elements fine under
// the loads. The error is that of [Plate.Ready].
func (p Plate) Solve(ctx context.Context) (*Bent, error) {
	if bad := p.Check(); len(bad) > 0 {
		return nil, errors.Join(bad...)
	}
	r, err := p.ready(ctx, p.Loads, nil)
	if err != nil {
		return nil, err
	}
	return r.Bend(ctx, p.Loads)
}

// Bend stands loads on the slab in place of those of the plate and bends it. The
// answer depends on the loads alone, not on those that stood there before.
func (r *Ready) Bend(ctx context.Context, loads []Load) (*Bent, error) {
	p := r.frame.plate
	if bad := p.checkLoads(loads); len(bad) > 0 {
		return nil, errors.Join(bad...)
	}
	r.turn.Lock()
	defer r.turn.Unlock()
	u := append([]float64(nil), r.dead...)
	if len(loads) == 0 {
		return r.bent(loads, u, r.rest, r.rounds), nil
	}
	p.tell("settling under the loads")
	force := append([]float64(nil), r.frame.dead...)
	extra := make([]float64, len(force))
	for _, l := range loads {
		for i, f := range r.frame.loadForce(l) {
			extra[i] += f
			force[i] += f
		}
	}
	c := r.rest.copyOf(r.spare)
	rounds, err := c.settle(ctx, force, u, r.within)
	r.spare = c.own
	if err != nil {
		return nil, r.withState(err, loads, u, c)
	}
	b := r.bent(loads, u, c, r.rounds+rounds)
	if r.within == dragged && r.frame.net.kind == fem.BFS {
		return b, b.lookCloser(ctx)
	}
	return b, nil
}

func finite(v []float64) bool {
	for _, x := range v {
		if x-x != 0 { // NaN or without limit
			return false
		}
	}
	return true
}
