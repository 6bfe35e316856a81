package fem

import (
	"math"
	"strings"
	"testing"
)

var kindsByName = map[string]*PlateShape{"acm": ACM, "bfs": BFS, "dkt": DKT, "mitc4": MITC4, "mitc3": MITC3, "quartic": Quartic}

// quarter is a quarter of a rectangular plate of width 1 and length aspect, the middle
// at (0, 0), under a pressure of 1 or a force of 1 in the middle. Its outer sides are
// supported, or clamped.
type quarter struct {
	kind                       *PlateShape
	steps                      int
	aspect, poisson, thickness float64
	clamped                    bool
	pressure, force            float64
}

func (q quarter) solve(t *testing.T) (*Plate, []float64) {
	t.Helper()
	bending, shear := IsotropicPlate(12*(1-q.poisson*q.poisson)/(q.thickness*q.thickness*q.thickness), q.poisson, q.thickness)
	xs := EqualLines([]float64{0, 0.5}, []int{q.steps})
	ys := EqualLines([]float64{0, 0.5 * q.aspect}, []int{int(float64(q.steps) * q.aspect)})
	m := GridMesh(q.kind.Mesh, xs, ys, nil)
	p := &Plate{Mesh: m, Kind: q.kind, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending, Shear: shear, Load: q.pressure} }}
	s := NewSystem(m.X, m.Y, q.kind.Unknowns, p)
	for i := range m.X {
		q.hold(s, i, m.X[i], m.Y[i])
	}
	s.Push(nodeAt(m, 0, 0), 0, q.force/4)
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	return p, sol.U
}

// hold keeps slopes and twist zero where symmetry or support asks for it.
func (q quarter) hold(s *System, i int, x, y float64) {
	const tiny = 1e-9
	sideX, sideY := x > 0.5-tiny, y > 0.5*q.aspect-tiny
	if sideX || sideY {
		s.Hold(i, 0, 0)
	}
	if x < tiny || sideY || q.clamped && sideX {
		s.Hold(i, 1, 0)
	}
	if y < tiny || sideX || q.clamped && sideY {
		s.Hold(i, 2, 0)
	}
	twistFree := !q.clamped && sideX && sideY || !q.clamped && (sideX || sideY) && x > tiny && y > tiny
	if q.kind == BFS && (x < tiny || y < tiny || q.clamped && (sideX || sideY)) && !twistFree {
		s.Hold(i, 3, 0)
	}
}

// disc is a quarter of a circular plate of radius 1 under a pressure of 1, of
// triangles.
func disc(t *testing.T, nu float64, clamped bool) (w float64, m Moment) {
	t.Helper()
	mesh := mapped(unitGrid(T3, 32, 32), func(x, y float64) (float64, float64) {
		return x * math.Sqrt(1-y*y/2), y * math.Sqrt(1-x*x/2)
	})
	bending, _ := IsotropicPlate(12*(1-nu*nu), nu, 1)
	p := &Plate{Mesh: mesh, Kind: DKT, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending, Load: 1} }}
	s := NewSystem(mesh.X, mesh.Y, 3, p)
	for i := range mesh.X {
		x, y := mesh.X[i], mesh.Y[i]
		rim := math.Hypot(x, y) > 1-1e-9
		if rim {
			s.Hold(i, 0, 0)
		}
		if x < 1e-9 || rim && clamped {
			s.Hold(i, 1, 0)
		}
		if y < 1e-9 || rim && clamped {
			s.Hold(i, 2, 0)
		}
	}
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	w, m, _ = p.At(NewLocator(mesh), 0, 0, sol.U)
	return w, m
}

func TestPlates(t *testing.T) {
	for _, r := range readTable(t, "plates.csv") {
		if strings.HasPrefix(r.quantity, "circle") {
			w, m := disc(t, r.num(t, "poisson"), strings.Contains(r.quantity, "clamped"))
			if strings.HasSuffix(r.quantity, "moment") {
				w = (m.XX + m.YY) / 2
			}
			r.compare(t, w)
			continue
		}
		q := quarter{kind: kindsByName[r.in["element"]], steps: 24, aspect: 1, poisson: 0.3, thickness: 1, pressure: 1}
		if v, ok := r.in["poisson"]; ok && v != "" {
			q.poisson = r.num(t, "poisson")
		}
		if r.in["aspect"] != "" {
			q.aspect = r.num(t, "aspect")
		}
		switch r.quantity {
		case "supported moment x", "supported moment y":
			q.steps = 64
		case "clamped deflection", "clamped moment x":
			q.clamped, q.steps = true, 48
		case "point deflection":
			q.pressure, q.force = 0, 1
			q.steps = 48
		case "thick deflection":
			q.thickness = r.num(t, "ratio")
			if q.kind == Quartic {
				q.steps = 6
			}
		}
		p, u := q.solve(t)
		w, m, _ := p.At(NewLocator(p.Mesh), 0, 0, u)
		switch r.quantity {
		case "supported moment x", "clamped moment x":
			r.compare(t, m.XX)
		case "supported moment y":
			r.compare(t, m.YY)
		default:
			r.compare(t, w)
		}
	}
}

// infinitePlate is a quarter of a plate of 12 by 12 radii of stiffness, all of them 1,
// under a force of 1 in its middle.
func infinitePlate(t *testing.T) (*Plate, []float64) {
	t.Helper()
	xs := GradedLines([]float64{0, 12}, []float64{0.002, 0}, 1.15, 0.2)
	m := GridMesh(Q4, xs, xs, nil)
	bending, _ := IsotropicPlate(12*(1-0.04), 0.2, 1)
	p := &Plate{Mesh: m, Kind: BFS, Ground: TwoWay(1), LinearGround: true, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending} }}
	s := NewSystem(m.X, m.Y, 4, p)
	for i := range m.X {
		if m.X[i] == 0 {
			s.Hold(i, 1, 0)
		}
		if m.Y[i] == 0 {
			s.Hold(i, 2, 0)
		}
		if m.X[i] == 0 || m.Y[i] == 0 {
			s.Hold(i, 3, 0)
		}
	}
	s.Push(0, 0, 0.25)
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	return p, sol.U
}

// loadedSlab is a square slab of the given side, m, on ground, with 40 kN on a patch
// of 0.2 m at its centre, at the middle of the edge y = 0 or in the corner (0, 0).
func loadedSlab(t *testing.T, side float64, where string) (wUnder, stress float64) {
	t.Helper()
	const e, nu, h, k, patch, load = 30e9, 0.2, 0.15, 50e6, 0.2, 40e3
	middle, edge := []float64{0, side/2 - patch/2, side / 2, side/2 + patch/2, side}, []float64{0, patch, side}
	fineM, fineE := []float64{0.1, 0.02, 0.02, 0.02, 0.1}, []float64{0.02, 0.02, 0.1}
	grade := func(atEdge bool) []float64 {
		if atEdge {
			return GradedLines(edge, fineE, 1.25, 0.15)
		}
		return GradedLines(middle, fineM, 1.25, 0.15)
	}
	xs, ys := grade(where == "corner"), grade(where != "centre")
	m := GridMesh(Q4, xs, ys, nil)
	bending, _ := IsotropicPlate(e, nu, h)
	p := &Plate{Mesh: m, Kind: BFS, Ground: TwoWay(k), LinearGround: true, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending} }}
	s := NewSystem(m.X, m.Y, 4, p)
	x, y := side/2, side/2
	x0, y0 := x-patch/2, y-patch/2
	if where != "centre" {
		y, y0 = 0, 0
	}
	if where == "corner" {
		x, x0 = 0, 0
	}
	force, covered := p.PatchForce([][2]float64{{x0, y0}, {x0 + patch, y0}, {x0 + patch, y0 + patch}, {x0, y0 + patch}}, load/(patch*patch))
	if math.Abs(covered-patch*patch) > 1e-12 {
		t.Fatalf("the plate takes %g of the patch of %g m²", covered, patch*patch)
	}
	s.PushAll(force)
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	l := NewLocator(m)
	w, moment, _ := p.At(l, x, y, sol.U)
	stress, _, _ = moment.Bottom(h).Principal()
	if where == "corner" { // the largest on top along the diagonal
		for d := 0.1; d < 1.5; d += 0.01 {
			_, v, _ := p.At(l, d/math.Sqrt2, d/math.Sqrt2, sol.U)
			top, _, _ := v.Top(h).Principal()
			stress = math.Max(stress, top)
		}
	}
	return w * 1e3, stress / 1e6
}

// roundWheel is a load of 1 on a circle of radius a, on a slab of 7 radii of
// stiffness, all of them 1: in the interior, or on a half circle against the edge
// y = 0, or in the corner (0, 0) touching both edges. It returns the deflection at the
// origin and the stress times the thickness squared.
func roundWheel(t *testing.T, where string, nu, a float64) (w, stress float64) {
	t.Helper()
	lines := GradedLines([]float64{0, a, 2 * a, 7}, []float64{a / 10, a / 10, a / 5, 0}, 1.2, 0.25)
	m := GridMesh(Q4, lines, lines, nil)
	bending, _ := IsotropicPlate(12*(1-nu*nu), nu, 1)
	p := &Plate{Mesh: m, Kind: BFS, Ground: TwoWay(1), LinearGround: true, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending} }}
	s := NewSystem(m.X, m.Y, 4, p)
	for i := range m.X {
		if where != "corner" && m.X[i] == 0 {
			s.Hold(i, 1, 0)
			s.Hold(i, 3, 0)
		}
		if where == "interior" && m.Y[i] == 0 {
			s.Hold(i, 2, 0)
			s.Hold(i, 3, 0)
		}
	}
	circle := wheelCircle(a) // touches x = 0 at y = 0
	pressure := 1 / (math.Pi * a * a)
	for k := range circle {
		if where == "corner" {
			circle[k][1] = math.Max(0, circle[k][1]+a)
		} else {
			circle[k][0] -= a
		}
	}
	if where == "semicircle" {
		pressure *= 2
	}
	force, _ := p.PatchForce(circle, pressure)
	s.PushAll(force)
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	l := NewLocator(m)
	w, moment, _ := p.At(l, 0, 0, sol.U)
	if where != "corner" {
		return w, 6 * moment.XX
	}
	for d := 0.2; d < 2; d += 0.01 {
		_, v, _ := p.At(l, d/math.Sqrt2, d/math.Sqrt2, sol.U)
		top, _, _ := v.Top(1).Principal()
		stress = math.Max(stress, top)
	}
	return w, stress
}

func TestWinkler(t *testing.T) {
	p, u := infinitePlate(t)
	l := NewLocator(p.Mesh)
	w0, _, _ := p.At(l, 0, 0, u)
	slabs := map[string][2]float64{}
	for _, r := range readTable(t, "winkler.csv") {
		switch r.quantity {
		case "infinite deflection":
			r.compare(t, w0)
			continue
		case "infinite share":
			w, _, _ := p.At(l, r.num(t, "r"), 0, u)
			r.compare(t, w/w0)
			continue
		}
		key := r.in["side"] + r.in["load"] + r.in["poisson"] + r.in["a"]
		if _, ok := slabs[key]; !ok {
			var w, stress float64
			if strings.HasPrefix(r.quantity, "wheel") {
				w, stress = roundWheel(t, r.in["load"], r.num(t, "poisson"), r.num(t, "a"))
			} else {
				w, stress = loadedSlab(t, r.num(t, "side"), r.in["load"])
			}
			slabs[key] = [2]float64{w, stress}
		}
		if strings.HasSuffix(r.quantity, "deflection") {
			r.compare(t, slabs[key][0])
		} else {
			r.compare(t, slabs[key][1])
		}
	}
}

// curledSlab is a quarter of a square slab, its middle at (0, 0), whose top is warmer
// than the underside by dT.
func curledSlab(t *testing.T, side, dT float64, pushOnly bool) (*Plate, []float64) {
	t.Helper()
	const e, nu, h, k, alpha = 30e9, 0.2, 0.15, 50e6, 1e-5
	xs := EqualLines([]float64{0, side / 2}, []int{int(side * 10)})
	m := GridMesh(Q4, xs, xs, nil)
	bending, _ := IsotropicPlate(e, nu, h)
	layer := PlateLayer{Bending: bending, FreeCurvature: [3]float64{alpha * dT / h, alpha * dT / h, 0}}
	p := &Plate{Mesh: m, Kind: BFS, Ground: TwoWay(k), LinearGround: true}
	if pushOnly {
		layer.Load = 24e3 * h
		p.Ground, p.LinearGround = PushOnly(k), false
	}
	p.Law = func(Place) PlateLayer { return layer }
	s := NewSystem(m.X, m.Y, 4, p)
	for i := range m.X {
		if m.X[i] == 0 {
			s.Hold(i, 1, 0)
		}
		if m.Y[i] == 0 {
			s.Hold(i, 2, 0)
		}
		if m.X[i] == 0 || m.Y[i] == 0 {
			s.Hold(i, 3, 0)
		}
	}
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	return p, sol.U
}

func TestCurling(t *testing.T) {
	type solved struct {
		p *Plate
		u []float64
	}
	slabs := map[string]solved{}
	for _, r := range readTable(t, "curling.csv") {
		key := r.in["side"] + r.in["dT"] + r.in["ground"]
		if _, ok := slabs[key]; !ok {
			p, u := curledSlab(t, r.num(t, "side"), r.num(t, "dT"), r.in["ground"] == "push-only")
			slabs[key] = solved{p, u}
		}
		v, half := slabs[key], r.num(t, "side")/2
		l := NewLocator(v.p.Mesh)
		wc, mc, _ := v.p.At(l, 0, 0, v.u)
		we, me, _ := v.p.At(l, half, 0, v.u)
		wk, _, _ := v.p.At(l, half, half, v.u)
		switch r.quantity {
		case "deflection centre":
			r.compare(t, wc*1e3)
		case "deflection mid-edge":
			r.compare(t, we*1e3)
		case "deflection corner":
			r.compare(t, wk*1e3)
		case "stress centre":
			r.compare(t, mc.Bottom(0.15).XX/1e6)
		case "stress mid-edge":
			r.compare(t, me.Bottom(0.15).YY/1e6)
		case "contact":
			r.compare(t, v.p.Energy(v.u).Contact)
		default:
			t.Errorf("row %s: no answer to %q", r.id, r.quantity)
		}
	}
}
