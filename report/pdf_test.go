package report

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"slabwright/internal/page"
)

// keep writes an output where $SLABWRIGHT_KEEP points, for looking at.
func keep(t *testing.T, name string, data []byte) {
	t.Helper()
	if dir := os.Getenv("SLABWRIGHT_KEEP"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func TestSameContentGivesTheSamePDF(t *testing.T) {
	first, err := PDF(fixture())
	if err != nil {
		t.Fatal(err)
	}
	second, err := PDF(fixture())
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first, second) {
		t.Errorf("two PDFs of one content differ: %d and %d bytes", len(first), len(second))
	}
	keep(t, "report.pdf", first)
	letter, err := PDFOn(fixture(), page.Letter)
	if err != nil {
		t.Fatal(err)
	}
	keep(t, "report-letter.pdf", letter)
}

func TestHTMLIsKept(t *testing.T) {
	data, err := HTML(fixture())
	if err != nil {
		t.Fatal(err)
	}
	keep(t, "report.html", data)
}
