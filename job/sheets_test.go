package job

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"slabwright/internal/page"
	"slabwright/poursheet"
	"slabwright/report"
)

// sheetJob is a yard of 12 m by 6 m, two sawn joints, one pour with a typed day.
func sheetJob(t *testing.T) (*Job, *report.Content, fstest.MapFS) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "sheets.json"))
	if err != nil {
		t.Fatal(err)
	}
	j, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{FileName: &fstest.MapFile{Data: data}}
	for _, p := range j.Validate(files) {
		if p.IsError() {
			t.Fatal(p.String())
		}
	}
	c, err := PourDays(context.Background(), j, files, nil)
	if err != nil {
		t.Fatal(err)
	}
	return j, c, files
}

func TestSheets(t *testing.T) {
	j, c, files := sheetJob(t)
	made, left, err := j.Sheets(files, c, SheetOptions{Paper: page.A4})
	if err != nil || len(left) > 0 {
		t.Fatal(err, left)
	}
	again, _, _ := j.Sheets(files, c, SheetOptions{Paper: page.A4})
	var names []string
	for i, f := range made {
		names = append(names, f.Name)
		if len(f.Data) < 100 || !bytes.Equal(f.Data, again[i].Data) {
			t.Errorf("%s: %d bytes, or not the same twice", f.Name, len(f.Data))
		}
	}
	if got := strings.Join(names, " "); got != "joints.pdf joints.svg joints.dxf joints.csv duties.pdf cut-sheet-p1.pdf go-or-hold-p1.pdf inspection.pdf notes.pdf" {
		t.Errorf("sheets %s", got)
	}
}

// A joint's window opens with the later of the panels beside it and closes with the
// earlier; where that leaves nothing there is no safe time.
func TestCutLine(t *testing.T) {
	j, c, files := sheetJob(t)
	hour := func(h int) *time.Time { v := j.Pours[0].Start.Add(time.Duration(h) * time.Hour); return &v }
	d, err := j.JointDrawing(files, time.Time{})
	if err != nil {
		t.Fatal(err)
	}
	m := sheetMaker{j: j, c: c, panels: d.Panels}
	day := &report.PourDay{Panels: []report.PanelWindow{
		{Panel: "P1", Placed: *hour(0), Order: 2, Wet: report.Window{Opens: hour(8), Closes: hour(14)}, Early: report.Window{Opens: hour(5), Closes: hour(14)}},
		{Panel: "P2", Placed: *hour(1), Order: 1, Wet: report.Window{Opens: hour(9), Closes: hour(12)}, Early: report.Window{Opens: hour(6), Closes: hour(12)}},
		{Panel: "P3", Placed: *hour(2), Order: 3, Wet: report.Window{Opens: hour(13)}},
	}}
	joints := j.Slabs[0].Joints
	line, place := m.cutLine(joints[0], &j.Pours[0], day)
	if !line.Opens.Equal(*hour(9)) || !line.Closes.Equal(*hour(12)) || !line.Placed.Equal(*hour(1)) || place != 1 || line.Never || *line.Depth != 0.0375 || line.Length != 6 {
		t.Errorf("J1: %+v, place %d", line, place)
	}
	if line, _ = m.cutLine(joints[1], &j.Pours[0], day); !line.Never {
		t.Errorf("J2 opens at 13 h and closes at 12 h: %+v", line)
	}
	m.o.Early = true
	if line, _ = m.cutLine(joints[0], &j.Pours[0], day); !line.Opens.Equal(*hour(6)) {
		t.Errorf("early entry: %+v", line)
	}
}

func TestGoSheetOfJob(t *testing.T) {
	j, c, _ := sheetJob(t)
	m := sheetMaker{j: j, c: c, title: poursheet.Title{Zone: "Europe/London"}}
	m.duties()
	g := m.goSheet(&j.Pours[0], &c.Pours[0])
	if g.Bears != "the owner" || len(g.Ready) != 1 || g.Decide() != poursheet.Measures {
		t.Errorf("%+v", g)
	}
	for _, l := range g.Limits {
		if l.Expected == nil || l.Source == "" || l.Least == nil && l.Most == nil {
			t.Errorf("threshold %q: %+v", l.What, l)
		}
	}
	j.Pours[0].Concrete.Value = 3
	if g = m.goSheet(&j.Pours[0], &c.Pours[0]); g.Decide() != poursheet.Hold {
		t.Errorf("concrete of 3 °C: %s", g.Decide())
	}
	if s := m.cutSheet(&j.Pours[0], &c.Pours[0]); s.Decide != "B. Sawyer 0700" || s.Ring != "" || len(s.Lines) != 2 {
		t.Errorf("cut sheet %+v", s)
	}
}

func TestGiven(t *testing.T) {
	j, _, _ := sheetJob(t)
	g := j.Given()
	for key, want := range map[string]string{"thickness": "150 mm", "sawdepth": "38 mm", "dowels": "25 mm, 500 mm long, at 300 mm", "joints": "2 sawn, as drawn", "strength": "30 MPa cylinder strength", "transfer": "", "cover": ""} {
		if g[key] != want {
			t.Errorf("%s: %q, want %q", key, g[key], want)
		}
	}
}
