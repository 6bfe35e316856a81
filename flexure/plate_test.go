package flexure

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"slabwright/plan"
)

func pt(x, y float64) plan.Point { return plan.Point{X: x, Y: y} }

func solve(t testing.TB, p Plate) *Bent {
	t.Helper()
	b, err := p.Solve(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6g, want %.6g within %.2g", what, got, want, tol)
	}
}

// The yard against a converged solution by elements of the fourth to sixth degree:
// deflections in mm, stresses in MPa. Tolerances: 1 % of the largest deflection or
// stress of the case; 2 % of stress in triangles and
// thick rectangles, 3 % in thick triangles, whose moments converge slower.
func TestYardUnderWheelAndCurl(t *testing.T) {
	type place struct{ x, y, w, bottom, top float64 }
	places := map[Theory][]place{
		Thin: {{12, 0.25, 0.50745, 1.7285, 0}, {12, 0, 0.49290, 1.711, 0}, {0, 0, -1.0801, 0, 0}, {24, 0, -1.0801, 0, 0}, {24, 13, -1.0510, 0, 0}, {21, 15, -1.0231, 0, 0},
			{21, 13, -0.0845, 0, 0}, {0, 7.5, -0.4836, 0, 0}, {9.6, 3, 0.07731, 0, 1.3017}, {4.5, 6.45, 0.06973, 0, 1.2561}, {12, 2, 0, 0, 1.4868}, {2, 2, 0, 0, 1.1625}, {8.7, 5.7, 0, 0, 1.3998}},
		Thick: {{12, 0.25, 0.5224, 1.728, 0}, {12, 0, 0.5095, 1.614, 0}, {0, 0, -1.0813, 0, 0}, {24, 13, -1.0570, 0, 0}, {21, 15, -1.0300, 0, 0}, {21, 13, -0.0851, 0, 0},
			{9.6, 3, 0.07754, 0, 1.3011}, {12, 2, 0, 0, 1.4830}, {2, 2, 0, 0, 1.1602}, {8.7, 5.7, 0, 0, 1.4169}},
	}
	for _, triangles := range []bool{false, true} {
		for theory, at := range places {
			p := problemP()
			p.Theory, p.Triangles, p.Size = theory, triangles, 0.2
			name := string(theory)
			stress := 0.0175
			if triangles {
				name += " in triangles"
			}
			if triangles || theory == Thick {
				stress = 0.035
			}
			if triangles && theory == Thick {
				stress = 0.055
			}
			b := solve(t, p)
			for _, q := range at {
				h, ok := b.At(pt(q.x, q.y))
				if !ok {
					t.Fatalf("%s: nothing at %v", name, q)
				}
				if q.w != 0 {
					near(t, name+" w", h.Deflection*1e3, q.w, 0.0108)
				}
				if q.bottom != 0 {
					near(t, name+" bottom", h.Bottom/1e6, q.bottom, stress)
				}
				if q.top != 0 {
					near(t, name+" top", h.Top/1e6, q.top, stress)
				}
			}
			near(t, name+" contact", b.Contact, 0.848, 0.004)
			balanced(t, b)
			t.Logf("%s: %d unknowns, %d rounds", name, b.Unknowns, b.Rounds)
		}
	}
}

// balanced holds the ground to carry weight and loads.
func balanced(t *testing.T, b *Bent) {
	t.Helper()
	near(t, "reaction over weight and loads", b.Reaction/(b.Weight+b.Applied), 1, 1e-9)
	near(t, "weight", b.Weight, b.Plate.area()*b.Plate.weight(), 1e-6*b.Weight)
}

// panel is 5 m square with nothing on it.
func panel() Plate {
	return Plate{Slab: plan.Slab{ID: "S", Outline: rectangle(0, 0, 5, 5)}, Thickness: 0.15, Modulus: 30e9, Poisson: 0.2, Support: 50e6, UnitWeight: 24e3}
}

// A uniform pressure settles the slab evenly and bends it nowhere.
func TestUniformPressure(t *testing.T) {
	p := panel()
	p.Loads = []Load{{ID: "store", Force: 25 * 20e3, Area: rectangle(0, 0, 5, 5)}}
	b := solve(t, p)
	want := (20e3 + 24e3*0.15) / 50e6
	near(t, "deepest", b.Deepest.Value, want, 1e-9*want)
	near(t, "highest", b.Highest.Value, want, 1e-9*want)
	near(t, "bottom", b.Bottom.Value, 0, 1)
	near(t, "pressure", b.Pressure.Value, 23.6e3, 1e-3)
	balanced(t, b)
}

// With ground that pulls, loads add up, and what one does at the place of the other
// equals what the other does at its own place.
func TestLoadsAddUp(t *testing.T) {
	p := panel()
	p.Pulls, p.UnitWeight, p.Size = true, 0, 0.4
	r, err := p.Ready(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	r.within = settled // all on the same elements
	bend := func(loads ...Load) *Bent {
		b, err := r.Bend(context.Background(), loads)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	one, two := RoundWheel("1", pt(1, 0.4), 30e3, 0.8e6), RoundWheel("2", pt(3.3, 2.1), 30e3, 0.8e6)
	a, b, both := bend(one), bend(two), bend(one, two)
	for _, q := range []plan.Point{pt(0, 0), pt(2.5, 2.5), pt(1, 0.4), pt(4.9, 3)} {
		x, _ := a.At(q)
		y, _ := b.At(q)
		z, _ := both.At(q)
		near(t, "sum of deflections", z.Deflection, x.Deflection+y.Deflection, 1e-9*a.Deepest.Value)
		for k := range 3 {
			near(t, "sum of moments", z.Moment[k], x.Moment[k]+y.Moment[k], 1e-6*30e3)
		}
	}
	work := func(at *Bent, force []float64) (sum float64) {
		for i, f := range force {
			sum += f * at.u[i]
		}
		return sum
	}
	near(t, "work of one on the other's way", work(a, r.frame.loadForce(two))/work(b, r.frame.loadForce(one)), 1, 1e-6)
}

// Turned and mirrored slabs answer alike.
func TestSymmetry(t *testing.T) {
	p := panel()
	p.Warp = Warp{Difference: -10, Expansion: 1e-5}
	p.Loads = []Load{RoundWheel("w", pt(1.2, 0.2), 40e3, 0.8e6)}
	b := solve(t, p)
	q := p
	q.Loads = []Load{RoundWheel("w", pt(0.2, 3.8), 40e3, 0.8e6)} // turned by a quarter clockwise
	c := solve(t, q)
	for _, at := range []plan.Point{pt(1.2, 0.2), pt(0, 0), pt(2.2, 3.1)} {
		x, _ := b.At(at)
		y, _ := c.At(pt(at.Y, 5-at.X))
		near(t, "deflection", y.Deflection, x.Deflection, 1e-7*b.Deepest.Value)
		near(t, "bottom", y.Bottom, x.Bottom, 1e-4*b.Bottom.Value)
		near(t, "top", y.Top, x.Top, 1e-4*b.Top.Value)
	}
}

// The answer of triangles and of a slab turned by an odd angle.
func TestTurnedSlab(t *testing.T) {
	p := panel()
	p.Warp = Warp{Difference: -10, Expansion: 1e-5}
	p.Loads = []Load{RoundWheel("w", pt(2.5, 0.3), 40e3, 0.8e6)}
	b := solve(t, p)
	turn := func(q plan.Point) plan.Point {
		along := plan.Direction(27)
		return along.Times(q.X).Plus(along.Left().Times(q.Y))
	}
	q := p
	q.Slab.Outline = nil
	for _, c := range p.Slab.Outline {
		q.Slab.Outline = append(q.Slab.Outline, turn(c))
	}
	q.Loads = []Load{RoundWheel("w", turn(pt(2.5, 0.3)), 40e3, 0.8e6)}
	c := solve(t, q)
	for _, at := range []plan.Point{pt(2.5, 0.3), pt(0, 0), pt(2.5, 2.5)} {
		x, _ := b.At(at)
		y, _ := c.At(turn(at))
		near(t, "deflection", y.Deflection, x.Deflection, 0.01*math.Max(b.Deepest.Value, -b.Highest.Value))
		near(t, "top", y.Top, x.Top, 0.02*b.Top.Value)
	}
	balanced(t, c)
}

// Moments converge with the square of the element size, deflections faster.
func TestConvergence(t *testing.T) {
	p := panel()
	p.Pulls, p.UnitWeight, p.Warp = true, 0, Warp{Difference: -10, Expansion: 1e-5}
	at := func(parts float64) (w, top float64) {
		p.Size = 5 / parts
		h, _ := solve(t, p).At(pt(2.5, 2.5))
		return h.Deflection, h.Top
	}
	wFine, topFine := at(96)
	var w, top [3]float64
	for i, parts := range []float64{8, 16, 32} {
		a, b := at(parts)
		w[i], top[i] = math.Abs(a-wFine), math.Abs(b-topFine)
	}
	t.Logf("deflection off by %.3g of %.3g, moment by %.3g of %.3g", w, wFine, top, topFine)
	for i := range 2 {
		if order := math.Log2(w[i] / w[i+1]); order < 3 {
			t.Errorf("deflection converges with power %.2f", order)
		}
		if order := math.Log2(top[i] / top[i+1]); order < 1.8 {
			t.Errorf("moment converges with power %.2f", order)
		}
	}
}

// Without weight and ground that pulls, nothing restrains curl on hardly any support:
// the shape is that of free curl and stress vanishes.
func TestFreeCurl(t *testing.T) {
	p := panel()
	p.Pulls, p.UnitWeight, p.Support, p.Warp = true, 0, 1e5, Warp{Difference: -10, Expansion: 1e-5}
	p.Slab.Outline = rectangle(0, 0, 3, 3)
	b := solve(t, p)
	rise := b.Deepest.Value - b.Highest.Value
	free := FreeCurlLift(1e-5*10/0.15, math.Hypot(1.5, 1.5))
	near(t, "rise of the corner", rise, free, 0.01*free)
	near(t, "top stress over full restraint", b.Top.Value/CurlFullRestraint(30e9, 1e-5, 10, 0.2), 0, 0.02)
}

// The ends of a long narrow strip that curls up, against the closed form of an edge that
// lifts: how high, how far in it is clear of the ground, and there the moment of the
// weight of what hangs over.
func TestCurlLiftOff(t *testing.T) {
	p := panel()
	p.Poisson, p.Size = 0, 0.15
	p.Slab.Outline = rectangle(0, 0, 14, 0.2)
	p.Warp = Warp{Difference: -14, Expansion: 1e-5}
	b := solve(t, p)
	lift := EdgeLiftOf(1e-5*14/0.15, PlateStiffness(p.Modulus, p.Thickness, 0), p.Support, p.weight())
	h, _ := b.At(pt(0, 0.1))
	near(t, "lift of the end, mm", (p.weight()/p.Support-h.Deflection)*1e3, lift.Edge*1e3, 0.01*lift.Edge*1e3)
	here, _ := b.At(pt(lift.Lifted, 0.1))
	near(t, "deflection where it leaves the ground, mm", here.Deflection*1e3, 0, 0.01*lift.Edge*1e3)
	moment := p.weight() * lift.Lifted * lift.Lifted / 2
	near(t, "moment there", here.Moment[0], -moment, 0.02*moment)
	near(t, "share that rests", b.Contact, 1-2*lift.Lifted/14, 0.01)
	balanced(t, b)
}

// Voids: a panel corner without support under a wheel deflects more and stresses the
// top more than one that is held.
func TestVoidUnderCorner(t *testing.T) {
	p := panel()
	p.Loads = []Load{RoundWheel("w", pt(0.2, 0.2), 40e3, 0.8e6)}
	sound := solve(t, p)
	p.Zones = []Zone{{ID: "void", Area: rectangle(0, 0, 0.8, 0.8)}}
	hollow := solve(t, p)
	if !(hollow.Top.Value > 1.2*sound.Top.Value && hollow.Deepest.Value > 1.3*sound.Deepest.Value) {
		t.Errorf("void under the corner: top %.3g, sound %.3g; deflection %.3g, sound %.3g", hollow.Top.Value, sound.Top.Value, hollow.Deepest.Value, sound.Deepest.Value)
	}
	if bound := CornerStressGoldbeck(40e3, 0.15); hollow.Top.Value > bound*1.1 {
		t.Errorf("top %.3g is above the unsupported corner %.3g", hollow.Top.Value, bound)
	}
	if h, _ := hollow.At(pt(0.3, 0.3)); h.Pressure != 0 {
		t.Errorf("the void pushes with %g", h.Pressure)
	}
	balanced(t, hollow)
}

// A wheel far from edges, by both theories, against the exact deflection of unbounded
// plates on springs: by the Hankel transform of the equation D∇⁴w = (1 − c∇²)(q − kw)
// with c = D/(κGh), 0 for a thin plate.
func TestBothTheoriesInterior(t *testing.T) {
	for _, h := range []float64{0.06, 0.15, 0.3} {
		for _, theory := range []Theory{Thin, Thick} {
			p := unitSlab(0.2)
			p.Thickness, p.Theory = h, theory
			l := p.stiffness()
			p.Slab.ID, p.Slab.Outline, p.Fine = "S", rectangle(-6*l, -6*l, 6*l, 6*l), 0.02*l
			p.Loads = []Load{{ID: "w", Force: 10e3, Radius: 0.15 * l}}
			c := 0.0
			if theory == Thick {
				c = h * h / (6 * 5. / 6 * (1 - p.Poisson)) / (l * l)
			}
			want := hankelDeflection(0.15, c)
			got := solve(t, p).Under[0].Deflection * p.Support * l * l / 10e3
			near(t, string(theory)+" deflection over exact", got/want, 1, 0.004)
		}
	}
	near(t, "the transform against Kelvin functions", hankelDeflection(0.15, 0), ExactInteriorDeflection(1, 0.15, 1, 1), 1e-5)
}

// hankelDeflection is w k l²/P under the middle of a circle of radius a l.
func hankelDeflection(a, c float64) float64 {
	const step, end = 0.002, 600.0
	sum := 0.0
	for i := range int(end / step) {
		x := (float64(i) + 0.5) * step
		sum += math.J1(x*a) * (1 + c*x*x) / (x*x*x*x + 1 + c*x*x)
	}
	return sum * step / (math.Pi * a)
}

func TestBadPlates(t *testing.T) {
	for what, c := range map[string]struct {
		change func(p *Plate)
		says   []string
	}{
		"load off the edge": {func(p *Plate) { p.Loads = []Load{RoundWheel("w", pt(0.1, -0.02), 40e3, 0.8e6)} }, []string{"loads[0] w", "off the slab", "Move it in"}},
		"load in a hole": {func(p *Plate) {
			p.Slab.Fixtures = []plan.Fixture{{ID: "pit", Kind: plan.Pit, Opening: true, Shape: rectangle(2, 2, 3, 3)}}
			p.Loads = []Load{Post("p", pt(2.5, 2.5), 50e3, 0.1, 0)}
		}, []string{"100 % of the load"}},
		"not a number":        {func(p *Plate) { p.Support = math.NaN() }, []string{"support of the ground is NaN"}},
		"load without number": {func(p *Plate) { p.Loads = []Load{RoundWheel("w", pt(math.NaN(), 1), 40e3, 0.8e6)} }, []string{"no number"}},
		"no weight":           {func(p *Plate) { p.UnitWeight, p.Warp = 0, Warp{Difference: -10, Expansion: 1e-5} }, []string{"weight of the slab"}},
		"no shape":            {func(p *Plate) { p.Loads = []Load{{ID: "x", Force: 1}} }, []string{"0 shapes"}},
		"turning inwards": {func(p *Plate) {
			p.Loads = []Load{{ID: "x", Force: 1, Area: []plan.Point{pt(1, 1), pt(3, 1), pt(1.5, 1.5), pt(1, 3)}}}
		}, []string{"turns inwards"}},
		"transfer of no joint": {func(p *Plate) { p.Joints = []Transfer{{Joint: "J9", Kind: FreeJoint}} }, []string{"no such joint"}},
		"no theory":            {func(p *Plate) { p.Theory = "plastic" }, []string{"thin or thick"}},
		"no outline":           {func(p *Plate) { p.Slab.Outline = nil }, []string{"outline"}},
		"nothing holds it": {func(p *Plate) {
			p.Slab.Joints = []plan.Joint{{ID: "J", Kind: plan.Isolation, Path: []plan.Point{pt(2, 0), pt(2, 5)}}}
			p.Zones = []Zone{{ID: "void", Area: rectangle(0, 0, 2, 5)}}
		}, []string{"nothing holds up"}},
	} {
		p := panel()
		c.change(&p)
		_, err := p.Solve(context.Background())
		if err == nil {
			t.Errorf("%s: no error", what)
			continue
		}
		for _, s := range c.says {
			if !strings.Contains(err.Error(), s) {
				t.Errorf("%s: %q lacks %q", what, err, s)
			}
		}
	}
}

// Long work ends when it is told to.
func TestPlateCanBeStopped(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := problemP().Solve(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
}

// A state that does not settle comes back with the last one met and no figure that is
// not a number.
func TestUnsettledKeepsItsState(t *testing.T) {
	p := panel()
	p.Warp = Warp{Difference: -10, Expansion: 1e-5}
	r, err := p.Ready(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	u := append([]float64(nil), r.dead...)
	err = r.withState(&Unsettled{Rounds: 3, Left: 0.1, At: pt(1, 1)}, nil, u, r.rest)
	var not *Unsettled
	if !errors.As(err, &not) || not.Last == nil || math.IsNaN(not.Last.Deepest.Value) || !strings.Contains(err.Error(), "did not settle in 3 rounds") {
		t.Errorf("unsettled: %v", err)
	}
}
