package earlyage

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"slabwright/concrete"
	"slabwright/internal/sample"
)

// Pour is one placement whose cut is to be planned.
type Pour struct {
	Column    Column
	Restraint Restraint
	Doubt     Doubt
	Observed  Observed // what was measured at the slab since; weighs the members
	Count     int      // members beside the expected one; 0: 200
	Seed      uint64   // of the spread; the same seed gives the same answer
	Cores     int      // 0: all

	Progress func(done, of int) // called from several goroutines; may be nil

	weighed *Members // the same members, weighed by observations at another panel
}

const usualMembers = 200

// member is one way the pour may go.
type member struct {
	values  []float64 // of the unknowns
	edgeFc  []float64 // mean strength of the zone the saw cuts, by time
	ratio   []float64 // largest stress over tensile strength so far, by time
	edge    float64   // where in the range of edge strengths this member lies, 0 to 1
	scatter float64   // coefficient of variation of its tensile strength
	seen    []float64 // what it gives for each observation
	weight  float64   // all sum to one
	history *History  // up to the final set of all layers only; the expected course has all of it
}

// Members are the ways a pour may go: the expected one first.
type Members struct {
	Pour     Pour
	Hours    []float64
	unknowns []Unknown
	members  []member
	expected course
	before   *Members // without the observations, nil if there are none
	moved    moved
}

// course is a member followed in full.
type course struct {
	member
	tension []Tension // by time
}

// Expected returns the history of the pour as it is expected; with observations, of
// the pour with its unknowns at the means that they leave.
func (m *Members) Expected() *History { return m.expected.history }

// Tension returns the stress of the uncut slab in the expected course, hours after
// placing.
func (m *Members) Tension(hours float64) Tension {
	b := &m.expected
	i, s := b.history.place(hours)
	mix := func(x, y float64) float64 { return x + s*(y-x) }
	p, q := b.tension[i], b.tension[i+1]
	return Tension{Axial: mix(p.Axial, q.Axial), Curl: mix(p.Curl, q.Curl), Self: mix(p.Self, q.Self), Top: mix(p.Top, q.Top),
		Middle: mix(p.Middle, q.Middle), Under: mix(p.Under, q.Under), Ratio: mix(p.Ratio, q.Ratio)}
}

// RunMembers follows a pour as expected and with its uncertain facts spread over
// their ranges, on all cores; the answer does not depend on how many there are.
// What was observed at the slab then weighs the members: see [Members.Calibration].
func RunMembers(ctx context.Context, p Pour) (*Members, error) {
	p, err := p.ready()
	if err != nil {
		return nil, err
	}
	m := &Members{Pour: p, unknowns: p.Unknowns()}
	points := make([][]float64, 1, p.Count+1)
	for _, u := range m.unknowns {
		points[0] = append(points[0], u.Value)
	}
	for _, at := range sample.Latin(p.Count, len(m.unknowns), p.Seed) {
		for k, u := range m.unknowns {
			at[k] = sample.Uniform(at[k], u.Low, u.High)
		}
		points = append(points, at)
	}
	if p.weighed != nil {
		points = points[:0]
		for i := range p.weighed.members {
			points = append(points, p.weighed.members[i].values)
		}
	}
	if err := m.run(ctx, points); err != nil {
		return nil, err
	}
	if p.weighed != nil {
		for i := range m.members {
			m.members[i].weight = p.weighed.members[i].weight
		}
		if m.expected, err = p.follow(ctx, p.weighed.expected.values, nil); err != nil {
			return nil, err
		}
	}
	m.Hours = m.Expected().Hours
	return m.calibrated(ctx)
}

// run follows the members with their unknowns at these points, of equal weight; the
// first is the expected course.
func (m *Members) run(ctx context.Context, points [][]float64) error {
	m.members = make([]member, len(points))
	spare := sync.Pool{New: func() any { return &History{} }}
	return m.Pour.onAllCores(len(points), func(i int) error {
		var room *History
		if i > 0 {
			room = spare.Get().(*History)
			defer spare.Put(room)
		}
		c, err := m.Pour.follow(ctx, points[i], room)
		c.weight = 1 / float64(len(points))
		m.members[i] = c.member
		if i == 0 {
			m.expected = c
		}
		return err
	})
}

// ready checks the pour and fills in what it leaves to us.
func (p Pour) ready() (Pour, error) {
	if err := p.Column.Check(); err != nil {
		return p, err
	}
	if wrong := p.Restraint.problems(); wrong != nil {
		return p, fmt.Errorf("restraint of the pour: %s", strings.Join(wrong, " "))
	}
	if p.Count == 0 {
		p.Count = usualMembers
	}
	if p.Doubt.none() {
		p.Doubt = DefaultDoubt.with(p.Doubt.given)
	}
	if err := p.doubtProblems(); err != nil {
		return p, err
	}
	if wrong := p.Observed.problems(p.Column); wrong != nil {
		return p, fmt.Errorf("observations at the slab: %s", strings.Join(wrong, " "))
	}
	p.Column.sampled = p.Column.ask()
	p.Column.curves = newCurves(p.Column.Concrete.Hydration, concrete.HydrationReference_C)
	return p, nil
}

// follow runs the pour with its unknowns at these values; into a history that is
// there already, if any.
func (p Pour) follow(ctx context.Context, values []float64, room *History) (course, error) {
	v := p.vary(values)
	v.column.scratch = room
	if room != nil {
		v.column.Progress = nil
	}
	v.column.Profiles = p.Column.Profiles && room == nil || len(p.Observed.Temperatures) > 0
	h, err := v.column.Run(ctx)
	if err != nil {
		return course{}, err
	}
	c := course{tension: v.restraint.Follow(h, v.column.Thickness, v.column.Concrete.Poisson)}
	c.member = member{values: values, edge: v.edge, scatter: v.scatter, edgeFc: h.EdgeFc, history: h, ratio: make([]float64, len(h.Hours))}
	worst := 0.0
	for i, t := range c.tension {
		worst = math.Max(worst, t.Ratio)
		c.ratio[i] = worst
	}
	c.seen = p.Observed.seenBy(h, &v)
	if room != nil {
		c.edgeFc, c.history = slices.Clone(h.EdgeFc), h.fresh()
	}
	return c, nil
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
