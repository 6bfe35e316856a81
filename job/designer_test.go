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
		c, err := g.Chance(context.Background(), j.Slabs[0])
		if err != nil {
			b.Fatal(err)
		}
		b.Log(c.Any, c.Note, c.Panels)
	}
}
