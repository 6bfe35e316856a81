package report

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"slabwright/checks"
	"slabwright/source"
)

func rec(v float64) source.Fact {
	return source.Fact{Value: v, Known: source.Recorded, By: "drawing S-101"}
}
func recAt(v float64) *source.Fact { f := rec(v); return &f }
func put(v float64) source.Fact {
	return source.Fact{Value: v, Known: source.Default, Note: "usual"}
}

func calcFixture(t *testing.T, key string) *checks.Calc {
	t.Helper()
	code, _ := checks.CodeOf(key)
	in := checks.Input{Code: code,
		Slab:     checks.Slab{Thickness: rec(0.175), Length: rec(5), Width: rec(4.5)},
		Concrete: checks.Concrete{Strength: rec(32), Poisson: put(0.2), UnitWeight: put(24), Expansion: put(1e-5), Shrinkage: put(400e-6)},
		Ground:   checks.Ground{Support: put(50), CBR: recAt(8), Friction: put(1.5), Base: "granular"},
		Joint: checks.Joint{Transfer: checks.Dowelled, Spacing: rec(5), Cooling: put(15), Filler: recAt(0.25), FillWidth: recAt(0.010),
			Dowels: &checks.Dowels{Diameter: rec(0.020), Length: rec(0.5), Spacing: rec(0.3), Support: put(300), Yield: put(250)}},
		Steel: &checks.Steel{Diameter: rec(0.008), Spacing: rec(0.2), Cover: rec(0.05), Yield: put(500), Free: rec(25), Held: true},
		Use:   checks.Use{Class: "pneumatic tyres over 3 t", Hot: recAt(8), Cold: recAt(12)},
		Loads: []checks.Load{
			{ID: "L1", Name: "Forklift", Kind: checks.Axle, Force: recAt(60), Pressure: recAt(1.0), Wheels: 2, Track: recAt(0.9), Passes: recAt(200000)},
			{ID: "L2", Name: "Rack", Kind: checks.Post, Force: recAt(35), PlateX: recAt(0.12), PlateY: recAt(0.1), Pitch: recAt(2.7), Back: recAt(0.4)},
			{ID: "L3", Name: "Wall", Kind: checks.Line, PerMetre: recAt(25)},
		}}
	head := checks.Head{Job: "2631", Calc: "C4", Title: "Distribution yard, north slab", Subject: "Floor slab: loads, joints and steel", By: "R. Okafor",
		Date: time.Date(2026, 6, 18, 0, 0, 0, 0, time.UTC), Version: "test", Draft: true}
	c, err := checks.NewCalc(context.Background(), head, in)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestCalcPDF(t *testing.T) {
	c := calcFixture(t, "EN")
	data, err := CalcPDF(c)
	if err != nil {
		t.Fatal(err)
	}
	again, err := CalcPDF(c)
	if err != nil || !bytes.Equal(data, again) {
		t.Errorf("the same calculation gives other bytes (%v)", err)
	}
	if dir := os.Getenv("KEEP_PDF"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, "calc.pdf"), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	text := pdfWords(t, data)
	pages := strings.Count(text, "\f")
	for _, want := range []string{"2631", "C4", "Floor slab: loads, joints and steel", "R. Okafor", "18 Jun 2026", "Checked by", "Revision", "1 of ", "Assumptions", "Units.", "Reference", "Working", "Result",
		"Summary of results", "Sketch", "not met", "from memory"} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet lacks %q", want)
		}
	}
	if n := strings.Count(text, "Checked by"); n != pages {
		t.Errorf("the title block stands on %d of %d pages", n, pages)
	}
	for _, row := range c.Rows {
		if !strings.Contains(text, c.Number(row.Sheet)) {
			t.Errorf("sheet %s of %s is not there", c.Number(row.Sheet), row.ID)
		}
	}
	if strings.ContainsAny(strings.ReplaceAll(text, "^(", ""), "□_^") {
		t.Error("a letter is missing, or an index or power stands as typed")
	}
}

func pdfWords(t *testing.T, data []byte) string {
	t.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not here")
	}
	name := filepath.Join(t.TempDir(), "calc.pdf")
	if err := os.WriteFile(name, data, 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", "-layout", name, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}
