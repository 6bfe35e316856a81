package causes

import "testing"

func TestCases(t *testing.T) {
	results := CaseResults()
	if len(results) != 12 {
		t.Fatalf("%d cases, want 12", len(results))
	}
	for _, r := range results {
		t.Logf("%s: got %s %s, decided %v", r.Case.Site, r.Got, r.About, r.Decided)
		if !r.OK {
			t.Errorf("%s: got %s (%.2f), want %s", r.Case.Site, r.Got, r.Chance, r.Case.Expected)
		}
	}
}
