package restraint

import (
	"context"
	"math"
	"testing"

	"slabwright/plan"
)

func rectangle(x0, y0, x1, y1 float64) []plan.Point {
	return []plan.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

func path(v ...float64) (out []plan.Point) {
	for i := 0; i < len(v); i += 2 {
		out = append(out, plan.Point{X: v[i], Y: v[i+1]})
	}
	return out
}

// shrinking is concrete that shortens evenly to a strain over some hours.
func shrinking(modulus, strength, strain, over float64) func(float64) Concrete {
	return func(hour float64) Concrete {
		return Concrete{Strain: -strain * math.Min(1, hour/over), Modulus: modulus, Strength: strength}
	}
}

var stone = Base{Stiffness: 50e6, Friction: 1.5, UnitWeight: 24000}

func replay(t testing.TB, m Model, hours ...float64) *Replay {
	t.Helper()
	r, err := m.Replay(context.Background(), hours, hours[len(hours)-1:], nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Fields {
		for i, v := range f.Most {
			if math.IsNaN(v) {
				t.Fatalf("stress of triangle %d is not a number", i)
			}
		}
	}
	return r
}

func steps(to float64, n int) (out []float64) {
	for i := range n + 1 {
		out = append(out, to*float64(i)/float64(n))
	}
	return out
}

// stressNear returns the mean of xx and yy over triangles near a place.
func stressNear(f Field, at plan.Point, within float64) (xx, yy float64) {
	n := 0.0
	for i, t := range f.Triangles {
		if t[0].Plus(t[1]).Plus(t[2]).Times(1./3).To(at) < within {
			xx += f.Stress[i][0]
			yy += f.Stress[i][1]
			n++
		}
	}
	return xx / n, yy / n
}

func within(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: got %.5g, want %.5g within %g %%", what, got, want, 100*share)
	}
}

// A slab that nothing holds shortens without stress.
func TestFreeShrinkageGivesNoStress(t *testing.T) {
	m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, 6, 4)}, Base: Base{Stiffness: 1e3, Friction: 0, UnitWeight: 24000},
		Pours: []Pour{{Thickness: 0.15, At: shrinking(25e9, 2e6, 400e-6, 10)}}}
	r := replay(t, m, steps(10, 3)...)
	for i, s := range r.Fields[0].Stress {
		for _, v := range s {
			if math.Abs(v) > 1 {
				t.Fatalf("triangle %d has stress %g Pa", i, v)
			}
		}
	}
}

// A narrow strip on a base that does not slip has the stress of the shear-lag
// closed form.
func TestElasticBedAgainstClosedForm(t *testing.T) {
	const e, strain, h, ks = 25e9, 200e-6, 0.15, 50e6
	for _, length := range []float64{4, 12, 40} {
		m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, length, 0.6)}, Base: Base{Stiffness: ks, Friction: 30, UnitWeight: 24000, Adhesion: 5e6},
			Pours: []Pour{{Thickness: h, At: shrinking(e, 49e6, strain, 10)}}, Settings: Settings{Poisson: 1e-9, Size: 0.2}}
		r := replay(t, m, steps(10, 2)...)
		xx, _ := stressNear(r.Fields[0], plan.Point{X: length / 2, Y: 0.3}, 0.4)
		within(t, "stress at mid-length", xx, ElasticBedStress(e, strain, length, h, ks), 0.01)
	}
}

// A strip that slides over its whole length has the drag stress μγL/2.
func TestDragAgainstClosedForm(t *testing.T) {
	for _, length := range []float64{6, 15} {
		m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, length, 0.2)}, Base: Base{Stiffness: 5e9, Friction: 1.5, UnitWeight: 24000},
			Pours: []Pour{{Thickness: 0.15, At: shrinking(25e9, 49e6, 600e-6, 10)}}, Settings: Settings{Size: 0.1}}
		r := replay(t, m, steps(10, 6)...)
		xx, _ := stressNear(r.Fields[0], plan.Point{X: length / 4, Y: 0.1}, 0.1)
		within(t, "stress at a quarter of the length", xx, DragStress(1.5, 24000, length)/2, 0.02)
	}
}

// The work of shortening is found again as stress, drag, creep and cracks.
func TestWorkBalances(t *testing.T) {
	for _, c := range []struct {
		name     string
		strength float64
		creep    float64
	}{{"sound", 49e6, 0}, {"creeping", 49e6, 2}, {"cracking", 1e6, 1}} {
		at := func(hour float64) Concrete {
			return Concrete{Strain: -500e-6 * hour / 10, Modulus: 20e9 + 1e9*hour, Strength: c.strength, Creep: c.creep * hour / 10}
		}
		m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, 60, 3)}, Base: stone, Pours: []Pour{{Thickness: 0.15, At: at}}}
		r := replay(t, m, steps(10, 40)...)
		l := r.Ledger
		t.Logf("%s: %+v, %d events", c.name, l, len(r.Events))
		if l.Supplied <= 0 || math.Abs(l.Left) > 0.02*l.Supplied {
			t.Errorf("%s: %.3g J of %.3g are not accounted for", c.name, l.Left, l.Supplied)
		}
		if c.strength < 49e6 && (len(r.Events) == 0 || l.Released <= 0) {
			t.Errorf("%s: %d events released %g J", c.name, len(r.Events), l.Released)
		}
	}
}

// What the ledger cannot account for is the error of the steps: it falls with them.
func TestShorterStepsBalanceBetter(t *testing.T) {
	m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, 30, 3)}, Base: stone, Pours: []Pour{{Thickness: 0.15, At: shrinking(25e9, 49e6, 500e-6, 10)}}}
	long, short := replay(t, m, steps(10, 10)...).Ledger, replay(t, m, steps(10, 40)...).Ledger
	if !(math.Abs(short.Left) < 0.4*math.Abs(long.Left)) {
		t.Errorf("%.3g J left over 10 steps, %.3g over 40", long.Left, short.Left)
	}
}

// Steps in which work is missed are halved until less than 3 % is.
func TestLongStepsAreHalved(t *testing.T) {
	m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, 30, 3)}, Base: stone, Pours: []Pour{{Thickness: 0.15, At: shrinking(25e9, 49e6, 500e-6, 10)}}}
	m.Settings.Miss = 10
	whole := replay(t, m, steps(10, 2)...).Ledger
	m.Settings.Miss = 0
	halved := replay(t, m, steps(10, 2)...).Ledger
	t.Logf("left %.3f of the work in two steps, %.4f in halves", whole.Left/whole.Supplied, halved.Left/halved.Supplied)
	if math.Abs(whole.Left) < 0.05*whole.Supplied || math.Abs(halved.Left) > 0.03*halved.Supplied {
		t.Errorf("left %.3f of the work in two steps, %.4f in halves", whole.Left/whole.Supplied, halved.Left/halved.Supplied)
	}
}

// Base friction alone does not crack a panel of sound concrete.
func TestFrictionAloneDoesNotCrackAPanel(t *testing.T) {
	m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, 4.5, 4.5)}, Base: stone,
		Pours: []Pour{{Thickness: 0.15, At: shrinking(30e9, 2.2e6, 800e-6, 10)}}}
	r := replay(t, m, steps(10, 10)...)
	if len(r.Events) != 0 {
		t.Errorf("%d cracks", len(r.Events))
	}
	if r.Peak.Stress > 1.6*DragStress(1.5, 24000, 4.5) {
		t.Errorf("greatest stress %.3g Pa, drag bound %.3g", r.Peak.Stress, DragStress(1.5, 24000, 4.5))
	}
	t.Logf("greatest stress %.3g MPa, closed form %.3g", r.Peak.Stress/1e6, DragStress(1.5, 24000, 4.5)/1e6)
}

// A long strip cracks at spacings between the release length and twice that, whatever
// its strength and friction, but for the reach over which stress is averaged
// (mechanics).
func TestLongStripSpacing(t *testing.T) {
	const h = 0.15
	for _, c := range []struct{ strength, friction float64 }{{0.5e6, 1.5}, {0.8e6, 1.5}, {0.5e6, 2.5}} {
		m := Model{Slab: plan.Slab{Outline: rectangle(0, 0, 100, 1)}, Base: Base{Stiffness: 1e9, Friction: c.friction, UnitWeight: 24000},
			Pours: []Pour{{Thickness: h, At: shrinking(20e9, c.strength, 600e-6, 10)}}, Settings: Settings{Scatter: 0.02, Seed: 3, Fracture: 20}} // young concrete: little to tear
		r := replay(t, m, steps(10, 20)...)
		least, most := CrackSpacing(c.strength, h, c.friction*24000*h)
		at := []float64{0, 100}
		for _, e := range r.Events {
			at = append(at, e.At.X)
		}
		sortFloats(at)
		t.Logf("strength %.1f MPa, friction %.1f: %d cracks, bounds %.1f to %.1f m: %.1f", c.strength/1e6, c.friction, len(r.Events), least, most, at)
		if len(r.Events) == 0 {
			t.Error("no cracks")
		}
		for i := 1; i < len(at); i++ {
			if d := at[i] - at[i-1]; d < 0.93*least || d > 1.07*most {
				t.Errorf("spacing %.2f m outside %.2f to %.2f", d, least, most)
			}
		}
	}
}

func sortFloats(v []float64) {
	for i := range v {
		for k := i; k > 0 && v[k] < v[k-1]; k-- {
			v[k], v[k-1] = v[k-1], v[k]
		}
	}
}
