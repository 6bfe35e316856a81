package dxf

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// fine is a chord tolerance, metres, at which lengths of curves are right to 1e-4.
const fine = 1e-8

func drawing(t testing.TB, name string, o Options) *Drawing {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "drawings", name))
	if err != nil {
		t.Fatal(err)
	}
	d, err := Read(data, o)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return d
}

// The drawings of three other projects, with what a person finds in each. Lengths
// follow from the numbers in the files by hand.
func TestDrawings(t *testing.T) {
	semi := math.Pi
	cases := []struct {
		name                      string
		unit                      Unit
		lines, closed, open       int // closed and open after joining
		skipped, note, layer, why string
		length                    float64 // of all lines, 0: not worked out by hand
	}{
		{name: "e-binary-r2000.dxf", unit: Metre, why: "binary: read; holds one text"},
		{name: "e-minimal-r12.dxf"},
		{name: "e-r12-trash-after-eof.dxf", lines: 1, closed: 1, note: "text after the end mark", layer: "Layer_is_a_required_tag", length: 2 * semi * 1.5, why: "circle of radius 1.5"},
		{name: "e-unicode.dxf", unit: Metre, layer: "Tschüss mit ü", why: "one ü in UTF-8, one by number"},
		{name: "g-arc1.dxf", lines: 1, open: 1, layer: "FG-Dtl-Dim", length: (355.0752244008874 - 338.8998819521181) / 180 * semi * 0.7604262403327394, why: "arc seen from below"},
		{name: "g-arcs-as-splines.dxf", lines: 3, closed: 2, open: 1},
		{name: "g-ellipse.dxf", lines: 2, closed: 2},
		{name: "s-arc15.dxf", unit: Inch, lines: 1, open: 1, length: (155.0952311919048 - 50.19442890773482) / 180 * semi * 35.44802533287292},
		{name: "s-array-rotated.dxf", unit: Inch, lines: 6, closed: 6, length: 6 * 2 * semi * 0.13 * 1.5, why: "2 x 3 circles of radius 0.13, one and a half times as large, in a block in a block"},
		{name: "s-blocks1.dxf", unit: Millimetre, lines: 10, closed: 4},
		{name: "s-closedlwpolylinebug.dxf", unit: Millimetre, lines: 1, closed: 1},
		{name: "s-hatches.dxf", unit: Millimetre, lines: 4, closed: 1, skipped: "HATCH", length: 400, why: "square of 100"},
		{name: "s-issue39.dxf", unit: Inch, lines: 15, closed: 15, layer: "Cutout"},
		{name: "s-layers.dxf", unit: Millimetre, lines: 9, closed: 3, layer: "dashedred", length: 400 + 320 + 2*semi*30, why: "squares of 100 and 80, circle of radius 30"},
		{name: "s-lines.dxf", unit: Millimetre, lines: 11, closed: 2, open: 1, length: 560},
		{name: "s-lwpolylines.dxf", unit: Millimetre, lines: 2, closed: 1, open: 1},
		{name: "s-openscad_export.dxf", lines: 452, closed: 10, why: "loose lines, every one part of an outline"},
		{name: "s-splines.dxf", unit: Millimetre, lines: 2, open: 2},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			o := Options{Chord: fine}
			if c.unit == None {
				o.Unit = Metre
			}
			d := drawing(t, c.name, o)
			if d.Unit != c.unit || len(d.Lines) != c.lines {
				t.Errorf("unit %v, %d lines; want %v, %d (%s)", d.Unit, len(d.Lines), c.unit, c.lines, c.why)
			}
			low, high, _ := d.Box()
			j := Join(d.Lines, 1e-5*math.Max(1, low.To(high)))
			if c.lines == 0 {
				j = Joined{}
			}
			if len(j.Closed) != c.closed || len(j.Open) != c.open {
				t.Errorf("%d closed and %d open after joining, want %d and %d", len(j.Closed), len(j.Open), c.closed, c.open)
			}
			sum := 0.0
			for _, l := range d.Lines {
				sum += l.Length()
			}
			if c.length > 0 && math.Abs(sum-c.length) > 1e-4*c.length {
				t.Errorf("length %.6f, by hand %.6f (%s)", sum, c.length, c.why)
			}
			wants(t, d, c.skipped, c.note, c.layer)
		})
	}
}

// wants looks for a kind skipped, a note and a layer; nothing else is skipped.
func wants(t *testing.T, d *Drawing, skipped, note, layer string) {
	t.Helper()
	kinds, layers := "", ""
	for _, s := range d.Skipped {
		kinds += s.Kind
		if s.Why == "" || s.Count < 1 || s.First < 1 {
			t.Errorf("skipped without a word of why and where: %+v", s)
		}
	}
	for _, l := range d.Layers {
		layers += "|" + l.Name + "|"
	}
	if kinds != skipped {
		t.Errorf("skipped %q, want %q", kinds, skipped)
	}
	if !strings.Contains(strings.Join(d.Notes, " "), note) || note == "" && len(d.Notes) > 0 {
		t.Errorf("notes %q, want %q", d.Notes, note)
	}
	if layer != "" && !strings.Contains(layers, "|"+layer+"|") {
		t.Errorf("no layer %q in %s", layer, layers)
	}
}

// Closed outlines keep their area: the sheet of the loose lines is a rectangle of
// 40 by 40 with nine holes, by its own first four lines.
func TestLooseLinesGiveAreas(t *testing.T) {
	d := drawing(t, "s-openscad_export.dxf", Options{Unit: Millimetre, Chord: fine})
	j := Join(d.Lines, 1e-3)
	largest := 0.0
	for _, l := range j.Closed {
		largest = math.Max(largest, math.Abs(l.Area()))
	}
	if math.Abs(largest-1600) > 1e-6 {
		t.Errorf("largest outline %.6f, want 40 x 40", largest)
	}
	if len(j.Branches) != 0 {
		t.Errorf("branches at %v", j.Branches)
	}
}

// A rational spline of degree 2 with middle weight cos(45°) is an exact circle: the
// file's second has radius 7.3454 about (201.3461, 243.2414), from its own points.
func TestSplineIsCircle(t *testing.T) {
	d := drawing(t, "g-arcs-as-splines.dxf", Options{Unit: Millimetre, Chord: 1e-6})
	const r = 208.6916144697202 - 201.3461153580332
	centre := Point{201.3461153580332, 243.2413398582423}
	found := false
	for _, l := range d.Lines {
		if l.Points[0].To(Point{208.6916144697202, 243.2413398582423}) > 1e-9 {
			continue
		}
		found = true
		for _, p := range l.Points {
			if off := math.Abs(p.To(centre) - r); off > 1e-9 {
				t.Fatalf("(%.6f, %.6f) lies %.3g off the circle", p.X, p.Y, off)
			}
		}
		if got, want := math.Abs(l.Area()), math.Pi*r*r; math.Abs(got-want) > 1e-3*want {
			t.Errorf("area %.4f, want %.4f", got, want)
		}
	}
	if !found {
		t.Error("the circle of the file was not found")
	}
}

func TestEllipseAxes(t *testing.T) {
	d := drawing(t, "g-ellipse.dxf", Options{Unit: Metre, Chord: fine})
	// area π·a·b with a = |(10, 10)|, b = 1.986299·a; a = 5, b = 4·5
	for i, want := range []float64{math.Pi * 200 * 1.986299, math.Pi * 5 * 20} {
		if got := math.Abs(d.Lines[i].Area()); math.Abs(got-want) > 1e-4*want {
			t.Errorf("ellipse %d: area %.4f, want %.4f", i, got, want)
		}
	}
}
