package restraint

import (
	"context"
	"errors"
	"math"
	"sync"

	"slabwright/internal/sample"
	"slabwright/plan"
)

// Doubt is how far facts may lie from the values of a model: half the width of a
// triangular spread, as a share of the value. 0 leaves one as it is.
type Doubt struct {
	Strain    float64 // free strain of all pours
	Strength  float64 // mean strength of all pours, beside the scatter over the plan
	Friction  float64 // friction and adhesion of the base
	Stiffness float64 // of the base before it slips
	Depth     float64 // of the grooves: what they take of the strength
}

// Spread returns the members of a sample: model i of count, each with its own scatter
// of strength and its own values within the doubt (Latin hypercube). The same seed
// gives the same members.
func (m Model) Spread(count int, seed uint64, d Doubt) func(i int) Model {
	for _, v := range []float64{d.Strain, d.Strength, d.Friction, d.Stiffness, d.Depth} {
		if !(v >= 0 && v < 1) {
			panic("restraint: a doubt is a share from 0 to below 1")
		}
	}
	points := sample.Latin(count, 5, seed)
	m = m.layingOut()
	return func(i int) Model {
		factor := func(k int, doubt float64) float64 { return sample.Triangular(points[i][k], 1-doubt, 1, 1+doubt) }
		out := m
		out.Settings.Seed = seed + 1 + uint64(i)
		strain, strength := factor(0, d.Strain), factor(1, d.Strength)
		out.Pours = append([]Pour(nil), m.Pours...)
		for k := range out.Pours {
			at := m.Pours[k].At
			out.Pours[k].At = func(hour float64) Concrete {
				c := at(hour)
				c.Strain *= strain
				c.Strength *= strength
				return c
			}
		}
		out.Base.Friction *= factor(2, d.Friction)
		out.Base.Adhesion *= factor(2, d.Friction)
		out.Base.Stiffness *= factor(3, d.Stiffness)
		out.Lines = append([]Line(nil), m.Lines...)
		depth := factor(4, d.Depth)
		for k := range out.Lines {
			if l := &out.Lines[k]; l.Kind == SawnLine {
				l.Share = max(0.05, 1-depth*(1-l.Share))
				l.FaceShare = max(0.01, 1-depth*(1-l.FaceShare))
			}
		}
		return out
	}
}

// Chances are what happened over the members of a sample.
type Chances struct {
	Members  int
	Unsound  int     // members that did not settle; they count up to where they came
	Cracked  float64 // share of members with a crack outside joints
	Joints   []JointChance
	Grid     CrackGrid
	Earliest []float64 // hour of the first crack of each member, infinite for none
}

// JointChance is the chance that a stretch of a joint has opened, stretch by stretch.
type JointChance struct {
	Line   string
	Step   float64   // length of a stretch, m
	Opened []float64 // share of members, for each stretch from the start of the path
}

// CrackGrid is the density of cracks over the plan in square cells.
type CrackGrid struct {
	Low    plan.Point // of the first cell
	Cell   float64    // m
	Across int        // cells along x
	Up     int        // cells along y
	// Chance is the share of members in which a crack runs through the cell; Length is
	// the length of crack to be expected per area, 1/m. Row by row from Low.
	Chance, Length []float64
}

// jointStep is the length of stretch over which chances along joints are told, m.
const jointStep = 0.5

// Samples replays members 0 to count−1, as many at a time as there are workers, and
// sums up what opened and what cracked in cells of so many metres. The answer does not
// depend on the number of workers. say may be nil; it is told how many are done. Where
// ctx ends, the members that were whole by then are summed up and returned with its
// error.
func Samples(ctx context.Context, count int, member func(i int) Model, hours []float64, cell float64, workers int, say Progress) (*Chances, error) {
	replays := make([]*Replay, count)
	errs := make([]error, count)
	next, done := make(chan int), make(chan int)
	var group sync.WaitGroup
	for range max(1, workers) {
		group.Add(1)
		go func() {
			defer group.Done()
			for i := range next {
				replays[i], errs[i] = member(i).Replay(ctx, hours, nil, nil)
				done <- i
			}
		}()
	}
	go func() {
		for i := range count {
			next <- i
		}
		close(next)
		group.Wait()
		close(done)
	}()
	for n := 1; ; n++ {
		if _, more := <-done; !more {
			break
		}
		if say != nil {
			say(n, count, 0)
		}
	}
	if err := ctx.Err(); err != nil {
		whole := wholeOf(replays, errs)
		if len(whole) == 0 {
			return nil, err
		}
		return sumUp(member(0), whole, make([]error, len(whole)), cell), err
	}
	for i, r := range replays {
		if r == nil {
			return nil, errs[i]
		}
	}
	if count == 0 {
		return nil, errors.New("a sample needs one member or more")
	}
	return sumUp(member(0), replays, errs, cell), nil
}

// wholeOf keeps the replays that came to their end.
func wholeOf(replays []*Replay, errs []error) (whole []*Replay) {
	for i, r := range replays {
		if r != nil && errs[i] == nil {
			whole = append(whole, r)
		}
	}
	return whole
}

func sumUp(m Model, replays []*Replay, errs []error, cell float64) *Chances {
	c := &Chances{Members: len(replays)}
	low, high := plan.Ring(m.Slab.Outline).Box()
	g := &c.Grid
	g.Low, g.Cell = low, cell
	g.Across, g.Up = int(math.Ceil((high.X-low.X)/cell-1e-9)), int(math.Ceil((high.Y-low.Y)/cell-1e-9))
	g.Chance, g.Length = make([]float64, g.Across*g.Up), make([]float64, g.Across*g.Up)
	for _, l := range m.Lines {
		if l.Kind == SawnLine {
			n := int(math.Ceil(plan.Polyline(l.Path).Length()/jointStep - 1e-9))
			c.Joints = append(c.Joints, JointChance{Line: l.ID, Step: jointStep, Opened: make([]float64, n)})
		}
	}
	for i, r := range replays {
		if errs[i] != nil {
			c.Unsound++
		}
		first := math.Inf(1)
		seen := map[int]bool{}
		for _, e := range r.Events {
			if e.Kind == CrackLine {
				first = math.Min(first, e.Hour)
				g.add(e.Path, seen)
			}
		}
		if !math.IsInf(first, 1) {
			c.Cracked++
		}
		c.Earliest = append(c.Earliest, first)
		for k := range c.Joints {
			c.Joints[k].add(m, r)
		}
	}
	n := float64(len(replays))
	c.Cracked /= n
	for _, sums := range append([][]float64{g.Chance, g.Length}, openedOf(c.Joints)...) {
		for k := range sums {
			sums[k] /= n
		}
	}
	return c
}

func openedOf(joints []JointChance) (out [][]float64) {
	for _, j := range joints {
		out = append(out, j.Opened)
	}
	return out
}

// add counts what of a joint opened in one replay; sumUp divides by the members.
func (j *JointChance) add(m Model, r *Replay) {
	var line plan.Polyline
	for _, l := range m.Lines {
		if l.ID == j.Line {
			line = l.Path
		}
	}
	opened := make([]bool, len(j.Opened))
	for _, e := range r.Events {
		if e.Line != j.Line || e.Kind != SawnLine {
			continue
		}
		from, _, _ := line.Nearest(e.Path[0])
		to, _, _ := line.Nearest(e.Path[1])
		from, to = min(from, to), max(from, to)
		for k := range opened {
			if mid := (float64(k) + 0.5) * j.Step; mid >= from && mid <= to {
				opened[k] = true
			}
		}
	}
	for k, o := range opened {
		if o {
			j.Opened[k]++
		}
	}
}

// add lays a crack over the cells; sumUp divides by the members.
func (g *CrackGrid) add(path plan.Polyline, seen map[int]bool) {
	const parts = 10 // of a cell
	for _, s := range path.Pieces() {
		length := s.A.To(s.B)
		n := max(1, int(math.Ceil(length/g.Cell*parts)))
		for i := range n {
			p := s.At((float64(i) + 0.5) / float64(n))
			x, y := int((p.X-g.Low.X)/g.Cell), int((p.Y-g.Low.Y)/g.Cell)
			k := min(max(y, 0), g.Up-1)*g.Across + min(max(x, 0), g.Across-1)
			g.Length[k] += length / float64(n) / (g.Cell * g.Cell)
			if !seen[k] {
				seen[k] = true
				g.Chance[k]++
			}
		}
	}
}

// At returns the chance and density of the cell at a place; zero outside.
func (g CrackGrid) At(p plan.Point) (chance, length float64) {
	x, y := int(math.Floor((p.X-g.Low.X)/g.Cell)), int(math.Floor((p.Y-g.Low.Y)/g.Cell))
	if x < 0 || y < 0 || x >= g.Across || y >= g.Up {
		return 0, 0
	}
	return g.Chance[y*g.Across+x], g.Length[y*g.Across+x]
}
