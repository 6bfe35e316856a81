package checks

import (
	"context"

	"slabwright/source"
)

// Thicknesses that [LeastThickness] looks through, mm.
const (
	thinnest  = 75
	thickest  = 600
	thickStep = 5
)

// LeastThickness returns the least thickness, m, in steps of 5 mm, at which every
// check of bending, folding, curl, fatigue and punching is met, and the row that
// governs there. ok is false when even 600 mm does not do: then the row says what is
// not met. Steel is left out, since it changes with the thickness; the differences
// of temperature grow with it, the gradient staying the same.
func LeastThickness(ctx context.Context, in Input) (thickness float64, governs Row, ok bool, err error) {
	in = in.clone()
	in.Steel, in.Quick = nil, true
	first, hot, cold := in.Slab.Thickness.Value, in.Use.Hot.Or(0), in.Use.Cold.Or(0)
	worstAt := func(mm int) (Row, bool, error) {
		in.Slab.Thickness.Value = float64(mm) / 1000
		grow(in.Use.Hot, hot, in.Slab.Thickness.Value/first)
		grow(in.Use.Cold, cold, in.Slab.Thickness.Value/first)
		r, err := Run(ctx, in)
		if bad, is := err.(Problems); is && bad != nil {
			return Row{}, false, nil
		} else if err != nil {
			return Row{}, false, err
		}
		row := worstOf(r, Thickness, Fatigue, Punching)
		return row, row.Utilisation <= 1, nil
	}
	if bad := in.Check(); len(bad) > 0 {
		return 0, Row{}, false, bad
	}
	low, high := thinnest, thickest
	governs, ok, err = worstAt(high)
	if err != nil || !ok {
		return 0, governs, false, err
	}
	for high-low > thickStep {
		middle := (low + high) / 2 / thickStep * thickStep
		row, fits, err := worstAt(middle)
		switch {
		case err != nil:
			return 0, Row{}, false, err
		case fits:
			high, governs = middle, row
		default:
			low = middle
		}
	}
	if row, fits, err := worstAt(low); err == nil && fits {
		high, governs = low, row
	}
	return float64(high) / 1000, governs, true, nil
}

// grow sets a fact to so many times what it was, within what can be worked.
func grow(f *source.Fact, was, times float64) {
	if f != nil {
		f.Value = min(was*times, 40)
	}
}

// worstOf is the row with the greatest utilisation among some groups.
func worstOf(r Result, groups ...string) Row {
	var worst Row
	for _, row := range r.Rows {
		for _, g := range groups {
			if row.Group == g && row.Utilisation >= worst.Utilisation {
				worst = row
			}
		}
	}
	return worst
}
