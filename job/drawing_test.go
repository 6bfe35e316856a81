package job

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slabwright/internal/dxf"
	"slabwright/plan"
)

// floor draws a hall of 20 m by 12 m with two columns and joints in pieces, its corner
// at the place given, in a unit.
func floor(t *testing.T, unit dxf.Unit, at dxf.Point) []byte {
	t.Helper()
	w := dxf.New(unit)
	for _, name := range []string{"EDGE", "COLS", "JTS"} {
		w.Layer(name, dxf.White, dxf.Full)
	}
	p := func(x, y float64) dxf.Point { return dxf.Point{X: at.X + x, Y: at.Y + y} }
	w.Line("EDGE", p(0, 0), p(20, 0))
	w.Line("EDGE", p(20, 12), p(20, 0.001)) // ends a millimetre apart
	w.Line("EDGE", p(20, 12), p(0, 12))
	w.Line("EDGE", p(0, 12), p(0, 0))
	w.Circle("COLS", p(5, 6), 0.25)
	w.Polyline("COLS", []dxf.Point{p(14, 5), p(15, 5), p(15, 6), p(14, 6)}, true)
	w.Line("JTS", p(10, 0), p(10, 6))
	w.Line("JTS", p(10, 12), p(10, 6))
	w.Line("JTS", p(0, 6), p(20, 6))
	return w.Bytes()
}

func TestReadDrawing(t *testing.T) {
	for _, unit := range []dxf.Unit{dxf.Millimetre, dxf.Metre, dxf.Inch} {
		slab, notes, err := ReadDrawing(plan.Slab{ID: "S"}, floor(t, unit, dxf.Point{}), DrawingChoice{Outline: "EDGE", Columns: "cols", Joints: "JTS"})
		if err != nil {
			t.Fatal(err)
		}
		if got := plan.Ring(slab.Outline).Area(); math.Abs(got-240) > 0.02 || len(slab.Outline) != 4 {
			t.Errorf("%v: %d corners, %.3f m²", unit, len(slab.Outline), got)
		}
		if len(slab.Fixtures) != 2 || slab.Fixtures[0].Kind != plan.Column || slab.Fixtures[0].ID == slab.Fixtures[1].ID {
			t.Errorf("%v: fixtures %+v", unit, slab.Fixtures)
		}
		// the round column: chords within half a millimetre lose little of π·r²
		if got, want := plan.Ring(slab.Fixtures[0].Shape).Area(), math.Pi*0.0625; got > want+1e-6 || got < 0.99*want {
			t.Errorf("%v: round column of %.4f m², want %.4f", unit, got, want)
		}
		if len(slab.Joints) != 2 || math.Abs(plan.Polyline(slab.Joints[1].Path).Length()-12) > 1e-4 && math.Abs(plan.Polyline(slab.Joints[0].Path).Length()-12) > 1e-4 {
			t.Errorf("%v: two pieces in one line are one joint: %+v", unit, slab.Joints)
		}
		if bad := slab.Check(); len(bad) > 0 {
			t.Errorf("%v: %v", unit, bad)
		}
		if !strings.Contains(strings.Join(notes, " "), "taken as sawn") {
			t.Errorf("what was taken for granted goes unsaid: %q", notes)
		}
	}
}

func TestReadDrawingFarAway(t *testing.T) {
	slab, notes, err := ReadDrawing(plan.Slab{}, floor(t, dxf.Metre, dxf.Point{X: 350_000, Y: 6_500_000}), DrawingChoice{Outline: "EDGE", Columns: "COLS", Joints: "JTS", Kind: plan.Formed})
	if err != nil {
		t.Fatal(err)
	}
	low, high := plan.Ring(slab.Outline).Box()
	if low.To(plan.Point{}) > 1e-4 || high.To(plan.Point{X: 20, Y: 12}) > 1e-3 {
		t.Errorf("from %v to %v", low, high)
	}
	if !strings.Contains(strings.Join(notes, " "), "is now (0, 0)") {
		t.Errorf("notes %q", notes)
	}
	if j := slab.Joints[0]; j.Kind != plan.Formed || j.Path[0].To(plan.Point{X: 10}) > 1e-3 && j.Path[0].To(plan.Point{Y: 6}) > 1e-3 {
		t.Errorf("the joints did not move along: %+v", j)
	}
}

// A drawing of another hand: its loose lines close ten outlines, the largest the sheet
// of 40 by 40, the others openings in it.
func TestReadDrawingOfOthers(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "internal", "dxf", "testdata", "drawings", "s-openscad_export.dxf"))
	if err != nil {
		t.Fatal(err)
	}
	var ask UnitUnknown
	if _, _, err := ReadDrawing(plan.Slab{}, data, DrawingChoice{Outline: "0"}); !errors.As(err, &ask) || !strings.Contains(err.Error(), "--units mm if it is 0.04 by 0.04 m, m if it is 40 by 40 m") {
		t.Errorf("%v", err)
	}
	slab, _, err := ReadDrawing(plan.Slab{}, data, DrawingChoice{Outline: "0", Unit: dxf.Metre, Join: 0.001})
	if err != nil {
		t.Fatal(err)
	}
	if got := plan.Ring(slab.Outline).Area(); math.Abs(got-1600) > 1e-3 || len(slab.Fixtures) != 9 {
		t.Errorf("%.3f m², %d openings", got, len(slab.Fixtures))
	}
}

func TestReadDrawingRefuses(t *testing.T) {
	crowd := dxf.New(dxf.Metre)
	crowd.Layer("EDGE", dxf.White, dxf.Full)
	for i := range mostOnLayer + 1 {
		crowd.Line("EDGE", dxf.Point{X: float64(i)}, dxf.Point{X: float64(i), Y: 1})
	}
	if _, _, err := ReadDrawing(plan.Slab{}, crowd.Bytes(), DrawingChoice{Outline: "EDGE"}); err == nil || !strings.Contains(err.Error(), "5001 lines") {
		t.Errorf("%v", err)
	}
	data := floor(t, dxf.Metre, dxf.Point{})
	for want, c := range map[string]DrawingChoice{
		"no lines on a layer \"WALLS\"": {Outline: "WALLS"},
		"close no outline":              {Outline: "JTS"},
		"no lines on a layer \"X\"":     {Outline: "EDGE", Joints: "X"},
	} {
		if _, _, err := ReadDrawing(plan.Slab{}, data, c); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
	layers, err := DrawingLayers(data)
	if err != nil || len(layers) != 3 || layers[0] != `"EDGE": 4 lines, 0 of them closed, 0 texts` {
		t.Errorf("%q, %v", layers, err)
	}
}

// A pour that took in the whole slab takes in the new one; nothing changes on an error.
func TestTakeDrawing(t *testing.T) {
	j := New(NewAnswers{Name: "Hall", Zone: "Europe/London", Outline: []plan.Point{{X: 0, Y: 0}, {X: 3, Y: 0}, {X: 3, Y: 3}}})
	data := floor(t, dxf.Millimetre, dxf.Point{})
	if _, err := j.TakeDrawing(data, DrawingChoice{Outline: "NONE"}); err == nil || len(j.Slabs[0].Outline) != 3 {
		t.Errorf("%v, %d corners", err, len(j.Slabs[0].Outline))
	}
	if _, err := j.TakeDrawing(data, DrawingChoice{Outline: "EDGE", Joints: "JTS"}); err != nil {
		t.Fatal(err)
	}
	if len(j.Pours[0].Area) != 4 || len(j.Slabs[0].Joints) != 2 {
		t.Errorf("pour of %d corners, %d joints", len(j.Pours[0].Area), len(j.Slabs[0].Joints))
	}
}

func TestInLine(t *testing.T) {
	s := func(a, b, c, d float64) plan.Segment {
		return plan.Segment{A: plan.Point{X: a, Y: b}, B: plan.Point{X: c, Y: d}}
	}
	cases := []struct {
		name string
		in   []plan.Segment
		want int
	}{
		{"end to end", []plan.Segment{s(0, 0, 1, 0), s(2, 0, 1, 0), s(2, 0, 5, 0)}, 1},
		{"last joins first", []plan.Segment{s(0, 0, 1, 0), s(2, 0, 3, 0), s(1, 0, 2, 0)}, 1},
		{"a gap", []plan.Segment{s(0, 0, 1, 0), s(1.5, 0, 3, 0)}, 2},
		{"beside", []plan.Segment{s(0, 0, 1, 0), s(0, 0.1, 1, 0.1)}, 2},
		{"across", []plan.Segment{s(0, 0, 1, 0), s(0.5, -1, 0.5, 1)}, 2},
		{"one within another", []plan.Segment{s(0, 0, 5, 0), s(1, 0, 2, 0)}, 1},
	}
	for _, c := range cases {
		got := inLine(c.in, 0.005)
		if len(got) != c.want {
			t.Errorf("%s: %v, want %d", c.name, got, c.want)
		}
	}
}

// A drawing that was cut off before its first line is told as such, by its missing end.
func TestDrawingCutShort(t *testing.T) {
	cut := []byte("  0\nSECTION\n  2\nHEADER\n  9\n$ACADVER\n  1\nAC1009\n")
	_, _, err := ReadDrawing(plan.Slab{}, cut, DrawingChoice{Outline: "EDGE", Unit: dxf.Metre})
	if err == nil || !strings.Contains(err.Error(), "cut short") {
		t.Errorf("a drawing cut short: %v", err)
	}
}
