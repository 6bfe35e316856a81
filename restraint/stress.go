package restraint

import (
	"context"
	"errors"
	"math"
	"slices"

	"slabwright/internal/mesh"
	"slabwright/plan"
)

// Stress returns the state of a slab at one hour from one search for balance, without
// following the hours before: what a layout is judged by. Nothing cracks; joints sawn by
// then, formed joints and known cracks count as open.
//
// The concrete has the effective modulus that brings the stress of full restraint by
// its own history, creep and ageing included. Beside a replay of the same slab the
// greatest tension lies within a tenth, mostly some hundredths: TestStressAgainstReplay.
func (m Model) Stress(ctx context.Context, hour float64) (*Field, error) {
	v, err := m.view(hour)
	if err != nil {
		return nil, err
	}
	mm, err := mesh.Build(m.domain(m.reachedLines(), v.set))
	if err != nil {
		return nil, unmeshed(err)
	}
	return v.show(ctx, m, mm)
}

// view is a slab looked at at one hour.
type view struct {
	set   Settings
	hour  float64
	now   []Concrete // of each pour: effective modulus; strain since it set
	last  *shown
	first *mesh.Mesh // the one that lines are lifted from
}

// shown is what was found last, to start the next search from.
type shown struct {
	mesh  *mesh.Mesh
	state *slabState
	now   map[int32]int32 // triangles here, by their number in the first mesh
}

func (v *view) keep(mm *mesh.Mesh, s *slabState) {
	v.last = &shown{mm, s, make(map[int32]int32, len(mm.Triangles))}
	for t := range mm.Triangles {
		if from := firstOf(mm, t, v.first == nil); from >= 0 {
			v.last.now[from] = int32(t)
		}
	}
	if v.first == nil {
		v.first = mm
	}
}

// firstOf returns the number of a triangle in the first mesh, −1 where it was not
// there.
func firstOf(mm *mesh.Mesh, t int, first bool) int32 {
	switch {
	case first:
		return int32(t)
	case t < len(mm.TriangleFrom):
		return mm.TriangleFrom[t]
	}
	return -1
}

func (m Model) view(hour float64) (*view, error) {
	if found := m.Check([]float64{hour - 1, hour}); found != nil {
		return nil, errors.Join(found...)
	}
	v := &view{set: m.Settings.filled(), hour: hour}
	for _, p := range m.Pours {
		c, err := p.effective(hour)
		if err != nil {
			return nil, err
		}
		v.now = append(v.now, c)
	}
	return v, nil
}

// effective returns a pour at an hour with its strain since it set and a modulus by
// which that strain, fully restrained, gives the stress of its history.
func (p Pour) effective(hour float64) (Concrete, error) {
	var full, since float64
	hours := UsualHours(math.Max(hour, 1))
	was, err := p.check(hours[0])
	if err != nil {
		return was, err
	}
	for _, h := range hours[1:] {
		next, err := p.check(math.Min(h, hour))
		if err != nil {
			return next, err
		}
		over, stays := stepModuli([]Concrete{was}, []Concrete{next})
		if over[0] > 0 {
			full = full*stays[0] - over[0]*(next.Strain-was.Strain)
			since -= next.Strain - was.Strain
		}
		was = next
	}
	c := was
	if c.Modulus == 0 {
		return c, nil
	}
	if e := full / since; since != 0 && e > c.Modulus/50 && e <= c.Modulus {
		c.Modulus, c.Strain = e, -since
	} else { // it swelled and shrank: the stress is kept, the movement is what goes with it
		c.Strain = -full / c.Modulus
	}
	return c, nil
}

// show finds the balance on a mesh of the model.
func (v *view) show(ctx context.Context, m Model, mm *mesh.Mesh) (*Field, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	lines := m.reachedLines()
	s := &slabState{model: &m, set: v.set, lines: lines, crossings: crossingsOf(lines), hour: v.hour, now: v.now,
		memory: map[seamKey]memory{}, scatter: newScatter(v.set)}
	n := netOf(mm, m, lines)
	s.cut = v.cuts(n, lines)
	s.frame = newFrame(n, s.cut, &m, v.set, nil)
	s.u, s.slid = v.start(mm, s.frame), make([]float64, 2*s.frame.nodes)
	s.full, s.since = make([]float64, len(v.now)), make([]float64, len(v.now))
	for p, c := range v.now {
		s.full[p], s.since[p] = -c.Modulus*c.Strain, -c.Strain
	}
	for t := range n.tri {
		free := v.now[n.pour[t]].Strain
		s.frozen = append(s.frozen, [3]float64{free, free, 0})
		s.factor = append(s.factor, v.factor(s, mm, t))
	}
	for k := range s.frame.seams {
		s.memory[s.frame.seams[k].key] = memory{alive: true}
	}
	if err := s.rest(); err != nil {
		return nil, err
	}
	v.keep(mm, s)
	f := s.field()
	return &f, nil
}

// rest brings a view to rest: twice, since what open sides keep of their roughness
// follows from how wide they have opened.
func (s *slabState) rest() error {
	modulus := make([]float64, len(s.now))
	for p, c := range s.now {
		modulus[p] = c.Modulus
	}
	for range 2 {
		b := s.balance(modulus, s.frozen)
		count, err := b.solve(s.u)
		s.rounds += count
		if err != nil {
			return s.named(err, s.hour)
		}
		for k := range s.frame.seams {
			seam := &s.frame.seams[k]
			across, _ := seam.move(s.u)
			s.memory[seam.key] = memory{alive: true, now: across, widest: across}
		}
	}
	return nil
}

// factor returns the scatter of a triangle, as found last where it was there before.
func (v *view) factor(s *slabState, mm *mesh.Mesh, t int) float64 {
	if v.last != nil {
		if from, same := v.last.now[firstOf(mm, t, false)]; same {
			return v.last.state.factor[from]
		}
	}
	return s.scatter.at(s.frame.middle(t))
}

// cuts lists the sides that are open at the hour of a view.
func (v *view) cuts(n *net, lines []Line) map[side]int {
	cut := firstCuts(n, lines)
	for key, on := range n.onLine {
		if _, open := cut[key]; open || n.beside[key][1] < 0 {
			continue
		}
		if i := slices.IndexFunc(on, func(l int) bool { return lines[l].From <= v.hour }); i >= 0 {
			cut[key] = on[i]
		}
	}
	return cut
}

// start returns displacements to search from: those found last, where the mesh is
// still the same, else carried over from the triangle that was there.
func (v *view) start(mm *mesh.Mesh, f *frame) []float64 {
	u := make([]float64, 2*f.nodes)
	if v.last == nil {
		return u
	}
	old := v.last.state
	for _, pass := range []bool{false, true} { // unchanged triangles last, so that theirs stay
		for t, nodes := range f.node {
			from, same := v.last.now[firstOf(mm, t, false)]
			if same != pass {
				continue
			}
			if !same {
				p := f.middle(t)
				if from = v.last.mesh.Locate(mesh.Point{p.X, p.Y}); from < 0 {
					continue
				}
			}
			for i, n := range nodes {
				u[2*n], u[2*n+1] = old.frame.valueAt(from, f.at[f.tri[t][i]], old.u)
			}
		}
	}
	return u
}

// valueAt returns a value of nodes carried on straight from triangle t to a place.
func (f *frame) valueAt(t int32, p plan.Point, u []float64) (x, y float64) {
	g, v, at := &f.grad[t], f.node[t], f.tri[t]
	for i := range 3 {
		q := f.at[at[i]]
		share := 1 + g[i]*(p.X-q.X) + g[3+i]*(p.Y-q.Y)
		x += share * u[2*v[i]]
		y += share * u[2*v[i]+1]
	}
	return x, y
}
