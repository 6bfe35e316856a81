package fem

import (
	"errors"
	"math"

	"slabwright/internal/sparse"
)

// newton is one search for balance.
type newton struct {
	*System
	Settings
	u, r, step, trial []float64
	scale             float64 // largest residual met
	work              float64 // largest work of a step
	rounds            int
	past              []float64 // sizes of the last residuals
	still             *still    // the linear parts, nil if none
}

func newNewton(s *System, set Settings) *newton {
	n := len(s.held)
	w := &newton{System: s, Settings: set, u: make([]float64, n), r: make([]float64, n), step: make([]float64, n), trial: make([]float64, n)}
	if set.Start != nil {
		copy(w.u, set.Start)
	}
	for i, h := range s.held {
		if h {
			w.u[i] = s.value[i]
		}
	}
	if s.matrix == nil {
		s.matrix = s.pattern.NewMatrix()
	}
	return w
}

// measure evaluates stiffness and residual at u and returns the largest residual;
// infinite if anything is not a number.
func (w *newton) measure(u []float64) float64 {
	if w.still != nil {
		w.still.evaluate(w, u)
	} else {
		w.evaluate(w.matrix, w.r, u, w.Workers)
	}
	most := 0.0
	for i, r := range w.r {
		if w.held[i] {
			w.r[i] = 0
			continue
		}
		if math.IsNaN(r) {
			return math.Inf(1)
		}
		most = max(most, math.Abs(r))
	}
	return most
}

// solve sets step to where Newton's method would go. Where parts soften the stiffness
// may not be positive definite; then it is stiffened until it is, which shortens the
// step but keeps it downhill.
func (w *newton) solve() error {
	w.rounds++
	for i, r := range w.r {
		w.trial[i] = -r
	}
	stiffer := 0.0
	for {
		clear(w.step)
		err := w.solveLinear(w.step, w.trial, w.Settings)
		if err == nil {
			break
		}
		var not *sparse.NotPositive
		if w.linear() || stiffer > 1 || !errors.As(err, &not) {
			return err
		}
		more := max(1e-4, 9*stiffer)
		for i := range w.step {
			w.matrix.AddDiagonal(i, more*math.Abs(w.matrix.At(i, i)))
		}
		stiffer += more
	}
	if !finite(w.step) {
		return errors.New("the stiffness is too near singular to solve")
	}
	return nil
}

// once solves a linear system.
func (w *newton) once() (Solution, error) {
	if math.IsInf(w.measure(w.u), 0) {
		return Solution{U: w.u}, errors.New("a load or stiffness is not a number")
	}
	err := w.solve()
	var not *sparse.NotSettled
	if err != nil && !errors.As(err, &not) {
		return Solution{U: w.u, Rounds: w.rounds, Left: 1}, err
	}
	if not != nil { // how far the search came
		if !finite(w.step) {
			return Solution{U: w.u, Rounds: w.rounds, Left: 1}, err
		}
		copy(w.u, w.moved(1))
		return Solution{U: w.u, Rounds: w.rounds, Left: not.Left}, err
	}
	for i, d := range w.step {
		w.u[i] += d
	}
	return Solution{U: w.u, Rounds: w.rounds}, nil
}

func (w *newton) run() (Solution, error) {
	w.still = newStill(w.System, w.Workers)
	best, bestLeft := append([]float64(nil), w.u...), math.Inf(1)
	size := w.measure(w.u)
	for {
		if math.IsInf(size, 0) {
			return w.stopped(best, bestLeft, errors.New("a law gave something that is not a number"))
		}
		w.scale = max(w.scale, size)
		left := 0.0
		if w.scale > 0 {
			left = size / w.scale
		}
		if left < bestLeft {
			bestLeft = left
			copy(best, w.u)
		}
		if left <= w.Tolerance && w.rounds > 0 || size <= roundingForce*math.Float64frombits(w.force.Load()) {
			return Solution{U: w.u, Rounds: w.rounds, Left: left}, nil
		}
		if w.rounds >= w.Rounds {
			return w.stopped(best, bestLeft, nil)
		}
		if err := w.solve(); err != nil {
			return w.stopped(best, bestLeft, err)
		}
		if w.atRounding() {
			return Solution{U: w.moved(1), Rounds: w.rounds, Left: left}, nil
		}
		size = w.advance(size)
	}
}

// roundingForce is the share of the largest force within an element below which a
// residual is rounding.
const roundingForce = 1e-14

// roundingWork is the share of the largest work of a step below which a step changes
// nothing but rounding: residual and step both a few 1e-9 of the first ones. In fine
// meshes of plates the residual itself stays larger than any fixed tolerance.
const roundingWork = 1e-18

// atRounding says whether the next step is too small to matter.
func (w *newton) atRounding() bool {
	work := 0.0
	for i, d := range w.step {
		work -= d * w.r[i]
	}
	w.work = max(w.work, math.Abs(work))
	return w.rounds > 1 && math.Abs(work) <= roundingWork*w.work || w.tinyStep()
}

// roundingStep is the share of the largest displacement of its kind below which a
// step is rounding.
const roundingStep = 1e-12

// tinyStep says whether every kind of unknown moves by next to nothing: both
// displacements of a sheet together; of a plate deflection, slopes and twist.
func (w *newton) tinyStep() bool {
	kinds := [4]int{0, 1, 1, 2}
	if w.Block == 2 {
		kinds[1] = 0
	}
	var move, place [3]float64
	for i, d := range w.step {
		k := kinds[i%w.Block]
		move[k], place[k] = max(move[k], math.Abs(d)), max(place[k], math.Abs(w.u[i]))
	}
	for k := range move {
		if move[k] > roundingStep*place[k] {
			return false
		}
	}
	return true
}

// memory is how many residuals back a step may fall: contact that closes often
// raises the residual once before it drops.
const memory = 3

// advance takes the step, halved while it makes things worse than the last few
// rounds, and returns the new residual.
func (w *newton) advance(size float64) float64 {
	w.past = append(w.past, size)
	allowed := 0.0
	for _, p := range w.past[max(0, len(w.past)-memory):] {
		allowed = max(allowed, p)
	}
	part, pick, least := 1.0, 1.0, math.Inf(1)
	for range 6 {
		now := w.measure(w.moved(part))
		if now <= allowed {
			copy(w.u, w.trial)
			return now
		}
		if now < least {
			pick, least = part, now
		}
		part /= 2
	}
	now := w.measure(w.moved(pick))
	copy(w.u, w.trial)
	return now
}

func (w *newton) moved(part float64) []float64 {
	for i, d := range w.step {
		w.trial[i] = w.u[i] + part*d
	}
	return w.trial
}

// stopped goes back to the best state met and names the place furthest from balance.
func (w *newton) stopped(best []float64, left float64, cause error) (Solution, error) {
	w.measure(best)
	worst, most := 0, -1.0
	for i, r := range w.r {
		if math.Abs(r) > most {
			worst, most = i, math.Abs(r)
		}
	}
	node := worst / w.Block
	e := &NotSettled{Part: "the system", Element: -1, X: w.X[node], Y: w.Y[node], Left: left, Rounds: w.rounds, Cause: cause}
	for _, p := range w.parts {
		if linear(p) {
			continue
		}
		if k := touching(p, node); k >= 0 {
			e.Part, e.Element = p.Name(), k
			break
		}
	}
	return Solution{U: best, Rounds: w.rounds, Left: left}, e
}

// touching returns the first element of a part at a node, −1 if none.
func touching(p Part, node int) int {
	c := p.Connectivity()
	for e := range c.Elements() {
		for _, n := range c.Of(e) {
			if int(n) == node {
				return e
			}
		}
	}
	return -1
}
