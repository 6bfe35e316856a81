package fem

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// crooked is a mesh of a 3 by 2 rectangle whose inner nodes are moved about, sides of
// elements staying straight.
func crooked(shape *Shape, amount float64) *Mesh {
	m := GridMesh(shape, EqualLines([]float64{0, 3}, []int{3}), EqualLines([]float64{0, 2}, []int{2}), nil)
	moved := func(x, y float64) (float64, float64) {
		if shape == Q25 { // its corners only may move for straight sides; see below
			return x, y
		}
		i, j := math.Floor(x+0.5), math.Floor(y+0.5)
		dx, dy := 0.0, 0.0
		if i > 0 && i < 3 && j > 0 && j < 2 {
			dx, dy = amount*math.Sin(3*i+j), amount*math.Cos(i+2*j)
		}
		return dx, dy
	}
	if shape == Q25 {
		return m
	}
	corner := map[[2]int][2]float64{}
	for e := range m.Elements() {
		for _, n := range m.Of(e)[:shape.Corners] {
			dx, dy := moved(m.X[n], m.Y[n])
			corner[[2]int{int(n), 0}] = [2]float64{m.X[n] + dx, m.Y[n] + dy}
		}
	}
	for k, p := range corner {
		m.X[k[0]], m.Y[k[0]] = p[0], p[1]
	}
	for e := range m.Elements() {
		of := m.Of(e)
		for k := shape.Corners; k < shape.Nodes; k++ {
			a, b := of[k-shape.Corners], of[(k-shape.Corners+1)%shape.Corners]
			m.X[of[k]], m.Y[of[k]] = (m.X[a]+m.X[b])/2, (m.Y[a]+m.Y[b])/2
		}
	}
	return m
}

// The patch test: with the outline moved as in constant strain, every element of a
// crooked mesh must show exactly that strain.
func TestPatchSheet(t *testing.T) {
	d := Isotropic(3, 0.3)
	for _, shape := range []*Shape{T3, T6, Q4, Q8, Q25} {
		m := crooked(shape, 0.2)
		if err := m.Check(); err != nil {
			t.Fatal(err)
		}
		sheet := &Sheet{Mesh: m, Law: func(Place) Layer { return Layer{Thickness: 0.5, Stiffness: d} }}
		s := NewSystem(m.X, m.Y, 2, sheet)
		for i := range m.X {
			if x, y := m.X[i], m.Y[i]; x < 1e-9 || y < 1e-9 || x > 3-1e-9 || y > 2-1e-9 {
				s.Hold(i, 0, 0.01*x+0.03*y)
				s.Hold(i, 1, 0.002*x-0.02*y)
			}
		}
		sol, err := s.Solve(Settings{})
		if err != nil {
			t.Fatal(err)
		}
		want := times(&d, [3]float64{0.01, -0.02, 0.032})
		for _, got := range sheet.CentreStress(sol.U) {
			if math.Abs(got.XX-want[0])+math.Abs(got.YY-want[1])+math.Abs(got.XY-want[2]) > 1e-13 {
				t.Errorf("%s: stress %v, want %v", shape.Name, got, want)
			}
		}
	}
}

// The patch test for bending: with w, slopes and twist held on the outline as in
// constant curvature, the inside must follow.
func TestPatchPlate(t *testing.T) {
	const a, b, c = 0.3, -0.2, 0.15 // w = ½(a x² + b y²) + c x y
	bending, shear := IsotropicPlate(12, 0.3, 0.1)
	for _, kind := range []*PlateShape{ACM, BFS, DKT, Quartic} {
		amount := 0.2
		if kind.Upright {
			amount = 0
		}
		m := crooked(kind.Mesh, amount)
		p := &Plate{Mesh: m, Kind: kind, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending, Shear: shear} }}
		if err := p.Check(); err != nil {
			t.Fatal(err)
		}
		s := NewSystem(m.X, m.Y, kind.Unknowns, p)
		for i := range m.X {
			x, y := m.X[i], m.Y[i]
			if x < 1e-9 || y < 1e-9 || x > 3-1e-9 || y > 2-1e-9 {
				for u, v := range []float64{(a*x*x+b*y*y)/2 + c*x*y, a*x + c*y, b*y + c*x, c}[:kind.Unknowns] {
					s.Hold(i, u, v)
				}
			}
		}
		sol, err := s.Solve(Settings{})
		if err != nil {
			t.Fatal(err)
		}
		l := NewLocator(m)
		want := times(&bending, [3]float64{a, b, 2 * c})
		for _, at := range [][2]float64{{0.5, 0.5}, {1.3, 0.8}, {2.9, 1.7}} {
			w, got, n := p.At(l, at[0], at[1], sol.U)
			if n == 0 || math.Abs(got.XX+want[0])+math.Abs(got.YY+want[1])+math.Abs(got.XY+want[2]) > 1e-12 {
				t.Errorf("%s at %v: moment %v, want %v", kind.Name, at, got, want)
			}
			if exact := (a*at[0]*at[0]+b*at[1]*at[1])/2 + c*at[0]*at[1]; math.Abs(w-exact) > 1e-12 {
				t.Errorf("%s at %v: w %g, want %g", kind.Name, at, w, exact)
			}
		}
	}
}

// A free plate that would curl does so without moment, whatever the element; the
// tied thick elements bend to constant curvature by themselves.
func TestFreeCurl(t *testing.T) {
	bending, shear := IsotropicPlate(12, 0.3, 0.1)
	for _, kind := range []*PlateShape{ACM, BFS, DKT, MITC4, MITC3, Quartic} {
		m := GridMesh(kind.Mesh, EqualLines([]float64{0, 3}, []int{6}), EqualLines([]float64{0, 2}, []int{4}), nil)
		p := &Plate{Mesh: m, Kind: kind, Law: func(Place) PlateLayer {
			return PlateLayer{Bending: bending, Shear: shear, FreeCurvature: [3]float64{0.02, 0.02, 0}}
		}}
		s := NewSystem(m.X, m.Y, kind.Unknowns, p)
		for _, at := range [][2]float64{{0, 0}, {3, 0}, {0, 2}} {
			s.Hold(nodeAt(m, at[0], at[1]), 0, 0)
		}
		sol, err := s.Solve(Settings{})
		if err != nil {
			t.Fatal(err)
		}
		e := p.Energy(sol.U)
		if e.Plate > 1e-15 {
			t.Errorf("%s: %g J stored in a free plate", kind.Name, e.Plate)
		}
		// w = 0.01(x² + y²) less the plane through the three corners.
		w, _, _ := p.At(NewLocator(m), 3, 2, sol.U)
		if math.Abs(w) > 1e-10 { // rounding, a plate 30 times as long as thick
			t.Errorf("%s: fourth corner at %g, want 0", kind.Name, w)
		}
	}
}

// derivativeParts are parts of every sort, on one mesh each.
func derivativeParts() map[string]Part {
	parts := map[string]Part{}
	for _, shape := range []*Shape{T3, T6, Q4, Q8, Q25} {
		m := crooked(shape, 0.2)
		parts["sheet "+shape.Name] = &Sheet{Mesh: m, Law: func(p Place) Layer {
			return Layer{Thickness: 0.3, Stiffness: [6]float64{5, 1, 4, 0.3, -0.2, 2}, FreeStrain: [3]float64{0.1, 0.2, p.X}, Bed: 1 + p.Y, Push: [2]float64{0.5, 0.2}}
		}}
		parts["bed "+shape.Name] = &Bed{Mesh: m, Law: func(_ int, _ Place, x, y float64) (float64, float64, [3]float64) {
			return x*x*x + y, y*y*y + x, [3]float64{3 * x * x, 1, 3 * y * y}
		}}
	}
	for _, kind := range []*PlateShape{ACM, BFS, DKT, MITC4, MITC3, Quartic} {
		amount := 0.2
		if kind.Upright {
			amount = 0
		}
		parts["plate "+kind.Name] = &Plate{Mesh: crooked(kind.Mesh, amount), Kind: kind,
			Law: func(p Place) PlateLayer {
				return PlateLayer{Bending: [6]float64{5, 1, 4, 0.3, -0.2, 2}, Shear: 3, FreeCurvature: [3]float64{0.1, 0.2, p.X}, Load: 0.4}
			},
			Ground: func(_ Place, w float64) (float64, float64) { return 2*w + w*w*w, 2 + 3*w*w },
		}
	}
	for _, kind := range []*PlateShape{BFS, DKT, MITC4} { // lets go within the element
		parts["lifted plate "+kind.Name] = &Plate{Mesh: crooked(kind.Mesh, 0), Kind: kind, GroundSplit: 3,
			Law: func(Place) PlateLayer { return PlateLayer{Bending: [6]float64{5, 1, 4, 0.3, -0.2, 2}, Shear: 3} },
			Ground: func(_ Place, w float64) (float64, float64) {
				if w < 0 {
					return 0, 0
				}
				return w * w, 2 * w
			},
		}
	}
	x, y := []float64{0, 1, 0, 1}, []float64{0, 0.5, 0, 0.5}
	parts["interface"] = &Interface{X: x, Y: y, Node: []int32{0, 1, 2, 3}, Thickness: 0.2, Law: func(_ int, _ Place, a, s float64) Traction {
		return Traction{a*a*a + s, s*s*s + a, [3]float64{3 * a * a, 1, 3 * s * s}}
	}}
	parts["plate joint"] = &PlateJoint{X: x, Y: y, Node: []int32{0, 1, 2, 3}, Unknowns: 3, Law: func(_ int, _ Place, w float64) (float64, float64) {
		return w*w*w + w, 3*w*w + 1
	}}
	c := NewCohesive(2, 2, 0.3, 0.2, 0.5)
	c.Shear = 0
	parts["cohesive interface"] = &Interface{X: x, Y: y, Node: []int32{0, 1, 2, 3}, Thickness: 0.2, Law: c.Law}
	parts["touching interface"] = &Interface{X: x, Y: y, Node: []int32{0, 1, 2, 3}, Thickness: 0.2, Law: Touching(3, 2)}
	parts["slipping bed"] = slippingBed()
	return parts
}

// slippingBed is one that follows everywhere; where it slides its stiffness is not
// quite the derivative, on purpose.
func slippingBed() Part {
	m := crooked(Q4, 0.2)
	b := &Bed{Mesh: m}
	s := NewSlipping(b.Points(), 1, func(Place) float64 { return 1e3 })
	b.Law = s.Law
	return b
}

// Every stiffness is the derivative of the force, by finite differences.
func TestStiffnessIsDerivative(t *testing.T) {
	for name, p := range derivativeParts() {
		c := p.Connectivity()
		nodes := c.Of(0)
		block := 2
		switch p := p.(type) {
		case *Plate:
			block = p.Kind.Unknowns
		case *PlateJoint:
			block = p.Unknowns
		}
		n := len(nodes) * block
		r := rand.New(rand.NewPCG(1, 2))
		u := make([]float64, n)
		for i := range u {
			u[i] = r.Float64() - 0.5
		}
		ke, fe := make([]float64, n*n), make([]float64, n)
		p.Element(0, u, ke, fe)
		size := 0.0
		for _, v := range ke {
			size = math.Max(size, math.Abs(v))
		}
		const h = 1e-5
		for j := range n {
			var force [2][]float64
			for side := range 2 {
				moved := append([]float64(nil), u...)
				moved[j] += h * float64(2*side-1)
				force[side] = make([]float64, n)
				p.Element(0, moved, make([]float64, n*n), force[side])
			}
			for i := j; i < n; i++ {
				slope := (force[1][i] - force[0][i]) / (2 * h)
				if math.Abs(slope-ke[i*n+j]) > 1e-8*size {
					t.Fatalf("%s: entry %d,%d is %g, by differences %g", name, i, j, ke[i*n+j], slope)
				}
			}
		}
	}
}

// Shape functions add up to 1 and give back their own places; slopes by differences.
func TestShapes(t *testing.T) {
	for _, s := range []*Shape{T3, T6, Q4, Q8, Q25} {
		n, a, b := make([]float64, s.Nodes), make([]float64, s.Nodes), make([]float64, s.Nodes)
		up, down, skip := make([]float64, s.Nodes), make([]float64, s.Nodes), make([]float64, s.Nodes)
		const xi, eta, h = 0.21, 0.37, 1e-6
		s.values(xi, eta, n, a, b)
		sum := 0.0
		for _, v := range n {
			sum += v
		}
		if math.Abs(sum-1) > 1e-14 {
			t.Errorf("%s: shape functions add up to %g", s.Name, sum)
		}
		for axis, slope := range [][]float64{a, b} {
			dx, dy := h*float64(1-axis), h*float64(axis)
			s.values(xi+dx, eta+dy, up, skip, skip)
			s.values(xi-dx, eta-dy, down, skip, skip)
			for i := range slope {
				if d := (up[i] - down[i]) / (2 * h); math.Abs(d-slope[i]) > 1e-8 {
					t.Errorf("%s: slope %d of node %d is %g, by differences %g", s.Name, axis, i, slope[i], d)
				}
			}
		}
		area := 0.0
		for _, p := range s.rule {
			area += p.weight
		}
		if want := map[int]float64{3: 0.5, 4: 4}[s.Corners]; math.Abs(area-want) > 1e-14 {
			t.Errorf("%s: weights add up to %g, want %g", s.Name, area, want)
		}
	}
}

// Each rule integrates polynomials up to its degree exactly.
func TestRules(t *testing.T) {
	factorial := func(n int) float64 { return math.Gamma(float64(n) + 1) }
	for degree, rule := range map[int][]rulePoint{2: triangleRule3, 4: triangleRule6} {
		for p := range degree + 1 {
			for q := range degree + 1 - p {
				sum := 0.0
				for _, r := range rule {
					sum += r.weight * math.Pow(r.xi, float64(p)) * math.Pow(r.eta, float64(q))
				}
				if want := factorial(p) * factorial(q) / factorial(p+q+2); math.Abs(sum-want) > 1e-15 {
					t.Errorf("triangle rule of degree %d: ∫ξ^%d η^%d = %.17g, want %.17g", degree, p, q, sum, want)
				}
			}
		}
	}
	for degree, line := range map[int][]linePoint{3: gauss2, 5: gauss3, 7: gauss4, 9: gauss5} {
		for p := 0; p <= degree; p += 2 {
			sum := 0.0
			for _, r := range line {
				sum += r.weight * math.Pow(r.at, float64(p))
			}
			if want := 2 / float64(p+1); math.Abs(sum-want) > 1e-15*2 {
				t.Errorf("line rule of degree %d: ∫x^%d = %.17g, want %.17g", degree, p, sum, want)
			}
		}
	}
}

func TestCheckRefuses(t *testing.T) {
	m := GridMesh(Q4, []float64{0, 1}, []float64{0, 1}, nil)
	m.X[0] = 2
	if err := m.Check(); err == nil {
		t.Error("an element turned inside out went through")
	}
	bent := &Plate{Mesh: crooked(Q4, 0.2), Kind: ACM}
	if err := bent.Check(); err == nil {
		t.Error("ACM took a crooked quadrilateral")
	}
	if err := (&Plate{Mesh: crooked(T3, 0), Kind: ACM}).Check(); err == nil {
		t.Error("ACM took triangles")
	}
	if fmt.Sprint(m.Check()) == "" {
		t.Error("no text")
	}
}
