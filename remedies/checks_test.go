package remedies

import "testing"

func TestPublished(t *testing.T) {
	results := Checks()
	if len(results) == 0 {
		t.Fatal("no published rows")
	}
	for _, r := range results {
		if !r.OK {
			t.Error(r)
		}
	}
	t.Logf("%d rows met", len(results))
}
