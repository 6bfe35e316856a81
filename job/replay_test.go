package job

import (
	"context"
	"encoding/json"
	"errors"
	"math"
	"runtime"
	"strings"
	"testing"

	"slabwright/plan"
	"slabwright/report"
	"slabwright/restraint"
	"slabwright/source"
)

// few keeps a replay short.
var few = ReplayOptions{Hours: 60, Members: 3}

func replayOf(t *testing.T, o ReplayOptions) *report.Content {
	t.Helper()
	c, err := Replay(t.Context(), demo(t), DemoFS(), o, nil)
	if err != nil {
		t.Fatal(err)
	}
	if c.Replay == nil {
		t.Fatalf("no replay; missing: %v", c.Missing)
	}
	return c
}

// The worked example, whose joints and cracks were seen: what is expected has to agree
// with the walk where the walk is plain. Joint SB3, sawn 31 mm deep of 180, was found
// shut; cracks start at the corners of the pit cast against the slab (F1) and not in the
// panels that hold nothing.
func TestReplayOfTheDemo(t *testing.T) {
	c := replayOf(t, ReplayOptions{Members: 6})
	r := c.Replay
	opened := map[string]bool{}
	for i, e := range r.Events {
		opened[e.Line] = true
		if i > 0 && e.Hours < r.Events[i-1].Hours {
			t.Errorf("%s at %.1f h stands behind %.1f h", e.What, e.Hours, r.Events[i-1].Hours)
		}
		if e.Share < 0.9 || e.Length <= 0 || e.Stress < 0 || e.Hand < 0 || e.Where == "" || e.Why == "" || e.Seen == "" {
			t.Errorf("event %+v", e)
		}
		if math.Abs(e.Stress/math.Max(e.Hand, 1e-9)-1) > 0.2 && e.Held == "" {
			t.Errorf("%s: %.2f MPa beside %.2f MPa by hand, and no reason", e.What, e.Stress, e.Hand)
		}
		if e.Freed < e.Needed {
			t.Errorf("%s sets free %.1f J of %.1f J", e.What, e.Freed, e.Needed)
		}
	}
	if !opened["SA2"] || opened["SB3"] {
		t.Errorf("opened %v; SA2 was found open and SB3 shut", opened)
	}
	pit := plan.Ring{{X: 7, Y: 7.4}, {X: 8.8, Y: 7.4}, {X: 8.8, Y: 8.6}, {X: 7, Y: 8.6}}
	atPit := 0
	for _, e := range r.Events {
		if e.Crack && pit.Distance(e.Path[0]) < 0.3 {
			atPit++
		}
	}
	if atPit == 0 {
		t.Error("no crack starts at the pit")
	}
	worst := map[string]float64{}
	for _, p := range r.Chances.Panels {
		worst[p.Panel] = p.Worst
	}
	if worst["P7"] < 0.5 || worst["P13"] > 0.2 {
		t.Errorf("chances by panel: P7 with the pit %.2f, P13 with nothing %.2f", worst["P7"], worst["P13"])
	}
}

// A replay is the same however many cores there are, byte for byte.
func TestReplayReproducible(t *testing.T) {
	write := func() string {
		data, err := json.Marshal(replayOf(t, few).Replay)
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	first := write()
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if write() != first {
		t.Error("one core gives another replay")
	}
}

// Stopped on the way, what had come by then is kept and says so.
func TestReplayStopped(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	c, err := Replay(ctx, demo(t), DemoFS(), ReplayOptions{Hours: 60, Members: 40}, func(what string, _ float64) {
		if strings.Contains(what, "chances, 3 of") {
			stop()
		}
	})
	if !errors.Is(err, context.Canceled) || c == nil || c.Replay == nil {
		t.Fatalf("error %v, content %v", err, c != nil)
	}
	if r := c.Replay; !strings.Contains(r.Partial, "Stopped by hand") || r.Chances == nil || r.Chances.Members >= 40 || len(r.Events) == 0 {
		t.Errorf("partial %q, chances %v", r.Partial, r.Chances)
	}
}

// A job whose pour has no weather says what it lacks and is diagnosed without a replay.
func TestReplayNotKnown(t *testing.T) {
	j := demo(t)
	j.Pours[1].Weather = ""
	c, err := Replay(t.Context(), j, DemoFS(), few, nil)
	if err != nil || c.Replay != nil {
		t.Fatalf("error %v, replay %v", err, c.Replay != nil)
	}
	told := false
	for _, m := range c.Missing {
		told = told || strings.Contains(m.So, "not replayed")
	}
	if !told {
		t.Error("nothing said of it")
	}
}

// followed is a diagnosis of the worked example as far as its pours.
func followed(t *testing.T) *diagnosis {
	t.Helper()
	d, err := begin(t.Context(), demo(t), DemoFS(), nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := d.followPours(); err != nil {
		t.Fatal(err)
	}
	return d
}

// The concrete of the plan is that of the column: full restraint by the creep that forgets
// its age stays near the column's, strength grows, and what is not placed is nothing.
func TestPlanPour(t *testing.T) {
	d := followed(t)
	in, err := d.planInputs(90 * hoursPerDay)
	if err != nil {
		t.Fatal(err)
	}
	p := in.pours[1]
	if c := p.at(0, 1); c != (restraint.Concrete{}) {
		t.Errorf("before it is placed: %+v", c)
	}
	most, apart := 0.0, 0.0
	rate := p.fullRestraint(1)
	for i, f := range p.history.FullRestraint {
		most, apart = math.Max(most, math.Abs(f)), math.Max(apart, math.Abs(f-rate[i]))
	}
	if apart > 0.2*most {
		t.Errorf("full restraint is up to %.2f MPa off, of %.2f MPa", apart, most)
	}
	early, late := p.at(20, 1), p.at(28*hoursPerDay, 1)
	if !(late.Strength > early.Strength && late.Modulus > early.Modulus && late.Creep > early.Creep) {
		t.Errorf("at 20 h %+v, at 28 days %+v", early, late)
	}
	if half := p.at(80*hoursPerDay, 0.5); !(half.Strain > p.at(80*hoursPerDay, 1).Strain) {
		t.Error("half the shrinkage shortens it no less")
	}
	for _, v := range p.face {
		if !(v >= 0 && v < 1.2) {
			t.Fatalf("share of the face %g", v)
		}
	}
}

// One thing done otherwise changes that and nothing else.
func TestPlanChanges(t *testing.T) {
	d := followed(t)
	of := func(change ...planChange) restraint.Model {
		m, _, err := d.planModel(60, change...)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	line := func(m restraint.Model, id string) restraint.Line {
		for _, l := range m.Lines {
			if l.ID == id {
				return l
			}
		}
		t.Fatalf("no line %s", id)
		return restraint.Line{}
	}
	was := of()
	if at := line(was, "SA1").From; math.Abs(at-5.71) > 0.02 { // 11:40 to 12:05 UTC, first truck 06:10
		t.Errorf("SA1 sawn at hour %.2f", at)
	}
	if at := line(of(cutAt("SA1", 9)), "SA1").From; at != 9 {
		t.Errorf("cut at hour %g", at)
	}
	inTime := of(cutInTime(10))
	if a, b := line(inTime, "SB4").From, line(was, "SB4").From; !(a < b) || line(inTime, "SA1").From != line(was, "SA1").From {
		t.Errorf("SB4 cut at %g, was %g", a, b)
	}
	added := of(jointAdded(plan.Joint{ID: "NEW", Kind: plan.Sawn, Path: []plan.Point{{X: 7.5, Y: 0}, {X: 7.5, Y: 5.5}}, Groove: &source.Fact{Value: 0.045}}, 12))
	if len(added.Lines) != len(was.Lines)+1 || line(added, "NEW").From != 12 {
		t.Error("the joint is not among the lines")
	}
	if b := line(of(dowelsClear(0.6)), "SA1").Bars; b.Clear != 0.6 {
		t.Errorf("dowels clear by %g m", b.Clear)
	}
	if b := line(of(dowelsFree()), "SA1").Bars; b.Along != 0 {
		t.Error("dowels still hold sideways")
	}
	give := func(m restraint.Model) float64 {
		for _, h := range m.Holds {
			if h.ID == "PIT" {
				return h.Give
			}
		}
		return math.NaN()
	}
	if give(was) != 0 || !(give(of(isolated("PIT"))) > 0) {
		t.Errorf("the pit gives %g, isolated %g", give(was), give(of(isolated("PIT"))))
	}
	if line(of(), "SA1").Bars.Clear != line(was, "SA1").Bars.Clear || give(of()) != 0 {
		t.Error("a change stays behind")
	}
}

// Isolating the pit takes its cracks away.
func TestIsolatedPitDoesNotCrack(t *testing.T) {
	d := followed(t)
	cracks := func(change ...planChange) (n int) {
		m, _, err := d.planModel(90*hoursPerDay, change...)
		if err != nil {
			t.Fatal(err)
		}
		m = m.Quick()
		m.Settings.Scatter = 0
		r, err := m.Replay(t.Context(), restraint.UsualHours(90*hoursPerDay), nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		pit := plan.Ring{{X: 7, Y: 7.4}, {X: 8.8, Y: 7.4}, {X: 8.8, Y: 8.6}, {X: 7, Y: 8.6}}
		for _, e := range r.Events {
			if e.Kind == restraint.CrackLine && pit.Distance(e.Path[0]) < 0.3 {
				n++
			}
		}
		return n
	}
	if held, free := cracks(), cracks(isolated("PIT")); held == 0 || free >= held {
		t.Errorf("%d cracks at the pit cast in, %d at the pit isolated", held, free)
	}
}
