package layout

import (
	"context"
	"fmt"
	"slices"
	"sort"

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
	s = e.withTrimmers()
	out := Alternative{Name: a.name, Why: a.why, Slab: s, Measure: t.measure, Score: a.weights.score(t.measure)}
	out.Strips = pourStrips(e)
	out.Measure.Pours = len(out.Strips)
	out.Trimmers = b.trimmers(e)
	out.MeshCuts = b.meshCuts(s)
	out.Quantities = b.quantities(e, out.Trimmers, len(out.Strips))
	if b.Rates.Given() {
		cost := b.Rates.cost(out.Quantities)
		out.Cost = &cost
	}
	out.Warnings = barred(Review(s, b), out.Trimmers)
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

// barred returns the warnings with those of inside corners that bars cross told as
// such: the plan of a slab has no place for bars at its outline, an alternative has.
func barred(warnings []Warning, bars []Trimmer) []Warning {
	rule := ruleByKey["bars"]
	for i := range warnings {
		w := &warnings[i]
		for _, t := range bars {
			if w.Code == "corner" && w.At.To(t.At) <= fuzz {
				w.Code, w.Severity, w.Rule, w.Source = rule.Key, rule.Severity, rule.Says, rule.Source.String()
				w.Found = fmt.Sprintf("Bars cross an inside corner of %s that no joint meets.", w.Panel)
			}
		}
	}
	sort.SliceStable(warnings, func(i, k int) bool { return rank(warnings[i].Severity) < rank(warnings[k].Severity) })
	return warnings
}

// rank orders severities, the strongest first.
func rank(s Severity) int { return slices.Index([]Severity{Must, Should, Note}, s) }
