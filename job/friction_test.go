package job

import (
	"testing"

	"slabwright/site"
	"slabwright/source"
)

// The word of the job file for a bound base has to reach the row of the table: it was
// once taken as crushed stone by the diagnosis and as stabilised by the checks.
func TestUsualFriction(t *testing.T) {
	word := func(s string) *source.Choice { return &source.Choice{Value: s, Known: source.Recorded} }
	for _, c := range []struct {
		ground site.Ground
		want   string
	}{
		{site.Ground{}, "crushed stone"},
		{site.Ground{Base: word("stabilised")}, "cement-stabilised"},
		{site.Ground{Base: word("stabilised"), Membrane: word("one sheet")}, "one sheet polyethylene"},
		{site.Ground{Base: word("insulation")}, "crushed stone"},
	} {
		if got := usualFriction(c.ground); got.Base != c.want {
			t.Errorf("base %v, membrane %v: friction of %q, want %q", c.ground.Base, c.ground.Membrane, got.Base, c.want)
		}
	}
}
