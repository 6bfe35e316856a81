package march

import (
	"math"
	"testing"
)

// radiant is a face that radiates to a cold sky and takes a pulse of heat out for as
// long as it is told.
type radiant struct{ pulse float64 }

func (r *radiant) Into(_, u float64) (flow, slope float64) {
	k := u + Kelvin
	return StefanBoltzmann*(math.Pow(280, 4)-math.Pow(k, 4)) - r.pulse, -4 * StefanBoltzmann * k * k * k
}

// A step of seconds in which the surface falls steeply says nothing of the next
// quarter of an hour: Newton's method must not start from far below absolute zero.
func TestLongStepAfterAVeryShortOne(t *testing.T) {
	grid := Graded(0, 0.25, 18, 1.35)
	p := Layered(grid, Layer{To: 0.25, Conductivity: 2, Capacity: 2.3e6})
	face := &radiant{}
	p.Top = face
	start := make([]float64, len(grid))
	for i := range start {
		start[i] = 17
	}
	m := New(p, 0, start)
	m.Tolerance = 0.002
	if err := m.Step(900); err != nil {
		t.Fatal(err)
	}
	face.pulse = 2e4
	if err := m.Step(4); err != nil {
		t.Fatal(err)
	}
	cold := m.Value[0]
	face.pulse = 0
	if ahead := m.Ahead(0, 900); ahead < cold-5*(17-cold) {
		t.Errorf("ahead %.0f °C from %.1f", ahead, cold)
	}
	if err := m.Step(900); err != nil {
		t.Fatal(err)
	}
	if m.Value[0] < cold || m.Value[0] > 17 {
		t.Errorf("surface at %.1f °C after %.1f", m.Value[0], cold)
	}
	if off := m.Imbalance(); math.Abs(off) > 1 {
		t.Errorf("off balance by %.3g J", off)
	}
}
