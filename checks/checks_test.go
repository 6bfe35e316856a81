package checks

import "testing"

func TestPublished(t *testing.T) {
	results := Checks()
	if len(results) < 70 {
		t.Fatalf("only %d published rows", len(results))
	}
	for _, r := range results {
		if !r.OK {
			t.Error(r)
		}
	}
}
