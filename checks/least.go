package checks

import "context"

// Thicknesses that [LeastThickness] looks through, mm.
const (
	thinnest  = 75
	thickest  = 600
	thickStep = 5
)

// LeastThickness returns the least thickness, m, in steps of 5 mm, at which every
// check of bending, folding, curl, fatigue and punching is met, and the row that
// governs there. ok is false when even 600 mm does not do: then the row says what is
// not met. Steel is left out, since it changes with the thickness.
func LeastThickness(ctx context.Context, in Input) (thickness float64, governs Row, ok bool, err error) {
	in = in.clone()
	in.Steel, in.quick = nil, true
	worstAt := func(mm int) (Row, bool, error) {
		in.Slab.Thickness.Value = float64(mm) / 1000
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
