package fem

import (
	"math"
	"testing"
)

// A cross of two cuts through the middle of a grid makes four loose quarters; one that
// ends inside leaves the mesh in one piece.
func TestCut(t *testing.T) {
	for _, shape := range []*Shape{T3, Q4} {
		m := GridMesh(shape, EqualLines([]float64{0, 4}, []int{4}), EqualLines([]float64{0, 4}, []int{4}), nil)
		at := func(x, y float64) int32 { return int32(nodeAt(m, x, y)) }
		var cross, slit [][2]int32
		for k := range 4 {
			a, b := float64(k), float64(k+1)
			cross = append(cross, [2]int32{at(2, a), at(2, b)}, [2]int32{at(a, 2), at(b, 2)})
			if k < 2 {
				slit = append(slit, [2]int32{at(2, a), at(2, b)})
			}
		}
		cut, faces, origin := m.Cut(cross)
		if got := cut.Nodes() - m.Nodes(); got != 8+3 || len(origin) != cut.Nodes() {
			t.Errorf("%s: the cross adds %d nodes, want 11", shape.Name, got)
		}
		if len(faces) != 4*8 {
			t.Errorf("%s: %d nodes on faces, want 32", shape.Name, len(faces))
		}
		for k := 0; k < len(faces); k += 4 {
			f := faces[k : k+4]
			if origin[f[0]] != origin[f[2]] || origin[f[1]] != origin[f[3]] || f[0] == f[2] || f[1] == f[3] {
				t.Errorf("%s: face %v", shape.Name, f)
			}
		}
		cut, faces, _ = m.Cut(slit)
		if got := cut.Nodes() - m.Nodes(); got != 2 {
			t.Errorf("%s: the slit adds %d nodes, want 2", shape.Name, got)
		}
		if last := faces[4:8]; last[1] != last[3] {
			t.Errorf("%s: the end of the slit came apart: %v", shape.Name, last)
		}
		if uncut, none, _ := m.Cut([][2]int32{{at(0, 0), at(1, 0)}, {at(0, 0), at(3, 3)}}); len(none) != 0 || uncut.Nodes() != m.Nodes() {
			t.Errorf("%s: sides of the outline were cut", shape.Name)
		}
	}
}

// The second side lies left: opening a cut by pulling that side left is positive.
func TestCutOpens(t *testing.T) {
	m := GridMesh(T3, EqualLines([]float64{0, 2}, []int{2}), EqualLines([]float64{0, 2}, []int{2}), nil)
	at := func(x, y float64) int32 { return int32(nodeAt(m, x, y)) }
	cut, faces, _ := m.Cut([][2]int32{{at(1, 0), at(1, 1)}, {at(1, 2), at(1, 1)}})
	f := &Interface{X: cut.X, Y: cut.Y, Node: faces, Thickness: 1, Law: Elastic(1, 1)}
	u := make([]float64, 2*cut.Nodes())
	for e := range cut.Elements() {
		for _, n := range cut.Of(e) {
			var g geometry
			g.gather(cut, e)
			if x, _ := g.centre(T3); x < 1 {
				u[2*n] = -0.1
			}
		}
	}
	seen := 0
	f.EachGap(u, func(p int, across, along float64) {
		seen++
		if math.Abs(across-0.1) > 1e-12 || math.Abs(along) > 1e-12 {
			t.Errorf("point %d opens by %g and slips by %g", p, across, along)
		}
	})
	if seen != 4 {
		t.Errorf("%d points", seen)
	}
}

func TestQuadratic(t *testing.T) {
	for _, shape := range []*Shape{T3, Q4} {
		q := crooked(shape, 0.2).Quadratic()
		if err := q.Check(); err != nil {
			t.Error(err)
		}
		want := crooked(q.Shape, 0.2)
		if q.Nodes() != want.Nodes() || q.Elements() != want.Elements() {
			t.Errorf("%s: %d nodes, want %d", shape.Name, q.Nodes(), want.Nodes())
		}
		for k, n := range q.Node {
			if o := want.Node[k]; math.Hypot(q.X[n]-want.X[o], q.Y[n]-want.Y[o]) > 1e-12 {
				t.Errorf("%s: node %d of the elements is elsewhere", shape.Name, k)
			}
		}
	}
	tri := FromTriangles([][2]float64{{0, 0}, {1, 0}, {0, 1}}, [][3]int32{{0, 1, 2}})
	if err := tri.Check(); err != nil || tri.Elements() != 1 {
		t.Error(err)
	}
}

// jointed is two slabs of 7 by 14 radii of stiffness, all of them 1, that meet at x = 0
// along springs; a wheel of radius a touches the joint from the right at y = 0. The
// upper half is solved. Values are those beside the wheel, right and left of the joint.
type jointed struct {
	loaded, unloaded float64 // deflection
	right, left      float64 // moment along the joint
}

func jointedSlabs(t *testing.T, a, aggregate float64) jointed {
	t.Helper()
	xs := GradedLines([]float64{-7, 0, 2 * a, 7}, []float64{0, a / 8, a / 4, 0}, 1.2, 0.4)
	ys := GradedLines([]float64{0, a, 7}, []float64{a / 8, a / 8, 0}, 1.2, 0.4)
	m := GridMesh(Q4, xs, ys, nil)
	var along [][2]int32
	for k := range len(ys) - 1 {
		along = append(along, [2]int32{int32(nodeAt(m, 0, ys[k])), int32(nodeAt(m, 0, ys[k+1]))})
	}
	cut, faces, _ := m.Cut(along)
	bending, _ := IsotropicPlate(12*(1-0.15*0.15), 0.15, 1)
	p := &Plate{Mesh: cut, Kind: ACM, Ground: TwoWay(1), LinearGround: true, Law: func(Place) PlateLayer { return PlateLayer{Bending: bending} }}
	j := &PlateJoint{X: cut.X, Y: cut.Y, Node: faces, Unknowns: 3, Law: Spread(aggregate), LinearLaw: true}
	s := NewSystem(cut.X, cut.Y, 3, p, j)
	force, covered := p.PatchForce(wheelCircle(a), 1/(math.Pi*a*a))
	if math.Abs(covered-math.Pi*a*a/2) > 1e-3*a*a {
		t.Fatalf("wheel of %g m², want %g", covered, math.Pi*a*a/2)
	}
	s.PushAll(force)
	for i := range cut.X {
		if cut.Y[i] == 0 {
			s.Hold(i, 2, 0)
		}
	}
	sol, err := s.Solve(Settings{})
	if err != nil {
		t.Fatal(err)
	}
	l := NewLocator(cut)
	const beside = 1e-6
	_, right, _ := p.At(l, beside, 0, sol.U)
	_, left, _ := p.At(l, -beside, 0, sol.U)
	return jointed{sol.U[3*faces[0]], sol.U[3*faces[2]], right.YY, left.YY}
}

// wheelCircle is a polygon with the area of a circle of radius a that touches x = 0.
func wheelCircle(a float64) (circle [][2]float64) {
	const sides = 64
	r := a * math.Sqrt(math.Pi/(sides*math.Sin(2*math.Pi/sides)/2))
	for k := range sides {
		q := 2 * math.Pi * float64(k) / sides
		circle = append(circle, [2]float64{math.Max(0, a+r*math.Cos(q)), r * math.Sin(q)})
	}
	return circle
}

func TestLoadTransfer(t *testing.T) {
	solved := map[[2]float64]jointed{}
	solve := func(a, stiffness float64) jointed {
		key := [2]float64{a, stiffness}
		if _, ok := solved[key]; !ok {
			solved[key] = jointedSlabs(t, a, stiffness)
		}
		return solved[key]
	}
	for _, r := range readTable(t, "load_transfer.csv") {
		a := r.num(t, "a")
		free := solve(a, 0)
		switch r.quantity {
		case "edge deflection":
			r.compare(t, free.loaded)
			continue
		case "edge stress":
			r.compare(t, 6*free.right)
			continue
		}
		v := solve(a, r.num(t, "AGG"))
		if r.quantity == "stress transfer" {
			r.compare(t, v.left/v.right)
			continue
		}
		r.compare(t, v.unloaded/v.loaded)
		if math.Abs(v.loaded+v.unloaded-free.loaded) > 2e-3*free.loaded {
			t.Errorf("%s: both sides sink %g together, a free edge %g", r.id, v.loaded+v.unloaded, free.loaded)
		}
	}
}
