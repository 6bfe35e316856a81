package job

import (
	"context"
	"encoding/json"
	"errors"
	"io/fs"
	"reflect"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"slabwright/report"
	"slabwright/walk"
)

// demo returns the worked example, read afresh.
func demo(t *testing.T) *Job {
	t.Helper()
	data, err := fs.ReadFile(DemoFS(), "job.json")
	if err != nil {
		t.Fatal(err)
	}
	j, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	j.Basis.Members = testMembers
	return j
}

// testMembers keeps the tests short; the commands run the usual 200.
const testMembers = 12

// quickDemo is the worked example with next to no samples, for what does not hang on
// their number.
func quickDemo(t *testing.T) *Job {
	t.Helper()
	j := demo(t)
	j.Basis.Members = 4
	return j
}

// demoAnswer is what comes of the worked example as it is, worked out once for all tests
// that only read it.
var demoAnswer = sync.OnceValues(func() (*report.Content, error) {
	data, err := fs.ReadFile(DemoFS(), "job.json")
	if err != nil {
		return nil, err
	}
	j, err := Decode(data)
	if err != nil {
		return nil, err
	}
	j.Basis.Members = testMembers
	return Diagnose(context.Background(), j, DemoFS(), nil)
})

func demoContent(t *testing.T) *report.Content {
	t.Helper()
	c, err := demoAnswer()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func diagnosed(t *testing.T, j *Job, files fs.FS) *report.Content {
	t.Helper()
	c, err := Diagnose(context.Background(), j, files, nil)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// The example must show what the README says it shows.
func TestDemoIsWholeAndSound(t *testing.T) {
	j := demo(t)
	for _, p := range j.Validate(DemoFS()) {
		if p.Level != Unknown {
			t.Error(p)
		}
	}
	w := j.Walks[0]
	kinds := map[walk.Kind]bool{}
	for _, f := range w.Findings {
		kinds[f.Kind] = true
	}
	if len(w.Findings) < 12 || len(kinds) < 8 || len(w.Unseen) < 2 {
		t.Errorf("%d findings of %d kinds and %d places that could not be seen; want 12, 8 and 2", len(w.Findings), len(kinds), len(w.Unseen))
	}
	c := demoContent(t)
	if c.Plan.Area < 340 || c.Plan.Area > 360 {
		t.Errorf("the apron has %.1f m², want about 350", c.Plan.Area)
	}
	if len(c.Pours) != 3 || len(c.PageOne.Answers) != 5 {
		t.Errorf("%d pours and %d answers; want 3 and 5", len(c.Pours), len(c.PageOne.Answers))
	}
}

// What the place and the record say plainly must come out in front.
func TestDemoCauses(t *testing.T) {
	c := demoContent(t)
	want := map[string]string{ // finding to the cause that must lead or be first among what cannot be told
		"F1": "inside-corner", "F2": "late-cut", "F3": "shallow-cut", "F4": "shallow-cut", "F5": "plastic-shrinkage",
		"F6": "plastic-settlement", "F8": "locked-dowels", "F9": "locked-dowels", "F10": "joint-edge-wear", "F11": "crazing",
		"F13": "weak-surface", "F14": "ravelled-cut", "F15": "inside-corner",
	}
	for _, f := range c.Findings {
		id, ok := want[f.Finding.ID]
		if !ok {
			continue
		}
		best := report.CauseRow{}
		for _, row := range append(append([]report.CauseRow{}, f.Mechanism...), f.Triggers...) {
			if row.ID == id {
				best = row
			}
		}
		if f.Decided && !strings.Contains(f.Answer, "likeliest cause is") {
			t.Errorf("%s is decided but says %q", f.Finding.ID, f.Answer)
		}
		if first := strings.Index(f.Answer, nameOf(t, id)); first < 0 {
			t.Errorf("%s: %s is not named first: %s (its row: %+v)", f.Finding.ID, id, f.Answer, best.Chance)
		}
	}
}

func nameOf(t *testing.T, id string) string {
	t.Helper()
	name := causeName(id)
	if name == id {
		t.Fatalf("no cause %s", id)
	}
	return name
}

// Every figure opens: a sheet that is referred to is there, and has lines.
func TestEveryWorkingIsThere(t *testing.T) {
	c := demoContent(t)
	sheets := map[string]bool{}
	for _, s := range c.Workings {
		if sheets[s.ID] {
			t.Errorf("sheet %s twice", s.ID)
		}
		sheets[s.ID] = len(s.Lines) > 0
	}
	data, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal(data, &tree); err != nil {
		t.Fatal(err)
	}
	found := 0
	eachWorking(tree, func(id string) {
		found++
		if !sheets[id] {
			t.Errorf("working %q is referred to but has no lines", id)
		}
	})
	if found < 100 {
		t.Errorf("only %d references to workings", found)
	}
}

// eachWorking calls f for every sheet id under "working" and "workings".
func eachWorking(v any, f func(string)) {
	switch v := v.(type) {
	case map[string]any:
		for key, value := range v {
			switch value := value.(type) {
			case string:
				if key == "working" && value != "" {
					f(value)
				}
				continue
			case []any:
				if key == "workings" {
					for _, id := range value {
						if s, ok := id.(string); ok {
							f(s)
						}
					}
				}
			}
			eachWorking(value, f)
		}
	case []any:
		for _, value := range v {
			eachWorking(value, f)
		}
	}
}

// A departure that was not where the crack is has not caused it, and is still shown.
func TestDepartureElsewhereDidNotCauseIt(t *testing.T) {
	c := demoContent(t)
	for _, f := range c.Findings {
		for _, h := range f.Hands {
			if f.Finding.ID == "F2" && strings.Contains(h.Departed, "SC1 and SC2") {
				t.Errorf("F2 in strip B is set beside the late cut of strip C: %+v", h)
			}
		}
	}
	for _, h := range c.Hands {
		if strings.Contains(h.Departed, "SC1 and SC2") {
			if !strings.HasPrefix(h.Caused, "no") {
				t.Errorf("the late cut of strip C caused nothing seen, yet: %q", h.Caused)
			}
			return
		}
	}
	t.Error("the late cut of strip C is passed over")
}

// What nobody knows is said, and only the answers that need it are left out.
func TestUnknownFactsBlockOnlyTheirAnswers(t *testing.T) {
	for _, c := range []struct {
		name    string
		take    func(*Job)
		missing string
		window  bool
	}{
		{"thickness", func(j *Job) { j.Slabs[0].Thickness = nil }, "thickness", false},
		{"weather", func(j *Job) {
			for i := range j.Pours {
				j.Pours[i].Weather = ""
			}
		}, "weather", false},
		{"strength", func(j *Job) { j.Mixes[0].Strength = nil }, "strength", false},
		{"wheel", func(j *Job) { j.Wheel.Load = nil }, "wheel", true},
		{"friction and support", func(j *Job) { j.Ground.Friction, j.Ground.Support = nil, nil }, "", true},
		{"walks", func(j *Job) { j.Walks = nil }, "seen", true},
		{"pours", func(j *Job) { j.Pours = nil }, "pour", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := quickDemo(t)
			c.take(j)
			content := diagnosed(t, j, DemoFS())
			if c.missing != "" {
				told := false
				for _, m := range content.Missing {
					told = told || strings.Contains(strings.ToLower(m.What+m.So), c.missing)
				}
				if !told {
					t.Errorf("nothing says that %s is missing: %+v", c.missing, content.Missing)
				}
			}
			if got := len(content.Pours) > 0 && content.Pours[0].Window.Opens != nil; got != c.window {
				t.Errorf("cut window given: %v, want %v", got, c.window)
			}
			if len(j.Walks) > 0 && len(content.Findings) != len(j.Walks[0].Findings) {
				t.Errorf("%d findings, want %d", len(content.Findings), len(j.Walks[0].Findings))
			}
			if _, err := report.HTML(content); err != nil {
				t.Error(err)
			}
			if _, err := report.PDF(content); err != nil {
				t.Error(err)
			}
		})
	}
}

func TestDiagnoseSaysWhatIsWrong(t *testing.T) {
	weather, err := fs.ReadFile(DemoFS(), "weather/pour-day.csv")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(string(weather), "\n")
	short := strings.Join(lines[:10], "")
	for _, c := range []struct {
		name, weather, has string
		take               func(*Job)
	}{
		{"weather ends before the pour", short, "add the hours that are missing", func(*Job) {}},
		{"weather is no table", "nothing here\n", "pour-day.csv", func(*Job) {}},
		{"no slab", string(weather), "no slab", func(j *Job) { j.Slabs = nil }},
		{"zone unknown", string(weather), "Area/City", func(j *Job) { j.Place.Zone = "Mars/Base" }},
		{"outline crosses itself", string(weather), "outline", func(j *Job) {
			o := j.Slabs[0].Outline
			o[5], o[7] = o[7], o[5]
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := demo(t)
			c.take(j)
			files := fstest.MapFS{"weather/pour-day.csv": {Data: []byte(c.weather)}}
			_, err := Diagnose(context.Background(), j, files, nil)
			if err == nil || !strings.Contains(err.Error(), c.has) {
				t.Errorf("got %v, want an error with %q", err, c.has)
			}
		})
	}
}

func TestDiagnoseStops(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	steps := 0
	_, err := Diagnose(ctx, demo(t), DemoFS(), func(string, float64) {
		steps++
		if steps == 3 {
			stop()
		}
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want it stopped", err)
	}
}

// Two runs of the same job give the same, and progress only ever goes forward and ends
// at one.
func TestDiagnoseIsReproducible(t *testing.T) {
	last := -1.0
	c, err := Diagnose(context.Background(), demo(t), DemoFS(), func(what string, done float64) {
		if done < last || done > 1 || what == "" {
			t.Errorf("progress %q %.2f after %.2f", what, done, last)
		}
		last = done
	})
	if err != nil || last != 1 {
		t.Errorf("ended at %.2f with %v", last, err)
	}
	if !reflect.DeepEqual(c, demoContent(t)) {
		t.Error("two runs of the same job differ")
	}
}

func TestProve(t *testing.T) {
	p := Prove()
	if p.Failed() > 0 || p.Rows < 1000 || len(p.Cases) != 12 {
		t.Errorf("%d rows, %d not met, %d cases", p.Rows, p.Failed(), len(p.Cases))
	}
}

// benchDemo works the worked example out again and again, read afresh each time.
func benchDemo(b *testing.B, answer func(context.Context, *Job, fs.FS, Progress) (*report.Content, error)) {
	data, err := fs.ReadFile(DemoFS(), "job.json")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		j, err := Decode(data)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := answer(context.Background(), j, DemoFS(), nil); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkDiagnoseDemo(b *testing.B) { benchDemo(b, Diagnose) }

// BenchmarkWindow is what slabwright window works out: three pours with 200 samples
// each and thirteen panels.
func BenchmarkWindow(b *testing.B) { benchDemo(b, PourDays) }
