package march

import (
	"math"
	"testing"
)

// drying is the diffusivity law of the benchmark, m2/s, for a 30 MPa concrete.
func drying(h float64) float64 {
	return 1e-9 / 3 * (0.05 + 0.95/(1+math.Pow((1-h)/0.2, 15)))
}

// A 100 mm layer sealed below, its top held at humidity 0.5, starting from 1:
// values computed independently with a 400-cell scheme and LSODA.
func TestNonlinearDrying(t *testing.T) {
	p := Layered(Graded(0, 0.1, 80, 1.03), Layer{0.1, 1, 1})
	p.Potential = Integrated(drying, 0.4, 1, 600)
	p.Top = Held(Constant(0.5))
	values := make([]float64, len(p.Grid))
	for i := range values {
		values[i] = 1
	}
	m := New(p, 0, values)
	m.Tolerance = 1e-9
	for _, w := range []struct {
		days float64
		want [5]float64 // 5, 20, 50, 100 mm, mean
	}{
		{7, [5]float64{0.8257, 0.9313, 0.9972, 1.0000, 0.9628}},
		{28, [5]float64{0.7953, 0.8668, 0.9541, 0.9945, 0.9257}},
		{90, [5]float64{0.7395, 0.8288, 0.8872, 0.9290, 0.8670}},
		{365, [5]float64{0.5705, 0.7421, 0.7966, 0.8079, 0.7628}},
	} {
		if _, err := m.Advance(w.days*86400, Control{Error: 2e-4, First: 1, Min: 0.01, Max: 86400}, nil); err != nil {
			t.Fatal(err)
		}
		got := [5]float64{at(m, 0.005), at(m, 0.02), at(m, 0.05), at(m, 0.1), p.Grid.Mean(m.Value, 0, 80)}
		for i := range got {
			if math.Abs(got[i]-w.want[i]) > 0.005 {
				t.Errorf("%g d, item %d: got %.4f, reference %.4f", w.days, i, got[i], w.want[i])
			}
		}
	}
	if off := math.Abs(m.Imbalance()); off > 1e-6*0.1 {
		t.Errorf("water balance off by %g", off)
	}
}

// at is the value at depth x, linear between nodes.
func at(m *Marcher, x float64) float64 {
	i := 0
	for i+2 < len(m.Grid) && m.Grid[i+1] < x {
		i++
	}
	s := (x - m.Grid[i]) / (m.Grid[i+1] - m.Grid[i])
	return m.Value[i] + s*(m.Value[i+1]-m.Value[i])
}

func TestIntegratedPotential(t *testing.T) {
	p := Integrated(func(u float64) float64 { return 1 + u*u }, 0, 2, 50)
	for _, u := range []float64{0, 0.013, 0.5, 1.234, 2} {
		phi, d := p(u)
		if math.Abs(phi-(u+u*u*u/3)) > 1e-7 || math.Abs(d-(1+u*u)) > 1e-3 {
			t.Errorf("u=%g: potential %g, diffusivity %g", u, phi, d)
		}
	}
}
