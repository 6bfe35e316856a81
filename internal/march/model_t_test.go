package march

import (
	"errors"
	"math"
	"testing"
)

// cement is the hydrating slab of the model problem: see newModelT.
type cement struct{ weight []float64 }

const (
	releaseTotal = 350 * 350e3 * 0.75 // J/m3
	tau, beta    = 14 * 3600.0, 0.9   // s, -
	activation   = 4500.0             // K
)

func (c cement) Count() int { return len(c.weight) }

func (c cement) Rate(_ int, celsius float64) (rate, slope float64) {
	absolute := 1 / (celsius + Kelvin)
	rate = math.Exp(activation * (1/293.15 - absolute))
	return rate, rate * activation * absolute * absolute
}

func (c cement) Release(i int, age float64) (amount, slope float64) {
	if age <= 0 {
		return 0, 0
	}
	power := math.Exp(beta * math.Log(tau/age))
	amount = c.weight[i] * math.Exp(-power)
	return amount, amount * power * beta / age
}

// outdoors is the weather of the model problem, t in seconds from 08:00.
type outdoors struct{}

func (outdoors) Into(t, u float64) (flow, slope float64) {
	clock := 8 + t/3600
	air := 20 + 8*math.Sin(2*math.Pi*(clock-9)/24)
	var sun float64
	if hour := math.Mod(clock, 24); hour > 6 && hour < 18 {
		sun = 0.6 * 700 * math.Sin(math.Pi*(hour-6)/12)
	}
	return 15*(air-u) + sun - 60, -15
}

// newModelT is a 150 mm slab on soil at 08:00, refined by whole numbers.
func newModelT(refine int) *Marcher {
	slab := Uniform(0, 0.15, 30*refine)
	soil := Graded(0.15, 1.65, 29*refine, math.Pow(1.15, 1/float64(refine)))
	p := Layered(slab.Then(soil), Layer{0.15, 2, 2.4e6}, Layer{1.65, 1.5, 2.0e6})
	p.Top, p.Bottom = outdoors{}, Held(Constant(16))
	local := cement{make([]float64, 30*refine+1)}
	for i, v := range slab.Volumes() {
		local.weight[i] = v * releaseTotal
	}
	p.Local = local
	values := make([]float64, len(p.Grid))
	for i := range values {
		values[i] = 16
		if i <= 30*refine {
			values[i] = 25
		}
	}
	return New(p, 0, values)
}

// Values of the same scheme computed independently (backward Euler, 5 min, full
// Newton), to the digits they were given with.
func TestModelTSameScheme(t *testing.T) {
	m := newModelT(1)
	hottest, at := 0.0, 0.0
	want := map[int][5]float64{
		6:   {41.29526, 36.10031, 29.61736, 9.46142, 0.241030},
		12:  {29.65184, 33.69716, 32.97292, 23.40844, 0.532793},
		24:  {22.50887, 21.55679, 22.27833, 39.69001, 0.676060},
		48:  {21.10272, 19.61506, 20.35489, 72.85523, 0.797223},
		72:  {20.71876, 19.07419, 19.78618, 104.07934, 0.848407},
		168: {20.50574, 18.78336, 19.50821, 225.83233, 0.921395},
	}
	const digits = 1e-5
	for step := 1; step <= 2016; step++ {
		if err := m.Euler(300); err != nil {
			t.Fatal(err)
		}
		if m.Value[0] > hottest {
			hottest, at = m.Value[0], m.Time/3600
		}
		w, ok := want[step/12]
		if !ok || step%12 != 0 {
			continue
		}
		age := m.Hidden[15] / 3600
		got := [5]float64{m.Value[0], m.Value[15], m.Value[30], age, math.Exp(-math.Pow(14/age, 0.9))}
		for i := range got {
			if math.Abs(got[i]-w[i]) > digits {
				t.Errorf("%d h, item %d: got %.6f, reference %.6f", step/12, i, got[i], w[i])
			}
		}
	}
	if math.Abs(hottest-41.50069) > digits || math.Abs(at-6.5833) > 1e-3 {
		t.Errorf("hottest %.5f at %.4f h, reference 41.50069 at 6.5833 h", hottest, at)
	}
	if m.Iterations < 5700 || m.Iterations > 6000 {
		t.Errorf("%d Newton iterations, reference 5845", m.Iterations)
	}
	if off := math.Abs(m.Imbalance()) / (0.15 * releaseTotal); off > 1e-6 {
		t.Errorf("energy balance off by %g of the heat released", off)
	}
}

// The second-order scheme in steps of 15 minutes on a twice finer grid must come
// to the continuum values, which were given to 0.01.
func TestModelTContinuum(t *testing.T) {
	m := newModelT(2)
	want := map[int]float64{6: 36.05, 12: 33.74, 24: 21.50}
	for step := 1; step <= 24*4; step++ {
		if err := m.Step(900); err != nil {
			t.Fatal(err)
		}
		if w, ok := want[step/4]; ok && step%4 == 0 && math.Abs(m.Value[30]-w) > 0.03 {
			t.Errorf("%d h: middle %.4f, continuum %.2f", step/4, m.Value[30], w)
		}
	}
	if off := math.Abs(m.Imbalance()) / (0.15 * releaseTotal); off > 1e-6 {
		t.Errorf("energy balance off by %g of the heat released", off)
	}
}

// tabled is the same cement with its two curves tabulated.
type tabled struct {
	weight       []float64
	arrhenius    *Table
	hydrationAge *Octaves
}

func newTabled(c cement) tabled {
	one := cement{[]float64{1}}
	return tabled{c.weight,
		NewTable(func(u float64) (float64, float64) { return c.Rate(0, u) }, -40, 120, 640),
		NewOctaves(func(s float64) (float64, float64) { return one.Release(0, s) }, 60, 1e9)}
}

func (c tabled) Count() int                               { return len(c.weight) }
func (c tabled) Rate(_ int, u float64) (float64, float64) { return c.arrhenius.At(u) }
func (c tabled) Release(i int, s float64) (float64, float64) {
	amount, slope := c.hydrationAge.At(s)
	return c.weight[i] * amount, c.weight[i] * slope
}

// Tables must not show in the answer.
func TestTabledCement(t *testing.T) {
	exact, quick := newModelT(1), newModelT(1)
	quick.Local = newTabled(exact.Local.(cement))
	for range 288 {
		if err := errors.Join(exact.Euler(300), quick.Euler(300)); err != nil {
			t.Fatal(err)
		}
		for i := range exact.Value {
			if math.Abs(exact.Value[i]-quick.Value[i]) > 5e-6 {
				t.Fatalf("node %d after %.1f h: %.7f exact, %.7f by tables", i, exact.Time/3600, exact.Value[i], quick.Value[i])
			}
		}
	}
}

// The model week: 2016 steps of backward Euler. The tables are made once for a
// cement, as for the members of a set.
func BenchmarkModelT(b *testing.B) {
	for name, local := range map[string]Local{"exact": newModelT(1).Local, "tables": newTabled(newModelT(1).Local.(cement))} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				m := newModelT(1)
				m.Local = local
				for range 2016 {
					if err := m.Euler(300); err != nil {
						b.Fatal(err)
					}
				}
			}
		})
	}
}

func TestStepsDoNotAllocate(t *testing.T) {
	m := newModelT(1)
	if n := testing.AllocsPerRun(20, func() { _ = m.Step(300); _ = m.Euler(300) }); n != 0 {
		t.Errorf("%g allocations per step", n)
	}
}
