package poursheet

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"slabwright/plan"
	"slabwright/source"
)

func fact(v float64) *source.Fact { return &source.Fact{Value: v, Known: source.Recorded} }

func word(w string) *source.Choice { return &source.Choice{Value: w, Known: source.Recorded} }

// yardSlab is 12 m by 9 m with a pit, two sawn joints across, one formed along and
// one isolation joint, dowels in the sawn ones; its corner at the lower left is (2, 1).
func yardSlab() plan.Slab {
	dowels := &plan.Dowels{Diameter: fact(0.025), Length: fact(0.5), Spacing: fact(0.3), Clear: fact(0.15), FreeAlong: word("yes")}
	return plan.Slab{ID: "S", Name: "Yard", Thickness: fact(0.15), Bearing: fact(20),
		Outline: []plan.Point{{X: 2, Y: 1}, {X: 14, Y: 1}, {X: 14, Y: 10}, {X: 2, Y: 10}},
		Fixtures: []plan.Fixture{
			{ID: "PIT", Name: "pit", Kind: plan.Pit, Opening: true, Isolated: word("yes"), Shape: []plan.Point{{X: 7.5, Y: 7}, {X: 8.5, Y: 7}, {X: 8.5, Y: 8}, {X: 7.5, Y: 8}}},
			{ID: "W", Name: "wall", Kind: plan.Wall, Shape: []plan.Point{{X: 2, Y: 10}, {X: 14, Y: 10}}},
		},
		Joints: []plan.Joint{
			{ID: "S1", Kind: plan.Sawn, Path: []plan.Point{{X: 6, Y: 1}, {X: 6, Y: 10}}, Dowels: dowels, Transfer: word("dowelled")},
			{ID: "S2", Kind: plan.Sawn, Path: []plan.Point{{X: 10, Y: 1}, {X: 10, Y: 10}}, Dowels: dowels, Transfer: word("dowelled")},
			{ID: "F1", Name: "=day joint", Kind: plan.Formed, Path: []plan.Point{{X: 2, Y: 5.5}, {X: 14, Y: 5.5}}},
			{ID: "I1", Kind: plan.Isolation, Path: []plan.Point{{X: 2, Y: 9}, {X: 4, Y: 9}, {X: 5, Y: 10}}},
		},
		Steel: []plan.BarZone{{ID: "M", Name: "mesh", PitchX: fact(0.2), PitchY: fact(0.2), Diameter: fact(0.008), Cover: fact(0.05)}},
	}
}

func yardDrawing(t testing.TB) Drawing {
	t.Helper()
	s := yardSlab()
	panels, err := s.Panels()
	if err != nil {
		t.Fatal(err)
	}
	depth := 0.0375
	return Drawing{Title: yardTitle(), Slab: s, Panels: panels, SawDepth: &depth}
}

func yardTitle() Title {
	return Title{Number: "T-1", Job: "Yard for a test", Slab: "Yard", Client: "Owner", Place: "Somewhere", Drawn: "A. Person", Revision: "A", Zone: "Europe/London",
		Made: time.Date(2026, 10, 20, 0, 0, 0, 0, time.UTC), Version: "test", DataHash: strings.Repeat("ab", 32)}
}

// pdfText returns what a reader of its own finds in a PDF, page by page parted by form
// feeds.
func pdfText(t *testing.T, data []byte) string {
	t.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		if os.Getenv("SLABWRIGHT_BROWSER") == "required" {
			t.Fatal("pdftotext is required and not there")
		}
		t.Skip("pdftotext is not there")
	}
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(file, data, 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.NewReplacer(thin, " ", "\u00a0", " ", "\u2002", " ").Replace(string(out))
}

// pages counts the pages of the text of a PDF.
func pages(text string) int { return strings.Count(text, "\f") }

// squeezed takes line ends and runs of blanks out, so that words set on two lines are
// found.
func squeezed(s string) string { return strings.Join(strings.Fields(s), " ") }

func wantWords(t *testing.T, text string, words ...string) {
	t.Helper()
	flat := squeezed(text)
	for _, w := range words {
		if !strings.Contains(flat, w) {
			t.Errorf("no %q in:\n%s", w, text)
		}
	}
}
