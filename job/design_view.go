package job

import (
	"context"
	"fmt"
	"math"

	"slabwright/layout"
	"slabwright/plan"
	"slabwright/report"
)

// Look tells which rules a joint plan keeps and what it takes. It is quick enough to
// follow a joint that is being dragged.
func (g *Designer) Look(ctx context.Context, slab plan.Slab) (report.Layout, error) {
	d, err := g.on(ctx, slab)
	if err != nil {
		return report.Layout{}, err
	}
	v := report.Layout{Name: "as drawn", Slab: slab, Panels: d.panels}
	for _, j := range slab.Joints {
		for _, b := range slab.DowelBars(j) {
			v.DowelBars = append(v.DowelBars, report.DowelBar{Joint: j.ID, From: b.From, To: b.To})
		}
	}
	for _, c := range slab.CornerBars {
		v.Trimmers = append(v.Trimmers, trimmerView(c))
	}
	brief := d.brief(g.limit)
	for _, w := range layout.Review(slab, brief) {
		v.Warnings = append(v.Warnings, warningView(w))
	}
	q, err := layout.Take(slab, brief)
	if err != nil {
		return v, err
	}
	v.Quantities = quantityRows(q)
	cost := brief.Cost(q)
	v.Cost = costWords(cost, d.job.Rates)
	return v, nil
}

// trimmerView is bars across a corner, by the one nearest to it.
func trimmerView(c plan.CornerBars) report.TrimmerBar {
	out := report.TrimmerBar{From: c.At, To: c.At, Why: c.Note,
		Words: fmt.Sprintf("%d bars %.0f mm, %.2f m long, %.0f mm apart", c.Bars, 1000*c.Diameter.Or(0), c.Length.Or(0), 1000*c.Spacing.Or(0))}
	if lines := c.Lines(); len(lines) > 0 {
		out.From, out.To = lines[0].A, lines[0].B
	}
	return out
}

func warningView(w layout.Warning) report.Warning {
	out := report.Warning{Code: w.Code, Level: string(w.Severity), Panel: w.Panel, Joint: w.Joint, Fixture: w.Fixture, At: w.At, Words: w.Found, Rule: w.Rule, Source: w.Source}
	if w.Mend != nil {
		out.Mend = &report.Mend{Words: w.Mend.Words, Slab: w.Mend.Slab}
	}
	return out
}

func spacingView(l layout.Limit) report.Spacing {
	why := map[string]string{"model": "curl and base friction come to the strength there.", "thumb": "the rule of thumb is nearer than curl and friction ask for.",
		"cap": "the usual cap is nearer than curl and friction ask for.", "given": "as given."}[l.Govern]
	s := report.Spacing{Limit: l.Panel, Rule: l.Thumb, Cap: l.Cap, Why: why, Note: l.Words()}
	if !math.IsInf(l.Model, 1) {
		s.Model = &l.Model
	}
	for _, sheet := range l.Sheets(spacingSheets) {
		s.Workings = append(s.Workings, sheet.ID)
	}
	return s
}

func quantityRows(q layout.Quantities) []report.QuantityRow {
	var out []report.QuantityRow
	for _, r := range []report.QuantityRow{
		{What: "panels", Amount: float64(q.Panels)},
		{What: "pours", Amount: float64(q.Pours)},
		{What: "sawn joint", Amount: q.Sawn, Unit: "m"},
		{What: "formed joint", Amount: q.Formed, Unit: "m"},
		{What: "isolation joint", Amount: q.Isolation, Unit: "m"},
		{What: "dowels", Amount: float64(q.Dowels)},
		{What: "steel of the dowels", Amount: q.DowelMass, Unit: "kg"},
		{What: "mesh", Amount: q.Mesh, Unit: "kg"},
		{What: "bars across inside corners", Amount: q.Trimmer, Unit: "kg"},
	} {
		if r.Amount > 0 {
			out = append(out, r)
		}
	}
	return out
}

func costWords(cost *float64, rates []Rate) string {
	if cost == nil || *cost <= 0 {
		return ""
	}
	return fmt.Sprintf("%s %.0f", layoutRates(rates).Currency, *cost)
}

// spacingSheets is how the ids of the sheets on the spacing begin.
const spacingSheets = "joints-"
