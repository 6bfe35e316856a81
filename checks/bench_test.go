package checks

import (
	"context"
	"testing"
)

// A joint or a load dragged: every closed form anew. The app has 100 ms for it.
func BenchmarkClosedForms(b *testing.B) {
	in := warehouse("EN")
	in.Quick = true
	for b.Loop() {
		if _, err := Run(context.Background(), in); err != nil {
			b.Fatal(err)
		}
	}
}

// The same with the plate beside each check of load and curl.
func BenchmarkWithPlates(b *testing.B) {
	in := warehouse("EN")
	for b.Loop() {
		if _, err := Run(context.Background(), in); err != nil {
			b.Fatal(err)
		}
	}
}
