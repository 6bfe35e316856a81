package report

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"slabwright/internal/draw"
	"slabwright/plan"
	"slabwright/walk"
)

// Each kind of line must be known without its colour: by weight, dash or form.
func TestLinesDifferInBlackAndWhite(t *testing.T) {
	run := []draw.Point{{X: 0, Y: 10}, {X: 40, Y: 10}}
	look := func(shapes ...draw.Shape) string {
		s := draw.New(50, 20, "", "")
		s.Group("", "", draw.Paper).Add(shapes...)
		return regexp.MustCompile(`#[0-9a-f]{6}`).ReplaceAllString(string(s.SVG()), "ink")
	}
	looks := map[string]string{
		"edge":      look(draw.Line{Points: run, Pen: penOutline}),
		"wall":      look(draw.Line{Points: run, Pen: draw.Pen{Color: ink, Width: 1.1}}),
		"sawn":      look(jointLines(run, plan.Sawn, false)...),
		"formed":    look(jointLines(run, plan.Formed, false)...),
		"isolation": look(jointLines(run, plan.Isolation, false)...),
		"crack":     look(draw.Line{Points: irregular(run), Pen: penCrack}),
		"along":     look(draw.Line{Points: draw.Offset(run, 1.2), Pen: penAlong}),
		"pour":      look(draw.Line{Points: run, Pen: penPour}),
	}
	for a, one := range looks {
		for b, other := range looks {
			if a != b && one == other {
				t.Errorf("%s and %s look alike without colour", a, b)
			}
		}
	}
}

// The edge of the drawing, measured on paper, is the slab at the scale that is
// written on it.
func TestPlanIsTrueToItsScale(t *testing.T) {
	for _, sheet := range []Sheet{SheetA4, SheetA3} {
		svg := string(PlanFor(fixture(), sheet, false).SVG())
		m := regexp.MustCompile(`Scale 1:(\d+) on ` + sheet.Paper).FindStringSubmatch(svg)
		if m == nil {
			t.Fatalf("%s: no scale is written", sheet.Paper)
		}
		n, _ := strconv.ParseFloat(m[1], 64)
		outline := regexp.MustCompile(`(?s)class="outline">.*?d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)L`).FindStringSubmatch(svg)
		if outline == nil {
			t.Fatal("no outline")
		}
		x0, _ := strconv.ParseFloat(outline[1], 64)
		x1, _ := strconv.ParseFloat(outline[3], 64)
		if got, want := x1-x0, 24*1000/n; math.Abs(got-want) > 0.01 {
			t.Errorf("%s: 24 m measure %.3f mm, at 1:%g they are %.3f mm", sheet.Paper, got, n, want)
		}
	}
	a4, a3 := PlanFor(fixture(), SheetA4, false), PlanFor(fixture(), SheetA3, false)
	if !(a3.Width > a4.Width) {
		t.Errorf("A3 drawing is %g wide, A4 %g", a3.Width, a4.Width)
	}
}

func TestPlanShowsEverythingOnce(t *testing.T) {
	c := fixture()
	svg := string(PlanFor(c, SheetA4, true).SVG())
	for _, f := range c.Findings {
		if n := strings.Count(svg, fmt.Sprintf(`href="#f-%s"`, f.Finding.ID)); n != 2 { // lines and number
			t.Errorf("finding %s is linked %d times", f.Finding.ID, n)
		}
	}
	for _, j := range c.Plan.Slab.Joints {
		if !strings.Contains(svg, ">"+j.ID) {
			t.Errorf("joint %s has no name on the plan", j.ID)
		}
	}
	for _, p := range c.Plan.Panels {
		if !strings.Contains(svg, ">"+p.ID+"<") {
			t.Errorf("panel %s has no name on the plan", p.ID)
		}
	}
	for _, want := range []string{">0.6<", ">0.9<", "not opened", ">pit<", ">drain<", "Could not see: stacked pallets", ">N<", `class="bars"`, `class="dowels"`, "Strip 2 · Thu 19 Jun 09:00"} {
		if !strings.Contains(svg, want) {
			t.Errorf("%s is not on the plan", want)
		}
	}
}

// North: +y points up the sheet and to the bearing. With a bearing of 90° (east)
// north lies to the left.
func TestNorthArrow(t *testing.T) {
	for _, c := range []struct {
		bearing float64
		dx, dy  float64 // of the tip from the middle, in units of the arrow
	}{{0, 0, -1}, {90, -1, 0}, {180, 0, 1}, {270, 1, 0}} {
		line := draw.North(draw.Point{X: 50, Y: 50}, &c.bearing, ink, quiet)[0].(draw.Line)
		tip := line.Points[1]
		if math.Hypot(tip.X-50-7*c.dx, tip.Y-50-7*c.dy) > 1e-9 {
			t.Errorf("bearing %g: the tip is at (%g, %g)", c.bearing, tip.X-50, tip.Y-50)
		}
	}
	content := fixture()
	content.Plan.Slab.Bearing = nil
	if svg := string(PlanSVG(content)); !strings.Contains(svg, "not known") {
		t.Error("a bearing nobody knows must be said")
	}
}

// A line clipped at the field keeps what is inside and nothing else; its length is
// the length inside by an independent count along it.
func TestClipping(t *testing.T) {
	p := newPlanSheet(fixture(), 172, 200, sheetEdges)
	lines := [][]plan.Point{path(-30, 5, 60, 8), path(5, -30, 7, 60), path(-3, -3, 3, 3, -3, 9, 3, 12)}
	for _, line := range lines {
		got := 0.0
		for _, run := range p.clipLine(line) {
			for i := 0; i+1 < len(run); i++ {
				got += math.Hypot(run[i+1].X-run[i].X, run[i+1].Y-run[i].Y)
			}
		}
		want, on := 0.0, p.onPaper(line)
		const steps = 100000
		for i := 0; i+1 < len(on); i++ {
			length := math.Hypot(on[i+1].X-on[i].X, on[i+1].Y-on[i].Y)
			for k := range steps {
				s := (float64(k) + 0.5) / steps
				q := draw.Point{X: on[i].X + s*(on[i+1].X-on[i].X), Y: on[i].Y + s*(on[i+1].Y-on[i].Y)}
				if q.X > 0.5 && q.X < p.s.Width-0.5 && q.Y > 0.5 && q.Y < p.fieldHeight-0.5 {
					want += length / steps
				}
			}
		}
		if math.Abs(got-want) > 0.02 {
			t.Errorf("line %v: %.3f mm kept, %.3f mm are inside", line, got, want)
		}
	}
}

// What is not there is left out or said, and nothing falls over.
func TestLittleKnown(t *testing.T) {
	noPlan := fixture()
	noPlan.Plan = PlanView{}
	noPours := fixture()
	noPours.Pours, noPours.Plan.Pours = nil, nil
	bare := fixture()
	for i := range bare.Pours {
		bare.Pours[i] = PourDay{ID: bare.Pours[i].ID, Start: bare.Pours[i].Start}
	}
	bare.Findings = []FindingSheet{{Finding: walk.Finding{ID: "F1", Kind: walk.Crack}, Title: "Crack"}}
	badZone := fixture()
	badZone.Head.Zone = "Nowhere/Atall"
	for name, c := range map[string]*Content{"nothing": {}, "no plan": noPlan, "no pours": noPours, "bare": bare, "zone": badZone} {
		if _, err := PDF(c); err != nil {
			t.Errorf("%s: PDF: %v", name, err)
		}
		if _, err := HTML(c); err != nil {
			t.Errorf("%s: HTML: %v", name, err)
		}
		_ = PageOneText(c, 80) + FindingsText(c, 80) + CausesText(c, "F1", 80) + WindowText(c, 80)
	}
	if s := WindowText(badZone, 80); !strings.Contains(s, "UTC") {
		t.Error("times in a zone whose rules are not to be had must say UTC")
	}
	if s := CausesText(fixture(), "F99", 80); !strings.Contains(s, "F99") || !strings.Contains(s, "F12") {
		t.Errorf("a finding that is not there: %s", s)
	}
}
