package flexure

import (
	"context"
	"errors"
	"fmt"
	"math"

	"slabwright/internal/sparse"
	"slabwright/plan"
)

const (
	mostRounds = 60
	settled    = 1e-9 // within, of a final figure
	dragged    = 1e-6 // within, of a figure that follows the hand
	// atRounding is below what a force out of balance that no longer falls is rounding.
	atRounding = 1e-6
	// cheapRounds is how many rounds with an old factor are tried before a new one.
	cheapRounds = 3
)

// search is one search for balance under given forces.
type search struct {
	*contact
	force, u, r, step, w, wStep []float64
	scale, before               float64 // before: what was left the round before
	rounds                      int
}

// settle finds the deflections under forces, starting from u, which it changes. The
// energy of a slab on ground that only pushes has one lowest point, so steps go
// downhill to it: Newton's method, halved where a full step goes past.
//
// within is the largest force out of balance, as a share of the largest force on a
// node, at which a state counts as found.
func (c *contact) settle(ctx context.Context, force, u []float64, within float64) (rounds int, err error) {
	n := len(u)
	s := &search{contact: c, force: force, u: u, r: make([]float64, n), step: make([]float64, n),
		w: make([]float64, len(c.pushes)), wStep: make([]float64, len(c.pushes))}
	for _, f := range force {
		s.scale = math.Max(s.scale, math.Abs(f))
	}
	for {
		if err := ctx.Err(); err != nil {
			return s.rounds, err
		}
		changed := s.look()
		left, at := s.residual()
		if !(left < math.Inf(1)) {
			return s.rounds, &Unsettled{Rounds: s.rounds, Left: left, At: at, Cause: errors.New("a force or stiffness is not a number")}
		}
		if left <= within || s.rounds > 0 && changed == 0 && left <= atRounding && left > s.before/2 {
			return s.rounds, nil
		}
		careful := care(left, within, changed)
		s.before = left
		if s.rounds >= mostRounds {
			return s.rounds, &Unsettled{Rounds: s.rounds, Left: left, At: at}
		}
		s.rounds++
		if err := s.solve(careful); err != nil {
			return s.rounds, &Unsettled{Rounds: s.rounds, Left: left, At: at, Cause: err}
		}
		if s.tiny() {
			return s.rounds, nil
		}
		s.advance()
	}
}

// look finds where the ground pushes at u and brings the stiffness in line. It
// returns how many points changed.
func (s *search) look() (changed int) {
	b := s.bed
	b.deflections(s.u, s.w)
	ke := make([]float64, b.width*b.width)
	for e := range b.mesh.Elements() {
		any := false
		for i := e * b.points; i < (e+1)*b.points; i++ {
			any = any || s.pushesAt(i) != s.pushes[i]
		}
		if !any {
			continue
		}
		clear(ke)
		b.stiffness(e, func(i int) float64 {
			now := s.pushesAt(i)
			if now == s.pushes[i] {
				return 0
			}
			changed++
			s.pushes[i] = now
			if now {
				return (1 - keptShare) * b.stiff[i]
			}
			return (keptShare - 1) * b.stiff[i]
		}, ke)
		s.matrix.AddElement(e, ke)
	}
	if s.held != nil {
		s.matrix.Hold(s.held)
	}
	return changed
}

func (s *search) pushesAt(i int) bool { return s.plate.Pulls || s.w[i] >= 0 }

// answer is the force of the ground at a point, N.
func (s *search) answer(i int) float64 {
	if s.pushes[i] {
		return s.bed.stiff[i] * s.w[i]
	}
	return 0
}

// residual sets r to the forces left over at u and returns the largest, as a share
// of the largest force, and where it is.
func (s *search) residual() (left float64, at plan.Point) {
	s.frame.matrix.Multiply(s.r, s.u)
	s.bed.push(s.r, s.answer)
	node := 0
	for i := range s.r {
		s.r[i] = s.force[i] - s.r[i]
		if s.held != nil && s.held[i] {
			s.r[i] = 0
		}
		if a := math.Abs(s.r[i]); !(a <= left) {
			left, node = a, i/s.net.kind.Unknowns
		}
	}
	at = s.net.at(int32(node))
	if s.scale == 0 {
		return left, at
	}
	return left / s.scale, at
}

// solve sets step to where Newton's method would go: by the factor of an earlier
// state where that gets there in few rounds, by a new one where not.
// care is the share of the residual to which the step is to be exact.
func (s *search) solve(care float64) error {
	clear(s.step)
	goal := sparse.Goal{Left: care, Rounds: cheapRounds}
	_, err := sparse.ConjugateGradients(s.matrix, s.step, s.r, s.factor, goal)
	if err == nil {
		return nil
	}
	if err := s.refactor(); err != nil {
		return err
	}
	goal.Rounds = mostRounds
	if _, err = sparse.ConjugateGradients(s.matrix, s.step, s.r, s.factor, goal); err != nil || !finite(s.step) {
		return fmt.Errorf("the stiffness is too near singular to solve: %w", err)
	}
	return nil
}

// care says how exact the next step needs to be: while contact still changes a rough
// step does, once it does not the step is the last.
func care(left, within float64, changed int) float64 {
	const rough, better = 0.03, 0.001
	switch {
	case changed == 0 && left < rough:
		return math.Min(better, 0.1*within/left)
	case left < rough:
		return better
	}
	return rough
}

// tiny says whether the step changes deflections by rounding only.
func (s *search) tiny() bool {
	most, move := 0.0, 0.0
	for i := 0; i < len(s.u); i += s.net.kind.Unknowns {
		most, move = math.Max(most, math.Abs(s.u[i])), math.Max(move, math.Abs(s.step[i]))
	}
	return move <= 1e-13*most
}

// advance takes the step, or the part of it at which the energy is lowest.
func (s *search) advance() {
	s.bed.deflections(s.step, s.wStep)
	bent := make([]float64, len(s.u))
	s.frame.matrix.Multiply(bent, s.step)
	quadratic := dot(bent, s.step)
	linear := dot(bent, s.u) - dot(s.force, s.step)
	// slope of the energy along the step at a part t of it
	slope := func(t float64) float64 {
		sum := linear + t*quadratic
		for i, w := range s.w {
			if at := w + t*s.wStep[i]; at > 0 || s.plate.Pulls {
				sum += s.bed.stiff[i] * at * s.wStep[i]
			}
		}
		return sum
	}
	part := 1.0
	if !s.lower(linear, quadratic) {
		low, high := 0.0, 1.0
		for range 12 {
			part = (low + high) / 2
			if slope(part) > 0 {
				high = part
			} else {
				low = part
			}
		}
	}
	for i, d := range s.step {
		s.u[i] += part * d
	}
}

// lower says whether the whole step has no more energy than none.
func (s *search) lower(linear, quadratic float64) bool {
	change, size := linear+quadratic/2, math.Abs(linear)+quadratic/2
	for i, w := range s.w {
		before, after := w, w+s.wStep[i]
		if !s.plate.Pulls {
			before, after = math.Max(before, 0), math.Max(after, 0)
		}
		part := s.bed.stiff[i] / 2 * (after*after - before*before)
		change += part
		size += math.Abs(part)
	}
	return change <= 1e-14*size
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}
