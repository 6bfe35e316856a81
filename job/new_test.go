package job

import (
	"encoding/json"
	"strings"
	"testing"

	"slabwright/source"
)

// answered answers the questions in order; "" leaves one open.
func answered(t *testing.T, texts ...string) NewAnswers {
	t.Helper()
	var a NewAnswers
	for i, q := range Questions() {
		if err := q.Answer(&a, texts[i]); err != nil {
			t.Fatal(err)
		}
	}
	return a
}

func TestNew(t *testing.T) {
	s := compiled(t)
	for _, c := range []struct {
		name    string
		answers []string
		unknown string // fields named as not known
	}{
		{"cracked, all known", []string{"a slab has cracked", "Yard 3, north", "Ely", "Europe/London", "18 x 12 m", "150 mm", "C25/30", "2026-06-18 07:30"}, "pours[0].weather"},
		{"pour, little known", []string{"we are going to pour", "Apron", "Denver", "America/Denver", "60 ft x 40 ft", "?", "", ""}, "slabs[0].thickness_m"},
		{"corners", []string{"pour", "L", "Perth", "Australia/Perth", "0,0 18,0 18,9 12,9 12,12.5 0,12.5 m", "6 in", "4000 psi", "18 Jun 2026"}, "pours[0].weather"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := New(answered(t, c.answers...))
			unknown := false
			for _, p := range j.Validate() {
				if p.Level != Unknown {
					t.Error(p)
				}
				unknown = unknown || p.Field == c.unknown
			}
			if !unknown {
				t.Errorf("%s is not named as not known", c.unknown)
			}
			data := bytesOf(t, j)
			if err := judged(t, s, data); err != nil {
				t.Error(err)
			}
			if again := decoded(t, string(data)); again.ID != j.ID || len(again.Warnings()) > 0 {
				t.Errorf("reads back as %q with %v", again.ID, again.Warnings())
			}
		})
	}
	a := answered(t, "pour", "Yard 3, north", "Perth", "Australia/Perth", "60 ft x 40 ft", "6 in", "4000 psi", "2026-06-18 07:00")
	j := New(a)
	if j.ID != "yard-3-north" || j.Slabs[0].Outline[2].X != 18.288 || j.Slabs[0].Thickness.Value != 0.1524 ||
		j.Pours[0].Start.Format("2006-01-02T15:04Z07:00") != "2026-06-17T23:00Z" || j.Slabs[0].Thickness.Known != source.Recorded {
		t.Errorf("got %s, %v, %v, %v", j.ID, j.Slabs[0].Outline, j.Slabs[0].Thickness, j.Pours[0].Start)
	}
	if d := j.Planned.SawDepth; d.Known != source.Default || d.Note == "" || d.Value != 0.0381 {
		t.Errorf("the planned cut depth is a default with its reason: %+v", d)
	}
	if e := j.Place.Exposure; e.Known != source.Default || e.Note == "" {
		t.Errorf("exposure is a default with its reason: %+v", e)
	}
	day := New(answered(t, "pour", "Y", "Perth", "Australia/Perth", "6 x 4 m", "", "", "2026-06-18"))
	if p := day.Pours[0]; p.Start.Format("15:04") != "23:00" || !strings.Contains(p.Name, "07:00") {
		t.Errorf("a day without its hour must say so: %v %q", p.Start, p.Name)
	}
}

func TestQuestionsRefuse(t *testing.T) {
	if n := len(Questions()); n > 8 {
		t.Errorf("%d questions; eight at most", n)
	}
	for _, c := range []struct{ flag, text, has string }{
		{"what", "hello", "neither cracked nor pour"}, {"name", "", "nothing was written"}, {"zone", "Europe/Lodnon", "did you mean Europe/London?"},
		{"zone", "GMT+25", "not a time zone"}, {"outline", "18 x 12", "mm, cm"}, {"outline", "0,0 18,0 18,12", "unit is missing"},
		{"outline", "0,0 18,0 m", "has 2 points"}, {"outline", "0,0 18,0 6,12 18,13 m", "meets the side"}, {"outline", "0,0 a,b 18,12 m", `"a,b" is not a corner`},
		{"outline", "18 x 0 m", "no area"}, {"thickness", "150", "mm, cm"}, {"thickness", "150 m", "Did you mean 0.15?"}, {"thickness", "6 kN", "unit of force"},
		{"strength", "4000", "psi"}, {"strength", "4000 MPa", "27.58"}, {"date", "03/04/2026", "March or April"},
	} {
		for _, q := range Questions() {
			if q.Flag != c.flag {
				continue
			}
			var a NewAnswers
			if err := q.Answer(&a, c.text); err == nil || !strings.Contains(err.Error(), c.has) || !strings.Contains(err.Error(), "--"+c.flag) {
				t.Errorf("--%s %q: got %v, want an error with %q", c.flag, c.text, err, c.has)
			}
		}
	}
	for _, q := range Questions() {
		if q.Why == "" || q.Example == "" || q.Prompt == "" {
			t.Errorf("--%s does not say why it is asked, or how to answer", q.Flag)
		}
	}
}

func TestStatus(t *testing.T) {
	states := func(s StatusReport) string {
		var all []string
		for _, st := range s.Steps {
			all = append(all, st.Name+" "+st.State)
		}
		return strings.Join(all, ", ")
	}
	fresh := Status(New(answered(t, "pour", "Apron", "Denver", "America/Denver", "60 ft x 40 ft", "?", "", "")))
	if got, want := states(fresh), "slab drawn begun, joints and fixtures open, pours begun, weather open, walks open, findings open, causes open"; got != want {
		t.Errorf("fresh job:\n got %s\nwant %s", got, want)
	}
	if fresh.Missing[0].Rank != 1 || fresh.Missing[0].Field != "slabs[0].thickness_m" || !strings.Contains(fresh.Next.Why, "Slab thickness") {
		t.Errorf("the most needed fact comes first: %+v; next %+v", fresh.Missing[0], fresh.Next)
	}
	for _, b := range fresh.Blocked {
		if b.Answer == "cut window" && !strings.Contains(strings.Join(b.Because, ";"), "Weather of the pour") {
			t.Errorf("the cut window needs the weather: %v", b.Because)
		}
	}
	whole := Status(sound())
	if got, want := states(whole), "slab drawn done, joints and fixtures done, pours done, weather open, walks done, findings done, causes begun"; got != want {
		t.Errorf("sound job:\n got %s\nwant %s", got, want)
	}
	if whole.Next.Command != "slabwright causes" || whole.Steps[1].Text != "1 joint, 0 fixtures, 2 panels" {
		t.Errorf("got %+v, %q", whole.Next, whole.Steps[1].Text)
	}
	spoiled := sound()
	spoiled.Slabs[0].Thickness.Value = 150
	s := Status(spoiled)
	if s.Next.Command != "slabwright status" || len(s.Errors) != 1 || !strings.Contains(s.Text(), "Did you mean 0.15?") {
		t.Errorf("errors come first: %+v\n%s", s.Next, s.Text())
	}
	data, err := json.Marshal(s)
	if err != nil || !strings.Contains(string(data), `"next":{"command":"slabwright status"`) || strings.Contains(string(data), "null") {
		t.Errorf("%s %v", data, err)
	}
}
