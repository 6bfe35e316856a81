package layout

import (
	"context"
	"fmt"

	"slabwright/working"
)

// finish makes an alternative of the best trial: dowels, bars, mesh, strips,
// quantities, cost and chance.
func (b Brief) finish(ctx context.Context, a aim, t *trial, number int) (Alternative, error) {
	s := t.slab
	b.hold(&s)
	if b.Steel.Mesh != "" {
		s.Steel = append(append(s.Steel[:0:0], s.Steel...), b.zone(s))
	}
	e, err := examine(s, b.Spacing.Panel)
	if err != nil {
		return Alternative{}, err
	}
	bars := b.trimmers(e)
	s = crossedBy(s, bars)
	out := Alternative{Name: a.name, Why: a.why, Slab: s, Measure: t.measure, Score: a.weights.score(t.measure)}
	out.Strips = pourStrips(e)
	out.Measure.Pours = len(out.Strips)
	out.Trimmers = bars
	out.MeshCuts = b.meshCuts(s)
	out.Quantities = b.quantities(e, out.Trimmers, len(out.Strips))
	if b.Rates.Given() {
		cost := b.Rates.cost(out.Quantities)
		out.Cost = &cost
	}
	out.Warnings = Review(s, b)
	ask := b.Chance
	if ask == nil {
		ask = b.Spacing.ChanceOf
	}
	chance, err := ask(ctx, s)
	if err != nil {
		return out, fmt.Errorf("the chance of an unplanned crack of the layout with %s: %w", a.name, err)
	}
	out.Chance = &chance
	out.Sheets = append([]working.Sheet{b.quantitySheet(out, number)}, chance.Sheets...)
	return out, nil
}
