package fem

import (
	"math"
	"testing"
)

// mapped moves the nodes of a mesh.
func mapped(m *Mesh, to func(x, y float64) (float64, float64)) *Mesh {
	for i := range m.X {
		m.X[i], m.Y[i] = to(m.X[i], m.Y[i])
	}
	return m
}

func unitGrid(shape *Shape, nx, ny int) *Mesh {
	return GridMesh(shape, EqualLines([]float64{0, 1}, []int{nx}), EqualLines([]float64{0, 1}, []int{ny}), nil)
}

func solveSheet(t *testing.T, m *Mesh, law Layer, hold func(s *System, i int), force []float64) (*Sheet, []float64) {
	t.Helper()
	if err := m.Check(); err != nil {
		t.Fatal(err)
	}
	sheet := &Sheet{Mesh: m, Law: func(Place) Layer { return law }}
	s := NewSystem(m.X, m.Y, 2, sheet)
	for i := range m.X {
		hold(s, i)
	}
	s.PushAll(force)
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	return sheet, sol.U
}

// symmetric holds what must not move on the axes.
func symmetric(m *Mesh) func(s *System, i int) {
	return func(s *System, i int) {
		if math.Abs(m.X[i]) < 1e-9 {
			s.Hold(i, 0, 0)
		}
		if math.Abs(m.Y[i]) < 1e-9 {
			s.Hold(i, 1, 0)
		}
	}
}

func ellipticMembrane(t *testing.T) float64 {
	m := mapped(unitGrid(Q8, 24, 48), func(r, a float64) (float64, float64) {
		r, a = r*r*0.5+r*0.5, a*math.Pi/2
		return (2 + 1.25*r) * math.Cos(a), (1 + 1.75*r) * math.Sin(a)
	})
	force := m.SideForce(0.1, func(x, y, nx, ny float64) (float64, float64) {
		if math.Abs(x*x/(3.25*3.25)+y*y/(2.75*2.75)-1) > 0.01 {
			return 0, 0
		}
		return 10e6 * nx, 10e6 * ny
	})
	sheet, u := solveSheet(t, m, Layer{Thickness: 0.1, Stiffness: Isotropic(210e9, 0.3)}, symmetric(m), force)
	v, _ := sheet.StressAt(NewLocator(m), 2, 0, u)
	return v.YY / 1e6
}

func cook(t *testing.T) (*Sheet, []float64) {
	// Lines crowd towards the upper left corner, where stress is singular, and the
	// place x = 24 is on a line.
	xs := GradedLines([]float64{0, 0.5, 1}, []float64{1e-4, 0, 0}, 1.5, 0.125)
	ys := GradedLines([]float64{0, 1}, []float64{1e-4, 1e-4}, 1.5, 0.125)
	m := mapped(GridMesh(Q25, xs, ys, nil), func(x, y float64) (float64, float64) {
		return 48 * x, 44*x + y*(44-28*x)
	})
	force := m.SideForce(1, func(x, _, nx, _ float64) (float64, float64) {
		if x < 48-1e-9 || nx < 0.999 {
			return 0, 0
		}
		return 0, 1. / 16
	})
	return solveSheet(t, m, Layer{Thickness: 1, Stiffness: Isotropic(1, 1./3)}, func(s *System, i int) {
		if m.X[i] < 1e-9 {
			s.Hold(i, 0, 0)
			s.Hold(i, 1, 0)
		}
	}, force)
}

// stripPeak returns the largest stress over the mean one of a long strip of width 1
// with a hole of the given share of the width.
func stripPeak(t *testing.T, share float64) float64 {
	const long, turn = 3.0, 0.75 // the outline turns from the side to the end there
	a := share / 2
	m := mapped(unitGrid(Q25, 10, 24), func(r, s float64) (float64, float64) {
		c, n := math.Cos(s*math.Pi/2), math.Sin(s*math.Pi/2)
		x, y := 0.5, long
		if s < turn {
			k := s / turn
			y = long * (0.2*k + 0.8*k*k*k)
		} else {
			x = 0.5 * (1 - s) / (1 - turn)
		}
		r *= 0.2 + 0.8*r
		return a*c + r*(x-a*c), a*n + r*(y-a*n)
	})
	force := m.SideForce(1, func(_, y, _, ny float64) (float64, float64) {
		if y < long-1e-6 || ny < 0.999 {
			return 0, 0
		}
		return 0, 1
	})
	sheet, u := solveSheet(t, m, Layer{Thickness: 1, Stiffness: Isotropic(1, 0.3)}, symmetric(m), force)
	v, _ := sheet.StressAt(NewLocator(m), a, 0, u)
	return v.YY
}

// lDomain returns the energy of the L-shaped domain loaded on its outline by the
// stresses of its first mode, side 1, plane strain, modulus 1, Poisson's ratio 0.3.
//
// Source: Szabó and Babuška, Finite element analysis (1991), section 4.2.
func lDomain(t *testing.T) float64 {
	const nu, lambda, q = 0.3, 0.544483737, 0.543075579
	g := 1 / (2 * (1 + nu))
	xs := GradedLines([]float64{-1, 0, 1}, []float64{0, 1e-5, 0}, 1.5, 0.3)
	m := GridMesh(Q25, xs, xs, func(x, y float64) bool { return x < 0 || y > 0 })
	m = mapped(m, func(x, y float64) (float64, float64) { // the corner's middle line along x
		s := math.Sqrt(0.5)
		return s * (-x + y), s * (-x - y)
	})
	stress := func(x, y float64) (xx, yy, xy float64) {
		r, a := math.Hypot(x, y), math.Atan2(y, x)
		f := lambda * math.Pow(r, lambda-1)
		k := 2 - q*(lambda+1)
		xx = f * (k*math.Cos((lambda-1)*a) - (lambda-1)*math.Cos((lambda-3)*a))
		yy = f * ((2+q*(lambda+1))*math.Cos((lambda-1)*a) + (lambda-1)*math.Cos((lambda-3)*a))
		xy = f * ((lambda-1)*math.Sin((lambda-3)*a) + q*(lambda+1)*math.Sin((lambda-1)*a))
		return xx, yy, xy
	}
	force := m.SideForce(1, func(x, y, nx, ny float64) (float64, float64) {
		if math.Abs(x*nx+y*ny) < 0.5 {
			return 0, 0 // the two sides that meet in the corner
		}
		xx, yy, xy := stress(x, y)
		return xx*nx + xy*ny, xy*nx + yy*ny
	})
	d := 2 * g * (1 - nu) / (1 - 2*nu)
	side := 2 * g * nu / (1 - 2*nu)
	law := Layer{Thickness: 1, Stiffness: [6]float64{d, side, d, 0, 0, g}}
	far := nodeAt(m, math.Sqrt(2), 0)
	sheet, u := solveSheet(t, m, law, func(s *System, i int) {
		if m.X[i] == 0 && m.Y[i] == 0 {
			s.Hold(i, 0, 0)
			s.Hold(i, 1, 0)
		}
		if i == far {
			s.Hold(i, 1, 0)
		}
	}, force)
	return sheet.Energy(u).Sheet
}

// kirsch is a quarter of a ring of radii 1 and 4, pulled on the outer arc as a wide
// sheet with a small hole would be there.
//
// Source: Timoshenko and Goodier, Theory of elasticity, art. 35.
func kirsch(t *testing.T) (*Sheet, []float64) {
	t.Helper()
	m := mapped(unitGrid(Q25, 12, 12), func(r, a float64) (float64, float64) {
		r, a = 1+3*r*(0.3+0.7*r), a*math.Pi/2
		return r * math.Cos(a), r * math.Sin(a)
	})
	force := m.SideForce(1, func(x, y, nx, ny float64) (float64, float64) {
		if x*x+y*y < 15.9 || x*nx+y*ny < 3.9 {
			return 0, 0
		}
		a, q := math.Atan2(y, x), 1/(x*x+y*y)
		rr := (1-q)/2 + (1-4*q+3*q*q)/2*math.Cos(2*a)
		ra := -(1 + 2*q - 3*q*q) / 2 * math.Sin(2*a)
		c, s := math.Cos(a), math.Sin(a)
		return rr*c - ra*s, rr*s + ra*c
	})
	return solveSheet(t, m, Layer{Thickness: 1, Stiffness: Isotropic(1, 0.3)}, symmetric(m), force)
}

func TestPlaneStress(t *testing.T) {
	ring, ringU := kirsch(t)
	membrane, membraneU := cook(t)
	at := NewLocator(membrane.Mesh)
	for _, r := range readTable(t, "plane_stress.csv") {
		switch r.quantity {
		case "LE1 stress":
			r.compare(t, ellipticMembrane(t))
		case "Cook deflection":
			r.compare(t, membraneU[2*nodeAt(membrane.Mesh, 48, 52)+1])
		case "Cook largest stress":
			v, _ := membrane.StressAt(at, r.num(t, "x"), r.num(t, "y"), membraneU)
			most, _, _ := v.Principal()
			r.compare(t, most)
		case "Cook least stress":
			v, _ := membrane.StressAt(at, r.num(t, "x"), r.num(t, "y"), membraneU)
			_, least, _ := v.Principal()
			r.compare(t, least)
		case "Kirsch hoop":
			v, _ := ring.StressAt(NewLocator(ring.Mesh), r.num(t, "x"), r.num(t, "y"), ringU)
			r.compare(t, v.XX+v.YY) // no stress across the hole's edge
		case "strip peak":
			r.compare(t, stripPeak(t, r.num(t, "share")))
		case "L energy":
			r.compare(t, lDomain(t))
		default:
			t.Errorf("row %s: no answer to %q", r.id, r.quantity)
		}
	}
}
