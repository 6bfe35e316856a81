package concrete

import (
	_ "embed"
	"fmt"
)

//go:embed aggregates.csv
var aggregatesCSV string

var aggregateKeys, aggregateRows = readTable("aggregates.csv", aggregatesCSV)

// Aggregate is what a kind of coarse aggregate makes of concrete.
type Aggregate struct {
	Kind         string
	Modulus      float64 // factor on the modulus of elasticity, 1 for quartzite
	Expansion    Range   // coefficient of thermal expansion of the concrete [1/K]
	Conductivity Range   // of mature concrete [W/(m K)]
}

// Aggregates returns the kinds of coarse aggregate in table order.
func Aggregates() []string { return append([]string(nil), aggregateKeys...) }

func aggregateOf(kind string) (a Aggregate, ok bool) {
	row, ok := aggregateRows[kind]
	if !ok {
		return Aggregate{}, false
	}
	cell := func(column string) float64 { return number("aggregates.csv", row, column) }
	return Aggregate{Kind: kind, Modulus: cell("modulus"),
		Expansion:    Range{cell("expansion") * 1e-6, cell("expansion_low") * 1e-6, cell("expansion_high") * 1e-6},
		Conductivity: Range{cell("conductivity"), cell("conductivity_low"), cell("conductivity_high")}}, true
}

// WithAggregate returns the mix with the thermal expansion and conductivity, and
// their ranges, of a kind of coarse aggregate; "unknown" has the widest ranges
// about 10·10⁻⁶ 1/K.
func (m Mix) WithAggregate(kind string) (Mix, error) {
	a, ok := aggregateOf(kind)
	if !ok {
		return m, fmt.Errorf("aggregate %q is not in the table; choose one of %q", kind, aggregateKeys)
	}
	m.AggregateKind = kind
	m.Expansion, m.ExpansionLow, m.ExpansionHigh = a.Expansion.Value, a.Expansion.Low, a.Expansion.High
	m.UltimateConductivity, m.ConductivityLow, m.ConductivityHigh = a.Conductivity.Value, a.Conductivity.Low, a.Conductivity.High
	return m, nil
}
