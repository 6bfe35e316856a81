package fem

import (
	"errors"
	"math"
	"testing"
)

// splitStrip is two squares of side 1 that meet at x = 1 along an interface with the
// given law, made of a sheet of stiffness 1 without Poisson's effect.
func splitStrip(steps int, interfaceLaw Law, free float64) (*System, *Interface, *Mesh) {
	half := GridMesh(Q4, EqualLines([]float64{0, 1}, []int{steps}), EqualLines([]float64{0, 1}, []int{steps}), nil)
	n := int32(half.Nodes())
	m := &Mesh{Shape: Q4, X: append([]float64(nil), half.X...), Y: append(append([]float64(nil), half.Y...), half.Y...), Node: append([]int32(nil), half.Node...)}
	for i := range half.X {
		m.X = append(m.X, half.X[i]+1)
	}
	for _, k := range half.Node {
		m.Node = append(m.Node, k+n)
	}
	at := func(x, y float64, from, to int) int32 {
		for i := from; i < to; i++ {
			if math.Hypot(m.X[i]-x, m.Y[i]-y) < 1e-9 {
				return int32(i)
			}
		}
		panic("no node")
	}
	f := &Interface{X: m.X, Y: m.Y, Thickness: 1, Law: interfaceLaw, Title: "joint"}
	for k := range steps { // upwards, so that the left side is the first square
		y0, y1 := float64(k)/float64(steps), float64(k+1)/float64(steps)
		right0, right1 := at(1, y0, int(n), 2*int(n)), at(1, y1, int(n), 2*int(n))
		left0, left1 := at(1, y0, 0, int(n)), at(1, y1, 0, int(n))
		f.Node = append(f.Node, right0, right1, left0, left1)
	}
	sheet := &Sheet{Mesh: m, Law: func(Place) Layer {
		return Layer{Thickness: 1, Stiffness: Isotropic(1, 0), FreeStrain: [3]float64{free, 0, 0}}
	}}
	s := NewSystem(m.X, m.Y, 2, sheet, f)
	for i := range m.X {
		switch {
		case m.X[i] < 1e-9:
			s.Hold(i, 0, 0)
		case m.X[i] > 2-1e-9:
			s.Hold(i, 0, 0)
		}
		if m.Y[i] < 1e-9 {
			s.Hold(i, 1, 0)
		}
	}
	return s, f, m
}

// pull moves the far end of the strip.
func pull(s *System, m *Mesh, by float64) {
	for i := range m.X {
		if m.X[i] > 2-1e-9 {
			s.Hold(i, 0, by)
		}
	}
}

// reaction adds up the forces along x that hold the near end.
func reaction(s *System, m *Mesh, u []float64) float64 {
	sum := 0.0
	r := s.Residual(u)
	for i := range m.X {
		if m.X[i] < 1e-9 {
			sum -= r[2*i]
		}
	}
	return sum
}

// Two springs of the strip, 1 each, and that of the interface in a row.
func TestElasticInterface(t *testing.T) {
	s, f, m := splitStrip(3, Elastic(4, 1), 0)
	f.LinearLaw = true
	pull(s, m, 0.9)
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	want := 0.9 / (1 + 1 + 1./4)
	if got := reaction(s, m, sol.U); math.Abs(got-want) > 1e-12 {
		t.Errorf("force %g, want %g", got, want)
	}
	f.EachGap(sol.U, func(p int, across, along float64) {
		if math.Abs(across-want/4) > 1e-12 || math.Abs(along) > 1e-12 {
			t.Errorf("point %d: gap %g and %g, want %g and 0", p, across, along, want/4)
		}
	})
}

// Pressed together two sides carry; drawn apart they do not.
func TestTouchingInterface(t *testing.T) {
	for _, by := range []float64{-0.3, 0.3} {
		s, _, m := splitStrip(3, Touching(1e4, 0), 0)
		for i := range m.X { // loose sides need something to hold them in place
			s.Spring(i, 0, 1e-9)
		}
		pull(s, m, by)
		sol, err := s.Solve(Settings{})
		if err != nil {
			t.Fatal(err)
		}
		want := math.Min(by, 0) / (2 + 1e-4)
		if got := reaction(s, m, sol.U); math.Abs(got-want) > 1e-6 {
			t.Errorf("moved by %g: force %g, want %g", by, got, want)
		}
	}
}

// A crack under growing pull: the force follows the law exactly, unloads towards the
// origin, and the work spent until nothing is left is its energy.
func TestCohesiveInterface(t *testing.T) {
	const stiffness, strength, energy = 100.0, 0.1, 0.05
	s, f, m := splitStrip(2, nil, 0)
	c := NewCohesive(f.Points(), stiffness, strength, energy, 0.5)
	f.Law, f.Accepted = c.Law, c.Accepted
	var start []float64
	work, lastForce, lastPull := 0.0, 0.0, 0.0
	step := func(by float64) float64 {
		pull(s, m, by)
		sol, err := s.Solve(Settings{Start: start, Rounds: 200})
		if err != nil {
			t.Fatalf("pulled by %g: %v", by, err)
		}
		start = sol.U
		force := reaction(s, m, sol.U)
		work += (force + lastForce) / 2 * (by - lastPull)
		lastForce, lastPull = force, by
		return force
	}
	// The strip is 2 long with stiffness 1: w = pull − 2·force, force from the law.
	last, first := 2*energy/strength, strength/stiffness
	most := 0.0
	for k := 1; k <= 240; k++ {
		by := 1.2 * float64(k) / 240
		force := step(by)
		most = math.Max(most, force)
		w := by - 2*force
		want := stiffness * w
		if w > first {
			want = math.Max(0, strength*(last-w)/(last-first))
		}
		if math.Abs(force-want) > 1e-8 {
			t.Fatalf("gap %g: force %g, law %g", w, force, want)
		}
		if k == 120 { // back a little and forth again along the same line
			half := step(by * 0.8)
			if half >= force || math.Abs(step(by)-force) > 1e-8 {
				t.Errorf("force %g, back %g, again %g", force, half, lastForce)
			}
		}
	}
	if math.Abs(most-strength) > 0.01*strength {
		t.Errorf("largest force %g, strength %g", most, strength)
	}
	if math.Abs(work-energy) > 0.002*energy {
		t.Errorf("work %g, energy %g", work, energy)
	}
	if c.Left(2*last) != 0 || c.Left(0) != 1 {
		t.Error("share left at the ends of the law")
	}
}

// Starting from the solution takes one round at most and moves nothing.
func TestFromTheSolution(t *testing.T) {
	s, _, m := splitStrip(4, Touching(1e3, 1), 1e-3)
	pull(s, m, -0.1)
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	again, err := s.Solve(Settings{Start: sol.U})
	if err != nil || again.Rounds > 1 {
		t.Errorf("%d rounds, %v", again.Rounds, err)
	}
	for i := range sol.U {
		if math.Abs(again.U[i]-sol.U[i]) > 1e-14 {
			t.Fatalf("unknown %d moved by %g", i, again.U[i]-sol.U[i])
		}
	}
}

// A law that never settles must give back the last good state and name the joint.
func TestNotSettled(t *testing.T) {
	flip := 1.0
	s, _, m := splitStrip(2, func(int, Place, float64, float64) Traction {
		flip = -flip
		return Traction{Across: 0.5 * flip, Growth: [3]float64{1, 0, 1}}
	}, 0)
	pull(s, m, 0.1)
	sol, err := s.Solve(Settings{Rounds: 15, Workers: 1})
	var not *NotSettled
	if !errors.As(err, &not) {
		t.Fatalf("got %v", err)
	}
	if not.Part != "joint" || not.Element < 0 || math.Abs(not.X-1) > 1e-9 {
		t.Errorf("named %s element %d at x %g", not.Part, not.Element, not.X)
	}
	if !finite(sol.U) {
		t.Error("the state given back is not finite")
	}
	bad, _, m := splitStrip(2, func(_ int, _ Place, gap, _ float64) Traction {
		return Traction{Across: math.Sqrt(-1 - gap*gap), Growth: [3]float64{1, 0, 1}}
	}, 0)
	pull(bad, m, 0.1)
	if sol, err = bad.Solve(Settings{}); !errors.As(err, &not) || !finite(sol.U) {
		t.Errorf("a law that gives no number: %v", err)
	}
}

// What nothing holds is refused with its place.
func TestNothingHolds(t *testing.T) {
	m := GridMesh(Q4, EqualLines([]float64{0, 1}, []int{4}), EqualLines([]float64{0, 1}, []int{4}), nil)
	sheet := &Sheet{Mesh: m, Law: func(Place) Layer { return Layer{Thickness: 1, Stiffness: Isotropic(1, 0.2), Push: [2]float64{1, 0}} }}
	sol, err := NewSystem(m.X, m.Y, 2, sheet).Solve(Settings{})
	if err == nil || !finite(sol.U) {
		t.Errorf("a loose sheet: %v", err)
	}
}

// A strip on a bed that slips: while it shrinks each half slides towards the middle,
// and the stress there is the bed's limit over half the length, less the part near
// the middle that has not slid. The closed form is that of a bar on such a bed.
func TestSlippingBed(t *testing.T) {
	const half, stiffness, ks, limit, strain, thick = 10.0, 20e9, 1e9, 4e3, 400e-6, 0.15
	m := GridMesh(Q4, EqualLines([]float64{-half, half}, []int{400}), []float64{0, 0.05}, nil)
	sheet := &Sheet{Mesh: m, Law: func(Place) Layer {
		return Layer{Thickness: thick, Stiffness: Isotropic(stiffness, 0), FreeStrain: [3]float64{-strain, 0, 0}}
	}}
	bed := &Bed{Mesh: m}
	law := NewSlipping(bed.Points(), ks, func(Place) float64 { return limit })
	bed.Law, bed.Accepted = law.Law, law.Accepted
	s := NewSystem(m.X, m.Y, 2, sheet, bed)
	for i := range m.X {
		s.Hold(i, 1, 0)
	}
	sol, err := s.Solve(Settings{Rounds: 100})
	if err != nil {
		t.Fatal(err)
	}
	v, _ := sheet.StressAt(NewLocator(m), 0.02, 0.025, sol.U)
	got := v.XX
	// Within ±c of the middle the bed is elastic: u = −u1 sinh(x/λ)/sinh(c/λ) with
	// ks·u1 = limit; beyond, stress = limit·(half − x)/thick. Both stress and strain
	// match at c.
	lambda := math.Sqrt(stiffness * thick / ks)
	u1 := limit / ks
	at := func(c float64) float64 { // stress from inside less from outside, at c
		inside := stiffness * (strain - u1/lambda/math.Tanh(c/lambda))
		return inside - limit*(half-c)/thick
	}
	lo, hi := 1e-6, half
	for range 200 {
		if mid := (lo + hi) / 2; at(mid) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	want := stiffness * (strain - u1/lambda/math.Sinh(lo/lambda))
	if math.Abs(got-want) > 0.002*want {
		t.Errorf("stress in the middle %.5g Pa, closed form %.5g Pa (slid beyond %.3g m)", got, want, lo)
	}
}
