package job

import (
	"bytes"
	"io/fs"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"slabwright/plan"
	"slabwright/source"
)

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("job.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("job.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func judged(t *testing.T, s *jsonschema.Schema, data []byte) error {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(v)
}

func bytesOf(t *testing.T, j *Job) []byte {
	t.Helper()
	data, err := j.Encode()
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestSchemaTakesGoodJobs(t *testing.T) {
	s := compiled(t)
	demo, err := fs.ReadFile(DemoFS(), FileName)
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{"demo": demo, "sound": bytesOf(t, sound()), "by hand": []byte(handWritten)} {
		if err := judged(t, s, data); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What Validate calls an error of one value, the schema refuses too.
func TestSchemaRefuses(t *testing.T) {
	s := compiled(t)
	for _, c := range []struct {
		name  string
		spoil func(*Job)
		has   string
	}{
		{"w/c 5", func(j *Job) { j.Mixes[0].WaterCement.Value = 5 }, "/mixes/0/water_cement/value"},
		{"thickness in mm", func(j *Job) { j.Slabs[0].Thickness.Value = 150 }, "/slabs/0/thickness_m/value"},
		{"low below the range", func(j *Job) { v := -1.0; j.Slabs[0].Thickness.Low = &v }, "/slabs/0/thickness_m/low"},
		{"known", func(j *Job) { j.Slabs[0].Thickness.Known = "guess" }, "/slabs/0/thickness_m/known"},
		{"choice", func(j *Job) { j.Slabs[0].Joints[0].Transfer = word("doweled") }, "/transfer/value"},
		{"kind", func(j *Job) { j.Walks[0].Findings[0].Kind = "crak" }, "/findings/0/kind"},
		{"seen state", func(j *Job) {
			j.Walks[0].Findings[0].Seen = map[string]source.Choice{"depth": *word("deep")}
		}, "/seen/depth/value"},
		{"seen variable", func(j *Job) {
			j.Walks[0].Findings[0].Seen = map[string]source.Choice{"dpth": *word("full")}
		}, "'dpth'"},
		{"no slab", func(j *Job) { j.Slabs = []plan.Slab{} }, "/slabs"},
		{"outline of two points", func(j *Job) { j.Slabs[0].Outline = j.Slabs[0].Outline[:2] }, "/outline_m"},
		{"version", func(j *Job) { j.Version = 2 }, "/version"},
		{"no title", func(j *Job) { j.Title = "" }, "/title"},
		{"units", func(j *Job) { j.Basis.Units = "imperial" }, "/basis/units"},
		{"samples", func(j *Job) { j.Basis.Members = -1 }, "/basis/members"},
	} {
		j := sound()
		c.spoil(j)
		if err := judged(t, s, bytesOf(t, j)); err == nil || !strings.Contains(err.Error(), c.has) {
			t.Errorf("%s: got %v, want an error at %s", c.name, err, c.has)
		}
	}
	for name, text := range map[string]string{
		"a point of three numbers": `{"version":1,"id":"a","title":"t","place":{"name":"n","zone":"UTC"},"slabs":[{"id":"A","outline_m":[[0,0,0],[1,0],[1,1]]}]}`,
		"a time without hours":     `{"version":1,"id":"a","title":"t","place":{"name":"n","zone":"UTC"},"slabs":[{"id":"A","outline_m":[[0,0],[1,0],[1,1]]}],"pours":[{"id":"P","start":"2026-06-18"}]}`,
		"no zone":                  `{"version":1,"id":"a","title":"t","place":{"name":"n"},"slabs":[{"id":"A","outline_m":[[0,0],[1,0],[1,1]]}]}`,
		"a bare number for a fact": `{"version":1,"id":"a","title":"t","place":{"name":"n","zone":"UTC"},"slabs":[{"id":"A","outline_m":[[0,0],[1,0],[1,1]],"thickness_m":0.15}]}`,
	} {
		if judged(t, s, []byte(text)) == nil {
			t.Errorf("%s was taken", name)
		}
	}
}

func TestSchemaIsTheSameTwice(t *testing.T) {
	a := Schema()
	for range 5 {
		if !bytes.Equal(a, Schema()) {
			t.Fatal("two calls gave different bytes")
		}
	}
	for _, s := range []string{`"https://json-schema.org/draft/2020-12/schema"`, "Slab thickness in m", `"additionalProperties": false`} {
		if has := bytes.Contains(a, []byte(s)); has == strings.Contains(s, "false") {
			t.Errorf("schema and %s: %v", s, has)
		}
	}
}
