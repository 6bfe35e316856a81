package job

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slabwright/source"
)

const handWritten = `{
  "version": 1,
  "id":"yard", "title": "Yard",   "my_own": {"b": 1.50, "a": [1,2]},
  "place": { "name": "Kiel", "zone": "Europe/Berlin", "altitude_m": { "value": 12.0, "known": "recorded", "ref": "map 4" } },
  "slabs": [
    { "id": "A", "name": "A", "outline_m": [[0,0],[10.00,0],[10,5e0],[0,5]], "colour": "grey",
      "joints": [ { "id": "J1", "kind": "sawn", "path_m": [[5,0],[5,5]], "tape": 7 },
                  { "id": "J2", "kind": "sawn", "path_m": [[7,0],[7,5]], "tape": 8 } ] }
  ],
  "ground": {}, "planned": {}, "wheel": {},
  "pours": [ { "id": "P1", "name": "one", "area_m": [], "mix": "", "start": "2026-06-18T09:40:00+02:00",
     "trucks": [ { "ticket": "101", "driver": "x" }, { "ticket": "102", "driver": "y" } ],
     "concrete_temperatures": [ { "at": "2026-06-18T09:40:00.000Z", "depth_m": 0.050, "temperature_C": { "value": 20, "known": "measured" }, "gauge": 3 } ] } ],
  "basis": {"seed": 18446744073709551615}, "limits": {},
  "zzz": null
}
`

func decoded(t *testing.T, text string) *Job {
	t.Helper()
	j, err := Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func TestUnchangedJobKeepsItsBytes(t *testing.T) {
	out, err := decoded(t, handWritten).Encode()
	if err != nil {
		t.Fatal(err)
	}
	if string(out) != handWritten {
		t.Errorf("changed on the way:\n%s", out)
	}
}

// Every edit below keeps the fields of others, beside what they belong to.
func TestUnknownFieldsSurviveEdits(t *testing.T) {
	for _, c := range []struct {
		name string
		edit func(*Job)
		has  []string
		not  []string
	}{
		{"one fact changed", func(j *Job) { j.Slabs[0].Thickness = &source.Fact{Value: 0.15, Known: source.Recorded} },
			[]string{`"my_own": {"b": 1.50, "a": [1,2]}`, `"colour": "grey"`, `"tape": 7`, `[10.00,0],[10,5e0]`, `"thickness_m": { "value": 0.15, "known": "recorded" }`, `"zzz": null`, `"seed": 18446744073709551615`}, nil},
		{"a fact's value changed", func(j *Job) { j.Place.Altitude.Value = 13 }, []string{`"ref": "map 4"`, `"value": 13,`}, []string{"12.0"}},
		{"first joint taken out", func(j *Job) { j.Slabs[0].Joints = j.Slabs[0].Joints[1:] }, []string{`"tape": 8`}, []string{`"tape": 7`}},
		{"joints swapped", func(j *Job) {
			js := j.Slabs[0].Joints
			js[0], js[1] = js[1], js[0]
		}, []string{`"J2", "kind": "sawn", "path_m": [[7,0],[7,5]], "tape": 8`}, nil},
		{"truck gets slump", func(j *Job) { j.Pours[0].Trucks[1].Slump = &source.Fact{Value: 0.1, Known: source.Measured} }, []string{`"driver": "x"`, `"driver": "y"`, `"slump_m"`}, nil},
		{"probe put before", func(j *Job) {
			p := j.Pours[0].Temps[0]
			p.Temp.Value = 25
			p.Depth = 0.1
			j.Pours[0].Temps = append([]siteProbe{p}, j.Pours[0].Temps...)
		}, []string{`"gauge": 3`, `"depth_m": 0.050`, `2026-06-18T09:40:00.000Z`}, nil},
		{"a fact taken away", func(j *Job) { j.Place.Altitude = nil }, []string{`"zone": "Europe/Berlin"`}, []string{"altitude_m"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := decoded(t, handWritten)
			c.edit(j)
			out, err := j.Encode()
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range c.has {
				if !strings.Contains(string(out), s) {
					t.Errorf("lost %s in:\n%s", s, out)
				}
			}
			for _, s := range c.not {
				if strings.Contains(string(out), s) {
					t.Errorf("still has %s in:\n%s", s, out)
				}
			}
			again := decoded(t, string(out))
			want, _ := json.Marshal(j)
			got, _ := json.Marshal(again)
			if string(want) != string(got) {
				t.Errorf("reads back otherwise:\n got %s\nwant %s", got, want)
			}
		})
	}
}

func TestDecodeSaysWhatIsWrong(t *testing.T) {
	head := `{"version":1,"id":"a","title":"t","place":{"name":"n","zone":"UTC"},`
	for _, c := range []struct {
		name, text, code string
		has              []string
	}{
		{"empty", "", "json-empty", []string{"the file is empty"}},
		{"blanks", " \n ", "json-empty", []string{"empty"}},
		{"cut off", head + "\n" + `"slabs":[{"id":"A","outline_m":[[0,0],[10`, "json-cut-off", []string{"line 2, column 42", `"[" from line 2`, "slabs[0].outline_m[1]", "still open"}},
		{"cut in a text", head + `"question":"why d`, "json-cut-off", []string{"question", "still open"}},
		{"cut in a word", head + `"slabs":nul`, "json-cut-off", []string{"slabs"}},
		{"not an object", `[1,2]`, "json-type", []string{"a list"}},
		{"no json", `hello`, "json-syntax", []string{"line 1, column 1"}},
		{"trailing comma", head + `"slabs":[],}`, "json-syntax", []string{"comma too many"}},
		{"missing comma", "{\"version\":1\n\"id\":\"a\"}", "json-syntax", []string{"line 2, column 1", "comma"}},
		{"comment", "{\"version\":1, // hand\n\"id\":\"a\"}", "json-syntax", []string{"line 1, column 15"}},
		{"decimal comma", head + `"slabs":[{"thickness_m":{"value":0,15,"known":"recorded"}}]}`, "json-syntax", []string{"slabs[0].thickness_m"}},
		{"leading zero", head + `"slabs":[{"thickness_m":{"value":015}}]}`, "json-syntax", []string{"no JSON number"}},
		{"NaN", head + `"slabs":[{"thickness_m":{"value":NaN}}]}`, "json-syntax", []string{"Leave out"}},
		{"two", `{"version":1}{}`, "json-syntax", []string{"goes on"}},
		{"twice", head + `"id":"b","slabs":[]}`, "json-twice", []string{`"id" stands twice`}},
		{"utf-16", "\xff\xfe{\x00", "json-encoding", []string{"UTF-16"}},
		{"latin-1", "{\"version\":1,\"id\":\"M\xfcller\"}", "json-encoding", []string{"UTF-8"}},
		{"backslash", `{"version":1,"id":"C:\yard"}`, "json-syntax", []string{"escape"}},
		{"no version", `{"id":"a"}`, "version", []string{"does not say its version"}},
		{"newer", `{"version":7}`, "version", []string{"newer slabwright", "up to version 1"}},
		{"older", `{"version":0}`, "version", []string{"never was"}},
		{"version text", `{"version":"1"}`, "version", []string{`Write 1`}},
		{"wrong type", head + `"slabs":[{"id":3,"thickness_m":0.15,"outline_m":[[1,2,3]]}]}`, "json-type",
			[]string{"slabs[0].id", "double quotes", "slabs[0].thickness_m", `{ "value": 0.15, "known": "recorded" }`, "slabs[0].outline_m[0]", "[x, y]"}},
		{"number as text", head + `"slabs":[{"thickness_m":{"value":"150 mm","known":"recorded"}}]}`, "json-type", []string{"slabs[0].thickness_m.value", "the unit is in the name"}},
		{"time", head + `"pours":[{"start":"2026-06-18"},{"start":"noon"}]}`, "json-type", []string{"pours[0].start", "2026-06-18T12:00:00Z", "pours[1].start"}},
		{"fact without value", head + `"slabs":[{"thickness_m":{"known":"recorded"}}],"pours":[{"concrete_temperatures":[{}]}]}`, "required", []string{"slabs[0].thickness_m.value", "nobody knows it", "pours[0].concrete_temperatures[0].depth_m"}},
		{"not a list", head + `"slabs":{}}`, "json-type", []string{"slabs", "square brackets"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Decode([]byte(c.text))
			var load *LoadError
			if !errors.As(err, &load) || len(load.Problems) == 0 {
				t.Fatalf("no error: %v", err)
			}
			if load.Problems[0].Code != c.code {
				t.Errorf("code %s, want %s: %v", load.Problems[0].Code, c.code, err)
			}
			for _, s := range c.has {
				if !strings.Contains(err.Error(), s) {
					t.Errorf("does not say %q: %v", s, err)
				}
			}
		})
	}
}

// A file cut off at any byte is an error that names a line, never a panic or a job.
func TestCutOffAnywhere(t *testing.T) {
	whole := strings.TrimRight(handWritten, "\n")
	for i := range len(whole) {
		if _, err := Decode([]byte(whole[:i])); err == nil {
			t.Fatalf("cut after %d bytes it was taken for whole", i)
		}
	}
}

func TestTypoWarned(t *testing.T) {
	j := decoded(t, `{"version":1,"id":"a","title":"t","slabs":[{"id":"A","thicknes_m":{"value":0.15,"known":"recorded"},"bearing":3,"colour":"red"}]}`)
	var got []string
	for _, w := range j.Warnings() {
		got = append(got, w.Field+" "+w.Mend)
	}
	want := `slabs[0].thicknes_m Did you mean "thickness_m"?|slabs[0].bearing Did you mean "bearing_deg"?`
	if strings.Join(got, "|") != want {
		t.Errorf("got %s\nwant %s", strings.Join(got, "|"), want)
	}
	if out, _ := j.Encode(); !strings.Contains(string(out), "thicknes_m") {
		t.Error("the mistyped field was lost")
	}
}

func TestSaveIsWholeOrNothing(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "yard")
	j := decoded(t, handWritten)
	if err := j.Save(dir); err != nil {
		t.Fatal(err)
	}
	if names, _ := os.ReadDir(dir); len(names) != 1 {
		t.Errorf("files left behind: %v", names)
	}
	mine, err := Load(dir)
	if err != nil {
		t.Fatal(err)
	}
	theirs, err := Load(filepath.Join(dir, FileName))
	if err != nil {
		t.Fatal(err)
	}
	theirs.Title = "Theirs"
	if err := theirs.Save(dir); err != nil {
		t.Fatal(err)
	}
	mine.Title = "Mine"
	if err := mine.Save(dir); !errors.Is(err, ErrChanged) {
		t.Errorf("writing over a change: %v", err)
	}
	theirs.Title = "Again"
	if err := theirs.Save(dir); err != nil {
		t.Errorf("second save: %v", err)
	}
	if got, _ := Load(dir); got.Title != "Again" {
		t.Errorf("title %q", got.Title)
	}
	var none *LoadError
	if _, err := Load(t.TempDir()); !errors.As(err, &none) || none.Problems[0].Code != "no-job" {
		t.Errorf("folder without a job: %v", err)
	}
}

func TestNaNIsNotWritten(t *testing.T) {
	dir := t.TempDir()
	j := decoded(t, handWritten)
	j.Pours[0].Temps[0].Depth = nan
	if err := j.Save(dir); err == nil || !strings.Contains(err.Error(), "pours[0].concrete_temperatures[0].depth_m") {
		t.Errorf("got %v", err)
	}
	if names, _ := os.ReadDir(dir); len(names) != 0 {
		t.Errorf("files written: %v", names)
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(handWritten))
	f.Add([]byte(`{"version":1,"slabs":[{"outline_m":[[1e400,0]]}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := Decode(data)
		if err != nil {
			return
		}
		out, err := j.Encode()
		if err != nil || string(out) != string(data) {
			t.Fatalf("an unchanged job was written otherwise (%v):\n%s\n%s", err, data, out)
		}
		j.Validate()
	})
}
