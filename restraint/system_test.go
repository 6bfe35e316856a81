package restraint

import (
	"context"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"slabwright/internal/fem"
	"slabwright/plan"
)

// The sheet on an elastic base against the same triangles in the general finite
// elements: another assembly, another way to carry the springs.
func TestAgainstGeneralElements(t *testing.T) {
	m := yard()
	for i := range m.Pours {
		m.Pours[i].At = shrinking(20e9, 49e6, 300e-6, 1)
	}
	m.Lines, m.Holds = nil, nil
	m.Base = Base{Stiffness: 10e6, Friction: 30, UnitWeight: 24000, Adhesion: 5e6}
	set := m.Settings.filled()
	s, err := newSlabState(&m, set)
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range m.Pours {
		s.now[i], _ = p.check(0)
	}
	if err := s.step(1); err != nil {
		t.Fatal(err)
	}
	mesh := &fem.Mesh{Shape: fem.T3, X: s.frame.x, Y: s.frame.y}
	for _, v := range s.frame.node {
		mesh.Node = append(mesh.Node, v[:]...)
	}
	sheet := &fem.Sheet{Mesh: mesh, Law: func(fem.Place) fem.Layer {
		return fem.Layer{Thickness: 0.18, Stiffness: fem.Isotropic(20e9, 0.2), FreeStrain: [3]float64{-300e-6, -300e-6, 0}, Bed: 10e6}
	}}
	other, err := fem.NewSystem(mesh.X, mesh.Y, 2, sheet).Solve(fem.Settings{Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	most, apart := 0.0, 0.0
	for i, v := range other.U {
		most = math.Max(most, math.Abs(v))
		apart = math.Max(apart, math.Abs(v-s.u[i]))
	}
	if apart > 3e-3*most {
		t.Errorf("displacements up to %.3g m apart of %.3g", apart, most)
	}
	ours, theirs := s.stress(), sheet.CentreStress(other.U)
	sum, far := 0.0, 0.0
	for i, v := range theirs {
		sum += math.Abs(v.XX)
		far += math.Abs(v.XX - ours[i][0])
	}
	if far > 0.01*sum {
		t.Errorf("stress on the mean %.3g of %.3g Pa apart", far/float64(len(ours)), sum/float64(len(ours)))
	}
}

// Displacements that are linear in the place leave every inner node in balance: the
// patch test, on a net with cracks laid through it.
func TestPatch(t *testing.T) {
	m := Model{Slab: plan.Slab{Outline: path(0, 0, 5, 0.4, 4.4, 3.9, 0.3, 3.1)}, Base: Base{Stiffness: 1e6, Friction: 1, UnitWeight: 1},
		Pours: []Pour{{Thickness: 0.2, At: shrinking(25e9, 49e6, 1e-4, 1)}}}
	s, err := newSlabState(&m, m.Settings.filled())
	if err != nil {
		t.Fatal(err)
	}
	c := &carried{s.corners(s.u), s.corners(s.slid), s.frame.ranks()}
	mean := make([][3]float64, len(s.frame.tri))
	for i := range mean {
		mean[i] = [3]float64{1e9, 0, 0.4e9}
	}
	s.now[0], _ = m.Pours[0].check(1)
	s.now[0].Strength = 1e6
	tr := s.tracer(mean)
	start, _ := tr.begin(int32(len(mean) / 2))
	if _, ok := s.lay(start, tr.follow(start, plan.Point{Y: 1}), c); !ok {
		t.Fatal("the path does not run along sides")
	}
	s.reframe(c)
	for n := range s.frame.nodes {
		x, y := s.frame.x[n], s.frame.y[n]
		s.u[2*n], s.u[2*n+1] = 1e-4*x+3e-5*y, -2e-5*x+5e-5*y
	}
	b := s.balance([]float64{25e9}, s.frozen)
	b.base = 0
	r := make([]float64, len(s.u))
	largest := b.force(s.u, r)
	edge := map[int32]bool{}
	for key, pair := range s.frame.beside {
		if pair[1] < 0 {
			for _, p := range key {
				edge[s.frame.node[pair[0]][s.frame.corner(pair[0], p)%3]] = true
			}
		}
	}
	inner := 0
	for n := range s.frame.nodes {
		if edge[int32(n)] {
			continue
		}
		inner++
		if math.Hypot(r[2*n], r[2*n+1]) > 1e-9*largest {
			t.Fatalf("node %d is out of balance by %g N of %g", n, math.Hypot(r[2*n], r[2*n+1]), largest)
		}
	}
	if inner < 20 {
		t.Errorf("only %d inner nodes", inner)
	}
	want := stressOf(plane(0.2), 25e9, [3]float64{1e-4, 5e-5, 1e-5})
	for i, v := range s.stress() {
		for k := range v {
			if math.Abs(v[k]-want[k]) > 1e-6*want[0] {
				t.Fatalf("stress %d of triangle %d is %g, want %g", k, i, v[k], want[k])
			}
		}
	}
}

// Splitting sides keeps the area, the turning and the neighbours right.
func TestPathsKeepTheNetWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, 6, 4)}, Base: stone, Pours: []Pour{{Thickness: 0.2, At: shrinking(25e9, 2e6, 1e-4, 1)}}}
		s, err := newSlabState(&m, m.Settings.filled())
		if err != nil {
			t.Fatal(err)
		}
		s.now[0], _ = m.Pours[0].check(1)
		c := &carried{s.corners(s.u), s.corners(s.slid), s.frame.ranks()}
		for range rapid.IntRange(1, 4).Draw(t, "paths") {
			a, bend := rapid.Float64Range(0, math.Pi).Draw(t, "angle"), rapid.Float64Range(-0.5, 0.5).Draw(t, "bend")
			mean := make([][3]float64, len(s.frame.tri))
			for i := range mean {
				p := s.frame.middle(i)
				angle := 2 * (a + bend*(p.X+p.Y))
				mean[i] = [3]float64{1e9 * (1 + math.Cos(angle)), 1e9 * (1 - math.Cos(angle)), 1e9 * math.Sin(angle)}
			}
			tr := s.tracer(mean)
			start, _ := tr.begin(int32(rapid.IntRange(0, len(mean)-1).Draw(t, "start")))
			sides, _ := s.lay(start, tr.follow(start, plan.Direction(a*180/math.Pi)), c)
			for _, key := range sides {
				s.cut[key] = 0
			}
			s.lines = []Line{{ID: "C", Kind: CrackLine, Path: path(0, 0, 1, 1)}}
			s.reframe(c)
			c = &carried{s.corners(s.u), s.corners(s.slid), s.frame.ranks()}
			area := 0.0
			for i := range s.frame.tri {
				if s.frame.area(i) <= 0 {
					t.Fatalf("triangle %d turned over", i)
				}
				area += s.frame.area(i)
			}
			if math.Abs(area-24) > 1e-9 {
				t.Fatalf("area %g, want 24", area)
			}
			fresh := net{tri: s.frame.tri}
			fresh.join()
			if len(fresh.beside) != len(s.frame.beside) {
				t.Fatalf("%d sides, want %d", len(s.frame.beside), len(fresh.beside))
			}
			for key, pair := range fresh.beside {
				got := s.frame.beside[key]
				if got != pair && got != [2]int32{pair[1], pair[0]} {
					t.Fatalf("side %v has triangles %v, want %v", key, got, pair)
				}
			}
		}
	})
}

// A slab that is its own mirror image moves so.
func TestSymmetry(t *testing.T) {
	m := Model{Slab: plan.Slab{Outline: rectangle(-4, -3, 4, 3)}, Base: stone, Pours: []Pour{{Thickness: 0.15, At: shrinking(25e9, 49e6, 300e-6, 10)}},
		Settings: Settings{Size: 0.25}, Lines: []Line{{ID: "J", Kind: FormedLine, Path: path(0, -3, 0, 3), Bars: &Bars{Along: 1e8}}}}
	r := replay(t, m, steps(10, 4)...)
	f := r.Fields[0]
	for _, p := range []plan.Point{{X: 2, Y: 0}, {X: 1, Y: 1.5}, {X: 3, Y: 2}} {
		xx, yy := stressNear(f, p, 0.3)
		for _, q := range []plan.Point{{X: -p.X, Y: p.Y}, {X: p.X, Y: -p.Y}, {X: -p.X, Y: -p.Y}} {
			x2, y2 := stressNear(f, q, 0.3)
			if math.Abs(xx-x2)+math.Abs(yy-y2) > 0.04*(math.Abs(xx)+math.Abs(yy))+500 {
				t.Errorf("stress at %v %.0f, %.0f; at %v %.0f, %.0f Pa", p, xx, yy, q, x2, y2)
			}
		}
	}
}

// A strip held rigidly at both ends has the full stress of its shortening, relaxed by
// creep; between two springs it has the share that the springs leave.
func TestHeldAtBothEnds(t *testing.T) {
	const e, strain, length = 25e9, 100e-6, 10.0
	model := func(bond, creep float64) Model {
		at := func(hour float64) Concrete {
			return Concrete{Strain: -strain * hour / 10, Modulus: e, Strength: 49e6, Creep: creep * hour / 10}
		}
		return Model{Slab: plan.Slab{Outline: rectangle(0, 0, length, 0.1)}, Base: Base{Stiffness: 1e3, UnitWeight: 24000}, Pours: []Pour{{Thickness: 0.15, At: at}},
			Holds: []Hold{{ID: "W", Path: path(0, 0, 0, 0.1), Bond: bond}, {ID: "E", Path: path(length, 0, length, 0.1), Bond: bond}}, Settings: Settings{Poisson: 1e-9}}
	}
	mid := plan.Point{X: length / 2, Y: 0.05}
	xx, _ := stressNear(replay(t, model(1e14, 0), steps(10, 2)...).Fields[0], mid, 0.4)
	within(t, "held rigidly", xx, e*strain, 1e-3)
	xx, _ = stressNear(replay(t, model(1e14, 1.5), steps(10, 2)...).Fields[0], mid, 0.4)
	within(t, "held rigidly, creeping", xx, RelaxingModulus(e, 1.5)*strain, 1e-3)
	const spring = 5e9 // each end gives way by σ/spring
	xx, _ = stressNear(replay(t, model(spring, 0), steps(10, 2)...).Fields[0], mid, 0.4)
	within(t, "held by springs", xx, e*strain/(1+2*e/(spring*length)), 5e-3)
}

// A known crack across the middle halves the drag; bars that tie it do not let it.
func TestKnownCrackAndTies(t *testing.T) {
	model := func(l ...Line) Model {
		return Model{Slab: plan.Slab{Outline: rectangle(0, 0, 20, 0.5)}, Base: Base{Stiffness: 1e9, Friction: 1.5, UnitWeight: 24000},
			Pours: []Pour{{Thickness: 0.15, At: shrinking(25e9, 49e6, 500e-6, 10)}}, Lines: l, Settings: Settings{Size: 0.25}}
	}
	near := plan.Point{X: 9.6, Y: 0.25}
	crack := Line{ID: "K", Kind: CrackLine, Path: path(10, 0, 10, 0.5), From: 3}
	whole, _ := stressNear(replay(t, model(), steps(10, 10)...).Fields[0], near, 0.2)
	cracked := replay(t, model(crack), steps(10, 10)...)
	xx, _ := stressNear(cracked.Fields[0], near, 0.2)
	if xx > 0.1*whole {
		t.Errorf("beside the crack %.0f Pa, in the whole slab %.0f", xx, whole)
	}
	if o := cracked.Openings[0]; o.Mean < 2e-3 || o.Mean > 5e-3 {
		t.Errorf("the crack is %.2f mm wide, want 10 m of 0.7 of 500 microstrain less the drag", 1e3*o.Mean)
	}
	crack.Bars = &Bars{Across: BarStretchStiffness(0.012, 0.1, 200e9) / 0.2}
	tied := replay(t, model(crack), steps(10, 10)...)
	xx, _ = stressNear(tied.Fields[0], near, 0.2)
	if xx < 0.6*whole {
		t.Errorf("tied: %.0f Pa beside the crack, %.0f in the whole slab", xx, whole)
	}
	if o := tied.Openings[0]; o.Mean > 0.3e-3 {
		t.Errorf("tied: the crack is %.2f mm wide", 1e3*o.Mean)
	}
}

// Sides push back once a strip between them is used up, and not before.
func TestStripThatCloses(t *testing.T) {
	for _, give := range []float64{0.001, 0.02} {
		m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, 12, 1)}, Base: Base{Stiffness: 1e4, UnitWeight: 24000},
			Pours: []Pour{{Thickness: 0.15, At: shrinking(25e9, 49e6, -500e-6, 10)}},
			Lines: []Line{{ID: "I", Kind: IsolationLine, Path: path(6, 0, 6, 1), Give: give}},
			Holds: []Hold{{ID: "W", Path: path(0, 0, 0, 1)}, {ID: "E", Path: path(12, 0, 12, 1)}}}
		r := replay(t, m, steps(10, 5)...)
		xx, _ := stressNear(r.Fields[0], plan.Point{X: 3, Y: 0.5}, 0.3)
		want := math.Max(0, 25e9*(500e-6-give/12))
		if math.Abs(xx+want) > 0.01*want+2000 {
			t.Errorf("strip of %g m: %.0f Pa, want %.0f", give, xx, -want)
		}
	}
}

func TestSameTwice(t *testing.T) {
	hours := UsualHours(24 * 90)[:20]
	a, err := infill(false).Replay(context.Background(), hours, hours[10:11], nil)
	if err != nil {
		t.Fatal(err)
	}
	b, _ := infill(false).Replay(context.Background(), hours, hours[10:11], nil)
	if !reflect.DeepEqual(a, b) {
		t.Error("the same model gives two answers")
	}
}

func TestBadModelsAreNamed(t *testing.T) {
	m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, 1, 1)[:2]}, Base: Base{Stiffness: -1}, Lines: []Line{{ID: "S9", Kind: SawnLine, Share: 2}}}
	_, err := m.Replay(context.Background(), []float64{3, 2}, nil, nil)
	if err == nil {
		t.Fatal("accepted")
	}
	for _, want := range []string{"outline", "pours", "base stiffness", "S9", "hours[1]"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q is not named in %v", want, err)
		}
	}
	m = Model{Slab: plan.Slab{Outline: rectangle(0, 0, 4, 4)}, Base: stone, Pours: []Pour{{ID: "A", Thickness: 0.15, At: func(float64) Concrete {
		return Concrete{Modulus: 1e9, Strain: math.NaN()}
	}}}}
	if _, err := m.Replay(context.Background(), []float64{0, 1}, nil, nil); err == nil || !strings.Contains(err.Error(), "pour A at hour") {
		t.Errorf("strain that is not a number: %v", err)
	}
}

// What lies off the slab, has no length or is too large for it is refused by name, with
// the place.
func TestImpossibleModelsAreRefused(t *testing.T) {
	for _, c := range []struct {
		name, want string
		spoil      func(m *Model)
	}{
		{"hold off the slab", "holds[1] W", func(m *Model) { m.Holds = append(m.Holds, Hold{ID: "W", Path: path(-3, 0, -3, 4)}) }},
		{"hold inside the slab", "holds[1] W", func(m *Model) { m.Holds = append(m.Holds, Hold{ID: "W", Path: path(1, 1, 2, 1)}) }},
		{"joint of no length", "lines[0] J", func(m *Model) { m.Lines = []Line{{ID: "J", Kind: FormedLine, Path: path(2, 2, 2, 2)}} }},
		{"joint off the slab", "lines[0] J", func(m *Model) { m.Lines = []Line{{ID: "J", Kind: FormedLine, Path: path(20, 0, 20, 5)}} }},
		{"joint at infinity", "lines[0] J", func(m *Model) { m.Lines = []Line{{ID: "J", Kind: FormedLine, Path: path(2, 0, 2, math.Inf(1))}} }},
		{"dowel thicker than the slab", "bar diameter", func(m *Model) {
			m.Lines = []Line{{ID: "J", Kind: FormedLine, Path: path(2, 0, 2, 5), Bars: &Bars{Along: 1e8, Diameter: 25}}}
		}},
		{"outline without area", "slab outline", func(m *Model) { m.Slab.Outline = path(0, 0, 1, 0, 2, 0) }},
		{"outline that is no number", "slab outline", func(m *Model) { m.Slab.Outline = path(0, 0, 5, 0, math.NaN(), 5) }},
	} {
		m := column(false)
		c.spoil(&m)
		r, err := m.Replay(context.Background(), UsualHours(24), nil, nil)
		if err == nil || r != nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.name, err)
		} else {
			t.Logf("%s: %v", c.name, err)
		}
	}
}

func TestCancelKeepsWhatWasFound(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	r, err := row(3, 5, 12).Replay(ctx, UsualHours(24*90), nil, func(done, of int, hour float64) {
		if done == 5 {
			cancel()
		}
	})
	if !errors.Is(err, context.Canceled) || r == nil || r.Until != UsualHours(24 * 90)[5] {
		t.Errorf("error %v, replay until %v", err, r)
	}
}

// The exact step of creep against many small ones.
func TestRelaxingModulus(t *testing.T) {
	const e, creep, strain = 20e9, 1.8, 1e-4
	stress, n := 0.0, 20000
	for range n {
		stress += e*strain/float64(n) - stress*creep/float64(n)
	}
	within(t, "stress after the step", RelaxingModulus(e, creep)*strain, stress, 1e-4)
	within(t, "no creep", RelaxingModulus(e, 0), e, 1e-12)
}

// The hand calculation stands close beside a strip that the base alone pulls on, and
// says why where a column holds.
func TestHandCalculationBeside(t *testing.T) {
	m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, 14, 1)}, Base: stone, Pours: []Pour{{Thickness: 0.15, At: shrinking(25e9, 49e6, 400e-6, 10)}}}
	b := replay(t, m, steps(10, 5)...).Fields[0].Beside
	t.Logf("%+v", b)
	if math.Abs(b.Apart) > apartFrom || b.Why != "" || b.Length < 13.9 || b.Length > 15 {
		t.Errorf("strip: %+v", b)
	}
	cast := column(false)
	cast.Pours[0].At = shrinking(25e9, 49e6, 400e-6, 10)
	b = replay(t, cast, steps(10, 5)...).Fields[0].Beside
	if b.Apart < apartFrom || !strings.Contains(b.Why, "COL") {
		t.Errorf("column: %+v", b)
	}
}

// A search that comes upon a number that is none says where, and leaves the last good
// state.
func TestUnsettledIsNamed(t *testing.T) {
	m := infill(false)
	s, err := newSlabState(&m, m.Settings.filled())
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range []float64{5, 8} {
		if err := s.step(h); err != nil {
			t.Fatal(err)
		}
	}
	good := append([]float64(nil), s.u...)
	s.lines[0].Bars = &Bars{Across: math.NaN()}
	err = s.step(10)
	var not *NotSettled
	if !errors.As(err, &not) || not.Hour != 10 || not.What != "F" && not.What != "G" {
		t.Errorf("error %v", err)
	}
	if !reflect.DeepEqual(good, s.u) || s.hour != 8 {
		t.Error("the last good state is gone")
	}
}

// A replay that does not settle hands back the last state that did.
func TestUnsettledKeepsTheLastState(t *testing.T) {
	m := infill(false)
	at := m.Pours[0].At
	m.Pours[0].At = func(hour float64) Concrete {
		c := at(hour)
		if hour > 20 {
			m.Lines[0].Bars.Along = math.Inf(1) // stiffer than can be
		}
		return c
	}
	r, err := m.Replay(context.Background(), UsualHours(48), nil, nil)
	var not *NotSettled
	if !errors.As(err, &not) || not.Hour <= 20 {
		t.Fatalf("error %v", err)
	}
	t.Log(err)
	if r == nil || r.Until > 20 || len(r.Fields) != 1 || r.Fields[0].Hour != r.Until {
		t.Fatalf("replay %+v", r)
	}
	for _, v := range r.Fields[0].Most {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("stress %g", v)
		}
	}
}

// Finer triangles and shorter steps change little of where and when a corner cracks.
func TestFinerChangesLittle(t *testing.T) {
	first := func(size, fine, each float64) Event {
		m := Model{Slab: plan.Slab{Outline: path(0, 0, 12, 0, 12, 6, 6, 6, 6, 12, 0, 12)}, Base: Base{Stiffness: 300e6, Friction: 3, UnitWeight: 24000},
			Pours: []Pour{{Thickness: 0.15, At: hot(4)}}, Settings: Settings{Size: size, Fine: fine}}
		var hours []float64
		for h := 0.0; h <= 24; h += each {
			hours = append(hours, h)
		}
		r := replay(t, m, hours...)
		if len(r.Events) == 0 {
			t.Fatal("no crack")
		}
		return r.Events[0]
	}
	coarse, fine := first(0.5, 0.12, 2), first(0.25, 0.05, 0.5)
	t.Logf("hour %.2f at %.2f, %.2f; hour %.2f at %.2f, %.2f", coarse.Hour, coarse.At.X, coarse.At.Y, fine.Hour, fine.At.X, fine.At.Y)
	if math.Abs(coarse.Hour-fine.Hour) > 1 || coarse.At.To(fine.At) > 0.2 {
		t.Errorf("hour %.2f at %v, finer: hour %.2f at %v", coarse.Hour, coarse.At, fine.Hour, fine.At)
	}
}

// A stiff round bar of 25 mm: the closed form by hand, and what being out of line adds.
func TestDowelSideStiffness(t *testing.T) {
	bending := 200e9 * math.Pi * math.Pow(0.025, 4) / 64
	beta := math.Pow(407e9*0.025/(4*bending), 0.25)
	// Each end of the bar gives way by P/(4β³EI)·2, Friberg's y0 for no gap; both ends.
	give := 2 * 2 / (4 * math.Pow(beta, 3) * bending)
	within(t, "sideways", DowelSideStiffness(0.025, 407e9, 200e9), 1/give, 1e-9)
	within(t, "out of line", MisalignedStiffness(DowelSideStiffness(0.025, 407e9, 200e9), 0.02), 1/give*4e-4, 1e-9)
	within(t, "stretched", BarStretchStiffness(0.012, 0.1, 200e9), 200e9*113.097e-6/0.1, 1e-5)
}
