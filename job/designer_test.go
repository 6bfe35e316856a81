package job

import (
	"context"
	"os"
	"testing"
)

func nextDesigner(t testing.TB) (*Designer, *Job) {
	t.Helper()
	j, err := Load("demonext")
	if err != nil {
		t.Fatal(err)
	}
	g, err := NewDesigner(context.Background(), j, os.DirFS("demonext"), nil)
	if err != nil {
		t.Fatal(err)
	}
	return g, j
}

func BenchmarkDesignChance(b *testing.B) {
	g, j := nextDesigner(b)
	for b.Loop() {
		c, err := g.followed(context.Background(), j.Slabs[0], j)
		if err != nil {
			b.Fatal(err)
		}
		if c.Members != designMembers {
			b.Fatalf("%d members were followed, want %d", c.Members, designMembers)
		}
	}
}
