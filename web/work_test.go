package web

import (
	"bytes"
	"encoding/json"
	"os"
	"testing"

	"slabwright/report"
)

// fixture reads the made-up slab of testdata; a field the content does not know is an error.
func fixture(t testing.TB) *report.Content {
	t.Helper()
	data, err := os.ReadFile("testdata/content.json")
	if err != nil {
		t.Fatal(err)
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	var c report.Content
	if err := d.Decode(&c); err != nil {
		t.Fatalf("testdata/content.json: %v", err)
	}
	return &c
}

func TestFixtureIsContent(t *testing.T) {
	c := fixture(t)
	if len(c.Findings) != 12 || len(c.Pours) != 3 || c.Plan.Area != 350 {
		t.Errorf("the made-up slab has %d findings, %d pours, %.0f m2; want 12, 3, 350", len(c.Findings), len(c.Pours), c.Plan.Area)
	}
}
