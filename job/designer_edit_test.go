package job

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"testing"

	"slabwright/plan"
)

// On the second example a plan that keeps the rules cracks less often than the joints as
// drawn, and says so with ranges that do not meet.
func TestProposedPlansCrackLessOften(t *testing.T) {
	if testing.Short() {
		t.Skip("follows forty slabs")
	}
	g, j := nextDesigner(t)
	d, err := g.Propose(context.Background(), j.Slabs[0], nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range d.Proposed {
		if l.Chance.Any.High >= d.Drawn.Chance.Any.Low {
			t.Errorf("%s: %s beside %s as drawn", l.Name, l.Chance.Any.Words(), d.Drawn.Chance.Any.Words())
		}
		panels, long := 0.0, 0
		for _, q := range l.Quantities {
			if q.What == "panels" {
				panels = q.Amount
			}
		}
		for _, p := range l.Panels {
			if p.Aspect > 1.5 {
				long++
			}
		}
		if panels > 24 || long > 3 {
			t.Errorf("%s: %.0f panels, %d of them over 1.5", l.Name, panels, long)
		}
		for _, w := range l.Warnings {
			if w.Level == "must" {
				t.Errorf("%s: %s", l.Name, w.Words)
			}
		}
	}
	if d.Drawn.Chance.InTime == nil {
		t.Error("nothing said of the joints as drawn, had all been sawn in time")
	}
	if !strings.Contains(d.Spacing.Note, "held flat") && !strings.Contains(d.Spacing.Note, "lies flat") {
		t.Errorf("why curl allows so much is not said: %q", d.Spacing.Note)
	}
	takes(t, d.Proposed[0].Slab)
}

// takes puts a plan into a job whose file has fields the program does not know, and
// looks that they are still there.
func takes(t *testing.T, s plan.Slab) {
	t.Helper()
	dir := t.TempDir()
	data, err := os.ReadFile("demonext/job.json")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(data), `"version": 1,`, `"version": 1, "our_own": {"colour": "blue"},`, 1)
	text = strings.Replace(text, `"id": "apron-new",`, `"id": "apron-new", "survey_ref": "S-17",`, 1)
	if err := os.WriteFile(filepath.Join(dir, "job.json"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	j, err := Load(dir)
	if err != nil {
		t.Fatal(err)
	}
	if err := j.TakeJoints(s); err != nil {
		t.Fatal(err)
	}
	if err := j.Save(dir); err != nil {
		t.Fatal(err)
	}
	saved, err := os.ReadFile(filepath.Join(dir, "job.json"))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"our_own"`, `"survey_ref"`, `"corner_bars"`} {
		if !strings.Contains(string(saved), want) {
			t.Errorf("%s is not in the job any more", want)
		}
	}
	again, err := Load(dir)
	if err != nil {
		t.Fatal(err)
	}
	if len(again.Slabs[0].Joints) < len(s.Joints) || len(again.Slabs[0].CornerBars) != len(s.CornerBars) {
		t.Errorf("%d joints and %d corners with bars, want at least %d and %d", len(again.Slabs[0].Joints), len(again.Slabs[0].CornerBars), len(s.Joints), len(s.CornerBars))
	}
	for _, p := range again.Pours {
		if len(p.Saw) > 0 {
			t.Errorf("pour %s still saws %s", p.ID, p.Saw[0].Joint)
		}
	}
}

// A slab that was walked keeps its joints.
func TestWalkedSlabKeepsItsJoints(t *testing.T) {
	j, err := Load("demodata")
	if err != nil {
		t.Fatal(err)
	}
	if err := j.TakeJoints(j.Slabs[0]); err == nil || !strings.Contains(err.Error(), "walked") {
		t.Errorf("taken: %v", err)
	}
}

// Every verb does what it says, or says what is wrong; the slab given stays as it is.
func TestEditVerbs(t *testing.T) {
	g, j := nextDesigner(t)
	slab := j.Slabs[0]
	before, _ := json.Marshal(slab)
	for _, c := range []struct {
		edit  Edit
		wrong string // in the error; "" where it can be done
	}{
		{Edit{Do: "move joint", ID: "SA1", By: plan.Point{X: 0.3}}, ""},
		{Edit{Do: "move joint", ID: "none"}, "none"},
		{Edit{Do: "remove joint", ID: "SA2"}, ""},
		{Edit{Do: "remove joint", ID: "XX"}, "XX"},
		{Edit{Do: "add joint", Kind: "sawn", From: plan.Point{X: 2.5, Y: 0}, To: plan.Point{X: 2.5, Y: 5.5}}, ""},
		{Edit{Do: "add joint", Kind: "glued", From: plan.Point{X: 2.5, Y: 0}, To: plan.Point{X: 2.5, Y: 5.5}}, "glued"},
		{Edit{Do: "halve panel", ID: "P1"}, ""},
		{Edit{Do: "halve panel", ID: "P1", Across: "short"}, ""},
		{Edit{Do: "halve panel", ID: "P99"}, "P99"},
		{Edit{Do: "add pit", At: plan.Point{X: 2.5, Y: 8}, Size: plan.Point{X: 1, Y: 1}}, ""},
		{Edit{Do: "add column", At: plan.Point{X: 2.5, Y: 8}, Size: plan.Point{X: 0.3, Y: 0.3}}, ""},
		{Edit{Do: "add pit", At: plan.Point{X: 2.5, Y: 8}}, "sides"},
		{Edit{Do: "move fixture", ID: "COL", By: plan.Point{X: 0.2}}, ""},
		{Edit{Do: "move fixture", ID: "NO"}, "NO"},
		{Edit{Do: "remove fixture", ID: "PIT"}, ""},
		{Edit{Do: "remove fixture", ID: "NO"}, "NO"},
		{Edit{Do: "paint"}, "paint"},
	} {
		l, err := g.Edit(context.Background(), slab, c.edit)
		switch {
		case c.wrong == "" && err != nil:
			t.Errorf("%+v: %v", c.edit, err)
		case c.wrong == "" && reflect.DeepEqual(l.Slab, slab):
			t.Errorf("%+v changed nothing", c.edit)
		case c.wrong != "" && (err == nil || !strings.Contains(err.Error(), c.wrong)):
			t.Errorf("%+v: error %v, want one with %q", c.edit, err, c.wrong)
		}
	}
	if after, _ := json.Marshal(slab); string(before) != string(after) {
		t.Error("an edit changed the slab it was given")
	}
}

// The chance of a slab is the same on one worker and on two.
func TestChanceOnOneWorkerAndTwo(t *testing.T) {
	var got []any
	g, j := nextDesigner(t)
	for _, workers := range []int{1, 2} {
		was := runtime.GOMAXPROCS(workers)
		g.chances = nil
		c, err := g.Chance(context.Background(), j.Slabs[0])
		runtime.GOMAXPROCS(was)
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, c)
	}
	if !reflect.DeepEqual(got[0], got[1]) {
		t.Errorf("one worker %+v, two %+v", got[0], got[1])
	}
}

// What the app asks for while a joint is dragged: under 100 ms a look.
func BenchmarkLook(b *testing.B) {
	g, j := nextDesigner(b)
	for b.Loop() {
		if _, err := g.Look(context.Background(), j.Slabs[0]); err != nil {
			b.Fatal(err)
		}
	}
}
