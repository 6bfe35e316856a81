package fem

import (
	"errors"
	"fmt"
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"slabwright/internal/sparse"
)

// System is parts put together on common nodes, with what holds and pushes single
// nodes. Unknown u of node n has index n·Block+u in every vector.
type System struct {
	X, Y  []float64
	Block int // unknowns per node

	parts   []Part
	first   []int // first element of each part, one more than parts
	held    []bool
	value   []float64 // of what is held
	load    []float64
	spring  []float64
	holding int
	force   atomic.Uint64 // bits of the largest force within an element

	pattern  *sparse.Pattern
	symbolic *sparse.Symbolic
	matrix   *sparse.Matrix
	factor   *sparse.Factor
	factored bool   // factor holds that of some earlier stiffness
	method   Method // that solved the last linear equations
	tooSlow  bool   // multigrid was tried and took too many rounds
}

// NewSystem puts parts together. Nodes that no part touches must be held.
func NewSystem(x, y []float64, block int, parts ...Part) *System {
	n := len(x) * block
	s := &System{X: x, Y: y, Block: block, parts: parts, held: make([]bool, n), value: make([]float64, n), load: make([]float64, n), spring: make([]float64, n)}
	var connect []sparse.Connectivity
	s.first = []int{0}
	for k, p := range parts {
		c := p.Connectivity()
		connect = append(connect, c)
		s.first = append(s.first, s.first[k]+c.Elements())
	}
	all := connect[0]
	if len(connect) > 1 {
		all = sparse.Join(connect...)
	}
	s.pattern = sparse.NewPattern(len(x), block, all)
	return s
}

// Hold keeps one unknown at a value.
func (s *System) Hold(node, unknown int, value float64) {
	k := node*s.Block + unknown
	if !s.held[k] {
		s.holding++
	}
	s.held[k], s.value[k] = true, value
}

// Release lets an unknown go again.
func (s *System) Release(node, unknown int) {
	k := node*s.Block + unknown
	if s.held[k] {
		s.holding--
	}
	s.held[k] = false
}

// Push adds a force on one unknown.
func (s *System) Push(node, unknown int, force float64) { s.load[node*s.Block+unknown] += force }

// PushAll adds forces on all unknowns.
func (s *System) PushAll(force []float64) {
	for i, f := range force {
		s.load[i] += f
	}
}

// Spring ties one unknown to its place.
func (s *System) Spring(node, unknown int, stiffness float64) {
	s.spring[node*s.Block+unknown] += stiffness
}

// Residual returns what is out of balance at u: the force that must act on each
// unknown from outside to hold it there. Where an unknown is held this is the
// reaction, elsewhere zero for a solution.
func (s *System) Residual(u []float64) []float64 {
	r := make([]float64, len(u))
	s.evaluate(s.pattern.NewMatrix(), r, u, 1)
	return r
}

// evaluate adds up stiffness and residual at u.
func (s *System) evaluate(k *sparse.Matrix, r, u []float64, workers int) {
	clear(k.Value)
	clear(r)
	s.force.Store(0)
	s.addSingle(k, r, u)
	for part := range s.parts {
		s.addPart(part, k, r, u, workers)
	}
}

// addSingle adds springs and forces on single nodes.
func (s *System) addSingle(k *sparse.Matrix, r, u []float64) {
	for i := range r {
		r[i] += s.spring[i]*u[i] - s.load[i]
		if s.spring[i] != 0 {
			k.AddDiagonal(i, s.spring[i])
		}
	}
}

// addPart adds what one part makes of u.
func (s *System) addPart(part int, k *sparse.Matrix, r, u []float64, workers int) {
	p, b, first := s.parts[part], s.Block, s.first[part]
	connect := p.Connectivity()
	k.AssembleRange(workers, r, first, s.first[part+1], func(e int, ke, fe []float64) {
		e -= first
		own := ownValues.Get().(*[4 * maxNodes]float64)
		defer ownValues.Put(own)
		for i, n := range connect.Of(e) {
			copy(own[i*b:i*b+b], u[int(n)*b:])
		}
		p.Element(e, own[:len(fe)], ke, fe)
		s.noteForce(fe)
	})
}

// ownValues holds room for the displacements of one element.
var ownValues = sync.Pool{New: func() any { return new([4 * maxNodes]float64) }}

// noteForce keeps the largest force within any element. Numbers from 0 up are in the
// order of their bits, so the result does not depend on who came first.
func (s *System) noteForce(fe []float64) {
	most := 0.0
	for _, f := range fe {
		most = max(most, math.Abs(f))
	}
	if math.IsNaN(most) {
		return
	}
	bits := math.Float64bits(most)
	for {
		now := s.force.Load()
		if bits <= now || s.force.CompareAndSwap(now, bits) {
			return
		}
	}
}

// Settings steer [System.Solve]. The zero value is good for most.
type Settings struct {
	Method    Method
	Start     []float64 // displacements to start from; nil for none
	Rounds    int       // most rounds of Newton's method; 0 for 40
	Tolerance float64   // largest residual as a share of the largest force seen; 0 for 1e-9
	Workers   int       // cores to use; 0 for all
}

// Solution is where a system came to rest.
type Solution struct {
	U      []float64
	Rounds int     // how many times linear equations were solved
	Left   float64 // largest residual as a share of the largest force seen
	Method Method  // how the last linear equations were solved
}

// NotSettled says that a system did not come to rest, and where.
type NotSettled struct {
	Part    string // the nonlinear part at the place with the largest residual
	Element int    // in that part, −1 if none touches the place
	X, Y    float64
	Left    float64
	Rounds  int
	Cause   error // what stopped it, nil if the rounds ran out
}

func (e *NotSettled) Error() string {
	text := fmt.Sprintf("%s element %d near x %.6g, y %.6g did not settle in %d rounds; %.2g of the largest force is out of balance. Apply the load or shrinkage in smaller steps",
		e.Part, e.Element, e.X, e.Y, e.Rounds, e.Left)
	if e.Cause != nil {
		text += ": " + e.Cause.Error()
	}
	return text
}

func (e *NotSettled) Unwrap() error { return e.Cause }

// Solve finds displacements at which everything is in balance. Parts that are all
// [Linear] take one round. Otherwise Newton's method goes on until the residual is
// small; a step that makes things worse is halved. If it does not settle, the
// solution is the best state met, and the error [NotSettled] says where; with
// nothing better than the start it is the start. Values are never NaN.
//
// A second call with the same parts reuses the pattern, the order and the memory.
func (s *System) Solve(set Settings) (Solution, error) {
	if set.Rounds == 0 {
		set.Rounds = 40
	}
	if set.Tolerance == 0 {
		set.Tolerance = 1e-9
	}
	if set.Workers == 0 {
		set.Workers = runtime.GOMAXPROCS(0)
	}
	n := newNewton(s, set)
	var sol Solution
	var err error
	if s.linear() {
		sol, err = n.once()
	} else {
		sol, err = n.run()
	}
	sol.Method = s.method
	if err != nil {
		return sol, err
	}
	for _, p := range s.parts {
		if r, ok := p.(Remembering); ok {
			r.Accept(sol.U)
		}
	}
	return sol, nil
}

func (s *System) linear() bool {
	for _, p := range s.parts {
		if !linear(p) {
			return false
		}
	}
	return true
}

func linear(p Part) bool {
	l, ok := p.(Linear)
	return ok && l.Linear()
}

// factorise readies the factor of s.matrix for solving.
func (s *System) factorise(workers int) error {
	if s.symbolic == nil {
		s.symbolic = sparse.Analyse(s.pattern, s.X, s.Y)
	}
	var err error
	if s.factor == nil {
		s.factor, err = s.symbolic.Factor(s.matrix, workers)
	} else {
		err = s.factor.Refactor(s.matrix, workers)
	}
	s.factored = err == nil
	var not *sparse.NotPositive
	if errors.As(err, &not) {
		return fmt.Errorf("near x %.6g, y %.6g: %w", s.X[not.Node], s.Y[not.Node], err)
	}
	return err
}

func finite(v []float64) bool {
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}
