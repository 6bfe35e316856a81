package layout

import "slabwright/plan"

// Take adds up what a slab with joints takes, in the words of a brief's steel.
func Take(s plan.Slab, b Brief) (Quantities, error) {
	e, err := examine(s, b.limit())
	if err != nil {
		return Quantities{}, err
	}
	var laid []Trimmer // bars that are noted, not those that are wanting
	for _, x := range e.breaches {
		if x.rule == "bars" && !s.BarsAt(x.at) {
			laid = append(laid, b.trimmer(e, x))
		}
	}
	for _, c := range s.CornerBars {
		laid = append(laid, Trimmer{Bars: c.Bars, Diameter: c.Diameter.Or(0), Length: c.Length.Or(0)})
	}
	return b.quantities(e, laid, len(pourStrips(e))), nil
}

// Cost returns what quantities cost by the rates of a brief; nil without rates.
func (b Brief) Cost(q Quantities) *float64 {
	if !b.Rates.Given() {
		return nil
	}
	cost := b.Rates.cost(q)
	return &cost
}

// Strips returns what of a slab with joints is placed in one go: the panels that no
// formed or isolation joint parts.
func Strips(s plan.Slab) ([]PourStrip, error) {
	e, err := examine(s, spacingCap)
	if err != nil {
		return nil, err
	}
	return pourStrips(e), nil
}

// limit is the longest panel of a brief, or the usual cap.
func (b Brief) limit() float64 {
	if b.Spacing.Panel > 0 {
		return b.Spacing.Panel
	}
	return spacingCap
}
