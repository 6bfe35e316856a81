package job

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"slabwright/plan"
	"slabwright/site"
	"slabwright/source"
	"slabwright/walk"
)

// edits are things a program does to a job; each leaves it a job.
var edits = []func(t *rapid.T, j *Job){
	func(t *rapid.T, j *Job) { j.Title = rapid.String().Draw(t, "title") },
	func(t *rapid.T, j *Job) {
		j.Slabs[0].Thickness = &source.Fact{Value: rapid.Float64Range(-1e3, 1e3).Draw(t, "thickness"), Known: source.Measured, Note: "a \"note\" <&>\n\u2028"}
	},
	func(t *rapid.T, j *Job) { j.Slabs[0].Thickness = nil },
	func(t *rapid.T, j *Job) {
		j.Question = strings.Repeat("long ", rapid.IntRange(0, 400).Draw(t, "words"))
		j.Pours[0].Start = nil
	},
	func(t *rapid.T, j *Job) {
		j.Walks = append(j.Walks, walk.Walk{ID: fmt.Sprintf("W%d", len(j.Walks)), Note: strings.Repeat("x", 300), Findings: []walk.Finding{{ID: "F", Photos: []string{strings.Repeat("p", 200)}}}})
	},
	func(t *rapid.T, j *Job) {
		id := fmt.Sprintf("N%d", rapid.IntRange(0, 99).Draw(t, "id"))
		j.Slabs[0].Joints = append(j.Slabs[0].Joints, plan.Joint{ID: id, Kind: plan.Sawn, Path: []plan.Point{{X: 1}, {X: 1, Y: 5}}})
	},
	func(t *rapid.T, j *Job) {
		if js := j.Slabs[0].Joints; len(js) > 1 {
			js[0], js[len(js)-1] = js[len(js)-1], js[0]
		}
	},
	func(t *rapid.T, j *Job) {
		o := j.Slabs[0].Outline
		o[rapid.IntRange(0, len(o)-1).Draw(t, "corner")].X = rapid.Float64Range(-50, 50).Draw(t, "x") + 0 // a negative zero is the zero that stood there
	},
	func(t *rapid.T, j *Job) { j.Slabs[0].Outline = append(j.Slabs[0].Outline, plan.Point{X: -1, Y: 2}) },
	func(t *rapid.T, j *Job) { j.Basis.Seed = rapid.Uint64().Draw(t, "seed") },
	func(t *rapid.T, j *Job) {
		p := &j.Pours[0]
		p.Temps = append([]site.Probe{{At: *at("2026-06-19T00:00:00Z"), Depth: 0.1, Temp: *fact(25)}}, p.Temps...)
	},
	func(t *rapid.T, j *Job) { j.Pours[0].Start = at("2026-06-18T05:00:00Z") },
	func(t *rapid.T, j *Job) { j.Pours[0].Trucks[1].WaterAdded = fact(0) },
	func(t *rapid.T, j *Job) {
		j.Pours = append(j.Pours, site.Pour{ID: fmt.Sprintf("P%d", len(j.Pours)+1), Trucks: []site.Truck{{Ticket: "x"}}})
	},
}

// Whatever is done to a job, and in whatever order, it reads back as it was, the
// fields of others stay, and a second writing changes nothing.
func TestAnyEditsKeepWhatIsUnknown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, err := Decode([]byte(handWritten))
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range rapid.SliceOfN(rapid.IntRange(0, len(edits)-1), 0, 12).Draw(t, "edits") {
			edits[i](t, j)
		}
		out, err := j.Encode()
		if err != nil {
			t.Fatal(err)
		}
		for _, kept := range []string{`"my_own": {"b": 1.50, "a": [1,2]}`, `"colour": "grey"`, `"tape": 7`, `"tape": 8`, `"driver": "x"`, `"driver": "y"`, `"ref": "map 4"`, `"gauge": 3`, `"zzz": null`} {
			if strings.Count(string(out), kept) != 1 {
				t.Fatalf("%s is there %d times in\n%s", kept, strings.Count(string(out), kept), out)
			}
		}
		again, err := Decode(out)
		if err != nil {
			t.Fatal(err)
		}
		want, _ := json.Marshal(j)
		got, _ := json.Marshal(again)
		if strings.ReplaceAll(string(want), ":null", ":[]") != string(got) { // a list without items is written []
			t.Fatalf("reads back otherwise\n got %s\nwant %s", got, want)
		}
		twice, err := again.Encode()
		if err != nil || string(twice) != string(out) {
			t.Fatalf("a second writing changed it (%v)", err)
		}
	})
}
