package fem

import (
	"fmt"
	"math"
	"testing"
)

// Answers found a second way, without elements: by integrals, series and closed forms.

// wheelByHankel returns the deflection and the sum of moments over 1 + ν at a distance
// r from a load of 1 on a circle of radius a, on an endless plate whose stiffness and
// ground are 1; soft is bending by shear stiffness, 0 for a thin plate.
//
// Source: the transform of D·∇⁴w + (1 − D/S·∇²)(k·w − q) = 0, as for thin plates in
// Timoshenko and Woinowsky-Krieger, Theory of plates and shells, art. 57; that of a
// uniform load on a circle is 2·J1(a·s)/(a·s).
func wheelByHankel(r, a, soft float64) (w, moments float64) {
	const step, end = 0.002, 60
	for s := step / 2; s < end; s += step {
		load := math.J1(a*s) / (math.Pi * a) // times s ds
		c := 1 + soft*s*s
		sunk := c / (s*s*s*s + c)
		bessel := math.J0(r*s) * load * step
		w += sunk * bessel
		moments += (1 - sunk) / (s * s) * bessel
	}
	return w, moments
}

func TestWheelByHankel(t *testing.T) {
	const a, nu = 0.2, 0.2
	for _, c := range []struct {
		kind *PlateShape
		soft float64
		tol  float64
	}{{BFS, 0, 1e-3}, {Quartic, 0.01, 1e-3}, {Quartic, 0.1, 1e-3}, {MITC4, 0.1, 4e-3}} {
		lines := GradedLines([]float64{0, a, 2 * a, 12}, []float64{a / 10, a / 10, a / 5, 0}, 1.2, 0.25)
		if c.kind == Quartic {
			lines = GradedLines([]float64{0, a, 2 * a, 12}, []float64{a / 4, a / 4, a / 2, 0}, 1.5, 1)
		}
		m := GridMesh(c.kind.Mesh, lines, lines, nil)
		bending, _ := IsotropicPlate(12*(1-nu*nu), nu, 1)
		p := &Plate{Mesh: m, Kind: c.kind, Ground: TwoWay(1), LinearGround: true, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending, Shear: 1 / c.soft} }}
		s := NewSystem(m.X, m.Y, c.kind.Unknowns, p)
		holdSymmetric(s, m)
		circle := wheelCircle(a)
		for k := range circle {
			circle[k][0] -= a
		}
		force, _ := p.PatchForce(circle, 1/(math.Pi*a*a))
		s.PushAll(force)
		sol, err := s.Solve(Settings{})
		if err != nil {
			t.Fatal(err)
		}
		at := NewLocator(m)
		w0, m0 := wheelByHankel(0, a, c.soft)
		for _, r := range []float64{0, 0.1, 0.5, 1, 2, 4} {
			want, sum := wheelByHankel(r, a, c.soft)
			w, moment, _ := p.At(at, r, 0, sol.U)
			if math.Abs(w-want) > c.tol*w0 {
				t.Errorf("%s, shear %g, r %g: w %.6f, by the integral %.6f", c.kind.Name, c.soft, r, w, want)
			}
			if got := (moment.XX + moment.YY) / (1 + nu); math.Abs(got-sum) > 10*c.tol*m0 {
				t.Errorf("%s, shear %g, r %g: moments %.6f, by the integral %.6f", c.kind.Name, c.soft, r, got, sum)
			}
		}
	}
}

// holdSymmetric keeps slopes zero across the axes.
func holdSymmetric(s *System, m *Mesh) {
	for i := range m.X {
		onX, onY := m.X[i] == 0, m.Y[i] == 0
		if onX {
			s.Hold(i, 1, 0)
		}
		if onY {
			s.Hold(i, 2, 0)
		}
		if s.Block == 4 && (onX || onY) {
			s.Hold(i, 3, 0)
		}
	}
}

// supportedByFourier returns the deflection and moment x in the middle of a simply
// supported unit square on ground, bending stiffness and pressure 1.
//
// Source: Navier's double series, Timoshenko and Woinowsky-Krieger, art. 28 and 60,
// with shear as in [wheelByHankel].
func supportedByFourier(nu, ground, soft float64) (w, mx float64) {
	for i := 1; i < 400; i += 2 {
		for j := 1; j < 400; j += 2 {
			x, y := float64(i)*math.Pi, float64(j)*math.Pi
			s := x*x + y*y
			c := 1 + soft*s
			sign := 1 - float64((i+j-2)%4)
			load := sign * 16 / (x * y)
			sunk := load * c / (s*s + ground*c)
			w += sunk
			// The sum of moments has the load less the ground for its curvature.
			phi := (load - ground*sunk) / (s * s)
			mx += phi * (x*x + nu*y*y)
		}
	}
	return w, mx
}

func TestSupportedByFourier(t *testing.T) {
	const nu = 0.2
	for _, c := range []struct {
		kind         *PlateShape
		steps        int
		ground, soft float64
		tol          float64
	}{{BFS, 32, 0, 0, 2e-4}, {BFS, 32, 3000, 0, 2e-4}, {ACM, 32, 3000, 0, 3e-3}, {DKT, 32, 3000, 0, 3e-3}, {Quartic, 6, 3000, 1e-4, 2e-4}, {Quartic, 6, 3000, 0.01, 2e-4}, {MITC4, 32, 3000, 0.01, 3e-3}, {MITC3, 32, 3000, 0.01, 1e-2}} {
		q := quarter{kind: c.kind}
		lines := EqualLines([]float64{0, 0.5}, []int{c.steps})
		q.aspect = 1
		m := GridMesh(c.kind.Mesh, lines, lines, nil)
		bending, _ := IsotropicPlate(12*(1-nu*nu), nu, 1)
		p := &Plate{Mesh: m, Kind: c.kind, Ground: TwoWay(c.ground), LinearGround: true, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending, Shear: 1 / c.soft, Load: 1} }}
		s := NewSystem(m.X, m.Y, c.kind.Unknowns, p)
		for i := range m.X {
			q.hold(s, i, m.X[i], m.Y[i])
		}
		sol, err := s.Solve(Settings{})
		if err != nil {
			t.Fatal(err)
		}
		w, moment, _ := p.At(NewLocator(m), 0, 0, sol.U)
		wantW, wantM := supportedByFourier(nu, c.ground, c.soft)
		name := fmt.Sprintf("%s, ground %g, shear %g", c.kind.Name, c.ground, c.soft)
		if math.Abs(w-wantW) > c.tol*wantW {
			t.Errorf("%s: w %.8f, by the series %.8f", name, w, wantW)
		}
		if math.Abs(moment.XX-wantM) > 10*c.tol*wantM {
			t.Errorf("%s: moment %.7f, by the series %.7f", name, moment.XX, wantM)
		}
	}
}

// A strip on springs that shrinks moves by ε0·sinh(βx)/(β·cosh(βL/2)), β² = bed/(E·t).
//
// Source: the bar on a bed, −E·t·u″ + bed·u = 0 with free ends; as for friction bars in
// Hetényi, Beams on elastic foundation (1946), for the exponential form.
func TestStripByClosedForm(t *testing.T) {
	const e, thick, bed, shrunk, length = 20e9, 0.15, 10e6, -300e-6, 30.0
	beta := math.Sqrt(bed / (e * thick))
	for shape, tol := range map[*Shape]float64{T3: 2e-3, Q4: 2e-3, T6: 1e-5, Q8: 1e-5, Q25: 1e-8} {
		m := GridMesh(shape, EqualLines([]float64{0, length / 2}, []int{24}), []float64{0, 0.5, 1}, nil)
		sheet := &Sheet{Mesh: m, Law: func(Place) Layer {
			return Layer{Thickness: thick, Stiffness: Isotropic(e, 0), FreeStrain: [3]float64{shrunk, 0, 0}, Bed: bed}
		}}
		s := NewSystem(m.X, m.Y, 2, sheet)
		for i := range m.X {
			s.Hold(i, 1, 0)
			if m.X[i] == 0 {
				s.Hold(i, 0, 0)
			}
		}
		sol, err := s.Solve(Settings{})
		if err != nil {
			t.Fatal(err)
		}
		end := shrunk * math.Tanh(beta*length/2) / beta
		for i := range m.X {
			want := shrunk * math.Sinh(beta*m.X[i]) / (beta * math.Cosh(beta*length/2))
			if math.Abs(sol.U[2*i]-want) > tol*math.Abs(end) {
				t.Fatalf("%s at x %g: %g, closed form %g", shape.Name, m.X[i], sol.U[2*i], want)
			}
		}
	}
}

// liftedStrip returns how far from its edge a wide slab under free curvature, held to a
// cylinder, leaves the ground, and the deflection of the edge.
//
// Where the slab rests it is a beam on a bed, w = q/k + exp(−βs)(A·cos βs + B·sin βs);
// where it does not it carries its weight q as a cantilever. Equal deflection (none),
// moment and shear where they meet give (c + 1/β)² = 2·D·κ/q.
//
// Source: derived here from the equation of the beam on a bed, Hetényi, Beams on
// elastic foundation (1946), ch. 2.
func liftedStrip(d, k, q, curl float64) (c, edge float64) {
	beta := math.Pow(k/(4*d), 0.25)
	c = math.Sqrt(2*d*curl/q) - 1/beta
	a := -q / k
	b := a - q*c/(2*d*beta*beta*beta)
	edge = beta*(a+b)*c + (q*c*c/(2*d)-curl)*c*c/2 - q/d*c*c*c*c/6 + q*c*c*c*c/(24*d)
	return c, edge
}

// A slab that curls off the ground, between two lines of symmetry 12 m apart. The
// deflection of its edge must not depend on where the lines of the mesh fall when the
// ground is integrated in pieces.
func TestLiftedStrip(t *testing.T) {
	const e, nu, h, k, q, curl = 20e9, 0.2, 0.15, 50e6, 3.6e3, 6.6667e-4
	bending, _ := IsotropicPlate(e, nu, h)
	c, edge := liftedStrip(bending[0], k, q, curl*(1+nu)) // held along the strip it wants to curl by ν more
	worst := [2]float64{}
	for way, split := range []int{0, 8} {
		for _, steps := range []int{50, 53, 57, 61} {
			m := GridMesh(Q4, EqualLines([]float64{0, 6}, []int{steps}), []float64{0, 0.2}, nil)
			p := &Plate{Mesh: m, Kind: BFS, Ground: PushOnly(k), GroundSplit: split, Law: func(Place) PlateLayer {
				return PlateLayer{Bending: bending, FreeCurvature: [3]float64{-curl, -curl, 0}, Load: q}
			}}
			s := NewSystem(m.X, m.Y, 4, p)
			for i := range m.X {
				s.Hold(i, 2, 0)
				s.Hold(i, 3, 0)
				if m.X[i] == 0 {
					s.Hold(i, 1, 0)
				}
			}
			sol, err := s.Solve(Settings{})
			if err != nil {
				t.Fatal(err)
			}
			w, _, _ := p.At(NewLocator(m), 6, 0.1, sol.U)
			worst[way] = math.Max(worst[way], math.Abs(w/edge-1))
			if split > 0 {
				if contact := p.Energy(sol.U).Contact; math.Abs(contact*6-(6-c)) > 2e-3 {
					t.Errorf("%d steps: touches to %.5f m, closed form %.5f m", steps, contact*6, 6-c)
				}
			}
		}
	}
	t.Logf("edge %.6g m, lifted %.4f m; deflection off by %.2g as it is, %.2g in pieces", edge, c, worst[0], worst[1])
	if worst[1] > 2e-5 || worst[1] > worst[0]/4 {
		t.Errorf("the edge is off by %.2g, in pieces by %.2g", worst[0], worst[1])
	}
}
