package fem

import (
	"math"
	"testing"
)

// The work of free strain is shared out: for displacement u the bed's work and the
// sheet's make ½∫σ:(−ε0) together, since no force acts from outside.
func TestEnergyBalance(t *testing.T) {
	for _, shape := range []*Shape{T3, T6, Q4, Q8, Q25} {
		m := solveM(t, GridMesh(shape, EqualLines([]float64{0, 9, 10.2, 24}, []int{9, 2, 14}), EqualLines([]float64{0, 6, 6.9, 15}, []int{6, 2, 8}), onSlab))
		free := 0.0 // ½∫ t·ε0:D:(ε0 − ε), from the mean stress of each point
		var g geometry
		var own [2 * maxNodes]float64
		for e := range m.sheet.Elements() {
			g.gather(m.sheet.Mesh, e)
			ue := m.sheet.ownOf(e, m.u, own[:])
			for p := range shape.rule {
				area := g.at(shape, p)
				layer := shrinking(Place{})
				v := times(&layer.Stiffness, g.strain(shape.Nodes, ue, layer.FreeStrain))
				free -= area * layer.Thickness / 2 * (v[0]*layer.FreeStrain[0] + v[1]*layer.FreeStrain[1])
			}
		}
		if whole := m.e.Sheet + m.e.Bed; math.Abs(whole-free) > 1e-9*whole {
			t.Errorf("%s: stored %.12g J, half the work of the free strain %.12g J", shape.Name, whole, free)
		}
	}
}

// What the ground answers is the wheel and the weight, whatever has lifted.
func TestGroundCarriesAll(t *testing.T) {
	for _, kind := range []*PlateShape{ACM, MITC4, DKT} {
		m := solveP(t, "P3", kind, GridMesh(kind.Mesh, EqualLines([]float64{0, 9, 10.2, 11.875, 12.125, 21, 24}, []int{9, 2, 3, 1, 9, 3}), EqualLines([]float64{0, 0.125, 0.375, 6, 6.9, 13, 15}, []int{1, 1, 7, 2, 6, 3}), onSlab))
		var g geometry
		var f plateField
		var own [plateUnknowns]float64
		carried, area := 0.0, 0.0
		for e := range m.plate.Elements() {
			g.gather(m.plate.Mesh, e)
			ue := m.plate.ownOf(e, m.u, own[:])
			for _, r := range kind.rule {
				a, at := m.plate.fieldAt(&g, e, r.xi, r.eta, &f)
				p, _ := m.plate.Ground(at, dot(f.w[:len(ue)], ue))
				carried += a * r.weight * p
				area += a * r.weight
			}
		}
		if want := 40e3 + selfWeight*area; math.Abs(carried-want) > 1e-9*want {
			t.Errorf("%s: the ground carries %.10g N of %.10g N", kind.Name, carried, want)
		}
	}
}

// A uniform pressure on uniform ground sinks a free slab evenly and bends nothing.
func TestUniformPressure(t *testing.T) {
	bending, shear := IsotropicPlate(20e9, 0.2, 0.15)
	for name, kind := range kindsByName {
		m := GridMesh(kind.Mesh, EqualLines([]float64{0, 3}, []int{5}), EqualLines([]float64{0, 2}, []int{4}), nil)
		p := &Plate{Mesh: m, Kind: kind, Ground: PushOnly(50e6), Law: func(Place) PlateLayer { return PlateLayer{Bending: bending, Shear: shear, Load: 5e3} }}
		sol, err := NewSystem(m.X, m.Y, kind.Unknowns, p).Solve(Settings{})
		if err != nil {
			t.Fatal(err)
		}
		l := NewLocator(m)
		for _, at := range [][2]float64{{0, 0}, {1.1, 0.7}, {3, 2}} {
			w, v, _ := p.At(l, at[0], at[1], sol.U)
			if math.Abs(w-1e-4) > 1e-12 || math.Abs(v.XX)+math.Abs(v.YY)+math.Abs(v.XY) > 1e-3 {
				t.Errorf("%s at %v: w %g m, moment %v N", name, at, w, v)
			}
		}
	}
}

// Deflection at b under a force at a is that at a under the force at b.
func TestMaxwell(t *testing.T) {
	bending, shear := IsotropicPlate(20e9, 0.2, 0.15)
	a, b := [2]float64{0.4, 0.3}, [2]float64{2.3, 1.6}
	for name, kind := range kindsByName {
		m := GridMesh(kind.Mesh, EqualLines([]float64{0, 3}, []int{7}), EqualLines([]float64{0, 2}, []int{5}), nil)
		l := NewLocator(m)
		at := func(load, look [2]float64) float64 {
			p := &Plate{Mesh: m, Kind: kind, Ground: TwoWay(50e6), LinearGround: true, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending, Shear: shear} }}
			s := NewSystem(m.X, m.Y, kind.Unknowns, p)
			s.PushAll(p.PointForce(l, load[0], load[1], 40e3))
			sol, err := s.Solve(Settings{})
			if err != nil {
				t.Fatal(err)
			}
			w, _, _ := p.At(l, look[0], look[1], sol.U)
			return w
		}
		if ab, ba := at(a, b), at(b, a); math.Abs(ab-ba) > 1e-9*math.Abs(ab)+1e-14 {
			t.Errorf("%s: %g and %g", name, ab, ba)
		}
	}
}

// order returns the power of the step with which the energy error falls, from three
// meshes each twice as fine.
func order(energy func(steps int) float64, steps int) float64 {
	a, b, c := energy(steps), energy(2*steps), energy(4*steps)
	return math.Log2(math.Abs(a-b) / math.Abs(b-c))
}

// Where nothing is singular the energy converges with twice the order of the strain
// that an element can follow.
func TestOrderOfSheets(t *testing.T) {
	for shape, want := range map[*Shape]float64{T3: 2, Q4: 2, T6: 4, Q8: 4, Q25: 8} {
		steps := map[*Shape]int{T3: 6, Q4: 6, T6: 3, Q8: 3, Q25: 2}[shape]
		got := order(func(n int) float64 {
			m := unitGrid(shape, n, n)
			sheet := &Sheet{Mesh: m, Law: func(p Place) Layer {
				return Layer{Thickness: 1, Stiffness: Isotropic(1, 0.3), FreeStrain: [3]float64{math.Cos(math.Pi*p.X) * math.Cos(2*math.Pi*p.Y), math.Cos(math.Pi * p.Y), 0}, Bed: 3}
			}}
			s := NewSystem(m.X, m.Y, 2, sheet)
			for i := range m.X { // with even strain the solution goes on smoothly across sides that slide
				if x := m.X[i]; x < 1e-9 || x > 1-1e-9 {
					s.Hold(i, 0, 0)
				}
				if y := m.Y[i]; y < 1e-9 || y > 1-1e-9 {
					s.Hold(i, 1, 0)
				}
			}
			sol, err := s.Solve(Settings{})
			if err != nil {
				t.Fatal(err)
			}
			e := sheet.Energy(sol.U)
			return e.Sheet + e.Bed
		}, steps)
		if got < want-0.35 {
			t.Errorf("%s: energy converges with order %.2f, want %g", shape.Name, got, want)
		}
	}
}

// The same for plates, by the deflection in the middle of a supported square.
func TestOrderOfPlates(t *testing.T) {
	for kind, want := range map[*PlateShape]float64{ACM: 2, BFS: 4, DKT: 2, MITC4: 2, MITC3: 2} {
		got := order(func(n int) float64 {
			q := quarter{kind: kind, steps: n, aspect: 1, poisson: 0.3, thickness: 0.1, pressure: 1}
			p, u := q.solve(t)
			w, _, _ := p.At(NewLocator(p.Mesh), 0, 0, u)
			return w
		}, 3)
		if got < want-0.35 {
			t.Errorf("%s: deflection converges with order %.2f, want %g", kind.Name, got, want)
		}
	}
}

// Model M on uniform meshes converges like the step to the power 1.09, the exponent
// of the inside corners, whatever the element.
func TestOrderAtInsideCorners(t *testing.T) {
	for _, shape := range []*Shape{Q4, Q8} {
		if shape == Q8 && !*large {
			continue
		}
		got := order(func(k int) float64 {
			m := solveM(t, standardMesh(shape, k))
			return m.e.Sheet + m.e.Bed
		}, 1)
		if math.Abs(got-1.09) > 0.12 {
			t.Errorf("%s: order %.3f, want 1.09", shape.Name, got)
		}
	}
}

func TestLocator(t *testing.T) {
	for _, shape := range []*Shape{T3, Q4, T6, Q8, Q25} {
		m := crooked(shape, 0.2)
		l := NewLocator(m)
		if n := len(l.Find(3.01, 1)); n != 0 {
			t.Errorf("%s: %d elements outside", shape.Name, n)
		}
		var g geometry
		for _, at := range [][2]float64{{0, 0}, {1.5, 0.9}, {2.99, 1.99}, {0.3, 1.7}} {
			hits := l.Find(at[0], at[1])
			if len(hits) == 0 {
				t.Errorf("%s: nothing at %v", shape.Name, at)
			}
			for _, h := range hits {
				g.gather(m, h.Element)
				g.atLocal(shape, h.Xi, h.Eta)
				if x, y := g.place(); math.Hypot(x-at[0], y-at[1]) > 1e-9 {
					t.Errorf("%s: found %v at %g, %g", shape.Name, at, x, y)
				}
			}
		}
		corner := l.Find(m.X[m.Of(0)[1]], m.Y[m.Of(0)[1]])
		if len(corner) < 2 {
			t.Errorf("%s: %d elements touch a shared corner", shape.Name, len(corner))
		}
	}
}
