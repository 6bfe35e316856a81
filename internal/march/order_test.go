package march

import (
	"math"
	"testing"
)

// manufactured is a problem with a known solution u = exp(-t) cos(pi x) on 0..1:
// sealed at both ends, diffusivity 0.3, a source that makes it so.
func manufactured(n int, steps int, step func(*Marcher, float64) error) float64 {
	p := Layered(Uniform(0, 1, n), Layer{1, 0.3 / (math.Pi * math.Pi), 1})
	p.Local = clockwork{p.Grid}
	values := make([]float64, n+1)
	for i, x := range p.Grid {
		values[i] = math.Cos(math.Pi * x)
	}
	m := New(p, 0, values)
	for range steps {
		if err := step(m, 1/float64(steps)); err != nil {
			panic(err)
		}
	}
	var worst float64
	for i, x := range p.Grid {
		worst = math.Max(worst, math.Abs(m.Value[i]-math.Exp(-1)*math.Cos(math.Pi*x)))
	}
	return worst
}

// clockwork releases the integral of (0.3-1) exp(-s) cos(pi x), s being time.
type clockwork struct{ g Grid }

func (c clockwork) Count() int                           { return len(c.g) }
func (c clockwork) Rate(int, float64) (float64, float64) { return 1, 0 }
func (c clockwork) Release(i int, s float64) (float64, float64) {
	f := -0.7 * c.g.Volumes()[i] * math.Cos(math.Pi*c.g[i])
	return f * (1 - math.Exp(-s)), f * math.Exp(-s)
}

func TestOrdersOfConvergence(t *testing.T) {
	euler := func(m *Marcher, dt float64) error { return m.Euler(dt) }
	second := func(m *Marcher, dt float64) error { return m.Step(dt) }
	for _, c := range []struct {
		name         string
		coarse, fine float64
		want         float64
	}{
		{"backward Euler in time", manufactured(400, 10, euler), manufactured(400, 20, euler), 1},
		{"TR-BDF2 in time", nonlinear(10), nonlinear(20), 2},
		{"in space", manufactured(10, 400, second), manufactured(20, 400, second), 2},
	} {
		if order := math.Log2(c.coarse / c.fine); math.Abs(order-c.want) > 0.15 {
			t.Errorf("%s: observed order %.2f (%.3g, %.3g), want %g", c.name, order, c.coarse, c.fine, c.want)
		}
	}
}

// nonlinear is the error in time of a radiating, hydrating column against the
// same column with very small steps.
func nonlinear(steps int) float64 {
	run := func(steps int) *Marcher {
		m := newModelT(1)
		m.Tolerance = 1e-11
		m.Top = Radiating{Film: Film{Coefficient: Constant(15), Ambient: Sine(20, 8, 86400)}, Emissivity: 0.9, Longwave: Constant(340)}
		for i := range m.Value {
			m.Value[i] = 20
		}
		m.Bottom = Sealed{}
		for i := range m.Hidden {
			m.Hidden[i] = 5 * 3600
		}
		for range steps {
			if err := m.Step(7200 / float64(steps)); err != nil {
				panic(err)
			}
		}
		return m
	}
	exact, got := run(640), run(steps)
	var worst float64
	for i := range got.Value {
		worst = math.Max(worst, math.Abs(got.Value[i]-exact.Value[i]))
	}
	return worst
}

// Every end's slope against finite differences.
func TestEndSlopes(t *testing.T) {
	film := Film{Coefficient: Constant(12), Ambient: Constant(18), Gain: Constant(300)}
	for name, end := range map[string]End{"film": film, "radiating": Radiating{film, 0.9, Constant(350)}, "flux": Flux(Constant(5)), "sealed": Sealed{}} {
		const d = 1e-4
		up, _ := end.Into(0, 25+d)
		down, _ := end.Into(0, 25-d)
		if _, slope := end.Into(0, 25); math.Abs(slope-(up-down)/(2*d)) > 1e-5 {
			t.Errorf("%s: slope %g, finite difference %g", name, slope, (up-down)/(2*d))
		}
	}
}

// Balance with two held ends that move, and with a nonlinear diffusivity.
func TestBalanceHeldEnds(t *testing.T) {
	p := Layered(Uniform(0, 1, 20), Layer{1, 1, 1})
	p.Potential = func(u float64) (float64, float64) { return u + u*u*u/3, 1 + u*u }
	p.Top, p.Bottom = Held(Sine(1, 0.5, 1)), Held(Constant(0.2))
	for name, step := range map[string]func(*Marcher) error{
		"euler":   func(m *Marcher) error { return m.Euler(0.01) },
		"tr-bdf2": func(m *Marcher) error { return m.Step(0.01) },
	} {
		m := New(p, 0, make([]float64, 21))
		for range 150 {
			if err := step(m); err != nil {
				t.Fatal(err)
			}
		}
		if off := math.Abs(m.Imbalance()); off > 1e-6 {
			t.Errorf("%s: balance off by %g", name, off)
		}
	}
}

// The adaptive march must keep near its error goal and take few steps.
func TestAdvanceKeepsItsError(t *testing.T) {
	reference := newModelT(1)
	for range 24 * 60 {
		if err := reference.Step(60); err != nil {
			t.Fatal(err)
		}
	}
	m := newModelT(1)
	steps := 0
	_, err := m.Advance(86400, Control{Error: 0.01, First: 30, Min: 1, Max: 3600}, func(*Marcher) bool { steps++; return true })
	if err != nil {
		t.Fatal(err)
	}
	for i := range m.Value {
		if math.Abs(m.Value[i]-reference.Value[i]) > 0.05 {
			t.Errorf("node %d: %.4f against %.4f", i, m.Value[i], reference.Value[i])
		}
	}
	if steps > 250 {
		t.Errorf("%d steps for a day", steps)
	}
	if m.Time != 86400 {
		t.Errorf("ended at %g s", m.Time)
	}
}

func TestGrids(t *testing.T) {
	g := TwoSided(0, 0.15, 8, 1.3).Then(Graded(0.15, 2, 12, 1.4))
	var sum float64
	for i, v := range g.Volumes() {
		sum += v
		if i > 0 && g[i] <= g[i-1] {
			t.Errorf("node %d does not lie below the one above", i)
		}
	}
	if math.Abs(sum-2) > 1e-12 {
		t.Errorf("volumes add to %g, want 2", sum)
	}
	if g[g.Index(0.15)] != 0.15 {
		t.Errorf("no node at the face of the layers")
	}
	if got := Series([]float64{0.1, 0.05}, []float64{2, 0.5}); math.Abs(got-1/0.15) > 1e-12 {
		t.Errorf("series conductance %g, want %g", got, 1/0.15)
	}
}
