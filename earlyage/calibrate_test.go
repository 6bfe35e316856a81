package earlyage

import (
	"context"
	"math"
	"reflect"
	"strings"
	"testing"
	"time"

	"slabwright/source"
)

func membersOf(t testing.TB, p Pour) *Members {
	t.Helper()
	m, err := RunMembers(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func doubtfulPour(t testing.TB) Pour {
	c := mild(t)
	c.Until = 36
	d := DefaultDoubt
	d.Fineness, d.SetShift = 0.25, 1
	return Pour{Column: c, Restraint: usualRestraint(), Doubt: d, Seed: 11, Count: 150}
}

// A slab that goes as one of the pours could: its logged temperatures, set and
// cylinders must draw the members to it.
func TestObservationsFindTheTruth(t *testing.T) {
	saw, _ := SawFor("ordinary", "medium")
	p := doubtfulPour(t)
	values := make([]float64, len(unknowns))
	for k, u := range p.Unknowns() {
		values[k] = u.Value
		switch u.Key {
		case "speed":
			values[k] = 0.82
		case "placing":
			values[k] += 1.5
		case "set_shift":
			values[k] = 0.6
		}
	}
	v := p.vary(values)
	v.column.Profiles = true
	truth := runOf(t, v.column)
	for hours := 1.0; hours <= 24; hours += 0.5 {
		for _, depth := range []float64{0.03, 0.12} {
			p.Observed.Temperatures = append(p.Observed.Temperatures, LoggedTemperature{At: truth.Clock(hours), Depth: depth, Value: truth.temperatureAt(hours, depth), Error: 0.5})
		}
	}
	p.Observed.FinalSets = []SetTime{{At: truth.Clock(truth.FinalSet.Surface)}}
	p.Observed.Cylinders = []CylinderResult{{At: truth.Clock(24), Strength: truth.At(24).Fc}}
	m := membersOf(t, p)
	c := m.Calibration(saw)
	if len(c.Warnings) != 0 || c.Effective < 10 || c.Effective > 0.7*float64(c.Members) || c.Observations != len(p.Observed.Temperatures)+2 {
		t.Errorf("effective %.1f of %d, tempered %.2f, %d observations, warnings %v", c.Effective, c.Members, c.Tempered, c.Observations, c.Warnings)
	}
	want := reached(truth.Hours, truth.EdgeFc, saw.Edge)
	before, after := c.OpensBefore.Sub(p.Column.Placed).Hours(), c.OpensAfter.Sub(p.Column.Placed).Hours()
	if math.Abs(before-want) < 0.8 || math.Abs(after-want) > 0.35*math.Abs(before-want) {
		t.Errorf("median opening %.2f h before, %.2f h after, true slab %.2f h", before, after, want)
	}
	if got := m.Window(saw, 0).opens; math.Abs(got-want) > 0.5 {
		t.Errorf("window opens %.2f h, true slab %.2f h", got, want)
	}
	for k, row := range c.Moved {
		if row.Key != "speed" && row.Key != "placing" {
			continue
		}
		if !(row.SpreadAfter < row.SpreadBefore) || math.Abs(row.MeanAfter-values[k]) > math.Abs(row.MeanBefore-values[k]) {
			t.Errorf("%s: %.3f ± %.3f before, %.3f ± %.3f after, true %.3f", row.Key, row.MeanBefore, row.SpreadBefore, row.MeanAfter, row.SpreadAfter, values[k])
		}
	}
	w, plain := m.Window(saw, 0), m.before.Window(saw, 0)
	if a, b := w.OpensLate.Sub(w.OpensEarly), plain.OpensLate.Sub(plain.OpensEarly); !(a < b) {
		t.Errorf("spread of the opening %v after, %v before", a, b)
	}
	t.Logf("opens %.2f h before, %.2f h after, true %.2f h; %.0f of %d members count, tempered %.2f", before, after, want, c.Effective, c.Members, c.Tempered)
}

// Without observations nothing moves.
func TestNoObservationsNoChange(t *testing.T) {
	saw, _ := SawFor("ordinary", "medium")
	p := doubtfulPour(t)
	p.Count = 20
	m := membersOf(t, p)
	c := m.Calibration(saw)
	if c.Observations != 0 || c.Effective != 21 || c.Tempered != 1 || c.OpensBefore != c.OpensAfter || len(c.Warnings) != 0 {
		t.Errorf("%+v", c)
	}
	for _, row := range c.Moved {
		if row.MeanBefore != row.MeanAfter || row.SpreadBefore != row.SpreadAfter {
			t.Errorf("%s moved", row.Key)
		}
	}
	// An observation that says nothing weighs nothing.
	vague := p
	vague.Observed.Cylinders = []CylinderResult{{At: p.Column.Placed.Add(20 * time.Hour), Strength: 8, Error: 1e5}}
	a, b := m.Window(saw, 0.1), membersOf(t, vague).Window(saw, 0.1)
	for i := range a.Curve {
		if math.Abs(a.Curve[i].Cracked-b.Curve[i].Cracked) > 1e-6 || math.Abs(a.Curve[i].Ready-b.Curve[i].Ready) > 1e-6 {
			t.Fatalf("%.1f h: %+v and %+v", a.Curve[i].Hours, a.Curve[i], b.Curve[i])
		}
	}
}

// Observations that no member can give are said so, and do not leave one member to
// decide.
func TestContradictionIsWarned(t *testing.T) {
	saw, _ := SawFor("ordinary", "medium")
	p := doubtfulPour(t)
	p.Count = 60
	at := func(hours float64) time.Time { return p.Column.Placed.Add(time.Duration(hours * float64(time.Hour))) }
	for name, o := range map[string]Observed{
		"cylinder far too strong":           {Cylinders: []CylinderResult{{At: at(12), Strength: 40}}},
		"temperature far too hot":           {Temperatures: []LoggedTemperature{{At: at(10), Depth: 0.05, Value: 70}}},
		"clean trial cut in fresh concrete": {TrialCuts: []TrialCut{{At: at(1.5), Saw: saw, Clean: true}}},
		"set early and late":                {FinalSets: []SetTime{{At: at(3.2), Error: 3 * time.Minute}, {At: at(6.5), Error: 3 * time.Minute}}},
	} {
		p.Observed = o
		c := membersOf(t, p).Calibration(saw)
		if len(c.Warnings) == 0 || c.Effective < 14 {
			t.Errorf("%s: %.1f members count, warnings %q", name, c.Effective, c.Warnings)
		}
		t.Logf("%s: %q", name, c.Warnings)
	}
	p.Observed = Observed{Cylinders: []CylinderResult{{At: at(-5), Strength: 400}}}
	if _, err := RunMembers(context.Background(), p); err == nil || !strings.Contains(err.Error(), "date wrong") || !strings.Contains(err.Error(), "400") {
		t.Errorf("error %v, want the date and the strength", err)
	}
}

// A trial cut that ravelled opens the window later, a clean one earlier.
func TestTrialCut(t *testing.T) {
	saw, _ := SawFor("ordinary", "medium")
	p := doubtfulPour(t)
	m := membersOf(t, p)
	median := m.Calibration(saw).OpensBefore
	after := func(clean bool) time.Time {
		q := p
		q.Observed.TrialCuts = []TrialCut{{At: median, Saw: saw, Clean: clean}}
		return membersOf(t, q).Calibration(saw).OpensAfter
	}
	if clean, ravelled := after(true), after(false); !clean.Before(median) || !ravelled.After(median) {
		t.Errorf("median opening %v; after a clean cut then %v, after a ravelled one %v", median, clean, ravelled)
	}
}

// A fact that was measured narrows its range and moves the expected course; what it
// was said to be outside its limits is refused.
func TestGivenFacts(t *testing.T) {
	p := doubtfulPour(t)
	find := func(p Pour, key string) Unknown {
		for _, u := range p.Unknowns() {
			if u.Key == key {
				return u
			}
		}
		t.Fatal(key)
		return Unknown{}
	}
	wide := find(p, "placing")
	measured, assumed := p, p
	measured.Doubt = p.Doubt.Given("placing", source.Fact{Value: 23, Known: source.Measured})
	assumed.Doubt = p.Doubt.Given("placing", source.Fact{Value: 23, Known: source.Assumed})
	narrow := find(measured, "placing")
	if narrow.Value != 23 || narrow.High-narrow.Low >= wide.High-wide.Low || find(assumed, "placing").High-find(assumed, "placing").Low != wide.High-wide.Low {
		t.Errorf("default %+v, measured %+v, assumed %+v", wide, narrow, find(assumed, "placing"))
	}
	low, high := 21.0, 26.0
	ranged := p
	ranged.Doubt = p.Doubt.Given("placing", source.Fact{Value: 23, Low: &low, High: &high, Known: source.Recorded})
	if u := find(ranged, "placing"); u.Low != 21 || u.High != 26 {
		t.Errorf("range given: %+v", u)
	}
	if len(p.Doubt.given) != 0 {
		t.Error("giving a fact changed the doubt it came from")
	}
	measured.Count = 1
	if got := membersOf(t, measured).Expected().Mid[0]; got != 23 {
		t.Errorf("expected course placed at %.1f °C, measured 23", got)
	}
	wrong := p
	wrong.Doubt = p.Doubt.Given("water_binder", source.Fact{Value: 45, Known: source.Recorded})
	if _, err := RunMembers(context.Background(), wrong); err == nil || !strings.Contains(err.Error(), "water over binder 45") {
		t.Errorf("error %v, want water over binder", err)
	}
	seen := map[string]bool{}
	for _, key := range UnknownKeys() {
		if seen[key] {
			t.Errorf("key %q twice", key)
		}
		seen[key] = true
	}
}

// Every unknown does what it is: the course with it at its high end differs from the
// one at its low end, and all at their values give the course of the pour itself.
func TestEveryUnknownActs(t *testing.T) {
	p, err := doubtfulPour(t).ready()
	if err != nil {
		t.Fatal(err)
	}
	us := p.Unknowns()
	values := make([]float64, len(us))
	for k, u := range us {
		values[k] = u.Value
	}
	run := func() course {
		c, err := p.follow(context.Background(), append([]float64(nil), values...), nil)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	plain, err := p.Column.Run(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if middle := run(); !reflect.DeepEqual(middle.history.EdgeFc, plain.EdgeFc) || !reflect.DeepEqual(middle.history.FullCurl, plain.FullCurl) {
		t.Error("with every unknown at its value the course is not that of the pour")
	}
	for k, u := range us {
		values[k] = u.Low
		low := run()
		values[k] = u.High
		high := run()
		values[k] = u.Value
		same := reflect.DeepEqual(low.edgeFc, high.edgeFc) && reflect.DeepEqual(low.ratio, high.ratio) && low.edge == high.edge && low.scatter == high.scatter
		if same {
			t.Errorf("%s from %g to %g changes nothing", u.Key, u.Low, u.High)
		}
		at := low.history.At(14).EdgeFc - high.history.At(14).EdgeFc
		switch u.Key {
		case "speed", "placing", "air":
			if at >= 0 {
				t.Errorf("%s: edge after 14 h stronger by %.2f MPa at the low end", u.Key, at)
			}
		case "water_binder", "set_shift":
			if at <= 0 {
				t.Errorf("%s: edge after 14 h weaker by %.2f MPa at the low end", u.Key, -at)
			}
		}
	}
}

// Members drawn anew are the same on one core and on three.
func TestCalibrationDoesNotDependOnCores(t *testing.T) {
	saw, _ := SawFor("ordinary", "medium")
	p := doubtfulPour(t)
	p.Count = 40
	for _, hours := range []float64{4, 7, 10, 14} {
		at := p.Column.Placed.Add(time.Duration(hours * float64(time.Hour)))
		p.Observed.Temperatures = append(p.Observed.Temperatures, LoggedTemperature{At: at, Depth: 0.07, Value: membersOf(t, Pour{Column: p.Column, Restraint: p.Restraint, Count: 1}).Expected().At(hours).Mid + 1, Error: 0.3})
	}
	var windows []CutWindow
	for _, cores := range []int{1, 3} {
		p.Cores = cores
		m := membersOf(t, p)
		if m.Calibration(saw).Effective >= 40 {
			t.Fatal("the observations weigh nothing")
		}
		windows = append(windows, m.Window(saw, 0.1))
	}
	if !reflect.DeepEqual(windows[0].Curve, windows[1].Curve) || !windows[0].Opens.Equal(windows[1].Opens) {
		t.Error("one core and three cores gave different windows")
	}
}

// What was observed at one panel goes to the others: at the panel itself the window is
// that of the calibrated pour, at a later one it moves the same way.
func TestObservationsReachEveryPanel(t *testing.T) {
	saw, _ := SawFor("ordinary", "medium")
	p := doubtfulPour(t)
	p.Count = 40
	plain := p
	p.Observed.TrialCuts = []TrialCut{{At: p.Column.Placed.Add(7 * time.Hour), Saw: saw}} // it ravelled
	placed := []time.Time{p.Column.Placed, p.Column.Placed.Add(3 * time.Hour)}
	got, err := PanelWindows(context.Background(), p, placed, saw, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	before, err := PanelWindows(context.Background(), plain, placed, saw, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	if want := membersOf(t, p).Window(saw, 0.1); !got[0].Opens.Equal(want.Opens) || !got[0].Closes.Equal(want.Closes) {
		t.Errorf("opens %v, closes %v; the calibrated pour %v, %v", got[0].Opens, got[0].Closes, want.Opens, want.Closes)
	}
	for i := range got {
		if !got[i].Opens.After(before[i].Opens) {
			t.Errorf("panel %d opens %v after a cut that ravelled, %v before", i, got[i].Opens, before[i].Opens)
		}
	}
}
