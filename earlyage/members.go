package earlyage

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"

	"slabwright/internal/sample"
)

// Doubt says how far the uncertain facts of a pour may be off. Each is spread
// evenly over its range, friction and edge strength over their own low to high.
type Doubt struct {
	Placing  float64 // temperature of the concrete, ± K
	Heat     float64 // heat of the cement, ± share
	Fineness float64 // speed of the cement (its time constant), ± share
	Wind     float64 // ± share
	Air      float64 // temperature of the air, ± K: a forecast, or a station away from the slab
	Thermal  float64 // coefficient of thermal expansion, ± share
	Tensile  float64 // coefficient of variation of tensile strength about its mean
}

// DefaultDoubt is used where the engineer gives none. The spread of tensile
// strength is that of the fractiles 0.7 and 1.3 of EN 1992-1-1 Table 3.1; the
// rest is our own judgement.
var DefaultDoubt = Doubt{Placing: 2, Heat: 0.10, Fineness: 0.10, Wind: 0.30, Air: 1, Thermal: 0.10, Tensile: 0.18}

// Pour is one placement whose cut is to be planned.
type Pour struct {
	Column    Column
	Restraint Restraint
	Doubt     Doubt
	Count     int    // members beside the expected one; 0: 16
	Seed      uint64 // of the spread; the same seed gives the same answer
	Cores     int    // 0: all

	Progress func(done, of int) // called from several goroutines; may be nil
}

const usualMembers = 16

// member is one way the pour may go.
type member struct {
	history *History
	tension []Tension // by time
	ratio   []float64 // largest stress over tensile strength so far, by time
	edge    float64   // where in the range of edge strengths this member lies, 0 to 1
}

// Members are the ways a pour may go: the expected one first.
type Members struct {
	Pour    Pour
	Hours   []float64
	members []member
}

// Expected returns the history of the pour as it is expected.
func (m *Members) Expected() *History { return m.members[0].history }

// Tension returns the stress of the uncut slab in the expected course, hours after
// placing.
func (m *Members) Tension(hours float64) Tension {
	b := m.members[0]
	i, s := b.history.place(hours)
	mix := func(x, y float64) float64 { return x + s*(y-x) }
	p, q := b.tension[i], b.tension[i+1]
	return Tension{Axial: mix(p.Axial, q.Axial), Curl: mix(p.Curl, q.Curl), Self: mix(p.Self, q.Self), Top: mix(p.Top, q.Top),
		Middle: mix(p.Middle, q.Middle), Under: mix(p.Under, q.Under), Ratio: mix(p.Ratio, q.Ratio)}
}

// RunMembers follows a pour as expected and with its uncertain facts spread over
// their ranges, on all cores; the answer does not depend on how many there are.
func RunMembers(ctx context.Context, p Pour) (*Members, error) {
	if err := p.Column.Check(); err != nil {
		return nil, err
	}
	if wrong := p.Restraint.problems(); wrong != nil {
		return nil, fmt.Errorf("restraint of the pour: %s", strings.Join(wrong, " "))
	}
	if p.Count == 0 {
		p.Count = usualMembers
	}
	if p.Doubt == (Doubt{}) {
		p.Doubt = DefaultDoubt
	}
	p.Column.sampled = p.Column.ask()
	points := sample.Latin(p.Count, 8, p.Seed)
	m := &Members{Pour: p, members: make([]member, p.Count+1)}
	err := p.onAllCores(len(m.members), func(i int) (err error) {
		column, restraint, edge := p.Column, p.Restraint, 0.5
		if i > 0 {
			column, restraint, edge = p.vary(points[i-1])
		}
		m.members[i], err = follow(ctx, column, restraint, edge)
		return err
	})
	if err != nil {
		return nil, err
	}
	m.Hours = m.Expected().Hours
	return m, nil
}

// onAllCores does a work for 0 to count-1, several at a time, and returns the error
// of the lowest number that had one.
func (p Pour) onAllCores(count int, work func(i int) error) error {
	cores := p.Cores
	if cores <= 0 {
		cores = runtime.GOMAXPROCS(0)
	}
	errs := make([]error, count)
	next := make(chan int)
	var group sync.WaitGroup
	var done atomic.Int64
	for range min(cores, count) {
		group.Go(func() {
			for i := range next {
				errs[i] = work(i)
				if n := done.Add(1); p.Progress != nil {
					p.Progress(int(n), count)
				}
			}
		})
	}
	for i := range count {
		next <- i
	}
	close(next)
	group.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// vary returns the column, restraint and place in the edge range of a point of the
// unit cube.
func (p Pour) vary(u []float64) (Column, Restraint, float64) {
	c, r := p.Column, p.Restraint
	c.Progress = nil
	c.PlacingTemperature += sample.Uniform(u[0], -p.Doubt.Placing, p.Doubt.Placing)
	c.Concrete.Hydration.Heat *= 1 + sample.Uniform(u[1], -p.Doubt.Heat, p.Doubt.Heat)
	speed := 1 + sample.Uniform(u[2], -p.Doubt.Fineness, p.Doubt.Fineness)
	c.Concrete.Hydration.Tau /= speed
	c.Concrete.Properties = faster(p.Column.Concrete, speed)
	c.WindFactor *= 1 + sample.Uniform(u[3], -p.Doubt.Wind, p.Doubt.Wind)
	r.Friction = sample.Uniform(u[4], r.FrictionLow, r.FrictionHigh)
	c.AirShift += sample.Uniform(u[6], -p.Doubt.Air, p.Doubt.Air)
	c.Concrete.Expansion *= 1 + sample.Uniform(u[7], -p.Doubt.Thermal, p.Doubt.Thermal)
	return c, r, u[5]
}

// follow runs one member.
func follow(ctx context.Context, c Column, r Restraint, edge float64) (member, error) {
	h, err := c.Run(ctx)
	if err != nil {
		return member{}, err
	}
	m := member{history: h, edge: edge, ratio: make([]float64, len(h.Hours))}
	m.tension = r.Follow(h, c.Thickness, c.Concrete.Poisson)
	worst := 0.0
	for i, t := range m.tension {
		worst = math.Max(worst, t.Ratio)
		m.ratio[i] = worst
	}
	return m, nil
}
