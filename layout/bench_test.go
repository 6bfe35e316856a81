package layout

import (
	"context"
	"testing"
)

func named(t testing.TB, name string) shape {
	t.Helper()
	for _, s := range shapes(t) {
		if s.Name == name {
			return s
		}
	}
	t.Fatalf("no shape %q", name)
	return shape{}
}

// The yard of 350 m² with joints, as it is looked over while a joint is dragged.
func BenchmarkReview(b *testing.B) {
	s := named(b, "yard of the study")
	in := brief(s.Slab)
	all, err := Propose(context.Background(), in, nil)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		Review(all[0].Slab, in)
	}
}

func BenchmarkProposeYard(b *testing.B) {
	s := named(b, "yard of the study")
	for b.Loop() {
		if _, err := Propose(context.Background(), brief(s.Slab), nil); err != nil {
			b.Fatal(err)
		}
	}
}

// 120 by 60 m with 40 columns.
func BenchmarkProposeLargeYard(b *testing.B) {
	s := named(b, "large yard")
	for b.Loop() {
		if _, err := Propose(context.Background(), brief(s.Slab), nil); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMoveJoint(b *testing.B) {
	s := named(b, "yard of the study")
	all, err := Propose(context.Background(), brief(s.Slab), nil)
	if err != nil {
		b.Fatal(err)
	}
	id := all[0].Slab.Joints[0].ID
	for b.Loop() {
		if _, err := MoveJoint(all[0].Slab, id, direction(0.2)); err != nil {
			b.Fatal(err)
		}
	}
}
