package dxf

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

// sample is a slab of 10 m by 6 m with one of everything.
func sample(unit Unit) []byte {
	w := New(unit)
	w.Layer("SLAB-EDGE", White, Full)
	w.Layer("JOINT-SAWN", Blue, Stroke{"LONGDASH", "____ ____", []float64{0.5, -0.13}})
	w.Layer("COLUMNS", Red, Full)
	w.Layer("WORDS", Grey, Full)
	w.Polyline("SLAB-EDGE", []Point{{0, 0}, {10, 0}, {10, 6}, {0, 6}}, true)
	w.Line("JOINT-SAWN", Point{5, 0}, Point{5, 6})
	w.Bulged("JOINT-SAWN", []Point{{1, 1}, {3, 1}}, []float64{1}, false)
	w.Circle("COLUMNS", Point{2.5, 3}, 0.25)
	w.Text("WORDS", Point{5, 6.2}, 0.2, 90, AtMiddle, "Fuß 150 m² 100 % ^ 5")
	return w.Bytes()
}

func TestWriteGolden(t *testing.T) {
	golden := filepath.Join("testdata", "sample.dxf")
	got := sample(Millimetre)
	if *update {
		if err := os.WriteFile(golden, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != string(want) {
		t.Error("the file has changed; read the difference, then run with -update")
	}
	for i, b := range got {
		if b >= 0x80 {
			t.Fatalf("byte %d is %#x, beyond ASCII", i, b)
		}
	}
}

// What is written is read back: layers, unit, lengths and words.
func TestWriteReadsBack(t *testing.T) {
	for _, unit := range []Unit{Millimetre, Metre, Inch} {
		d := mustRead(t, sample(unit), Options{Chord: fine})
		per, _ := unit.Metres()
		if d.Unit != unit || d.Version != "AC1009" {
			t.Errorf("unit %v, version %s", d.Unit, d.Version)
		}
		for layer, want := range map[string]float64{"SLAB-EDGE": 32, "JOINT-SAWN": 6 + math.Pi, "COLUMNS": math.Pi / 2} {
			sum := 0.0
			for _, l := range d.On(layer) {
				sum += l.Length() * per
			}
			if math.Abs(sum-want) > 1e-4 {
				t.Errorf("%v: %.6f m on %s, want %.6f", unit, sum, layer, want)
			}
		}
		if got := d.Texts[0].Words; got != "Fuß 150 m² 100 % ^ 5" {
			t.Errorf("words %q", got)
		}
	}
}

func TestWriterRefuses(t *testing.T) {
	for name, f := range map[string]func(){
		"unknown layer": func() { New(Metre).Line("NOWHERE", Point{}, Point{1, 1}) },
		"name":          func() { New(Metre).Layer("with blank", White, Full) },
		"long name":     func() { New(Metre).Layer(strings.Repeat("A", 32), White, Full) },
		"no unit":       func() { New(None) },
		"not a number":  func() { w := New(Metre); w.Layer("A", White, Full); w.Line("A", Point{math.NaN(), 0}, Point{1, 1}) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			f()
		}()
	}
}
