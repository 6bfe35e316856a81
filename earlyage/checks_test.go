package earlyage

import "testing"

func TestPublishedValues(t *testing.T) {
	results := Checks()
	if len(results) < 200 {
		t.Fatalf("only %d published values", len(results))
	}
	for _, r := range results {
		if !r.OK {
			t.Error(r)
		}
	}
	t.Logf("%d published values met", len(results))
}
