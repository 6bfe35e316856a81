package march

import (
	"math"
	"testing"
)

// Every exact solution against the scheme, an independent route.
func TestAgainstExactSolutions(t *testing.T) {
	const k, rhoC = 2.0, 2.4e6
	a := k / rhoC
	deep := Graded(0, 1.5, 120, 1.03)
	halfSpace := func(top End) Problem {
		p := Layered(deep, Layer{1.5, k, rhoC})
		p.Top = top
		return p
	}
	rise := func(p Problem, start, end float64, steps int, x float64) float64 {
		values := make([]float64, len(p.Grid))
		for i := range values {
			values[i] = start
		}
		m := New(p, 0, values)
		if _, err := m.Advance(end, Control{Error: 1e-4, First: 1e-3, Min: 1e-6, Max: end / float64(steps)}, nil); err != nil {
			t.Fatal(err)
		}
		i := p.Grid.Index(x)
		if math.Abs(p.Grid[i]-x) > 1e-9 {
			t.Fatalf("no node at %g", x)
		}
		return m.Value[i]
	}
	x := deep[40]
	for _, c := range []struct {
		name      string
		got, want float64
		tol       float64 // of the value's own scale, from h^2 of the grid
	}{
		{"step", rise(halfSpace(Held(Constant(10))), 30, 6*3600, 50, x), HalfSpaceStep(x, 6*3600, a, 30, 10), 0.01},
		{"film", rise(halfSpace(Film{Coefficient: Constant(20), Ambient: Constant(1)}), 0, 7200, 50, x), HalfSpaceFilm(x, 7200, a, k, 20), 5e-4},
		{"film at the face", rise(halfSpace(Film{Coefficient: Constant(20), Ambient: Constant(1)}), 0, 7200, 50, 0), HalfSpaceFilm(0, 7200, a, k, 20), 5e-4},
		{"flux", rise(halfSpace(Flux(Constant(400))), 0, 7200, 50, x), HalfSpaceFlux(x, 7200, a, k, 400), 0.01},
	} {
		if math.Abs(c.got-c.want) > c.tol {
			t.Errorf("%s: got %.6g, exact %.6g, tolerance %g", c.name, c.got, c.want, c.tol)
		}
	}

	// Slab with a film on top, sealed below.
	p := Layered(Uniform(0, 0.2, 40), Layer{0.2, k, rhoC})
	p.Top = Film{Coefficient: Constant(10), Ambient: Constant(0)}
	seconds := 0.3 * 0.04 / a
	if got, want := rise(p, 1, seconds, 100, 0.1), SlabFilm(1, 0.3, 0.5, 40); math.Abs(got-want) > 2e-4 {
		t.Errorf("slab with film: got %.6f, exact %.6f", got, want)
	}
	// One-sided drying with a constant diffusivity.
	p = Layered(Graded(0, 0.1, 80, 1.03), Layer{0.1, 20e-6 / 86400, 1})
	p.Top = Held(Constant(0))
	values := make([]float64, 81)
	for i := range values {
		values[i] = 1
	}
	m := New(p, 0, values)
	if _, err := m.Advance(28*86400, Control{Error: 1e-5, First: 1, Min: 1e-3, Max: 86400}, nil); err != nil {
		t.Fatal(err)
	}
	if got, want := 1-p.Grid.Mean(m.Value, 0, 80), MeanLoss(20e-6/86400, 0.1, 28*86400); math.Abs(got-want) > 5e-4 {
		t.Errorf("drying: lost %.5f, exact %.5f", got, want)
	}
}

// A daily wave, marched until it repeats.
func TestPeriodicWave(t *testing.T) {
	const a, day = 1e-6, 86400.0
	p := Layered(Graded(0, 2, 100, 1.03), Layer{2, a, 1})
	p.Top = Held(Sine(15, 10, day))
	p.Bottom = Held(Constant(15))
	values := make([]float64, 101)
	for i := range values {
		values[i] = 15
	}
	m := New(p, 0, values)
	if n, err := m.Settle(day, 96, 40, 0.002); err != nil {
		t.Fatalf("after %d days: %v", n, err)
	}
	for i, z := range p.Grid {
		if want := Wave(z, m.Time, a, day, 15, 10); z < 0.5 && math.Abs(m.Value[i]-want) > 0.03 {
			t.Errorf("depth %.3f m: got %.4f, exact %.4f", z, m.Value[i], want)
		}
	}
	if share, lag := WaveShare(0.1, a, day), WaveLag(0.1, a, day); math.Abs(share-0.547167) > 1e-6 || math.Abs(lag-8291.86) > 0.01 {
		t.Errorf("share %.6f lag %.2f", share, lag)
	}
}

// A source that dies away, carried by the local process, against its series.
func TestDecayingSource(t *testing.T) {
	const k, rhoC, q0, decay = 2.0, 2.4e6, 1500.0, 2e-5
	p := Layered(Uniform(0, 0.15, 30), Layer{0.15, k, rhoC})
	p.Top, p.Bottom = Held(Constant(0)), Held(Constant(0))
	p.Local = fading{p.Grid.Volumes(), q0, decay}
	m := New(p, 0, make([]float64, 31))
	if _, err := m.Advance(21600, Control{Error: 1e-5, First: 10, Min: 1, Max: 600}, nil); err != nil {
		t.Fatal(err)
	}
	if got, want := m.Value[15], SlabDecayingSource(0.075, 21600, 0.15, k, rhoC, q0, decay); math.Abs(got-want) > 1e-3*want {
		t.Errorf("middle: got %.5f, exact %.5f", got, want)
	}
	if off := math.Abs(m.Imbalance()) / q0; off > 1e-6 {
		t.Errorf("balance off by %g of the hourly heat", off)
	}
}

// fading releases q0/decay (1 - exp(-decay s)) by a clock that runs with time.
type fading struct {
	volume    []float64
	q0, decay float64
}

func (f fading) Count() int                           { return len(f.volume) }
func (f fading) Rate(int, float64) (float64, float64) { return 1, 0 }
func (f fading) Release(i int, s float64) (float64, float64) {
	e := math.Exp(-f.decay * s)
	return f.volume[i] * f.q0 / f.decay * (1 - e), f.volume[i] * f.q0 * e
}
