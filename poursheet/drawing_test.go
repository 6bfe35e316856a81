package poursheet

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"slabwright/internal/draw"
	"slabwright/internal/dxf"
	"slabwright/internal/page"
	"slabwright/plan"
)

var update = flag.Bool("update", false, "write the golden files anew")

// golden compares with a file kept beside the tests.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s has changed; look at it, then run with -update", name)
	}
}

func TestDrawingGolden(t *testing.T) {
	d := yardDrawing(t)
	for name, form := range map[string]func() ([]byte, error){"joints.svg": d.SVG, "joints.dxf": d.DXF, "joints.csv": d.CSV} {
		got, err := form()
		if err != nil {
			t.Fatal(err)
		}
		golden(t, name, got)
	}
}

// The scale said is the scale drawn, on every sheet, and the plan stays on it.
func TestTrueScale(t *testing.T) {
	for _, paper := range page.Papers {
		d := yardDrawing(t)
		d.Paper = paper
		scene, err := d.Scene()
		if err != nil {
			t.Fatal(err)
		}
		var ring []draw.Point
		for _, g := range scene.Root.Shapes {
			if g := g.(*draw.Group); g.Class == "outline" {
				ring = g.Shapes[0].(draw.Area).Ring
			}
		}
		mm := math.Hypot(ring[1].X-ring[0].X, ring[1].Y-ring[0].Y) // 12 m
		n := 12000 / mm
		svg := string(scene.SVG())
		if want := fmt.Sprintf("Scale 1:%.0f on %s printed at full size", n, paper.Name); !strings.Contains(svg, want) || math.Abs(n-math.Round(n)) > 1e-9 {
			t.Errorf("%s: drawn at 1:%.3f; no %q", paper.Name, n, want)
		}
		p := d.paper()
		if p.Width < p.Height {
			t.Errorf("%s: a wide slab on a sheet that stands", paper.Name)
		}
		if scene.Width > p.Width-page.Sides+1e-9 || scene.Height > p.Height-page.Ends+1e-9 {
			t.Errorf("%s: the drawing is %g by %g mm", paper.Name, scene.Width, scene.Height)
		}
		for _, q := range ring {
			if q.X < stripRoom-1e-9 || q.X > scene.Width-stripRoom+1e-9 || q.Y < stripRoom-1e-9 || q.Y > scene.Height-footRoom(scene.Width)-stripRoom+1e-9 {
				t.Errorf("%s: corner at (%g, %g) leaves no room for dimensions", paper.Name, q.X, q.Y)
			}
		}
	}
}

// Running dimensions start at the setting-out point: the slab's corner is at (2, 1),
// the first sawn joint 4 m along.
func TestRunningDimensions(t *testing.T) {
	d := yardDrawing(t)
	at := func(marks []running, from float64) string {
		var words []string
		for _, m := range marks {
			words = append(words, d.Units.length(m.at-from))
		}
		return strings.Join(words, " ")
	}
	o := d.origin()
	if o != (plan.Point{X: 2, Y: 1}) {
		t.Fatalf("setting-out point %v", o)
	}
	for _, c := range []struct{ name, got, want string }{
		{"joints along x", at(d.jointMarks(alongX), o.X), "4000 8000"},
		{"joints along y", at(d.jointMarks(alongY), o.Y), "4500"},
		{"edges along x", at(d.edgeMarks(alongX), o.X), "0 5500 6500 12000"},
		{"edges along y", at(d.edgeMarks(alongY), o.Y), "0 6000 7000 9000"},
		{"skew", strings.Join(d.SkewJoints(), " "), "I1"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %s, want %s", c.name, c.got, c.want)
		}
	}
	d.Units, d.Origin = Metres, &plan.Point{X: 14, Y: 10}
	if got := at(d.jointMarks(alongX), d.origin().X); got != "−8.000 −4.000" {
		t.Errorf("from the far corner in metres: %s", got)
	}
}

// Numbers that would stand on one another are moved apart, none further than it must.
func TestSpread(t *testing.T) {
	for _, c := range []struct{ in, want []float64 }{
		{[]float64{0, 10, 20}, []float64{0, 10, 20}},
		{[]float64{0, 1}, []float64{-1, 2}},
		{[]float64{0, 1, 50}, []float64{-1, 2, 50}},
		{[]float64{10, 9, 0}, []float64{11, 8, 0}},
		{[]float64{0, 0, 0, 4}, []float64{-3.5, -0.5, 2.5, 5.5}},
	} {
		got := spread(c.in, 3)
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-9 {
				t.Errorf("%v: %v, want %v", c.in, got, c.want)
				break
			}
		}
	}
}

// Counts and lengths by hand. Each sawn joint of 9 m is parted at 4.5 m by the formed
// one: 4.5 m less 0.15 m at both ends is 4.2 m, 15 bars at 0.3 m; two stretches, two
// joints: 60. Mass of a bar of 25 mm, 0.5 m: 7850·π/4·0.025²·0.5 = 1.927 kg. Mesh:
// (108 − 1) m² / 0.2 m, both ways: 1070 m at 0.3946 kg/m.
func TestSchedule(t *testing.T) {
	s := yardDrawing(t).Schedule()
	if len(s.Dowels) != 1 || s.Dowels[0].Count != 60 || strings.Join(s.Dowels[0].Joints, " ") != "S1 S2" {
		t.Fatalf("dowels %+v", s.Dowels)
	}
	if m := *s.Dowels[0].Mass; math.Abs(m-60*1.927) > 0.05 {
		t.Errorf("dowels weigh %.2f kg, want %.2f", m, 60*1.927)
	}
	if st := s.Steel[0]; math.Abs(st.Length-1070) > 1e-6 || st.Counted || math.Abs(*st.Mass-1070*0.3946) > 0.2 {
		t.Errorf("mesh %+v, %.2f kg", st, *st.Mass)
	}
	want := map[string]float64{"slab": 107, "concrete, by the thickness given, without waste": 16.05, "sawn joint": 18, "formed joint": 12, "isolation joint": 2 + math.Sqrt2, "dowels": 60}
	for _, total := range s.Totals {
		if w, ok := want[total.What]; ok && math.Abs(total.Amount-w) > 1e-9*w+1e-6 {
			t.Errorf("%s: %.4f %s, want %.4f", total.What, total.Amount, total.Unit, w)
		}
		delete(want, total.What)
	}
	if len(want) > 0 {
		t.Errorf("not among the quantities: %v", want)
	}
	if p := s.Joints[0].Points[0]; p != (plan.Point{X: 4, Y: 0}) {
		t.Errorf("S1 starts at %v from the setting-out point", p)
	}
}

func TestDrawingPDF(t *testing.T) {
	d := yardDrawing(t)
	d.Paper = page.A4
	data, err := d.PDF()
	if err != nil {
		t.Fatal(err)
	}
	again, _ := d.PDF()
	if !bytes.Equal(data, again) {
		t.Error("the same drawing gives other bytes")
	}
	text := pdfText(t, data)
	wantWords(t, text, "Joint drawing: Yard", "Scale 1:", "S1 sawn", "F1 formed", "I1 isolation", "setting-out point", "(4000, 0) to (4000, 9000)", "60", "without laps", "Not square to the axes", "T-1", "rev A", "20 Oct 2026")
	if strings.Contains(text, "DRAFT") {
		t.Error("an issued drawing says DRAFT")
	}
	d.Title.Revision = ""
	if data, err = d.PDF(); err != nil || !strings.Contains(pdfText(t, data), "DRAFT") {
		t.Errorf("a drawing without revision does not say DRAFT (%v)", err)
	}
}

// An independent reader, ezdxf, finds the drawing without complaint: layers, unit,
// lengths and words.
func TestEzdxfReadsDrawing(t *testing.T) {
	python := ""
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import ezdxf").Run() == nil {
			python = name
			break
		}
	}
	if python == "" {
		if os.Getenv("SLABWRIGHT_EZDXF") == "required" {
			t.Fatal("ezdxf is required and not there (Debian package python3-ezdxf)")
		}
		t.Skip("ezdxf is not there (Debian package python3-ezdxf)")
	}
	out, err := exec.Command(python, filepath.Join("..", "internal", "dxf", "testdata", "readback.py"), "0.1", filepath.Join("testdata", "joints.dxf")).Output()
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Version    string
		Units      int
		Complaints []string
		Lengths    map[string]float64
		Texts      []struct{ Layer, Words string }
	}
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatal(err)
	}
	if got.Version != "AC1009" || got.Units != 4 || len(got.Complaints) > 0 {
		t.Errorf("version %s, unit %d, complaints %v", got.Version, got.Units, got.Complaints)
	}
	for layer, want := range map[string]float64{LayerEdge: 42000, LayerSawn: 18000, LayerFormed: 12000, LayerIsolation: 2000 + 1000*math.Sqrt2, LayerOpenings: 4000, LayerDowels: 30000} {
		if math.Abs(got.Lengths[layer]-want) > 1e-3 {
			t.Errorf("%.4f mm on %s, want %.4f", got.Lengths[layer], layer, want)
		}
	}
	words := fmt.Sprint(got.Texts)
	for _, want := range []string{"P1", "S1", "4000", "Joint drawing: Yard"} {
		if !strings.Contains(words, want) {
			t.Errorf("no %q among the texts", want)
		}
	}
}

// The DXF holds what was drawn, at true size on its layers, also by our own reader.
func TestDrawingDXF(t *testing.T) {
	for _, u := range []Units{Millimetres, Metres} {
		d := yardDrawing(t)
		d.Units = u
		data, err := d.DXF()
		if err != nil {
			t.Fatal(err)
		}
		back, err := dxf.Read(data, dxf.Options{})
		if err != nil {
			t.Fatal(err)
		}
		per, _ := back.Unit.Metres()
		for layer, want := range map[string]float64{LayerEdge: 42, LayerSawn: 18, LayerFormed: 12, LayerIsolation: 2 + math.Sqrt2, LayerOpenings: 4, LayerDowels: 60 * 0.5} {
			sum := 0.0
			for _, l := range back.On(layer) {
				sum += l.Length() * per
			}
			if math.Abs(sum-want) > 1e-6 {
				t.Errorf("%v: %.4f m on %s, want %.4f", u, sum, layer, want)
			}
		}
		if n := len(back.Skipped) + len(back.Notes); n > 0 {
			t.Errorf("our own file: %v %v", back.Skipped, back.Notes)
		}
	}
}

func TestDrawingCSV(t *testing.T) {
	data, err := yardDrawing(t).CSV()
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 6 || rows[0][4] != "from x mm" || strings.Join(rows[1][4:9], " ") != "4000 0 4000 9000 9000" {
		t.Errorf("rows %v", rows)
	}
	if rows[3][1] != "'=day joint" {
		t.Errorf("a name that a spreadsheet would run: %q", rows[3][1])
	}
	if guarded("-12.5") != "-12.5" || guarded("-x") != "'-x" || guarded("@a") != "'@a" {
		t.Error("the guard must stop words and let numbers be")
	}
}

func TestDrawingRefuses(t *testing.T) {
	for want, d := range map[string]Drawing{"outline": {}, "no size": {Slab: plan.Slab{Outline: make([]plan.Point, 4)}}, "panels": {Slab: yardSlab()}} {
		if _, err := d.PDF(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}

// A large slab goes on a sheet at a scale beyond the rule, forty panels and all.
func TestLargeSlab(t *testing.T) {
	s := plan.Slab{ID: "L", Outline: []plan.Point{{X: 0, Y: 0}, {X: 400, Y: 0}, {X: 400, Y: 200}, {X: 0, Y: 200}}}
	for i := 1; i < 40; i++ {
		x := 10 * float64(i)
		s.Joints = append(s.Joints, plan.Joint{ID: fmt.Sprintf("J%d", i), Kind: plan.Sawn, Path: []plan.Point{{X: x, Y: 0}, {X: x, Y: 200}}})
	}
	panels, err := s.Panels()
	if err != nil {
		t.Fatal(err)
	}
	d := Drawing{Title: yardTitle(), Slab: s, Panels: panels, Paper: page.A4}
	scene, err := d.Scene()
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(scene.SVG()), "Scale 1:2000") {
		t.Error("400 m on A4 must be drawn at 1:2000")
	}
}
