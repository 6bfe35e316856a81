package earlyage

import (
	"context"
	"fmt"
	"time"
)

// Alternative is another way to place or cut the same slab, to be set beside the
// first: an earlier start, another saw, a shorter strip, a cover for the evening.
type Alternative struct {
	Name string
	Pour Pour
	Saw  Saw
}

// Compare returns the cut window of each alternative at one accepted risk, in
// their order. Alternatives with the same pour are still run each on its own.
func Compare(ctx context.Context, risk float64, alternatives ...Alternative) ([]CutWindow, error) {
	out := make([]CutWindow, 0, len(alternatives))
	for _, a := range alternatives {
		w, err := Window(ctx, a.Pour, a.Saw, risk)
		if err != nil {
			return nil, fmt.Errorf("alternative %q: %w", a.Name, err)
		}
		out = append(out, w)
	}
	return out, nil
}

// Later returns the pour placed later by the clock (earlier if negative) in the
// same weather, with the same concrete and its covers going on as long after
// placing as before.
func (p Pour) Later(by time.Duration) Pour {
	p.Column.Placed = p.Column.Placed.Add(by)
	p.Column.sampled = nil
	return p
}
